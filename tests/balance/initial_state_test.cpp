#include "noonleaf/balance/initial_state.hpp"

#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/soil/texture.hpp"

#include "random_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::Error;
using noonleaf::find_texture;
using noonleaf::GroundState;
using noonleaf::soil_of;

namespace {

constexpr auto may_1 = 2024y / 5 / 1;
const noonleaf::SoilWater loam = soil_of(find_texture("loam"));  // FC 0.25, WP 0.12

std::vector<noonleaf::GrowthDay> lawn(std::size_t n) {
  return noonleaf::growth_days(noonleaf::find_crop("turf_cool"), {.start = 2020y / 1 / 1}, may_1, n, {});
}

}  // namespace

BOOST_AUTO_TEST_SUITE(initial_state)

// Arithmetic on FAO-56 eq. 87.
BOOST_AUTO_TEST_CASE(a_probe_tells_the_state) {
  const auto state =
      noonleaf::state_from_moisture(loam, 0.5, 1.2, {.root_zone_m3_m3 = 0.18, .top_layer_m3_m3 = 0.10});
  BOOST_CHECK_CLOSE(state.dr_mm, 35, 1e-9);
  BOOST_CHECK_CLOSE(state.lower_mm, 49, 1e-9);
  BOOST_CHECK_CLOSE(state.de_mm, 15, 1e-9);
  const auto soaked = noonleaf::state_from_moisture(loam, 0.5, 1.2, {.root_zone_m3_m3 = 0.35});
  BOOST_TEST(soaked.dr_mm == 0);  // above field capacity: it drains
  BOOST_CHECK_THROW(noonleaf::state_from_moisture(loam, 0.5, 1.2, {.root_zone_m3_m3 = 18}), Error);
  BOOST_CHECK_THROW(noonleaf::state_from_moisture(loam, 0.5, 1.2, {.root_zone_m3_m3 = 0.05}), Error);
}

BOOST_AUTO_TEST_CASE(the_hand_tells_a_share) {
  BOOST_CHECK_CLOSE(noonleaf::depleted_frac_by_feel("moist"), 0.375, 1e-9);
  BOOST_TEST(noonleaf::depleted_frac_by_feel("field_capacity") == 0);
  double before = 2;
  for (const auto& level : noonleaf::feel_table()) {
    BOOST_TEST(noonleaf::depleted_frac_by_feel(level.id) < before);
    before = noonleaf::depleted_frac_by_feel(level.id);
    BOOST_TEST(!level.text_es.empty());
  }
  BOOST_CHECK_EXCEPTION(noonleaf::depleted_frac_by_feel("mosit"), Error, [](const Error& refused) {
    return refused.problems().front().fix == "did you mean moist?";
  });
}

BOOST_AUTO_TEST_CASE(a_soaking_makes_the_start_forgotten) {
  Draws draws(11);
  auto days = random_days(draws, may_1, 60);
  for (auto& day : days)
    day.rain_mm = day.irrigation_mm = day.evening_rain_mm = day.evening_irrigation_mm = 0;
  const auto growth = lawn(60);
  const auto dry_spell = noonleaf::start_matters(loam, 1.2, days, growth, {});
  BOOST_TEST(dry_spell.dr_apart_mm > 1);
  BOOST_TEST(!dry_spell.forgotten_on.has_value());
  days[30].rain_mm = 250;
  const auto soaked = noonleaf::start_matters(loam, 1.2, days, growth, {});
  BOOST_REQUIRE(soaked.forgotten_on.has_value());
  BOOST_TEST(*soaked.forgotten_on == 30U);
  const auto state = noonleaf::spin_up(loam, 1.2, days, growth, {});
  BOOST_TEST(state.dr_mm >= 0);
  BOOST_CHECK_THROW(noonleaf::spin_up(loam, 1.2, {}, {}, {}), Error);
}

BOOST_AUTO_TEST_CASE(ground_from_the_air) {
  const auto after = [](GroundState before, double t_max, double t_min, double rain) {
    return noonleaf::ground_state(before, t_max, t_min, rain);
  };
  BOOST_TEST((after(GroundState::open, 10, 2, 5) == GroundState::open));
  BOOST_TEST((after(GroundState::open, -1, -8, 0) == GroundState::frozen));
  BOOST_TEST((after(GroundState::open, 3, -3, 4) == GroundState::snow));
  BOOST_TEST((after(GroundState::snow, 4, -2, 0) == GroundState::snow));  // still lying
  BOOST_TEST((after(GroundState::snow, 6, 1, 0) == GroundState::open));
  BOOST_TEST((after(GroundState::frozen, noonleaf::missing, 1, 0) == GroundState::frozen));
}

BOOST_AUTO_TEST_CASE(the_account_stands_still_in_frost) {
  const auto start = noonleaf::initial_state(loam, 0.5, 1.2, 0.3);
  const auto day =
      noonleaf::daily_step(start, {.date = may_1, .et0_mm_d = 1, .rain_mm = 20, .ground = GroundState::snow},
                           lawn(1).front(), loam, {});
  BOOST_TEST((day.ground == GroundState::snow));
  BOOST_TEST(day.end.dr_mm == start.dr_mm);
  BOOST_TEST(day.end.de_mm == start.de_mm);
  BOOST_TEST(day.rain_mm == 0);
  BOOST_TEST(day.etc_adj_mm_d == 0);
}

BOOST_AUTO_TEST_SUITE_END()
