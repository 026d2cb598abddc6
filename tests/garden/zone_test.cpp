#include "noonleaf/garden/zone.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

using namespace std::chrono_literals;

BOOST_AUTO_TEST_SUITE(zone)

// The offsets of Los Angeles: IANA zone database, northamerica: PST -8, PDT -7 from 9 March 2025, 10:00 UTC.
BOOST_AUTO_TEST_CASE(wall_clock_across_a_clock_change) {
  const std::chrono::sys_seconds before = std::chrono::sys_days(2025y / 3 / 9) + 9h + 59min;
  const auto early = noonleaf::local_time("America/Los_Angeles", before);
  BOOST_TEST((early.time_of_day == 119min));
  const auto late = noonleaf::local_time("America/Los_Angeles", before + 1min);
  BOOST_TEST((late.time_of_day == 180min));
  BOOST_TEST((late.date == 2025y / 3 / 9));
}

BOOST_AUTO_TEST_CASE(the_site_has_its_own_date) {
  const auto local = noonleaf::local_time("America/Los_Angeles", std::chrono::sys_days(2025y / 1 / 1) + 2h);
  BOOST_TEST((local.date == 2024y / 12 / 31));
}

BOOST_AUTO_TEST_CASE(offset_at_noon) {
  BOOST_TEST(noonleaf::utc_offset_h("America/Los_Angeles", 2025y / 7 / 16) == -7.0);
  BOOST_TEST(noonleaf::utc_offset_h("America/Los_Angeles", 2025y / 1 / 16) == -8.0);
  BOOST_TEST(noonleaf::utc_offset_h("Asia/Kolkata", 2025y / 1 / 16) == 5.5);
}

// 2025 in Los Angeles: 02:00 to 03:00 on 9 March does not exist, 01:00 to 02:00 on 2 November comes twice.
// Santiago goes back at midnight: 23:00 to 24:00 on 5 April comes twice.
BOOST_AUTO_TEST_CASE(clock_times_that_are_none_or_two) {
  const auto spring = noonleaf::clock_change_on("America/Los_Angeles", 2025y / 3 / 9);
  BOOST_REQUIRE(spring.has_value());
  BOOST_TEST((spring->begin == 2h && spring->end == 3h));
  const auto autumn = noonleaf::clock_change_on("America/Los_Angeles", 2025y / 11 / 2);
  BOOST_REQUIRE(autumn.has_value());
  BOOST_TEST((autumn->begin == 1h && autumn->end == 2h));
  BOOST_TEST(!noonleaf::clock_change_on("America/Los_Angeles", 2025y / 7 / 16).has_value());
  BOOST_TEST(!noonleaf::clock_change_on("Asia/Kolkata", 2025y / 3 / 30).has_value());
  const auto midnight = noonleaf::clock_change_on("America/Santiago", 2025y / 4 / 5);
  BOOST_REQUIRE(midnight.has_value());
  BOOST_TEST((midnight->begin == 23h && midnight->end == 24h));
}

BOOST_AUTO_TEST_CASE(time_that_passes_between_two_clock_times) {
  const auto passes = [](std::chrono::year_month_day date, std::chrono::minutes from,
                         std::chrono::minutes to) {
    return noonleaf::elapsed("America/Los_Angeles", {date, from}, {date, to});
  };
  BOOST_TEST((passes(2025y / 7 / 16, 1h, 4h) == 3h));
  BOOST_TEST((passes(2025y / 3 / 9, 1h, 4h) == 2h));
  BOOST_TEST((passes(2025y / 11 / 2, 0h, 4h) == 5h));
}

BOOST_AUTO_TEST_CASE(an_unknown_zone_names_the_nearest) {
  BOOST_CHECK_EXCEPTION(noonleaf::require_zone("America/Los_Angelos"), noonleaf::Error,
                        [](const noonleaf::Error& refused) {
                          return refused.problems().front().fix == "did you mean \"America/Los_Angeles\"?";
                        });
}

BOOST_AUTO_TEST_SUITE_END()
