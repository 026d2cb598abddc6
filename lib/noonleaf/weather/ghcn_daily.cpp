// NOAA GHCN-Daily, by-station CSV.
//
// One line per station, day and element: ID, DATE (YYYYMMDD), ELEMENT, DATA_VALUE, M_FLAG, Q_FLAG, S_FLAG,
// OBS_TIME. Source: NOAA NCEI, readme-by_station.txt. Read there: the order of the columns; PRCP in tenths of
// mm; TMAX, TMIN, TAVG in tenths of °C; AWND in tenths of m/s. From memory: -9999 for missing, the trace mark
// T, a filled Q_FLAG for a value that failed a check, MDPR for totals of several days, and the further
// elements below with their units.
#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>

#include "noonleaf/missing.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/weather/calendar_stamp.hpp"
#include "noonleaf/weather/csv_record.hpp"
#include "noonleaf/weather/gathered_rows.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Q = WeatherQuantity;

constexpr std::int64_t day_s = 86'400;
constexpr long code_for_missing = -9999;
constexpr std::size_t cell_count = 8;
constexpr int noon_hhmm = 1200;

enum Cell { id_cell, date_cell, element_cell, value_cell, m_flag_cell, q_flag_cell, s_flag_cell, time_cell };

struct Element {
  std::string_view name;
  Q quantity;
  double divide;  // value in the file / this = value in the library's unit
};
constexpr std::array elements{
    Element{"TMAX", Q::t_max, 10},     Element{"TMIN", Q::t_min, 10},    Element{"TAVG", Q::t_mean, 10},
    Element{"PRCP", Q::rain, 10},      Element{"AWND", Q::wind, 10},     Element{"ADPT", Q::t_dew, 10},
    Element{"RHMX", Q::rh_max, 1},     Element{"RHMN", Q::rh_min, 1},    Element{"RHAV", Q::rh_mean, 1},
    Element{"ASTP", Q::pressure, 100}, Element{"TSUN", Q::sunshine, 60},
};

const Element* element_named(std::string_view name) {
  for (const Element& element : elements)
    if (element.name == name) return &element;
  return nullptr;
}

constexpr std::string_view header = "ID,DATE,ELEMENT,DATA_VALUE";

bool is_upper_or_digit(char letter) {
  return (letter >= 'A' && letter <= 'Z') || (letter >= '0' && letter <= '9');
}

class GhcnDaily final : public GatheredRows {
 public:
  GhcnDaily(std::unique_ptr<TextSource> text, WeatherKind kind, const WeatherOptions& options,
            FindingList& findings)
      : GatheredRows(std::move(text), "NOAA GHCN-Daily by station", WeatherStep::day, kind),
        findings_(findings) {
    wanted_ = wanted_station(options, "ID");
    read_lines();
    require_one_station();
    for (auto& [day, row] : days_) rows_.push_back(row);
    days_.clear();
    add_notes();
  }

 private:
  void read_lines() {
    TextSource& text = source();
    while (text.cursor() != text.limit() || text.refill()) {
      const CsvRecord record = split_record(text.cursor(), text.limit(), ',');
      place_ = {text.line(), text.offset(text.cursor())};
      require_whole_quotes(record, place_);
      const bool is_header = std::string_view(text.cursor(), header.size()) == header;
      const bool blank = record.cells.size() == 1 && trimmed(record.cells[0].text).empty();
      if (!is_header && !blank) take(record);
      text.advance(record.end, record.lines);
    }
  }

  void take(const CsvRecord& record) {
    if (record.cells.size() < value_cell + 1 || record.cells.size() > cell_count) {
      refuse(at(place_, std::nullopt,
                "the row has " + std::to_string(record.cells.size()) + " cells; a GHCN-Daily row has 8",
                "fetch the file again"));
      return;
    }
    const std::string& id = record.cells[id_cell].text;
    ids_.insert(id);
    if (!wanted_.empty() && id != wanted_) return;
    const std::string& name = record.cells[element_cell].text;
    if (name == "MDPR") ++totals_of_several_days_;
    const Element* element = element_named(name);
    if (element == nullptr) {
      if (other_elements_.size() < 100) other_elements_.insert(valid_utf8(name));
      return;
    }
    take_value(record, *element);
  }

  void take_value(const CsvRecord& record, const Element& element) {
    const std::string& text = record.cells[value_cell].text;
    long value = 0;
    const auto [stop, code] = std::from_chars(text.data(), text.data() + text.size(), value);
    const auto date = read_date(record.cells[date_cell].text, DateOrder::iso);
    if (!date.value) {
      refuse_cell(record, date_cell, date.message, "fetch the file again");
      return;
    }
    if (code != std::errc{} || stop != text.data() + text.size()) {
      refuse_cell(record, value_cell, in_quotes(text) + " is not a whole number", "fetch the file again");
      return;
    }
    if (value == code_for_missing) return;
    const auto flag = [&](Cell cell) {
      return cell < static_cast<int>(record.cells.size()) ? trimmed(record.cells[cell].text) : "";
    };
    if (!flag(q_flag_cell).empty() && is_dropped(element, text, flag(q_flag_cell))) return;
    if (element.quantity == Q::rain && flag(m_flag_cell) == "T") ++traces_;
    if (element.quantity == Q::rain) note_hour(flag(time_cell));
    put(*date.value, element, static_cast<double>(value) / element.divide);
  }

  bool is_dropped(const Element& element, std::string_view text, std::string_view q_flag) {
    return findings_.set_aside("flagged", [&] {
      Problem found = at(place_, element.quantity,
                         std::string(element.name) + " " + valid_utf8(text) + " carries the quality flag " +
                             valid_utf8(q_flag) + " of its publisher; taken as missing",
                         "nothing, or use the value of a neighbouring station");
      found.text = valid_utf8(text);
      return found;
    });
  }

  void put(std::int32_t day, const Element& element, double value) {
    auto [known, is_new] = days_.try_emplace(day);
    TableRow& row = known->second;
    if (is_new) {
      row.stamp.seconds = day * day_s;
      row.place = place_;
      row.values.fill(missing);
    }
    double& kept = row.values[static_cast<std::size_t>(element.quantity)];
    if (is_known(kept) && kept != value) {
      findings_.set_aside("duplicate", [&] {
        return at(place_, std::nullopt,
                  "a second value of " + std::string(element.name) + " for the same day; the first is used",
                  "keep the row that is right");
      });
      return;
    }
    kept = value;
    remember(row.place, element.quantity, place_);
  }

  void note_hour(std::string_view hhmm) {
    int hour = 0;
    const auto [stop, code] = std::from_chars(hhmm.data(), hhmm.data() + hhmm.size(), hour);
    if (code == std::errc{} && stop == hhmm.data() + hhmm.size() && hour < noon_hhmm) ++morning_totals_;
  }

  void refuse_cell(const CsvRecord& record, Cell cell, std::string message, std::string fix) {
    Problem found = at(place_, std::nullopt, std::move(message), std::move(fix));
    found.field = cell == date_cell ? "DATE" : "DATA_VALUE";
    found.column = record.cells[cell].column;
    found.text = valid_utf8(record.cells[cell].raw);
    refuse(std::move(found));
  }

  void require_one_station() {
    std::string names;
    std::vector<std::string> list(ids_.begin(), ids_.end());
    for (std::size_t index = 0; index < std::min<std::size_t>(10, list.size()); ++index)
      names += (index == 0 ? "" : ", ") + in_quotes(list[index]);
    if (wanted_.empty() && list.size() > 1)
      throw Error(source().problem(0, "the file holds several stations: " + names,
                                   "choose one with --where ID=" + in_quotes(list.front())));
    if (!wanted_.empty() && ids_.count(wanted_) == 0) {
      const std::string near = nearest_name(wanted_, list);
      throw Error(source().problem(
          0, "no row has ID = " + in_quotes(wanted_),
          near.empty() ? "the file has: " + names : "did you mean " + in_quotes(near) + "?"));
    }
    if (days_.empty() && take_no_problem())
      throw Error(source().problem(0, "the file holds no weather that is read: TMAX, TMIN, PRCP, …",
                                   "choose another station"));
  }

  bool take_no_problem() {
    std::vector<Problem> problems = take_problems();
    const bool none = problems.empty();
    for (Problem& problem : problems) refuse(std::move(problem));
    return none;
  }

  void add_notes() {
    if (!other_elements_.empty()) {
      std::string list;
      for (const std::string& name : other_elements_) list += (list.empty() ? "" : ", ") + name;
      notes_.push_back("elements not read: " + list);
    }
    if (traces_ > 0) notes_.push_back(std::to_string(traces_) + " days with a trace of rain, read as 0 mm");
    if (totals_of_several_days_ > 0)
      notes_.push_back(std::to_string(totals_of_several_days_) +
                       " rain totals of several days (MDPR) were not read as rain of one day");
    if (morning_totals_ > 0)
      notes_.push_back(
          std::to_string(morning_totals_) +
          " rain totals were read off before noon: most of that rain fell on the day before; used on the "
          "day as published");
  }

  FindingList& findings_;
  std::string wanted_;
  RowPlace place_{};
  std::map<std::int32_t, TableRow> days_;
  std::set<std::string> ids_, other_elements_;
  std::size_t traces_ = 0, totals_of_several_days_ = 0, morning_totals_ = 0;
};

}  // namespace

bool is_ghcn_daily(std::string_view bytes) {
  if (bytes.substr(0, header.size()) == header) return true;
  const std::string_view line = bytes.substr(0, bytes.find('\n'));
  if (line.size() < 28 || line[11] != ',' || line[20] != ',' || line[25] != ',') return false;
  const std::string_view id = line.substr(0, 11), element = line.substr(21, 4);
  const bool date = line.substr(12, 8).find_first_not_of("0123456789") == std::string_view::npos;
  return date && std::all_of(id.begin(), id.end(), is_upper_or_digit) &&
         std::all_of(element.begin(), element.end(), is_upper_or_digit);
}

std::unique_ptr<RowSource> read_ghcn_daily(std::unique_ptr<TextSource> source, WeatherKind kind,
                                           const WeatherOptions& options, FindingList& findings) {
  return std::make_unique<GhcnDaily>(std::move(source), kind, options, findings);
}

}  // namespace v1
}  // namespace noonleaf
