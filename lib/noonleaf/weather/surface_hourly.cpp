// Integrated Surface Database, "global-hourly" CSV of NOAA NCEI.
//
// One line per report; cells are coded: TMP and DEW "+0250,1" (tenths of °C, quality), WND
// "dir,q,type,speed,q" (tenths of m/s), AA1 to AA4 "hours,depth,condition,q" (tenths of mm), MA1
// "altimeter,q,pressure,q" (tenths of hPa). Missing is all nines. Source: NOAA NCEI, federal climate complex
// data documentation for integrated surface data; from memory.
#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/calendar_stamp.hpp"
#include "noonleaf/weather/csv_record.hpp"
#include "noonleaf/weather/gathered_rows.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Q = WeatherQuantity;

constexpr std::int64_t hour_s = 3600;

constexpr std::string_view rejected_codes = "2367";  // suspect or erroneous

// How gladly a report is taken for its hour: the regular airport report, then the synoptic one, then any.
int rank_of(std::string_view report_type) {
  if (report_type == "FM-15") return 3;
  if (report_type == "FM-12") return 2;
  return report_type.substr(0, 2) == "SO" ? 0 : 1;  // SOD, SOM: summaries of a day or month, no hour
}

std::vector<std::string_view> parts_of(std::string_view cell) {
  std::vector<std::string_view> parts;
  while (true) {
    const std::size_t comma = cell.find(',');
    parts.push_back(trimmed(cell.substr(0, comma)));
    if (comma == std::string_view::npos) return parts;
    cell.remove_prefix(comma + 1);
  }
}

// A coded number; missing where it is all nines.
std::optional<double> coded(std::string_view text, double divide) {
  const std::string_view digits =
      !text.empty() && (text.front() == '+' || text.front() == '-') ? text.substr(1) : text;
  int value = 0;
  const auto [stop, code] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (digits.empty() || code != std::errc{} || stop != digits.data() + digits.size()) return std::nullopt;
  if (digits.find_first_not_of('9') == std::string_view::npos) return missing;
  return (text.front() == '-' ? -value : value) / divide;
}

class SurfaceHourly final : public GatheredRows {
 public:
  SurfaceHourly(std::unique_ptr<TextSource> text, WeatherKind kind, const WeatherOptions& options,
                FindingList& findings)
      : GatheredRows(std::move(text), "NOAA Integrated Surface Database, global-hourly CSV",
                     WeatherStep::hour, kind),
        findings_(findings) {
    wanted_ = wanted_station(options, "STATION");
    read_lines();
    require_one_station();
    for (auto& [hour, report] : reports_) rows_.push_back(report.row);
    reports_.clear();
    notes_.push_back(
        "of several reports in an hour one is used, the regular airport report before others; its values "
        "stand for the hour that ends with it");
    if (rows_.empty() && stations_.empty())
      throw Error(source().problem(0, "the file has a header but no rows", "fetch the file again"));
  }

 private:
  struct Report {
    TableRow row{};
    int rank = 0;
    std::int64_t seconds = 0;
  };

  void read_lines() {
    TextSource& text = source();
    text.refill();
    read_header(split_record(text.cursor(), text.limit(), ','));
    while (text.cursor() != text.limit() || text.refill()) {
      const CsvRecord record = split_record(text.cursor(), text.limit(), ',');
      place_ = {text.line(), text.offset(text.cursor())};
      require_whole_quotes(record, place_);
      const bool blank = record.cells.size() == 1 && trimmed(record.cells[0].text).empty();
      if (!blank) take(record);
      text.advance(record.end, record.lines);
    }
  }

  void read_header(const CsvRecord& record) {
    require_whole_quotes(record, {source().line(), source().offset(source().cursor())});
    for (std::size_t index = 0; index < record.cells.size(); ++index)
      columns_[record.cells[index].text] = index;
    cell_count_ = record.cells.size();
    source().advance(record.end, record.lines);
  }

  std::string_view cell(const CsvRecord& record, const std::string& name) const {
    const auto column = columns_.find(name);
    return column == columns_.end() ? std::string_view{}
                                    : std::string_view(record.cells[column->second].text);
  }

  void take(const CsvRecord& record) {
    if (record.cells.size() != cell_count_) {
      refuse(at(place_, std::nullopt,
                "the row has " + std::to_string(record.cells.size()) + " cells, the header " +
                    std::to_string(cell_count_),
                "fetch the file again"));
      return;
    }
    const std::string station(cell(record, "STATION"));
    if (stations_.size() < 100) stations_.insert(station);
    const int rank = rank_of(trimmed(cell(record, "REPORT_TYPE")));
    if ((!wanted_.empty() && station != wanted_) || rank == 0) return;
    const auto stamp = read_stamp(cell(record, "DATE"), DateOrder::iso);
    if (!stamp.value) {
      Problem found = at(place_, std::nullopt, stamp.message, "fetch the file again");
      found.field = "DATE";
      refuse(std::move(found));
      return;
    }
    const std::int64_t seconds = stamp.value->seconds;
    const std::int64_t half = seconds - hour_s / 2;  // the middle of the hour that ends with the report
    const std::int64_t begin = half - ((half % hour_s) + hour_s) % hour_s;
    Report& kept = reports_[begin];
    if (rank < kept.rank || (rank == kept.rank && seconds <= kept.seconds)) return;
    kept = {.row = row_of(record, begin), .rank = rank, .seconds = seconds};
  }

  TableRow row_of(const CsvRecord& record, std::int64_t begin) {
    TableRow row;
    row.stamp = {.seconds = begin, .offset = std::chrono::seconds{0}};
    row.place = place_;
    row.values.fill(missing);
    put(row, Q::t_mean, "TMP", parts_of(cell(record, "TMP")), 0, 1, 10.0);
    put(row, Q::t_dew, "DEW", parts_of(cell(record, "DEW")), 0, 1, 10.0);
    put(row, Q::wind, "WND", parts_of(cell(record, "WND")), 3, 4, 10.0);
    put(row, Q::pressure, "MA1", parts_of(cell(record, "MA1")), 2, 3, 100.0);
    for (const char* name : {"AA1", "AA2", "AA3", "AA4"}) {
      const auto parts = parts_of(cell(record, name));
      if (parts.front() == "01") put(row, Q::rain, name, parts, 1, 3, 10.0);  // totals of one hour only
    }
    return row;
  }

  void put(TableRow& row, Q quantity, const std::string& name, const std::vector<std::string_view>& parts,
           std::size_t value_part, std::size_t quality_part, double divide) {
    if (parts.size() <= quality_part) return;
    const auto value = coded(parts[value_part], divide);
    if (!value) {
      Problem found = at(place_, std::nullopt, in_quotes(parts[value_part]) + " is not a coded number",
                         "fetch the file again");
      found.field = name;
      refuse(std::move(found));
      return;
    }
    const std::string_view quality = parts[quality_part];
    const bool rejected = !quality.empty() && rejected_codes.find(quality.front()) != std::string_view::npos;
    const bool dropped = is_known(*value) && rejected && findings_.set_aside("flagged", [&] {
      return at(
          place_, quantity,
          name + " carries the quality code " + valid_utf8(quality) + " of its publisher; taken as missing",
          "nothing");
    });
    if (!dropped) row.values[static_cast<std::size_t>(quantity)] = *value;
  }

  void require_one_station() {
    std::string names;
    for (const std::string& station : stations_) names += (names.empty() ? "" : ", ") + in_quotes(station);
    if (wanted_.empty() && stations_.size() > 1)
      throw Error(source().problem(0, "the file holds several stations: " + names,
                                   "choose one with --where STATION=" + in_quotes(*stations_.begin())));
    if (!wanted_.empty() && stations_.count(wanted_) == 0)
      throw Error(
          source().problem(0, "no row has STATION = " + in_quotes(wanted_), "the file has: " + names));
  }

  FindingList& findings_;
  std::string wanted_;
  RowPlace place_{};
  std::map<std::string, std::size_t, std::less<>> columns_;
  std::size_t cell_count_ = 0;
  std::map<std::int64_t, Report> reports_;
  std::set<std::string> stations_;
};

}  // namespace

bool is_surface_hourly(std::string_view bytes) {
  const std::string_view line = bytes.substr(0, bytes.find('\n'));
  for (const std::string_view name : {"STATION", "DATE", "REPORT_TYPE", "TMP", "WND"}) {
    bool found = false;
    for (const std::string_view part : parts_of(line))
      found =
          found || part == name || (part.size() == name.size() + 2 && part.substr(1, name.size()) == name);
    if (!found) return false;
  }
  return true;
}

std::unique_ptr<RowSource> read_surface_hourly(std::unique_ptr<TextSource> source, WeatherKind kind,
                                               const WeatherOptions& options, FindingList& findings) {
  return std::make_unique<SurfaceHourly>(std::move(source), kind, options, findings);
}

}  // namespace v1
}  // namespace noonleaf
