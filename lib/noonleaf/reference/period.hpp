#pragma once

#include <chrono>
#include <span>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/reference/penman_monteith.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How the soil heat flux of a month came about.
enum class SoilHeatFrom {
  both_neighbours,  ///< FAO-56 eq. 43
  month_before,     ///< FAO-56 eq. 44
  assumed_none      ///< nothing published fits: no month before on record
};

/// Reference evapotranspiration of a month.
struct MonthlyEt0 {
  std::chrono::year_month month{};  ///< year and month
  DailyEstimate mean_day{};         ///< the month's mean day, its gaps filled; dated the 15th
  DailyEt0Detail detail{};          ///< of that mean day, G included; et0_mm_d is the month's mean
  SoilHeatFrom soil_heat = SoilHeatFrom::assumed_none;  ///< which neighbours its G was made from
  double et0_mm = missing;                              ///< of the whole month
};

/// Reference evapotranspiration of months from their mean days.
///
/// Equation  FAO-56 eq. 6 on the month's means, J of the 15th, G = 0.07 (T next - T previous) (eq. 43), or
///           0.14 (T this - T previous) (eq. 44) where the next month is not on record
/// Source    FAO-56 (Allen et al. 1998), ch. 4, "Ten-day or monthly time step"; ch. 3, eq. 43, 44; T of a
///           month by eq. 9
/// Input     mean_days  one a month, in order of time, dated any day of their month; means of the daily
///           values. Neighbours are the months just before and after on the calendar, not merely in the list
/// Result    one for one. The first month of a record has no month before: G is taken as 0 and that is said
/// Missing   as complete_daily: without temperatures the month is NaN; its neighbours go by the other rung
/// Throws    as complete_daily; Error, field "date", for months that are not in order
std::vector<MonthlyEt0> monthly_et0(std::span<const DailyWeather> mean_days, const Location& location,
                                    const LadderOptions& options = {}, Equation equation = Equation::fao56,
                                    Surface surface = Surface::short_crop);

/// Reference evapotranspiration of ten days from their mean day.
struct TenDayEt0 {
  DailyEstimate mean_day{};  ///< the ten days' means, gaps filled
  DailyEt0Detail detail{};   ///< et0_mm_d is the mean of the period
  double et0_mm = missing;   ///< of the whole period
};

/// Reference evapotranspiration of a ten-day period, the rest of a month as the third one.
///
/// Equation  FAO-56 eq. 6 on the period's means, J of its middle day, G = 0 (eq. 42)
/// Source    FAO-56, ch. 4, "Ten-day or monthly time step"
/// Input     mean_day  means of the daily values, dated the first day of the period: the 1st, 11th or 21st
/// Result    for 10 days, 8 to 11 in the last third of a month
/// Missing   as complete_daily
/// Throws    as complete_daily; Error, field "date", when it is not the 1st, 11th or 21st
TenDayEt0 ten_day_et0(const DailyWeather& mean_day, const Location& location,
                      const LadderOptions& options = {}, Equation equation = Equation::fao56,
                      Surface surface = Surface::short_crop);

}  // namespace v1
}  // namespace noonleaf
