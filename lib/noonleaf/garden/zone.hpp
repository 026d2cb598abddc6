#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A wall-clock moment at a site.
struct LocalTime {
  std::chrono::year_month_day date{};   ///< by that clock
  std::chrono::minutes time_of_day{0};  ///< since midnight on the wall clock
};

/// Refuses a name that is not in the IANA zone database ("America/Chicago").
/// Throws    Error, field "zone", with the nearest known name; or when the machine has no zone database
void require_zone(std::string_view zone);

/// The wall clock at a site.
/// Input     zone  IANA name; now  a moment, UTC (the caller's clock: the library reads none)
/// Throws    Error as require_zone
LocalTime local_time(std::string_view zone, std::chrono::sys_seconds now);

/// Wall clock minus UTC at noon of a day, daylight saving included [h].
/// Throws    Error as require_zone
double utc_offset_h(std::string_view zone, std::chrono::year_month_day date);

/// Clocks of no country are farther from the sun than this (ours; western China is 3.1 h off).
inline constexpr double most_hours_from_sun = 4;

/// Whether a longitude can lie in a zone: a minus forgotten before 118 degrees puts a garden into China.
/// Throws    Error as require_zone
bool zone_fits_longitude(std::string_view zone, double longitude_deg);

/// Clock times of a day that do not exist or that come twice, since the clocks change.
struct ClockChange {
  std::chrono::minutes begin{0};  ///< wall clock
  std::chrono::minutes end{0};    ///< wall clock; within the day
};

/// The change of a day, nothing on most.
/// Throws    Error as require_zone
std::optional<ClockChange> clock_change_on(std::string_view zone, std::chrono::year_month_day date);

/// The time that passes between two moments of the wall clock; of a time that comes twice the first.
/// Throws    Error as require_zone
std::chrono::minutes elapsed(std::string_view zone, const LocalTime& from, const LocalTime& to);

}  // namespace v1
}  // namespace noonleaf
