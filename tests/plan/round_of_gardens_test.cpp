#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/plan/round.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::Garden;
using noonleaf::RoundNeed;
using noonleaf::Sky;

namespace {

const std::string tomatoes = R"([[bed.planting]]
crop = "tomato"
transplanted = 2025-05-01
)";

constexpr std::chrono::year_month_day monday{2025y / 7 / 7};

Sky sky_of(const Garden& garden, int days = 75) {
  return noonleaf::sky_over(garden.site, steady_weather(std::chrono::sys_days(2025y / 5 / 1), days, 5));
}

}  // namespace

BOOST_AUTO_TEST_SUITE(round_of_gardens)

BOOST_AUTO_TEST_CASE(a_dry_bed_with_somebody_there_is_watered_and_without_anybody_needs_a_person) {
  Garden garden = invented_garden(tomatoes);
  const Sky sky = sky_of(garden);
  const auto weekday = noonleaf::round_entry(garden, {}, sky, monday);  // weeks without water
  BOOST_TEST((weekday.need == RoundNeed::run_today));
  BOOST_TEST(weekday.litres > 0.0);
  const auto weekend = noonleaf::round_entry(garden, {}, sky, 2025y / 7 / 12);  // a Saturday
  BOOST_TEST((weekend.need == RoundNeed::person_needed));
  BOOST_TEST(weekend.dry_days == 2);
  BOOST_REQUIRE(weekend.next_chance.has_value());
  BOOST_TEST((*weekend.next_chance == 2025y / 7 / 14));
  BOOST_TEST(goes_before(weekend, weekday));
  garden.caretakers.clear();
  const auto nobody = noonleaf::round_entry(garden, {}, sky, monday);
  BOOST_TEST((nobody.need == RoundNeed::person_needed));
  BOOST_TEST(!nobody.next_chance.has_value());
  BOOST_TEST(goes_before(nobody, weekend));
}

BOOST_AUTO_TEST_CASE(a_fresh_bed_is_less_down_than_one_that_nobody_watered) {
  const Garden garden = invented_garden(tomatoes);
  const auto fresh = noonleaf::round_entry(garden, {}, sky_of(garden), 2025y / 5 / 2);
  const auto dry = noonleaf::round_entry(garden, {}, sky_of(garden), monday);
  BOOST_TEST(fresh.depletion_mm < dry.depletion_mm);
  BOOST_TEST(dry.depletion_mm > dry.limit_mm);
}

BOOST_AUTO_TEST_CASE(a_day_without_weather_is_refused) {
  const Garden garden = invented_garden(tomatoes);
  BOOST_CHECK_THROW(noonleaf::round_entry(garden, {}, sky_of(garden), 2026y / 1 / 1), noonleaf::Error);
}

BOOST_AUTO_TEST_SUITE_END()
