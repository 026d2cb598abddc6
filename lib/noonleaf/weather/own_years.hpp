#pragma once

#include <chrono>
#include <cstddef>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/weather/merge.hpp"
#include "noonleaf/weather/quantity.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How days are bridged with the user's own other years.
struct OwnYears {
  std::size_t fewest_years = 3;  ///< other years that must know a quantity around the day
  int window_days = 7;           ///< days on either side of the calendar day that stand for it
};

/// A day that was bridged: which of its values are means of other years, and of how many at least.
struct BridgedDay {
  std::chrono::year_month_day date{};  ///< the day
  WeatherQuantities quantities{};      ///< which of its values
  std::size_t years = 0;               ///< the fewest behind one of them
};

/// Bridges the days from which nothing can be worked out, because the highest or lowest temperature is
/// missing, with the mean of the same days in the user's own other years. The caller says so for each day in
/// the result.
///
/// Rule      Of such a day every missing quantity but rain becomes the mean over measured days within
///           `window_days` of the same calendar day in other years, where at least `fewest_years` years know
///           it. t_max and t_min are filled together or not at all.
/// Missing   Rain is never bridged: a mean of dry and wet days is rain that never falls like that. Days that
///           too few years know stay missing.
/// Source    Filling with climatological means is common practice (FAO-56, ch. 3, "missing climatic data",
///           prefers nearby stations); the numbers are ours
/// Note      Only where the file ladder is at its end: single quantities are better estimated from the day's
///           own others.
std::vector<BridgedDay> bridge_with_own_years(DailySeries& series, const OwnYears& rule = {});

}  // namespace v1
}  // namespace noonleaf
