#include "noonleaf/garden/calendar_file.hpp"

#include <algorithm>
#include <memory>
#include <utility>

#include <libical/ical.h>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/zone.hpp"

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

/// An event that a program cannot follow must not pass as an hour without children.
void require_readable(icalcomponent* event, std::string_view shown_name) {
  const std::string summary = text_or_empty(icalcomponent_get_summary(event));
  const auto start = icalcomponent_get_dtstart(event);
  if (icaltime_is_null_time(start) || icaltime_is_valid_time(start) == 0) {
    refuse(shown_name, "DTSTART", summary, "the event \"" + summary + "\" has no start that can be read",
           "give it a line like DTSTART:20250901T080000, or take it out");
  }
  if (icalcomponent_count_errors(event) > 0) {
    refuse(shown_name, "VEVENT", summary, "a line of the event \"" + summary + "\" cannot be read",
           "export the calendar anew, or take the event out");
  }
  for (icalproperty* rule = icalcomponent_get_first_property(event, ICAL_RRULE_PROPERTY); rule != nullptr;
       rule = icalcomponent_get_next_property(event, ICAL_RRULE_PROPERTY)) {
    const auto frequency = icalproperty_get_rrule(rule).freq;
    if (frequency == ICAL_SECONDLY_RECURRENCE || frequency == ICAL_MINUTELY_RECURRENCE ||
        frequency == ICAL_HOURLY_RECURRENCE) {
      refuse(shown_name, "RRULE", summary, "the event \"" + summary + "\" repeats more often than daily",
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
