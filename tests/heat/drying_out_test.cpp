#include "heat/drying_out.hpp"

#include <algorithm>

#include <boost/test/unit_test.hpp>

using noonleaf::WiltDay;
using noonleaf::WiltHour;
using noonleaf::WiltVerdict;

namespace {

std::ptrdiff_t first_of(const std::vector<WiltDay>& days, WiltVerdict verdict) {
  return std::find_if(days.begin(), days.end(),
                      [verdict](const WiltDay& day) { return day.verdict == verdict; }) -
         days.begin();
}

}  // namespace

BOOST_AUTO_TEST_SUITE(drying_out)

BOOST_AUTO_TEST_CASE(droop_first_then_stress_then_dry_soil_wilt) {
  const std::vector<WiltDay> days = drying_out_days();
  const auto droop = first_of(days, WiltVerdict::droop), stress = first_of(days, WiltVerdict::stress),
             dry = first_of(days, WiltVerdict::dry_soil_wilt);
  BOOST_TEST(droop < stress);
  BOOST_TEST(stress < dry);
  BOOST_TEST(dry < dry_days);
  for (int day = 1; day < dry_days; ++day) {
    const auto at = static_cast<std::size_t>(day);
    BOOST_TEST(days[at].droop_hours >= days[at - 1].droop_hours);
    BOOST_TEST(static_cast<int>(days[at].verdict) >= static_cast<int>(days[at - 1].verdict));
  }
}

BOOST_AUTO_TEST_CASE(after_the_water_it_recovers) {
  const std::vector<WiltDay> days = drying_out_days();
  BOOST_TEST(days[dry_days - 1].leaf_deficit_mm > 0.0);
  BOOST_TEST(!days[dry_days].hours[0].hangs);  // up again within the first hour
  BOOST_TEST(days[dry_days].leaf_deficit_mm == 0.0);
  BOOST_CHECK(days[dry_days].verdict == WiltVerdict::stress);  // 25 mm are not enough to come back within RAW
}

BOOST_AUTO_TEST_CASE(no_jump_from_day_to_day) {
  const std::vector<WiltDay> days = drying_out_days();
  for (int day = 1; day < dry_days; ++day) {
    const auto at = static_cast<std::size_t>(day);
    const WiltHour& before = days[at - 1].hours.back();
    const WiltHour& after = days[at].hours.front();
    BOOST_TEST(after.clock_h + 24 == before.clock_h + 1);
    BOOST_TEST(after.depletion_mm >= before.depletion_mm);
    BOOST_CHECK_SMALL(after.depletion_mm - before.depletion_mm, 0.05);
    BOOST_CHECK_SMALL(after.soil_potential_mpa - before.soil_potential_mpa, 0.005);
  }
}

BOOST_AUTO_TEST_SUITE_END()
