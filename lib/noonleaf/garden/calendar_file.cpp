#include "noonleaf/garden/calendar_file.hpp"

#include <algorithm>
#include <memory>
#include <utility>

#include <libical/ical.h>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/zone.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::floor;
using std::chrono::minutes;
using std::chrono::sys_days;
using std::chrono::sys_seconds;
using std::chrono::year_month_day;

struct FreeComponent {
  void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Calendar = std::unique_ptr<icalcomponent, FreeComponent>;

[[noreturn]] void refuse(std::string_view file, std::string field, std::string text, std::string message,
                         std::string fix) {
  Problem problem;
  problem.file = file;
  problem.field = std::move(field);
  problem.text = std::move(text);
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

std::string text_or_empty(const char* text) { return text == nullptr ? std::string{} : std::string(text); }

Calendar parsed(const std::string& text, std::string_view shown_name) {
  Calendar calendar(icalparser_parse_string(text.c_str()));
  if (!calendar || icalcomponent_isa(calendar.get()) != ICAL_VCALENDAR_COMPONENT) {
    refuse(shown_name, {}, {}, "this is not an iCalendar file",
           "export the timetable as .ics: the file begins with BEGIN:VCALENDAR");
  }
  return calendar;
}

/// How a message calls an event: by its summary, else by its UID.
std::string event_name(icalcomponent* event) {
  const std::string summary = text_or_empty(icalcomponent_get_summary(event));
  return in_quotes(summary.empty() ? text_or_empty(icalcomponent_get_uid(event)) : summary);
}

/// libical keeps a month 13 as it is.
bool exists(const icaltimetype& time) {
  return !icaltime_is_null_time(time) && time.month >= 1 && time.month <= 12 && time.day >= 1 &&
         time.day <= icaltime_days_in_month(time.month, time.year) && time.hour >= 0 && time.hour <= 23 &&
         time.minute >= 0 && time.minute <= 59 && time.second >= 0 && time.second <= 60;
}

/// A time in a zone that libical does not find comes without one, and would pass as the site's own clock.
void require_known_zone(icalcomponent* event, icalproperty_kind kind, const icaltimetype& time,
                        std::string_view shown_name) {
  icalproperty* property = icalcomponent_get_first_property(event, kind);
  icalparameter* zone =
      property == nullptr ? nullptr : icalproperty_get_first_parameter(property, ICAL_TZID_PARAMETER);
  if (zone == nullptr || time.zone != nullptr || icaltime_is_utc(time) != 0) return;
  const std::string name = text_or_empty(icalparameter_get_tzid(zone));
  refuse(shown_name, "TZID", name,
         "the event " + event_name(event) + " is in a zone that is not known, " + in_quotes(name),
         "export the calendar with its time zones, or write the event in the site's own time, without TZID");
}

/// An event that a program cannot follow must not pass as an hour without children.
void require_readable(icalcomponent* event, std::string_view shown_name) {
  const std::string name = event_name(event);
  const auto start = icalcomponent_get_dtstart(event), end = icalcomponent_get_dtend(event);
  if (!exists(start)) {
    refuse(shown_name, "DTSTART", {}, "the event " + name + " has no start that can be read",
           "give it a line like DTSTART:20250901T080000, or take it out");
  }
  const bool has_end = icalcomponent_get_first_property(event, ICAL_DTEND_PROPERTY) != nullptr;
  if (has_end && !exists(end)) {
    refuse(shown_name, "DTEND", {}, "the event " + name + " has an end that does not exist",
           "give it a line like DTEND:20250901T090000, or take it out");
  }
  require_known_zone(event, ICAL_DTSTART_PROPERTY, start, shown_name);
  if (has_end) require_known_zone(event, ICAL_DTEND_PROPERTY, end, shown_name);
  if (has_end && icaltime_compare(end, start) < 0) {
    refuse(shown_name, "DTEND", {}, "the event " + name + " ends before it begins", "check both times");
  }
  if (icalcomponent_count_errors(event) > 0) {
    refuse(shown_name, "VEVENT", {}, "a line of the event " + name + " cannot be read",
           "export the calendar anew, or take the event out");
  }
  for (icalproperty* rule = icalcomponent_get_first_property(event, ICAL_RRULE_PROPERTY); rule != nullptr;
       rule = icalcomponent_get_next_property(event, ICAL_RRULE_PROPERTY)) {
    const auto frequency = icalproperty_get_rrule(rule).freq;
    if (frequency == ICAL_SECONDLY_RECURRENCE || frequency == ICAL_MINUTELY_RECURRENCE ||
        frequency == ICAL_HOURLY_RECURRENCE) {
      refuse(shown_name, "RRULE", {}, "the event " + name + " repeats more often than daily",
             "write it as one event a day with its hours");
    }
  }
}

/// One occurrence by the wall clock of the site.
struct Occurrence {
  sys_seconds begin, end;
};

/// What the walk over repetitions carries.
struct Walk {
  bool by_site_clock;  ///< the event's times have no zone, or are whole days
  const std::string& zone;
  std::vector<Occurrence> found{};
};

sys_seconds wall_clock(const Walk& walk, std::time_t time) {
  const sys_seconds instant{std::chrono::seconds(time)};
  if (walk.by_site_clock) return instant;
  const LocalTime local = local_time(walk.zone, instant);
  return sys_days(local.date) + local.time_of_day;
}

void add_occurrence(icalcomponent*, icaltime_span* span, void* data) {
  Walk& walk = *static_cast<Walk*>(data);
  walk.found.push_back({wall_clock(walk, span->start), wall_clock(walk, span->end)});
}

/// libical lets a whole-day event run to the last second of its DTEND, which RFC 5545 (3.6.1) does not
/// include.
void mend_whole_days(icalcomponent* event, std::vector<Occurrence>& found) {
  const bool has_end = icalcomponent_get_first_property(event, ICAL_DTEND_PROPERTY) != nullptr ||
                       icalcomponent_get_first_property(event, ICAL_DURATION_PROPERTY) != nullptr;
  for (Occurrence& each : found) {
    const sys_days last = floor<days>(each.end);
    each.end = std::max(sys_seconds(has_end ? last : last + days(1)), each.begin + days(1));
  }
}

std::vector<Occurrence> occurrences(icalcomponent* event, const CalendarRange& range) {
  const icaltimetype start = icalcomponent_get_dtstart(event);
  const bool floating = start.zone == nullptr && icaltime_is_utc(start) == 0;
  Walk walk{start.is_date != 0 || floating, range.zone};
  const auto at = [](sys_days day) {
    return icaltime_from_timet_with_zone(sys_seconds(day).time_since_epoch().count(), 0,
                                         icaltimezone_get_utc_timezone());
  };
  // A day to spare on both sides: the range is by the site's clock.
  icalcomponent_foreach_recurrence(event, at(range.first - days(1)), at(range.last + days(2)), add_occurrence,
                                   &walk);
  if (start.is_date != 0) mend_whole_days(event, walk.found);
  return walk.found;
}

/// The hours of one occurrence on each date that it touches.
void add_hours(const Occurrence& occurrence, const std::string& name, const CalendarRange& range,
               std::vector<DatedHours>& hours) {
  const sys_days first = std::max(floor<days>(occurrence.begin), range.first);
  for (sys_days day = first; day < occurrence.end && day <= range.last; day += days(1)) {
    const auto begin = floor<minutes>(std::max(occurrence.begin, sys_seconds(day)) - day);
    const auto end = std::chrono::ceil<minutes>(std::min(occurrence.end, sys_seconds(day + days(1))) - day);
    if (begin < end) hours.push_back({name, year_month_day{day}, begin, end});
  }
}

}  // namespace

std::vector<DatedHours> parse_calendar_hours(std::string_view text, std::string_view shown_name,
                                             const CalendarRange& range) {
  const Calendar calendar = parsed(std::string(text), shown_name);
  std::vector<DatedHours> hours;
  for (icalcomponent* event = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT);
       event != nullptr; event = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT)) {
    require_readable(event, shown_name);
    const std::string name = text_or_empty(icalcomponent_get_summary(event));
    for (const Occurrence& occurrence : occurrences(event, range)) add_hours(occurrence, name, range, hours);
  }
  std::stable_sort(hours.begin(), hours.end(), [](const DatedHours& a, const DatedHours& b) {
    return std::pair(a.date, a.begin) < std::pair(b.date, b.begin);
  });
  return hours;
}

std::vector<DatedSpan> parse_calendar_days(std::string_view text, std::string_view shown_name,
                                           const CalendarRange& range) {
  std::vector<DatedSpan> spans;
  for (const DatedHours& hours : parse_calendar_hours(text, shown_name, range)) {
    const auto goes_on = std::find_if(spans.begin(), spans.end(), [&](const DatedSpan& span) {
      return span.name == hours.name && sys_days(hours.date) <= sys_days(span.last) + days(1);
    });
    if (goes_on == spans.end()) {
      spans.push_back({hours.name, hours.date, hours.date});
    } else {
      goes_on->last = hours.date;
    }
  }
  return spans;
}

}  // namespace v1
}  // namespace noonleaf
