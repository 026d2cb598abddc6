#pragma once

#include <span>
#include <string>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/weather/hourly_weather.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The days that hours add up to, and what was too patchy to be one.
struct DaysFromHours {
  std::vector<DailyWeather> days{};       ///< whole days alone
  std::vector<std::string> incomplete{};  ///< "2024-07-05: rs_mj_m2 has 19 of 24 hours, taken as missing"
};

/// Hours brought to calendar days of the site's zone; days of 23 and 25 hours are days like any other.
///
/// Rule      t_max, t_min, rh_max, rh_min: extremes of the hours' means; t_mean, rh_mean, t_dew, ea, wind,
///           pressure: means weighted by length; rs, sunshine, rain: sums
/// Missing   A quantity is known only where every hour of the day knows it (interpolated hours count), but
///           rain: it is summed where at least three quarters of the day are known, and the rest is said
/// Input     hours  sorted by begin; a period that crosses midnight counts to the day it begins in
/// Throws    Error, field "zone", for a zone that does not exist
DaysFromHours days_from_hours(std::span<const HourlyWeather> hours, const std::string& zone);

}  // namespace v1
}  // namespace noonleaf
