#pragma once

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/garden/watering_rules.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// For which days and by which clock a calendar is wanted.
struct CalendarRange {
  std::chrono::sys_days first{};  ///< included
  std::chrono::sys_days last{};   ///< included
  std::string zone{};             ///< IANA name of the site
};

/// The hours that an iCalendar file (RFC 5545) marks on the days of a range, by the wall clock of the site:
/// its events with their repetitions and exceptions. A whole-day event takes the whole day; one that runs
/// over midnight is cut there.
///
/// Throws    Error, with the file: no VCALENDAR, an event that cannot be read, an event that repeats more
///           often than daily
/// Note      Times without a zone are the site's wall clock.
std::vector<DatedHours> parse_calendar_hours(std::string_view text, std::string_view shown_name,
                                             const CalendarRange& range);

/// The days that its events touch, as holidays.
std::vector<DatedSpan> parse_calendar_days(std::string_view text, std::string_view shown_name,
                                           const CalendarRange& range);

}  // namespace v1
}  // namespace noonleaf
