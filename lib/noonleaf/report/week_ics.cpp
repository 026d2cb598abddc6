// The only file of the report that sees libical; its storage library is not linked.
#include <cstdint>
#include <memory>
#include <string_view>

#include <fmt/format.h>
#include <libical/ical.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/zone.hpp"
#include "noonleaf/report/week_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::minutes;
using std::chrono::year_month_day;

struct FreeComponent {
  void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Component = std::unique_ptr<icalcomponent, FreeComponent>;

/// What a run is in the calendar, whichever plan it comes from.
struct CalendarRun {
  year_month_day date{};
  minutes begin{0}, end{0};
  std::string bed{};     ///< its id
  std::string letter{};  ///< on the sheet
  std::string summary{}, description{}, place{};
  int run_of_day = 1, cycle = 1;
  icalproperty_status status = ICAL_STATUS_CONFIRMED;
};

/// FNV-1a, 64 bit: names a garden and a bed without showing either.
std::uint64_t fingerprint(std::string_view text) {
  std::uint64_t hash = 14695981039346656037ULL;
  for (const char letter : text) hash = (hash ^ static_cast<unsigned char>(letter)) * 1099511628211ULL;
  return hash;
}

std::string uid_of(const Garden& garden, const CalendarRun& run) {
  const std::string whose =
      fmt::format("{}\n{:.4f}\n{:.4f}\n{}", garden.site.name, garden.site.location.latitude_deg,
                  garden.site.location.longitude_deg, run.bed);
  const std::string cycle = run.cycle > 1 ? fmt::format(".{}", run.cycle) : "";
  return fmt::format("{:016x}-{}-{}{}@noonleaf", fingerprint(whose), iso_date(run.date), run.run_of_day,
                     cycle);
}

icaltimetype wall_clock(year_month_day date, minutes time_of_day) {
  icaltimetype time = icaltime_null_time();
  const year_month_day day{std::chrono::sys_days(date) + std::chrono::days(time_of_day / minutes(1440))};
  const auto rest = static_cast<int>(time_of_day.count() % 1440);
  time.year = static_cast<int>(day.year());
  time.month = static_cast<int>(static_cast<unsigned>(day.month()));
  time.day = static_cast<int>(static_cast<unsigned>(day.day()));
  time.hour = rest / 60;
  time.minute = rest % 60;
  time.is_date = 0;
  return time;
}

void add(icalcomponent* component, icalproperty* property) {
  icalcomponent_add_property(component, property);
}

void add_time(icalcomponent* component, icalproperty* property, const std::string& zone) {
  icalproperty_add_parameter(property, icalparameter_new_tzid(zone.c_str()));
  add(component, property);
}

/// The zone's rules, under its IANA name: a calendar that knows the name and one that does not agree.
icalcomponent* zone_rules(const std::string& zone) {
  icaltimezone* const known = icaltimezone_get_builtin_timezone(zone.c_str());
  icalcomponent* const rules = known == nullptr ? nullptr : icaltimezone_get_component(known);
  if (rules == nullptr) {
    Problem problem;
    problem.field = "zone";
    problem.text = zone;
    problem.message = "this machine has no rules for the time zone \"" + zone + "\"";
    problem.fix = "install the zone database (tzdata)";
    throw Error(std::move(problem));
  }
  icalcomponent* const copy = icalcomponent_new_clone(rules);
  icalproperty_set_tzid(icalcomponent_get_first_property(copy, ICAL_TZID_PROPERTY), zone.c_str());
  return copy;
}

icalcomponent* alarm(const std::string& words, icaltriggertype trigger, icalparameter_related related) {
  icalcomponent* const component = icalcomponent_new(ICAL_VALARM_COMPONENT);
  add(component, icalproperty_new_action(ICAL_ACTION_DISPLAY));
  add(component, icalproperty_new_description(words.c_str()));
  icalproperty* const when = icalproperty_new_trigger(trigger);
  icalproperty_add_parameter(when, icalparameter_new_related(related));
  add(component, when);
  return component;
}

icaltriggertype after(int seconds) {
  icaltriggertype trigger{};
  trigger.time = icaltime_null_time();
  trigger.duration = icaldurationtype_from_int(seconds);
  return trigger;
}

/// Minutes since 2020, on the wall clock: rises from plan to plan, and is in an int for four thousand years.
int sequence_of(const LocalTime& made) {
  const auto days = std::chrono::sys_days(made.date) -
                    std::chrono::sys_days(
                        year_month_day(std::chrono::year(2020), std::chrono::month(1), std::chrono::day(1)));
  return static_cast<int>((std::chrono::duration_cast<minutes>(days) + made.time_of_day).count());
}

icalcomponent* event(const WeekView& view, const CalendarRun& run) {
  const std::string& zone = view.garden.site.zone;
  icalcomponent* const component = icalcomponent_new(ICAL_VEVENT_COMPONENT);
  add(component, icalproperty_new_uid(uid_of(view.garden, run).c_str()));
  const double offset_min = 60 * utc_offset_h(zone, view.made.date);
  icaltimetype stamp = wall_clock(view.made.date, view.made.time_of_day);
  icaltime_adjust(&stamp, 0, 0, -static_cast<int>(offset_min), 0);
  stamp.zone = icaltimezone_get_utc_timezone();
  add(component, icalproperty_new_dtstamp(stamp));
  add(component, icalproperty_new_sequence(sequence_of(view.made)));
  add(component, icalproperty_new_status(run.status));
  add_time(component, icalproperty_new_dtstart(wall_clock(run.date, run.begin)), zone);
  add_time(component, icalproperty_new_dtend(wall_clock(run.date, run.end)), zone);
  add(component, icalproperty_new_summary(run.summary.c_str()));
  if (!run.description.empty()) add(component, icalproperty_new_description(run.description.c_str()));
  if (!run.place.empty()) add(component, icalproperty_new_location(run.place.c_str()));
  if (run.status == ICAL_STATUS_CANCELLED) return component;
  const auto words = [&](Phrase id, const std::string& letter) {
    return fill(view.language, id, {{"bed", letter}});
  };
  icalcomponent_add_component(
      component, alarm(words(Phrase::calendar_alarm_open, run.letter), after(-600), ICAL_RELATED_START));
  icalcomponent_add_component(component,
                              alarm(words(Phrase::calendar_alarm, run.letter), after(0), ICAL_RELATED_END));
  return component;
}

/// One opening: a run with a pause to soak in is two events, so that nobody waters through the pause.
CalendarRun calendar_run(const WeekView& view, const WeekRun& run, const PlannedRun& planned,
                         std::size_t cycle) {
  const LocalText text = view.text();
  const auto [begin, end] = run.cycles[cycle];
  const std::string letter = bed_letter(view, run.bed), open = text.the_clock(begin),
                    close = text.the_clock(end), tap = tap_name(view, run.tap);
  const auto length = static_cast<double>((end - begin).count());
  return {.date = planned.date,
          .begin = begin,
          .end = end,
          .bed = planned.bed,
          .letter = letter,
          .summary = fill(view.language, Phrase::calendar_summary,
                          {{"bed", letter}, {"minutes", text.number(length, 0)}}),
          .description = fill(view.language, Phrase::calendar_text,
                              {{"open", open},
                               {"close", close},
                               {"people", people_words(view, run)},
                               {"sprinkler", sprinkler_name(view, run.sprinkler)},
                               {"tap", tap}}),
          .place = plain_text(view.garden.site.name) + ", " + tap,
          .run_of_day = planned.run_of_day,
          .cycle = static_cast<int>(cycle) + 1};
}

CalendarRun cancelled_run(const WeekView& view, const PlannedRun& planned, int cycle) {
  const Bed* const bed = find_bed(view.garden, planned.bed);
  const std::string letter = bed == nullptr
                                 ? plain_text(planned.bed)
                                 : bed_letter(view, static_cast<std::size_t>(bed - view.garden.beds.data()));
  return {.date = planned.date,
          .begin = planned.begin,
          .end = planned.end,
          .bed = planned.bed,
          .letter = letter,
          .summary = fill(view.language, Phrase::calendar_summary,
                          {{"bed", letter}, {"minutes", view.text().number(planned.minutes, 0)}}),
          .run_of_day = planned.run_of_day,
          .cycle = cycle,
          .status = ICAL_STATUS_CANCELLED};
}

}  // namespace

std::string week_ics(const WeekView& view) {
  const Component calendar(icalcomponent_new(ICAL_VCALENDAR_COMPONENT));
  add(calendar.get(), icalproperty_new_prodid("-//noonleaf//week//EN"));
  add(calendar.get(), icalproperty_new_version("2.0"));
  add(calendar.get(), icalproperty_new_calscale("GREGORIAN"));
  add(calendar.get(), icalproperty_new_method(ICAL_METHOD_PUBLISH));
  icalcomponent_add_component(calendar.get(), zone_rules(view.garden.site.zone));
  const std::vector<PlannedRun> planned = planned_runs(view.garden, view.plan);
  for (std::size_t index = 0; index < planned.size(); ++index) {
    const WeekRun& run = view.plan.runs[index];
    for (std::size_t cycle = 0; cycle < run.cycles.size(); ++cycle)
      icalcomponent_add_component(calendar.get(),
                                  event(view, calendar_run(view, run, planned[index], cycle)));
  }
  for (const PlannedRun& dropped : view.dropped) {
    for (int cycle = dropped.first_dropped; cycle <= dropped.openings; ++cycle)
      icalcomponent_add_component(calendar.get(), event(view, cancelled_run(view, dropped, cycle)));
  }
  char* const text = icalcomponent_as_ical_string_r(calendar.get());
  std::string result(text);
  icalmemory_free_buffer(text);
  return result;
}

}  // namespace v1
}  // namespace noonleaf
