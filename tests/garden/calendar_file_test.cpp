#include "noonleaf/garden/calendar_file.hpp"

#include <string>

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

using namespace std::chrono_literals;
using noonleaf::CalendarRange;
using noonleaf::parse_calendar_days;
using noonleaf::parse_calendar_hours;

namespace {

const CalendarRange fall{std::chrono::sys_days(2025y / 10 / 20), std::chrono::sys_days(2025y / 11 / 14),
                         "America/Chicago"};

std::string calendar(const std::string& events) {
  return "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//test//EN\r\n" + events + "END:VCALENDAR\r\n";
}

std::string event(const std::string& lines) {
  return "BEGIN:VEVENT\r\nUID:1\r\nSUMMARY:Class\r\n" + lines + "END:VEVENT\r\n";
}

}  // namespace

BOOST_AUTO_TEST_SUITE(calendar_file)

BOOST_AUTO_TEST_CASE(weekly_lessons_with_an_exception_keep_the_wall_clock_over_the_change) {
  // RFC 5545, 3.8.5.3: RRULE counts in the local time of DTSTART. Clocks go back on 2 November 2025.
  const auto hours =
      parse_calendar_hours(calendar(event("DTSTART:20251020T083000\r\nDTEND:20251020T091500\r\n"
                                          "RRULE:FREQ=WEEKLY;COUNT=4\r\nEXDATE:20251027T083000\r\n")),
                           "school.ics", fall);
  BOOST_REQUIRE(hours.size() == 3U);
  BOOST_TEST((hours[0].date == 2025y / 10 / 20 && hours[1].date == 2025y / 11 / 3 &&
              hours[2].date == 2025y / 11 / 10));
  for (const auto& hour : hours) BOOST_TEST((hour.begin == 8h + 30min && hour.end == 9h + 15min));
}

BOOST_AUTO_TEST_CASE(times_in_utc_become_the_sites_clock) {
  const auto hours =
      parse_calendar_hours(calendar(event("DTSTART:20251031T140000Z\r\nDTEND:20251031T150000Z\r\n") +
                                    event("DTSTART:20251103T140000Z\r\nDTEND:20251103T150000Z\r\n")),
                           "school.ics", fall);
  BOOST_REQUIRE(hours.size() == 2U);
  BOOST_TEST((hours[0].begin == 9h));  // daylight time, UTC-5
  BOOST_TEST((hours[1].begin == 8h));  // standard time, UTC-6
}

BOOST_AUTO_TEST_CASE(a_zone_named_in_the_file_is_kept) {
  const auto hours = parse_calendar_hours(calendar(event("DTSTART;TZID=America/New_York:20251105T100000\r\n"
                                                         "DTEND;TZID=America/New_York:20251105T110000\r\n")),
                                          "school.ics", fall);
  BOOST_REQUIRE(hours.size() == 1U);
  BOOST_TEST((hours[0].begin == 9h && hours[0].end == 10h));
}

BOOST_AUTO_TEST_CASE(whole_days_are_holidays_and_their_end_is_not_included) {
  // RFC 5545, 3.6.1: DTEND of a DATE event is the day after the last.
  const auto days = parse_calendar_days(
      calendar(event("DTSTART;VALUE=DATE:20251103\r\nDTEND;VALUE=DATE:20251106\r\n")), "holidays.ics", fall);
  BOOST_REQUIRE(days.size() == 1U);
  BOOST_TEST((days[0].first == 2025y / 11 / 3 && days[0].last == 2025y / 11 / 5));
  BOOST_TEST(days[0].name == "Class");
}

BOOST_AUTO_TEST_CASE(an_event_over_midnight_is_cut_there) {
  const auto hours = parse_calendar_hours(
      calendar(event("DTSTART:20251022T220000\r\nDTEND:20251023T013000\r\n")), "school.ics", fall);
  BOOST_REQUIRE(hours.size() == 2U);
  BOOST_TEST((hours[0].begin == 22h && hours[0].end == 24h));
  BOOST_TEST((hours[1].begin == 0h && hours[1].end == 1h + 30min));
}

BOOST_AUTO_TEST_CASE(what_cannot_be_followed_is_refused) {
  BOOST_CHECK_THROW(parse_calendar_hours("date,hour\n", "school.ics", fall), noonleaf::Error);
  BOOST_CHECK_THROW(parse_calendar_hours(calendar(event("DTEND:20251020T091500\r\n")), "school.ics", fall),
                    noonleaf::Error);
  BOOST_CHECK_THROW(
      parse_calendar_hours(calendar(event("DTSTART:20251020T083000\r\nRRULE:FREQ=SECONDLY\r\n")),
                           "school.ics", fall),
      noonleaf::Error);
}

BOOST_AUTO_TEST_SUITE_END()
