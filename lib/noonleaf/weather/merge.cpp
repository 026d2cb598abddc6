#include "noonleaf/weather/merge.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <string>
#include <utility>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/weather/daily_members.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

// A day in the making: each quantity with the file it came from.
struct Collected {
  DailyWeather weather{};
  std::array<const WeatherFile*, weather_quantity_count> from{};
  bool measured = false;
  WeatherQuantities forecast{};
};
using Days = std::map<std::chrono::sys_days, Collected>;

// Measured files as given; then forecasts, the latest first, of equals the one named last.
std::vector<const WeatherFile*> by_precedence(std::span<const WeatherFile> files) {
  std::vector<const WeatherFile*> measured, forecasts;
  for (const WeatherFile& file : files)
    (file.kind == WeatherKind::measured ? measured : forecasts).push_back(&file);
  std::reverse(forecasts.begin(), forecasts.end());
  const auto issued_later = [](const WeatherFile* a, const WeatherFile* b) {
    return a->issued && b->issued && *a->issued > *b->issued;
  };
  std::stable_sort(forecasts.begin(), forecasts.end(), issued_later);
  measured.insert(measured.end(), forecasts.begin(), forecasts.end());
  return measured;
}

void note_conflict(const WeatherFile& used, const WeatherFile& other, std::size_t day, std::size_t quantity,
                   double used_value, std::vector<Finding>& conflicts) {
  const DailyWeather& weather = other.days[day];
  Problem problem;
  problem.file = other.name;
  problem.line = day < other.lines.size() ? other.lines[day] : 0;
  problem.field = canonical_name(static_cast<WeatherQuantity>(quantity));
  problem.text = number_text(weather.*daily_members[quantity]);
  problem.message = problem.text + " on " + iso_date(weather.date) + ", but " + used.name + " says " +
                    number_text(used_value) + ", which is used";
  problem.fix = "name the file to be believed first, or delete the wrong value";
  conflicts.push_back({"files_disagree", Verdict::doubtful, std::move(problem)});
}

// Values of two files must not contradict each other within one day.
bool contradicts_itself(const DailyWeather& day) {
  return day.t_min_c > day.t_max_c || day.t_mean_c > day.t_max_c || day.t_mean_c < day.t_min_c ||
         day.t_dew_c > day.t_max_c || day.rh_min_pct > day.rh_max_pct || day.rh_mean_pct > day.rh_max_pct ||
         day.rh_mean_pct < day.rh_min_pct;
}

// Takes what the day still lacks. A value that contradicts a file of higher rank stays missing: a forecast's
// lowest temperature above the measured highest, say.
void fill(const WeatherFile& file, std::size_t day, Collected& collected, std::vector<Finding>& conflicts) {
  const DailyWeather& weather = file.days[day];
  const DailyWeather known_before = collected.weather;
  for (std::size_t quantity = 0; quantity < daily_members.size(); ++quantity) {
    const double value = weather.*daily_members[quantity];
    double& kept = collected.weather.*daily_members[quantity];
    if (is_missing(value)) continue;
    if (is_known(kept)) {
      if (kept != value && file.kind == WeatherKind::measured)
        note_conflict(*collected.from[quantity], file, day, quantity, kept, conflicts);
      continue;
    }
    DailyWeather with_value = known_before;
    with_value.*daily_members[quantity] = value;
    if (contradicts_itself(with_value) && !contradicts_itself(known_before)) continue;
    kept = value;
    collected.from[quantity] = &file;
    if (file.kind == WeatherKind::measured) {
      collected.measured = true;
    } else {
      collected.forecast.set(quantity);
    }
  }
}

void take(const WeatherFile& file, Days& days, std::vector<Finding>& conflicts) {
  for (std::size_t day = 0; day < file.days.size(); ++day) {
    Collected& collected = days[std::chrono::sys_days(file.days[day].date)];
    collected.weather.date = file.days[day].date;
    fill(file, day, collected, conflicts);
  }
}

DayOrigin origin_of(const Collected& day) {
  if (day.measured && day.forecast.any()) return DayOrigin::mixed;
  if (day.measured) return DayOrigin::measured;
  return day.forecast.any() ? DayOrigin::forecast : DayOrigin::none;
}

}  // namespace

DailySeries merge_daily_weather(std::span<const WeatherFile> files) {
  Days days;
  DailySeries series;
  for (const WeatherFile* file : by_precedence(files)) take(*file, days, series.conflicts);
  for (const auto& [date, collected] : days) {
    while (!series.days.empty() &&
           std::chrono::sys_days(series.days.back().date) + std::chrono::days{1} < date) {
      DailyWeather empty;
      empty.date = std::chrono::sys_days(series.days.back().date) + std::chrono::days{1};
      series.days.push_back(empty);
      series.origins.push_back(DayOrigin::none);
      series.forecast.emplace_back();
    }
    series.days.push_back(collected.weather);
    series.origins.push_back(origin_of(collected));
    series.forecast.push_back(collected.forecast);
  }
  return series;
}

}  // namespace v1
}  // namespace noonleaf
