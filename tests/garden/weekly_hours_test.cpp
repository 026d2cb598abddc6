#include "noonleaf/garden/weekly_hours.hpp"

#include <vector>

#include <boost/test/unit_test.hpp>

using namespace std::chrono_literals;
using noonleaf::parse_weekly_hours;
using noonleaf::WeeklyHours;

BOOST_AUTO_TEST_SUITE(weekly_hours)

const std::chrono::year_month_day wednesday{2025y / 7 / 16}, saturday{2025y / 7 / 19}, sunday{2025y / 7 / 20};

BOOST_AUTO_TEST_CASE(reads_days_and_hours) {
  const auto hours = parse_weekly_hours("mon-fri 06:00-14:30");
  BOOST_REQUIRE(hours.has_value());
  BOOST_TEST(hours->weekdays.count() == 5U);
  BOOST_TEST(!hours->weekdays.test(0));
  BOOST_TEST((hours->begin == 360min));
  BOOST_TEST((hours->end == 870min));
  BOOST_TEST(parse_weekly_hours("sat,sun 08:00-24:00")->weekdays.count() == 2U);
  BOOST_TEST(parse_weekly_hours("fri-mon 08:00-09:00")->weekdays.count() == 4U);
  BOOST_TEST(parse_weekly_hours("daily 05:00-09:00")->weekdays.count() == 7U);
}

BOOST_AUTO_TEST_CASE(refuses_what_it_cannot_mean) {
  for (const char* text :
       {"", "mon", "mon-fri", "mon-fri 6:00-14:30", "mon-fri 14:30-06:00", "mon-fri 06:00-06:00",
        "mon-fry 06:00-14:30", "mon, 06:00-14:30", "mon  06:00-14:30", "mon-fri 06:00-25:00",
        "Mon-Fri 06:00-14:30", "mon-fri 06:00-14:30 "}) {
    BOOST_TEST(!parse_weekly_hours(text).has_value(), text);
  }
}

BOOST_AUTO_TEST_CASE(covers_only_what_lies_within_one_entry) {
  const std::vector<WeeklyHours> hours{*parse_weekly_hours("mon-fri 06:00-10:00"),
                                       *parse_weekly_hours("mon-fri 10:00-14:00")};
  BOOST_TEST(noonleaf::covers(hours, wednesday, 360min, 600min));
  BOOST_TEST(!noonleaf::covers(hours, wednesday, 590min, 610min));
  BOOST_TEST(!noonleaf::covers(hours, saturday, 400min, 410min));
}

BOOST_AUTO_TEST_CASE(touching_ends_do_not_overlap) {
  const std::vector<WeeklyHours> quiet{*parse_weekly_hours("mon-fri 08:30-09:00")};
  BOOST_TEST(!noonleaf::overlaps(quiet, wednesday, 480min, 510min));
  BOOST_TEST(noonleaf::overlaps(quiet, wednesday, 480min, 511min));
  BOOST_TEST(!noonleaf::overlaps(quiet, wednesday, 540min, 600min));
  BOOST_TEST(!noonleaf::overlaps(quiet, sunday, 510min, 540min));
}

BOOST_AUTO_TEST_SUITE_END()
