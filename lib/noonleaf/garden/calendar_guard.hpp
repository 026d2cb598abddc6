#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include <libical/ical.h>

#include "noonleaf/garden/calendar_file.hpp"

namespace noonleaf {
inline namespace v1 {

/// What a calendar may ask of libical, looked at before libical does it: a few lines could have it walk for hours,
/// fill the memory, or open a file that is none of the calendar's.

/// Throws    Error of one problem
[[noreturn]] void refuse_calendar(std::string_view file, std::string field, std::string text,
                                  std::string message, std::string fix);

/// What libical hands out, which may be nothing.
std::string text_or_empty(const char* text);

/// How a message calls an event: by its summary, else by its UID.
std::string event_name(icalcomponent* event);

/// By its frequency, or by the hours, minutes and seconds that it lists: they multiply.
bool repeats_within_a_day(const icalrecurrencetype& rule);

/// The time zones of a calendar, and the names of zones that it does not hold itself.
/// Throws    Error: a zone whose rules are not yearly, more rules than zones have, a name like a path
void require_plain_zones(icalcomponent* calendar, std::string_view shown_name);

/// The whole calendar must be read while somebody waits for it.
///
/// Input     event  whose rules repeat at most daily; steps  those of the events before it, to which its own are added
/// Throws    Error: more rules or dates than an event has, or too many steps in all
void require_short_walk(icalcomponent* event, const CalendarRange& range, std::string_view shown_name,
                        std::int64_t& steps);

}  // namespace v1
}  // namespace noonleaf
