#include "noonleaf/weather/table_plan.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "noonleaf/nearest_name.hpp"
#include "noonleaf/weather/calendar_stamp.hpp"
#include "noonleaf/weather/decimal_number.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

struct KeyColumn {
  std::string_view name;
  ColumnRole role;
};
constexpr std::array key_columns{KeyColumn{"date", ColumnRole::date}, KeyColumn{"time", ColumnRole::stamp},
                                 KeyColumn{"time_begin", ColumnRole::stamp_begin},
                                 KeyColumn{"time_end", ColumnRole::stamp_end}};

// Headers that resemble a canonical name and mean something else.
constexpr std::array<std::string_view, 12> other_things{"rn_mj_m2",  "rn_w_m2",  "ra_mj_m2", "ra_w_m2",
                                                        "rso_mj_m2", "rso_w_m2", "rl_w_m2",  "rain_pct",
                                                        "snow_mm",   "wind_deg", "snow_in",  "wind_dir_deg"};

// A quantity named without its unit: refused, since a unit is never guessed.
constexpr std::array<std::string_view, 16> bare_names{"tmin", "tmax", "tmean",    "t",       "tdew",  "dew",
                                                      "rh",   "ea",   "wind",     "rhmin",   "rhmax", "rs",
                                                      "rain", "temp", "sunshine", "pressure"};

// Columns by which rows of several places may be told apart.
constexpr std::array<std::string_view, 5> station_names{"station", "station_id", "station_name", "site",
                                                        "location"};

template <class Names>
bool holds(const Names& names, std::string_view wanted) {
  return std::find(names.begin(), names.end(), wanted) != names.end();
}

std::optional<std::size_t> weather_column_named(std::string_view name) {
  const auto columns = weather_columns();
  for (std::size_t index = 0; index < columns.size(); ++index)
    if (columns[index].name == name) return index;
  return std::nullopt;
}

std::vector<std::string_view> all_canonical_names() {
  std::vector<std::string_view> names;
  names.reserve(key_columns.size() + weather_columns().size());
  for (const KeyColumn& key : key_columns) names.push_back(key.name);
  for (const WeatherColumn& column : weather_columns()) names.push_back(column.name);
  return names;
}

// Fills role and meaning from a canonical name; false when the name is none.
bool take_meaning(PlannedColumn& column, std::string_view name) {
  for (const KeyColumn& key : key_columns) {
    if (key.name != name) continue;
    column.role = key.role;
    column.name = name;
    return true;
  }
  const auto index = weather_column_named(name);
  if (!index) return false;
  const WeatherColumn& known = weather_columns()[*index];
  column.role = ColumnRole::value;
  column.name = name;
  column.quantity = known.quantity;
  column.unit = known.unit;
  column.conversion = unit_conversion(*index);
  return true;
}

// "rain_mm or rain_in", for a header that names a quantity without unit or nearly.
std::string names_of_quantity(std::string_view stem) {
  if (stem == "temp") stem = "t";
  if (stem == "dew") stem = "tdew";
  std::string names;
  for (const WeatherColumn& column : weather_columns()) {
    const std::string_view rest =
        column.name.substr(0, stem.size()) == stem ? column.name.substr(stem.size()) : "";
    if (rest.empty() || rest.front() != '_') continue;
    if (!names.empty()) names += " or ";
    names += column.name;
  }
  return names;
}

// The canonical name a header almost spells; short names must share their first letter, or "site" would be
// taken for "time". Keys are left out: a missing key has its own message.
std::string almost(std::string_view header) {
  const auto ends = [header](std::string_view tail) {
    return header.size() > tail.size() && header.substr(header.size() - tail.size()) == tail;
  };
  if (header.substr(0, 8) == "pressure" && (ends("_mb") || ends("_mbar")))
    return "pressure_hpa";  // 1 mbar = 1 hPa
  std::vector<std::string_view> names;
  for (const WeatherColumn& column : weather_columns())
    if (column.name.size() > 4 || (header.size() <= 4 && header.front() == 't')) names.push_back(column.name);
  return nearest_name(header, names);
}

class Planner {
 public:
  Planner(const CsvRecord& record, char separator, std::size_t line, const std::string& excerpt,
          const TextSource& source, const WeatherOptions& options)
      : record_(record), line_(line), excerpt_(excerpt), source_(source), options_(options) {
    plan_.separator = separator;
  }

  TablePlan plan() {
    refuse_what_is_no_header();
    for (const CsvCell& cell : record_.cells) plan_.columns.push_back(meaning_of(cell));
    require_mapped_headers();
    require_ignored_headers();
    require_filter();
    refuse_doubles();
    settle_keys();
    if (!problems_.empty()) throw Error(std::move(problems_));
    require_values();
    note_ignored();
    return std::move(plan_);
  }

 private:
  Problem problem(std::size_t index, std::string message, std::string fix) const {
    Problem found = source_.problem(line_, std::move(message), std::move(fix));
    if (index < record_.cells.size()) {
      const CsvCell& cell = record_.cells[index];
      found.column = cell.column;
      found.text = valid_utf8(cell.raw);
      if (index < plan_.columns.size()) found.field = valid_utf8(plan_.columns[index].header);
    }
    found.excerpt = excerpt_;
    return found;
  }

  void refuse_what_is_no_header() {
    if (record_.cells.size() > most_columns)
      throw Error(source_.problem(line_,
                                  "the header has " + grouped(record_.cells.size()) + " columns; at most " +
                                      grouped(most_columns) + " are read",
                                  "check the separator: comma, semicolon or tab"));
    for (std::size_t index = 0; index < record_.cells.size(); ++index) {
      const CsvCell& cell = record_.cells[index];
      if (!cell.closed || cell.text_behind)
        throw Error(problem(index, "a quote in the header is not closed before the separator",
                            "write it like \"Rain, total\" with a quote at both ends, or without quotes"));
      if (cell.text.find('\r') != std::string::npos)
        throw Error(source_.problem(line_, "lines end in a carriage return alone, which is not read",
                                    "save the file with line feeds (\"CSV UTF-8\")"));
    }
    const std::string_view first = trimmed(record_.cells.front().text);
    const bool is_data = read_date(first.substr(0, 10), DateOrder::iso).value || parse_decimal(first, '.');
    if (is_data)
      throw Error(problem(0, "the file has no header line: its first line is data",
                          "put a line with the column names above it, like date,tmin_c,tmax_c,rain_mm"));
  }

  PlannedColumn meaning_of(const CsvCell& cell) {
    PlannedColumn column;
    column.header = std::string(trimmed(cell.text));
    column.name = column.header;
    const std::string lower = lower_case(column.header);
    for (const auto& [name, header] : options_.columns)
      if (trimmed(header) == column.header && take_meaning(column, name)) return column;
    if (column.header.empty() || holds(options_.ignore, column.header)) return column;
    if (take_meaning(column, lower)) return column;
    if (options_.where && trimmed(options_.where->column) == column.header) {
      column.role = ColumnRole::filter;
    } else if (holds(station_names, lower)) {
      column.role = ColumnRole::station;
    } else if (!holds(other_things, lower)) {
      refuse_near_miss(column, lower);
    }
    return column;
  }

  void refuse_near_miss(const PlannedColumn& column, const std::string& lower) {
    const std::size_t index = plan_.columns.size();
    const std::string shown = in_quotes(column.header);
    std::string wanted, why = " is not a column that is known";
    if (holds(bare_names, lower)) {
      wanted = names_of_quantity(lower);
      why = " does not say its unit";
    } else if (wanted = almost(lower); wanted.empty()) {
      return;
    }
    Problem found = problem(index, shown + why + "; did you mean " + wanted + "?",
                            "rename it, or leave it out with --ignore " + shown);
    found.field = "header";
    problems_.push_back(std::move(found));
  }

  std::string headers() const {
    std::string list;
    constexpr std::size_t shown = 20;
    for (std::size_t index = 0; index < std::min(shown, plan_.columns.size()); ++index)
      list += (index == 0 ? "" : ", ") + valid_utf8(plan_.columns[index].header);
    if (plan_.columns.size() > shown) list += ", …";
    return list;
  }

  std::string nearest_header(const std::string& wanted) const {
    std::vector<std::string> names;
    for (const PlannedColumn& column : plan_.columns) names.push_back(column.header);
    const std::string near = nearest_name(wanted, names);
    return near.empty() ? "the file has: " + headers() : "did you mean " + in_quotes(near) + "?";
  }

  void require_mapped_headers() {
    const auto names = all_canonical_names();
    for (const auto& [name, header] : options_.columns) {
      PlannedColumn meaning;
      if (!take_meaning(meaning, name)) {
        const std::string near = nearest_name(name, names);
        Problem found = source_.problem(0, in_quotes(name) + " is not a column that is known",
                                        near.empty() ? "the names are listed in docs/weather.md, like rain_mm"
                                                     : "did you mean " + near + "?");
        found.field = "--column";
        found.text = name;
        problems_.push_back(std::move(found));
        continue;
      }
      const std::string_view wanted = trimmed(header);
      const auto has_header = [wanted](const PlannedColumn& column) { return column.header == wanted; };
      if (std::any_of(plan_.columns.begin(), plan_.columns.end(), has_header)) continue;
      if (options_.absent_headers == AbsentHeader::ignored) continue;
      Problem found =
          problem(plan_.columns.size(), "the file has no column \"" + header + "\" to read as " + name,
                  nearest_header(header));
      found.field = "--column " + name;
      problems_.push_back(std::move(found));
    }
  }

  void require_ignored_headers() {
    if (options_.absent_headers == AbsentHeader::ignored) return;
    for (const std::string& ignored : options_.ignore) {
      const auto has_header = [&](const PlannedColumn& column) { return column.header == ignored; };
      if (std::any_of(plan_.columns.begin(), plan_.columns.end(), has_header)) continue;
      Problem found =
          problem(plan_.columns.size(), "the file has no column " + in_quotes(ignored) + " to leave out",
                  nearest_header(ignored));
      found.field = "--ignore";
      problems_.push_back(std::move(found));
    }
  }

  void require_filter() {
    if (!options_.where || plan_.find(ColumnRole::filter)) return;
    if (options_.absent_headers == AbsentHeader::ignored) return;
    Problem found = problem(plan_.columns.size(), "the file has no column \"" + options_.where->column + "\"",
                            nearest_header(options_.where->column));
    found.field = "--where";
    problems_.push_back(std::move(found));
  }

  void refuse_doubles() {
    for (std::size_t index = 0; index < plan_.columns.size(); ++index) {
      const PlannedColumn& column = plan_.columns[index];
      if (column.role == ColumnRole::ignored || column.role == ColumnRole::station) continue;
      for (std::size_t before = 0; before < index; ++before) {
        const PlannedColumn& other = plan_.columns[before];
        if (other.role != column.role) continue;
        if (column.role == ColumnRole::value && other.quantity != column.quantity) continue;
        refuse_double(index, other, column);
        break;
      }
    }
  }

  void refuse_double(std::size_t index, const PlannedColumn& first, const PlannedColumn& second) {
    const std::string header = in_quotes(second.header);
    const std::string place = in_quotes(first.header);
    std::string message = "the header " + header + " is there twice";
    if (first.header != second.header)
      message = place + " and " + header + " hold the same quantity" +
                (first.unit == second.unit ? "" : " in two units (" + first.unit + ", " + second.unit + ")");
    problems_.push_back(problem(index, std::move(message), "keep one of them, like " + first.name));
  }

  // `time` beside `date` is a clock; a stamp that says its end beats none.
  void settle_keys() {
    const auto date = plan_.find(ColumnRole::date), stamp = plan_.find(ColumnRole::stamp);
    const auto begin = plan_.find(ColumnRole::stamp_begin), end = plan_.find(ColumnRole::stamp_end);
    if (date && stamp) plan_.columns[*stamp].role = ColumnRole::clock;
    if (!date && !stamp && !begin && !end) {
      problems_.push_back(problem(plan_.columns.size(),
                                  "no column says the day: date, time, time_begin or time_end",
                                  "name it date, or map it with --column date=\"" + likely_key() + "\""));
    } else if ((stamp || date) && (begin || end)) {
      problems_.push_back(
          problem(begin ? *begin : *end, "two columns say when",
                  "keep one of date, time, time_begin and time_end (or begin and end together)"));
    }
  }

  std::string likely_key() const {
    for (const std::string_view part : {"date", "time", "day", "stamp"})
      for (const PlannedColumn& column : plan_.columns)
        if (lower_case(column.header).find(part) != std::string::npos) return valid_utf8(column.header);
    return "Day";
  }

  void require_values() {
    const auto is_value = [](const PlannedColumn& column) { return column.role == ColumnRole::value; };
    if (std::any_of(plan_.columns.begin(), plan_.columns.end(), is_value)) return;
    throw Error(problem(
        plan_.columns.size(), "no column holds weather under a name that is known",
        "rename columns, or map them like --column rain_mm=\"Precip (mm)\"; the file has: " + headers()));
  }

  void note_ignored() {
    std::string list;
    for (const PlannedColumn& column : plan_.columns) {
      if (column.role != ColumnRole::ignored && column.role != ColumnRole::station) continue;
      if (!list.empty()) list += ", ";
      list += column.header.empty() ? "(no name)" : valid_utf8(column.header);
    }
    if (!list.empty()) plan_.notes.push_back("columns not read: " + list);
  }

  const CsvRecord& record_;
  std::size_t line_;
  const std::string& excerpt_;
  const TextSource& source_;
  const WeatherOptions& options_;
  TablePlan plan_;
  std::vector<Problem> problems_;
};

}  // namespace

std::optional<std::size_t> TablePlan::find(ColumnRole role) const {
  for (std::size_t index = 0; index < columns.size(); ++index)
    if (columns[index].role == role) return index;
  return std::nullopt;
}

std::optional<std::size_t> TablePlan::find(WeatherQuantity quantity) const {
  for (std::size_t index = 0; index < columns.size(); ++index)
    if (columns[index].role == ColumnRole::value && columns[index].quantity == quantity) return index;
  return std::nullopt;
}

TablePlan plan_table(const CsvRecord& record, char separator, std::size_t line, const std::string& excerpt,
                     const TextSource& source, const WeatherOptions& options) {
  return Planner(record, separator, line, excerpt, source, options).plan();
}

}  // namespace v1
}  // namespace noonleaf
