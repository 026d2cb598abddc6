#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/garden/garden.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/reference/missing_data.hpp"
#include "noonleaf/weather/merge.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How the reference ET of a day came about.
enum class Et0From {
  weather,     ///< the day's own weather
  neighbours,  ///< no temperature that day: the mean of the days around it
  none         ///< the gap is too long to bridge
};

/// One day over the garden: its weather, what had to be estimated, and its reference ET.
struct SkyDay {
  DailyWeather weather{};              ///< before anything is estimated
  DayOrigin origin = DayOrigin::none;  ///< measured, forecast or both
  WeatherQuantities forecast{};        ///< what was taken from a forecast
  DailyEstimate estimate{};            ///< gaps filled as far as can be
  double et0_mm_d = missing;           ///< missing where not even the temperature is known
  Et0From et0_from = Et0From::none;    ///< which equation, or from where
};

/// Rain of the day that was measured. A forecast of rain is no rain, not even of a day that has passed.
/// Missing   without a measurement
double measured_rain_mm(const SkyDay& day);

/// Consecutive days over the garden.
struct Sky {
  std::vector<SkyDay> days{};  ///< consecutive, oldest first

  /// Whether there is no day.
  bool empty() const { return days.empty(); }
  /// The first day; not to be asked when empty.
  std::chrono::sys_days first() const;
  /// The last day; not to be asked when empty.
  std::chrono::sys_days last() const;
  /// The day, or nothing outside the range.
  const SkyDay* find(std::chrono::sys_days date) const;
};

/// Longest run of days without temperature that is bridged by the mean of its neighbours.
inline constexpr std::size_t longest_bridged_gap_d = 5;

/// Weather to reference ET, day by day.
///
/// Method    Each day by the missing-data ladder (FAO-56 ch. 3) and FAO-56 eq. 6. A day without temperature
///           gets the mean ET0 of the three nearest days on each side; a gap longer than
///           `longest_bridged_gap_d` stays missing (our rule).
/// Throws    Error as complete_daily, naming the date
Sky sky_over(const Site& site, const DailySeries& weather);

}  // namespace v1
}  // namespace noonleaf
