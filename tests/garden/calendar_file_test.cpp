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

// Two hours, sixty minutes and sixty seconds listed in a daily rule are 7,200 events a day.
BOOST_AUTO_TEST_CASE(a_rule_that_lists_hours_repeats_within_the_day) {
  const auto refused = [](const std::string& rule) {
    try {
      parse_calendar_hours(
          calendar(event("DTSTART:20251020T080000\r\nDTEND:20251020T081000\r\nRRULE:" + rule + "\r\n")),
          "school.ics", fall);
    } catch (const noonleaf::Error& error) {
      return std::string(error.what());
    }
    return std::string{};
  };
  const std::string said = "school.ics: RRULE: the event \"Class\" repeats more often than daily";
  BOOST_TEST(refused("FREQ=DAILY;BYHOUR=8,9") == said);
  BOOST_TEST(refused("FREQ=YEARLY;BYMONTH=10;BYMINUTE=0,30") == said);
  BOOST_TEST(refused("FREQ=DAILY;BYHOUR=8;BYMINUTE=0") == "");
}

// Ten years long and begun anew each day, an event covers each day 3,650 times.
BOOST_AUTO_TEST_CASE(events_that_lie_over_each_other_without_end_are_refused) {
  std::string events;
  for (int count = 0; count < 6; ++count)
    events += event("DTSTART:20150101T000000\r\nDTEND:20250101T000000\r\nRRULE:FREQ=DAILY\r\n");
  try {
    parse_calendar_hours(calendar(events), "school.ics", fall);
    BOOST_ERROR("20,000 events a day were taken");
  } catch (const noonleaf::Error& error) {
    BOOST_TEST(std::string(error.what()) ==
               "school.ics: VEVENT: the events mark more than 500,000 spans of hours; the last is \"Class\"");
  }
}

// libical counts the seconds of an event in 32 bits: one of a hundred years passed as none.
BOOST_AUTO_TEST_CASE(an_event_of_a_century_is_refused) {
  for (const std::string end : {"DTEND:20250101T000000", "DURATION:P5200W", "DURATION:P999999999D"}) {
    try {
      parse_calendar_hours(calendar(event("DTSTART:19250101T000000\r\n" + end + "\r\nRRULE:FREQ=DAILY\r\n")),
                           "school.ics", fall);
      BOOST_ERROR("the event was taken: " + end);
    } catch (const noonleaf::Error& error) {
      BOOST_TEST(std::string(error.what()) ==
                 "school.ics: VEVENT: the event \"Class\" lasts more than ten years");
    }
  }
}

BOOST_AUTO_TEST_CASE(more_events_than_a_timetable_has_are_refused) {
  std::string events;
  for (int index = 0; index < 5'001; ++index)
    events += event("DTSTART:20251020T080000\r\nDTEND:20251020T081000\r\n");
  try {
    parse_calendar_days(calendar(events), "school.ics", fall);
    BOOST_ERROR("5,001 events were taken");
  } catch (const noonleaf::Error& error) {
    BOOST_TEST(std::string(error.what()) == "school.ics: the calendar holds more than 5,000 events");
  }
}

// libical wrote "Encountered END before BEGIN" to the terminal by itself.
BOOST_AUTO_TEST_CASE(an_end_without_its_begin_is_refused) {
  const auto refused = [](const std::string& text) {
    try {
      parse_calendar_hours(text, "school.ics", fall);
    } catch (const noonleaf::Error& error) {
      return std::string(error.what());
    }
    return std::string{};
  };
  const std::string said = ": an END stands here without its BEGIN";
  BOOST_TEST(refused("END:VCALENDAR\n") == "school.ics:1" + said);
  BOOST_TEST(refused(calendar("") + "END:VEVENT\n") == "school.ics:5" + said);
  BOOST_TEST(refused(calendar("") + "e\r\n nd;X=1:VEVENT\n") == "school.ics:5" + said);
  BOOST_TEST(refused(calendar(event("DTSTART:20251020T080000\r\nDESCRIPTION:a\r\n END:VEVENT\r\n"))) == "");
}

// What a few lines can ask for: the walk along the rules is bounded before it begins. Each of these kept the reader
// busy for minutes, and many rules filled the memory.
BOOST_AUTO_TEST_CASE(rules_that_would_be_walked_for_minutes_are_refused) {
  const CalendarRange centuries{std::chrono::sys_days(1800y / 1 / 1), std::chrono::sys_days(2200y / 12 / 31),
                                "UTC"};
  const auto refused = [&](const std::string& events, const CalendarRange& range) {
    try {
      parse_calendar_hours(calendar(events), "school.ics", range);
    } catch (const noonleaf::Error& error) {
      return std::string(error.what());
    }
    return std::string{};
  };
  const auto times = [](int count, const std::string& text) {
    std::string all;
    for (int done = 0; done < count; ++done) all += text;
    return all;
  };
  const std::string begin = "DTSTART:18000101T080000\r\nDTEND:18000101T081000\r\n";
  const std::string daily = "RRULE:FREQ=DAILY\r\n", skip = "EXDATE:19000101T080000\r\n";
  const std::string too_often =
      "school.ics: RRULE: the events repeat too often to be followed; the last is \"Class\"";
  BOOST_TEST(refused(event(begin + times(5, daily)), fall) ==
             "school.ics: RRULE: the event \"Class\" has more than 4 rules");
  BOOST_TEST(refused(event(begin + daily + times(4, "EXRULE:FREQ=DAILY;INTERVAL=7\r\n")), fall) ==
             "school.ics: RRULE: the event \"Class\" has more than 4 rules");
  BOOST_TEST(refused(event(begin + daily + times(1'001, skip)), fall) ==
             "school.ics: EXDATE: the event \"Class\" lists more than 1,000 dates");
  const std::string line_of_skips = "EXDATE:19000101T080000" + times(399, ",19000102T080000") + "\r\n";
  BOOST_TEST(refused(event(begin + daily + times(3, line_of_skips)), fall) ==
             "school.ics: EXDATE: the event \"Class\" lists more than 1,000 dates");
  const std::string first_skip = "EXDATE:19000101T080000", other_skip = ",19000102T080000";
  BOOST_TEST(refused(event(begin + first_skip + times(499, other_skip) + "\r\n" + daily), fall) == "");
  BOOST_TEST(
      refused(event(begin + first_skip + times(250, other_skip + "\r\n ") + times(250, other_skip) + "\r\n"),
              fall) == "school.ics:9: this list of dates has more than 500");
  BOOST_TEST(refused(event(begin + daily + times(50, skip)), centuries) == "");
  BOOST_TEST(refused(times(3, event(begin + daily + times(1'000, skip))), centuries) == too_often);
  for (const std::string never : {"FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "FREQ=MONTHLY;BYDAY=6MO",
                                  "FREQ=YEARLY;BYMONTH=1;BYDAY=MO;BYSETPOS=-366"}) {
    BOOST_TEST(refused(times(100, event("DTSTART:20250901T080000\r\nRRULE:" + never + "\r\n")), fall) ==
               too_often);
  }
}

// Eight lessons a day over ten years with their holidays as exceptions, and a hundred yearly feasts, are few.
BOOST_AUTO_TEST_CASE(a_whole_school_is_walked) {
  std::string events, holidays;
  for (int day = 1; day <= 28; ++day)
    holidays += "EXDATE:202312" + std::string(day < 10 ? "0" : "") + std::to_string(day) + "T080000\r\n";
  for (int lesson = 0; lesson < 8; ++lesson)
    events += event(
        "DTSTART:20150901T080000\r\nDTEND:20150901T085000\r\nRRULE:FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR\r\n" +
        holidays);
  for (int feast = 0; feast < 60; ++feast)
    events += event("DTSTART;VALUE=DATE:19900101\r\nRRULE:FREQ=YEARLY;BYMONTH=11;BYDAY=4TH\r\n");
  BOOST_TEST(parse_calendar_hours(calendar(events), "school.ics", fall).size() > 100U);
}

// libical opens the file of a zone by its name: "../../../home/somebody/file" was opened and read as one.
BOOST_AUTO_TEST_CASE(a_zone_named_like_a_path_is_not_looked_up) {
  for (const std::string zone :
       {"../../../etc/passwd", "/citadel.org/20070227_1/../../../etc/passwd", "America/../../../x"})
    for (const std::string& line :
         {"DTSTART;TZID=\"" + zone + "\":20251020T080000\r\n",
          "DTSTART:20251020T080000\r\nEXDATE;TZID=\"" + zone + "\":20251021T080000\r\n"}) {
      try {
        parse_calendar_hours(calendar(event(line)), "school.ics", fall);
        BOOST_ERROR(zone << " was looked up");
      } catch (const noonleaf::Error& error) {
        BOOST_TEST(std::string(error.what()).find("a time zone is named like a path") != std::string::npos,
                   error.what());
      }
    }
}

// libical lists all changes of a zone before it looks at one: a change each second filled the memory.
BOOST_AUTO_TEST_CASE(a_zone_that_changes_more_than_yearly_is_refused) {
  const auto with_zone = [](const std::string& rule, int count) {
    std::string zone = "BEGIN:VTIMEZONE\r\nTZID:Mine\r\n";
    for (int done = 0; done < count; ++done)
      zone +=
          "BEGIN:STANDARD\r\nDTSTART:19701101T020000\r\nTZOFFSETFROM:-0500\r\nTZOFFSETTO:-0600\r\nRRULE:" +
          rule + "\r\nEND:STANDARD\r\n";
    return calendar(zone + "END:VTIMEZONE\r\n" +
                    event("DTSTART;TZID=Mine:20251020T080000\r\nDTEND;TZID=Mine:20251020T090000\r\n"));
  };
  for (const std::string rule :
       {"FREQ=SECONDLY", "FREQ=HOURLY", "FREQ=DAILY", "FREQ=MONTHLY", "FREQ=YEARLY;BYHOUR=1,2,3,4,5,6,7,8",
        "FREQ=YEARLY;BYMONTH=1,2,3,4;BYDAY=MO,TU"}) {
    try {
      parse_calendar_hours(with_zone(rule, 1), "school.ics", fall);
      BOOST_ERROR(rule << " was taken");
    } catch (const noonleaf::Error& error) {
      BOOST_TEST(
          std::string(error.what()) ==
          "school.ics: VTIMEZONE: a time zone changes its clocks more often than once a year by one rule");
    }
  }
  const std::string yearly = "FREQ=YEARLY;BYMONTH=11;BYDAY=1SU";
  BOOST_TEST(parse_calendar_hours(with_zone(yearly, 1), "school.ics", fall).size() == 1U);
  BOOST_TEST(parse_calendar_hours(with_zone("FREQ=YEARLY;BYMONTH=11;BYDAY=SU;BYMONTHDAY=1,2,3,4,5,6,7", 1),
                                  "school.ics", fall)
                 .size() == 1U);
  BOOST_CHECK_THROW(parse_calendar_hours(with_zone(yearly, 101), "school.ics", fall), noonleaf::Error);
}

BOOST_AUTO_TEST_SUITE_END()
