#include "noonleaf/reference/period.hpp"

#include <string>

#include "noonleaf/atmosphere/soil_heat.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/reference/estimate_inputs.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using namespace std::chrono;

[[noreturn]] void refuse_date(const std::string& message, const std::string& fix) {
  throw Error({.field = "date", .message = message, .fix = fix});
}

year_month month_of(const DailyWeather& mean_day) {
  if (!mean_day.date.ok()) refuse_date("the date does not exist", "date each mean day within its month");
  return mean_day.date.year() / mean_day.date.month();
}

unsigned last_day_of(year_month month) {
  return static_cast<unsigned>(year_month_day_last{month.year() / month.month() / last}.day());
}

/// FAO-56 eq. 9; missing for a month that is not the one wanted.
double mean_temperature_c(std::span<const DailyWeather> mean_days, std::size_t index, year_month wanted) {
  if (index >= mean_days.size() || month_of(mean_days[index]) != wanted) return missing;
  return (mean_days[index].t_max_c + mean_days[index].t_min_c) / 2.0;
}

struct SoilHeat {
  double g_mj_m2_d;
  SoilHeatFrom from;
};

SoilHeat soil_heat_of(std::span<const DailyWeather> mean_days, std::size_t index) {
  const year_month month = month_of(mean_days[index]);
  const MonthlyTemperatures around{.previous_c = mean_temperature_c(mean_days, index - 1, month - months{1}),
                                   .this_c = mean_temperature_c(mean_days, index, month),
                                   .next_c = mean_temperature_c(mean_days, index + 1, month + months{1})};
  if (is_missing(around.previous_c)) return {0.0, SoilHeatFrom::assumed_none};
  if (is_missing(around.next_c)) return {soil_heat_of_last_month_mj_m2_d(around), SoilHeatFrom::month_before};
  return {soil_heat_of_month_mj_m2_d(around), SoilHeatFrom::both_neighbours};
}

}  // namespace

std::vector<MonthlyEt0> monthly_et0(std::span<const DailyWeather> mean_days, const Location& location,
                                    const LadderOptions& options, Equation equation, Surface surface) {
  std::vector<MonthlyEt0> results;
  for (std::size_t i = 0; i < mean_days.size(); ++i) {
    MonthlyEt0 result;
    result.month = month_of(mean_days[i]);
    if (i > 0 && result.month <= results.back().month) {
      refuse_date("months are not in order of time", "sort the months and give each once");
    }
    DailyWeather middle = mean_days[i];
    middle.date = result.month / 15;
    result.mean_day = complete_daily(middle, location, options);
    const SoilHeat heat = soil_heat_of(mean_days, i);
    result.soil_heat = heat.from;
    result.detail = daily_et0(inputs_of(result.mean_day, location, heat.g_mj_m2_d), equation, surface);
    result.et0_mm = result.detail.et0_mm_d * last_day_of(result.month);
    results.push_back(result);
  }
  return results;
}

TenDayEt0 ten_day_et0(const DailyWeather& mean_day, const Location& location, const LadderOptions& options,
                      Equation equation, Surface surface) {
  const year_month month = month_of(mean_day);
  const auto first = static_cast<unsigned>(mean_day.date.day());
  if (first != 1 && first != 11 && first != 21) {
    refuse_date("a ten-day period begins on the 1st, 11th or 21st", "date the mean day so");
  }
  const unsigned length = first == 21 ? last_day_of(month) - 20 : 10;
  DailyWeather middle = mean_day;
  middle.date = month / day{first + length / 2};
  TenDayEt0 result;
  result.mean_day = complete_daily(middle, location, options);
  result.detail = daily_et0(result.mean_day, location, equation, surface);
  result.et0_mm = result.detail.et0_mm_d * length;
  return result;
}

}  // namespace v1
}  // namespace noonleaf
