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

BOOST_AUTO_TEST_CASE(an_unknown_zone_names_the_nearest) {
  BOOST_CHECK_EXCEPTION(noonleaf::require_zone("America/Los_Angelos"), noonleaf::Error,
                        [](const noonleaf::Error& refused) {
                          return refused.problems().front().fix == "did you mean \"America/Los_Angeles\"?";
                        });
}

BOOST_AUTO_TEST_SUITE_END()
