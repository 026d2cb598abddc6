#pragma once

#include <span>
#include <string>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/weather/checks.hpp"
#include "noonleaf/weather/daily_file.hpp"
#include "noonleaf/weather/quantity.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Where the values of a merged day come from.
enum class DayOrigin {
  none,      ///< no file has this day: every value is missing
  measured,  ///< all values measured
  forecast,  ///< all values forecast
  mixed      ///< measured, with the values that nobody measured taken from a forecast
};

/// Several files as one series.
struct DailySeries {
  std::vector<DailyWeather> days{};  ///< one per calendar day from the first to the last, no date left out
  std::vector<DayOrigin> origins{};  ///< parallel to days
  std::vector<WeatherQuantities> forecast{};  ///< parallel to days: what was taken from a forecast
  std::vector<Finding> conflicts{};  ///< check "files_disagree": same day, same quantity, two measured values
};

/// One continuous series from several files.
///
/// Rule      For each day and quantity: a measured value before a forecast; among measured values the file
///           named first; among forecasts the one issued last, else the file named last
/// Missing   A day without a file keeps its date and has every value missing
DailySeries merge_daily_weather(std::span<const WeatherFile> files);

}  // namespace v1
}  // namespace noonleaf
