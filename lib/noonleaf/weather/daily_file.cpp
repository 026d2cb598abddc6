#include "noonleaf/weather/daily_file.hpp"

#include <utility>

#include "noonleaf/weather/checked_rows.hpp"
#include "noonleaf/weather/hour_builder.hpp"
#include "noonleaf/weather/hours_to_days.hpp"
#include "noonleaf/weather/resolved_hours.hpp"
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

template <class Rows>
std::vector<TableRow> all_rows(Rows& source) {
  std::vector<TableRow> rows, block;
  while (source.next_block(block)) rows.insert(rows.end(), block.begin(), block.end());
  refuse(source.take_problems());
  return rows;
}

void take_days(CheckedRows& checked, WeatherFile& file) {
  std::vector<TableRow> rows = all_rows(checked);
  sort_rows(rows, checked.source(), checked.findings());
  SequenceChecks sequence(day_s, checked.source(), checked.findings());
  for (const TableRow& row : rows) {
    sequence.push(row.stamp.seconds, row.values, row.place);
    file.days.push_back(daily_weather(row));
    file.lines.push_back(row.place.line);
  }
  sequence.finish();
}

void take_hours(CheckedRows& checked, const WeatherOptions& options, WeatherFile& file) {
  ResolvedHours resolved(checked, options);
  std::vector<TableRow> rows = all_rows(resolved);
  sort_rows(rows, checked.source(), checked.findings());
  HourBuilder builder(checked.length(), options, checked.source(), checked.findings());
  for (const TableRow& row : rows) builder.push(row, file.hours);
  builder.finish(file.hours);
}

void take_days_of_hours(CheckedRows& checked, const WeatherOptions& options, WeatherFile& file) {
  DaysFromHours days = days_from_hours(file.hours, options.zone);
  file.days = std::move(days.days);
  file.lines.assign(file.days.size(), 0);
  note_incomplete_days(std::move(days.incomplete), checked.source(), checked.findings());
}

// What both doors share, before and after the values.
WeatherFile begin_file(const CheckedRows& checked, std::string shown_name) {
  WeatherFile file;
  file.name = std::move(shown_name);
  file.kind = checked.source().kind();
  file.format = checked.source().format();
  file.issued = checked.source().issued();
  return file;
}

void finish_file(const CheckedRows& checked, WeatherFile& file) {
  refuse(checked.findings().refusals());
  file.notes = checked.notes();
  file.set_aside = checked.findings().set_aside();
  file.doubts = checked.findings().doubts();
}

}  // namespace

WeatherKind weather_kind(const std::filesystem::path& file) {
  const std::string name = lower_case(file.filename().string());
  return name.rfind("forecast", 0) == 0 ? WeatherKind::forecast : WeatherKind::measured;
}

WeatherFile read_daily_weather(const std::filesystem::path& file, std::string shown_name,
                               const WeatherOptions& options) {
  CheckedRows checked(file, shown_name, options);
  WeatherFile result = begin_file(checked, std::move(shown_name));
  if (checked.source().step() == WeatherStep::day) {
    take_days(checked, result);
  } else {
    take_hours(checked, options, result);
    take_days_of_hours(checked, options, result);
  }
  finish_file(checked, result);
  return result;
}

WeatherFile read_hourly_weather(const std::filesystem::path& file, std::string shown_name,
                                const WeatherOptions& options) {
  CheckedRows checked(file, shown_name, options);
  WeatherFile result = begin_file(checked, std::move(shown_name));
  if (checked.source().step() == WeatherStep::day)
    throw Error(checked.source().at({}, std::nullopt, "the file holds days; hours are wanted here",
                                    "give a file with a column time_begin or time_end"));
  take_hours(checked, options, result);
  if (!options.zone.empty()) take_days_of_hours(checked, options, result);
  finish_file(checked, result);
  return result;
}

}  // namespace v1
}  // namespace noonleaf
