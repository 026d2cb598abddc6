#include "noonleaf/garden/calendar_file.hpp"

#include <algorithm>
#include <cstdint>
#include <map>
#include <memory>
#include <utility>
#include <vector>

#include <libical/ical.h>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/calendar_guard.hpp"
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

// A timetable has some thousands at most; more would keep the reader busy for minutes.
constexpr int most_events = 5'000;
constexpr std::size_t most_hours = 500'000;
constexpr std::ptrdiff_t most_dates_of_line = 500;  // measured, libical 3.0
constexpr std::int64_t longest_event_s = 3653LL * 86'400;

struct FreeComponent {
  void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Calendar = std::unique_ptr<icalcomponent, FreeComponent>;

/// Name of the property on a line, in capitals; a line may be folded (RFC 5545, 3.1) even within it.
std::string property_name(std::string_view text) {
  std::string name;
  for (std::size_t place = 0; place < text.size() && name.size() < 8; ++place) {
    const char letter = text[place];
    if (letter == ':' || letter == ';') break;
    const bool folded =
        letter == '\n' && place + 1 < text.size() && (text[place + 1] == ' ' || text[place + 1] == '\t');
    if (letter == '\n' && !folded) break;
    if (folded) ++place;
    if (letter != '\n' && letter != '\r')
      name += letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter;
  }
  return name;
}

[[noreturn]] void refuse_line(std::string_view file, std::size_t line, std::string message, std::string fix) {
  Problem problem;
  problem.file = file;
  problem.line = line;
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

/// A list of exceptions, over as many lines as it goes on for: libical drops what lies behind `most_dates_of_line`
/// without a word.
void require_short_lists(std::string_view text, std::string_view shown_name) {
  std::size_t line = 1, first_line = 1;
  std::ptrdiff_t dates = 0;
  bool lists = false;
  for (std::size_t begin = 0; begin < text.size(); ++line) {
    const std::size_t end = std::min(text.size(), text.find('\n', begin));
    const std::string_view here = text.substr(begin, end - begin);
    if (!here.starts_with(' ') && !here.starts_with('\t')) {
      const std::string name = property_name(text.substr(begin));
      lists = name == "EXDATE" || name == "RDATE";
      first_line = line;
      dates = 1;
    }
    dates += std::count(here.begin(), here.end(), ',');
    if (lists && dates > most_dates_of_line)
      refuse_line(shown_name, first_line,
                  "this list of dates has more than " + std::to_string(most_dates_of_line),
                  "write it as several lists");
    begin = end + 1;
  }
}

/// An END without its BEGIN: libical writes a line of its own about it to the terminal, and reads on.
void require_begun(std::string_view text, std::string_view shown_name) {
  std::size_t open = 0, line = 1;
  for (std::size_t begin = 0; begin < text.size(); ++line) {
    const std::string name = property_name(text.substr(begin));
    if (name == "END" && open == 0)
      refuse_line(shown_name, line, "an END stands here without its BEGIN", "export the calendar anew");
    if (name == "BEGIN") ++open;
    if (name == "END") --open;
    const std::size_t end = text.find('\n', begin);
    if (end == std::string_view::npos) break;
    begin = end + 1;
  }
}

Calendar parsed(const std::string& text, std::string_view shown_name) {
  require_begun(text, shown_name);
  require_short_lists(text, shown_name);
  Calendar calendar(icalparser_parse_string(text.c_str()));
  if (!calendar || icalcomponent_isa(calendar.get()) != ICAL_VCALENDAR_COMPONENT) {
    refuse_calendar(shown_name, {}, {}, "this is not an iCalendar file",
                    "export the timetable as .ics: the file begins with BEGIN:VCALENDAR");
  }
  return calendar;
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
  refuse_calendar(
      shown_name, "TZID", name,
      "the event " + event_name(event) + " is in a zone that is not known, " + in_quotes(name),
      "export the calendar with its time zones, or write the event in the site's own time, without TZID");
}

/// How long an event lasts, by its end or its duration. libical itself counts in 32 bits: an event of a
/// century would be none.
std::int64_t duration_s(icalcomponent* event, const icaltimetype& start, const icaltimetype& end,
                        bool has_end) {
  if (has_end) return std::int64_t{icaltime_as_timet(end)} - std::int64_t{icaltime_as_timet(start)};
  const icalproperty* property = icalcomponent_get_first_property(event, ICAL_DURATION_PROPERTY);
  if (property == nullptr) return 0;
  const icaldurationtype length = icalproperty_get_duration(property);
  const std::int64_t whole_days = std::int64_t{length.weeks} * 7 + length.days;
  return ((whole_days * 24 + length.hours) * 60 + length.minutes) * 60 + length.seconds;
}

/// An event that a program cannot follow must not pass as an hour without children.
void require_readable(icalcomponent* event, std::string_view shown_name) {
  const std::string name = event_name(event);
  const auto start = icalcomponent_get_dtstart(event), end = icalcomponent_get_dtend(event);
  if (!exists(start)) {
    refuse_calendar(shown_name, "DTSTART", {}, "the event " + name + " has no start that can be read",
                    "give it a line like DTSTART:20250901T080000, or take it out");
  }
  const bool has_end = icalcomponent_get_first_property(event, ICAL_DTEND_PROPERTY) != nullptr;
  if (has_end && !exists(end)) {
    refuse_calendar(shown_name, "DTEND", {}, "the event " + name + " has an end that does not exist",
                    "give it a line like DTEND:20250901T090000, or take it out");
  }
  require_known_zone(event, ICAL_DTSTART_PROPERTY, start, shown_name);
  if (has_end) require_known_zone(event, ICAL_DTEND_PROPERTY, end, shown_name);
  if (has_end && icaltime_compare(end, start) < 0) {
    refuse_calendar(shown_name, "DTEND", {}, "the event " + name + " ends before it begins",
                    "check both times");
  }
  if (duration_s(event, start, end, has_end) > longest_event_s) {
    refuse_calendar(shown_name, "VEVENT", {}, "the event " + name + " lasts more than ten years",
                    "check its DTEND or DURATION");
  }
  if (icalcomponent_count_errors(event) > 0) {
    refuse_calendar(shown_name, "VEVENT", {}, "a line of the event " + name + " cannot be read",
                    "export the calendar anew, or take the event out");
  }
  for (icalproperty* rule = icalcomponent_get_first_property(event, ICAL_RRULE_PROPERTY); rule != nullptr;
       rule = icalcomponent_get_next_property(event, ICAL_RRULE_PROPERTY)) {
    if (repeats_within_a_day(icalproperty_get_rrule(rule))) {
      refuse_calendar(shown_name, "RRULE", {}, "the event " + name + " repeats more often than daily",
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
               std::string_view shown_name, std::vector<DatedHours>& hours) {
  if (hours.size() > most_hours) {
    refuse_calendar(shown_name, "VEVENT", {},
                    "the events mark more than " + grouped(most_hours) + " spans of hours; the last is " +
                        in_quotes(name),
                    "check how long the events last and how often they repeat");
  }
  const sys_days first = std::max(floor<days>(occurrence.begin), range.first);
  for (sys_days day = first; day < occurrence.end && day <= range.last; day += days(1)) {
    const auto begin = floor<minutes>(std::max(occurrence.begin, sys_seconds(day)) - day);
    const auto end = std::chrono::ceil<minutes>(std::min(occurrence.end, sys_seconds(day + days(1))) - day);
    if (begin < end) hours.push_back({name, year_month_day{day}, begin, end});
  }
}

std::vector<icalcomponent*> events_of(icalcomponent* calendar) {
  std::vector<icalcomponent*> events;
  for (icalcomponent* event = icalcomponent_get_first_component(calendar, ICAL_VEVENT_COMPONENT);
       event != nullptr; event = icalcomponent_get_next_component(calendar, ICAL_VEVENT_COMPONENT))
    events.push_back(event);
  return events;
}

}  // namespace

std::vector<DatedHours> parse_calendar_hours(std::string_view text, std::string_view shown_name,
                                             const CalendarRange& range) {
  const Calendar calendar = parsed(std::string(text), shown_name);
  if (icalcomponent_count_components(calendar.get(), ICAL_VEVENT_COMPONENT) > most_events) {
    refuse_calendar(shown_name, {}, {}, "the calendar holds more than " + grouped(most_events) + " events",
                    "export the school year alone");
  }
  std::vector<DatedHours> hours;
  require_plain_zones(calendar.get(), shown_name);
  const auto events = events_of(calendar.get());
  std::int64_t steps = 0;
  for (icalcomponent* event : events) {  // all of them before the first is walked
    require_readable(event, shown_name);
    require_short_walk(event, range, shown_name, steps);
  }
  for (icalcomponent* event : events) {
    const std::string name = text_or_empty(icalcomponent_get_summary(event));
    for (const Occurrence& occurrence : occurrences(event, range))
      add_hours(occurrence, name, range, shown_name, hours);
  }
  std::stable_sort(hours.begin(), hours.end(), [](const DatedHours& a, const DatedHours& b) {
    return std::pair(a.date, a.begin) < std::pair(b.date, b.begin);
  });
  return hours;
}

std::vector<DatedSpan> parse_calendar_days(std::string_view text, std::string_view shown_name,
                                           const CalendarRange& range) {
  std::vector<DatedSpan> spans;
  std::map<std::string, std::size_t> latest;  // span of each name; hours come in the order of their dates
  for (const DatedHours& hours : parse_calendar_hours(text, shown_name, range)) {
    const auto [known, is_new] = latest.try_emplace(hours.name, spans.size());
    if (is_new || sys_days(hours.date) > sys_days(spans[known->second].last) + days(1)) {
      known->second = spans.size();
      spans.push_back({hours.name, hours.date, hours.date});
    } else {
      spans[known->second].last = hours.date;
    }
  }
  return spans;
}

}  // namespace v1
}  // namespace noonleaf
