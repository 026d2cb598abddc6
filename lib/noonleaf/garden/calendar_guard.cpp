#include "noonleaf/garden/calendar_guard.hpp"

#include <algorithm>
#include <initializer_list>
#include <iterator>
#include <numeric>
#include <utility>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_seconds;

// A rule of four words can ask for centuries of days, and every exception is compared with each of them. RFC 5545
// (3.8.5.3) advises against a second rule; timetables list a break's days as exceptions.
constexpr int most_rules_of_event = 4;
constexpr int most_dates_of_event = 1'000;
constexpr std::int64_t most_steps = 3'000'000;  // ten to twenty seconds
constexpr std::int64_t steps_of_a_search =
    30'000;  // libical looks to the year 2582 for a day that never comes
constexpr int most_zone_rules = 100;
constexpr std::size_t most_days_of_zone_rule = 7;  // the second Sunday, written as the 8th to the 14th

/// How many entries a part of a rule lists (BYHOUR=8,9 lists two); one where it is left out.
template <std::size_t size>
std::size_t listed(const short (&part)[size]) {
  const auto end = std::find(std::begin(part), std::end(part), static_cast<short>(ICAL_RECURRENCE_ARRAY_MAX));
  return std::max<std::size_t>(1, static_cast<std::size_t>(end - std::begin(part)));
}

/// How many properties of these kinds an event has.
int count_of(icalcomponent* event, std::initializer_list<icalproperty_kind> kinds) {
  return std::accumulate(kinds.begin(), kinds.end(), 0, [event](int count, icalproperty_kind kind) {
    return count + icalcomponent_count_properties(event, kind);
  });
}

/// Whether a rule may name days that come in no year, like 30 February.
bool may_search(const icalrecurrencetype& rule) {
  const auto has = [](short first) { return first != static_cast<short>(ICAL_RECURRENCE_ARRAY_MAX); };
  const bool by_number = has(rule.by_month_day[0]) || has(rule.by_year_day[0]) || has(rule.by_week_no[0]) ||
                         has(rule.by_set_pos[0]);
  const bool within_months = rule.freq == ICAL_YEARLY_RECURRENCE || rule.freq == ICAL_MONTHLY_RECURRENCE;
  return by_number || (within_months && has(rule.by_day[0]));
}

/// How far libical has to walk along the rules of an event: days, and per day the exceptions it compares.
std::int64_t steps_of(icalcomponent* event, const CalendarRange& range) {
  const std::int64_t start_s = icaltime_as_timet(icalcomponent_get_dtstart(event));
  const std::int64_t end_s = sys_seconds(range.last + days(2)).time_since_epoch().count();
  const std::int64_t walked_d = std::max<std::int64_t>(1, (end_s - start_s) / 86'400 + 1);
  const int dates = count_of(event, {ICAL_EXDATE_PROPERTY, ICAL_RDATE_PROPERTY});
  const int exception_rules = count_of(event, {ICAL_EXRULE_PROPERTY});
  std::int64_t steps = 1;
  for (icalproperty* property = icalcomponent_get_first_property(event, ICAL_RRULE_PROPERTY);
       property != nullptr; property = icalcomponent_get_next_property(event, ICAL_RRULE_PROPERTY)) {
    const icalrecurrencetype rule = icalproperty_get_rrule(property);
    const bool weekly = rule.freq == ICAL_WEEKLY_RECURRENCE;
    const auto days_a_week = static_cast<std::int64_t>(listed(rule.by_day));
    std::int64_t found = weekly ? walked_d * days_a_week / 7 : walked_d;
    if (rule.freq == ICAL_YEARLY_RECURRENCE && !may_search(rule))
      found = walked_d / 28;  // at most once a month
    // An exception costs a seventieth of a step; an exception rule costs two (measured).
    steps +=
        found + found * dates / 70 + found * exception_rules * 2 + (may_search(rule) ? steps_of_a_search : 0);
  }
  return steps;
}

/// How many dates a rule may give in a year, by what it lists.
std::size_t listed_in_a_year(const icalrecurrencetype& rule) {
  return listed(rule.by_month) * listed(rule.by_day) * listed(rule.by_month_day) * listed(rule.by_year_day) *
         listed(rule.by_week_no) * listed(rule.by_hour) * listed(rule.by_minute) * listed(rule.by_second);
}

/// libical writes down every change of a zone from its first to the year 2037 before it asks for one.
void require_yearly_changes(icalcomponent* part, int& rules, std::string_view shown_name) {
  for (icalproperty* rule = icalcomponent_get_first_property(part, ICAL_RRULE_PROPERTY); rule != nullptr;
       rule = icalcomponent_get_next_property(part, ICAL_RRULE_PROPERTY)) {
    const icalrecurrencetype repeated = icalproperty_get_rrule(rule);
    const bool yearly =
        repeated.freq == ICAL_YEARLY_RECURRENCE && listed_in_a_year(repeated) <= most_days_of_zone_rule;
    if (!yearly || ++rules > most_zone_rules) {
      refuse_calendar(shown_name, "VTIMEZONE", {},
                      yearly ? "its time zones have more than " + std::to_string(most_zone_rules) + " rules"
                             : "a time zone changes its clocks more often than once a year by one rule",
                      "export the calendar anew, or write its times in UTC");
    }
  }
}

/// libical looks a zone up as a file below /usr/share/zoneinfo; two dots would lead out of there.
void require_zone_names(icalcomponent* component, std::string_view shown_name) {
  for (icalproperty* property = icalcomponent_get_first_property(component, ICAL_ANY_PROPERTY);
       property != nullptr; property = icalcomponent_get_next_property(component, ICAL_ANY_PROPERTY)) {
    icalparameter* zone = icalproperty_get_first_parameter(property, ICAL_TZID_PARAMETER);
    const std::string name = zone == nullptr ? std::string{} : text_or_empty(icalparameter_get_tzid(zone));
    if (name.find("..") != std::string::npos) {
      refuse_calendar(shown_name, "TZID", name, "a time zone is named like a path, " + in_quotes(name),
                      "export the calendar with its time zones");
    }
  }
}

}  // namespace

void refuse_calendar(std::string_view file, std::string field, std::string text, std::string message,
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

std::string event_name(icalcomponent* event) {
  const std::string summary = text_or_empty(icalcomponent_get_summary(event));
  return in_quotes(summary.empty() ? text_or_empty(icalcomponent_get_uid(event)) : summary);
}

bool repeats_within_a_day(const icalrecurrencetype& rule) {
  const bool often = rule.freq == ICAL_SECONDLY_RECURRENCE || rule.freq == ICAL_MINUTELY_RECURRENCE ||
                     rule.freq == ICAL_HOURLY_RECURRENCE;
  return often || listed(rule.by_hour) * listed(rule.by_minute) * listed(rule.by_second) > 1;
}

void require_plain_zones(icalcomponent* calendar, std::string_view shown_name) {
  int rules = 0;
  std::vector<icalcomponent*> open{calendar};
  while (!open.empty()) {
    icalcomponent* const component = open.back();
    open.pop_back();
    require_zone_names(component, shown_name);
    const icalcomponent_kind kind = icalcomponent_isa(component);
    if (kind == ICAL_XSTANDARD_COMPONENT || kind == ICAL_XDAYLIGHT_COMPONENT)
      require_yearly_changes(component, rules, shown_name);
    for (icalcomponent* part = icalcomponent_get_first_component(component, ICAL_ANY_COMPONENT);
         part != nullptr; part = icalcomponent_get_next_component(component, ICAL_ANY_COMPONENT))
      open.push_back(part);
  }
}

void require_short_walk(icalcomponent* event, const CalendarRange& range, std::string_view shown_name,
                        std::int64_t& steps) {
  const std::string name = event_name(event);
  if (count_of(event, {ICAL_RRULE_PROPERTY, ICAL_EXRULE_PROPERTY}) > most_rules_of_event) {
    refuse_calendar(shown_name, "RRULE", {},
                    "the event " + name + " has more than " + std::to_string(most_rules_of_event) + " rules",
                    "write it as several events of one rule each");
  }
  if (count_of(event, {ICAL_EXDATE_PROPERTY, ICAL_RDATE_PROPERTY}) > most_dates_of_event) {
    refuse_calendar(shown_name, "EXDATE", {},
                    "the event " + name + " lists more than " + grouped(most_dates_of_event) + " dates",
                    "write it as several events, each for a few years");
  }
  steps += steps_of(event, range);
  if (steps > most_steps) {
    refuse_calendar(shown_name, "RRULE", {},
                    "the events repeat too often to be followed; the last is " + name,
                    "export this school year alone, and let the repetitions begin with it");
  }
}

}  // namespace v1
}  // namespace noonleaf
