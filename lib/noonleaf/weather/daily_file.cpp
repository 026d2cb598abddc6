#include "noonleaf/weather/daily_file.hpp"

#include <utility>

#include "noonleaf/weather/checked_rows.hpp"
#include "noonleaf/weather/row_series.hpp"
#include "noonleaf/weather/sequence_checks.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::int64_t day_s = 86'400;

void refuse(std::vector<Problem> problems) {
  if (!problems.empty()) throw Error(std::move(problems));
}

std::vector<TableRow> all_rows(CheckedRows& checked) {
  std::vector<TableRow> rows, block;
  while (checked.next_block(block)) rows.insert(rows.end(), block.begin(), block.end());
  return rows;
}

void take_days(CheckedRows& checked, WeatherFile& file) {
  std::vector<TableRow> rows = all_rows(checked);
  refuse(checked.take_problems());
  sort_rows(rows, checked.source(), checked.findings());
  SequenceChecks sequence(day_s, checked.source(), checked.findings());
  for (const TableRow& row : rows) {
    sequence.push(row.stamp.seconds, row.values, row.place);
    file.days.push_back(daily_weather(row));
    file.lines.push_back(row.place.line);
  }
  sequence.finish();
}

}  // namespace

WeatherKind weather_kind(const std::filesystem::path& file) {
  const std::string name = lower_case(file.filename().string());
  return name.rfind("forecast", 0) == 0 ? WeatherKind::forecast : WeatherKind::measured;
}

WeatherFile read_daily_weather(const std::filesystem::path& file, std::string shown_name,
                               const WeatherOptions& options) {
  CheckedRows checked(file, shown_name, options);
  WeatherFile result;
  result.name = std::move(shown_name);
  result.kind = checked.source().kind();
  result.format = checked.source().format();
  result.issued = checked.source().issued();
  take_days(checked, result);
  refuse(checked.findings().refusals());
  result.notes = checked.notes();
  result.set_aside = checked.findings().set_aside();
  result.doubts = checked.findings().doubts();
  return result;
}

}  // namespace v1
}  // namespace noonleaf
