#include "noonleaf/balance/daily_step.hpp"

#include <cmath>
#include <string>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/profile.hpp"
#include "noonleaf/balance/run.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/soil/texture.hpp"

#include "random_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::BalanceDay;
using noonleaf::BalanceDetail;
using noonleaf::BalanceSettings;
using noonleaf::BalanceState;
using noonleaf::Error;
using noonleaf::find_crop;
using noonleaf::find_texture;
using noonleaf::missing;
using noonleaf::soil_of;
using noonleaf::SoilWater;

namespace {

const SoilWater loam = soil_of(find_texture("loam"));
constexpr auto may_1 = 2024y / 5 / 1;

noonleaf::GrowthDay tomato_in_full() {
  return noonleaf::growth_day(find_crop("tomato"), {.start = may_1}, 2024y / 8 / 1, {});
}

BalanceState field_capacity(double zr, double profile) {
  return noonleaf::initial_state(loam, zr, profile, 0);
}

}  // namespace

BOOST_AUTO_TEST_SUITE(daily_step)

BOOST_AUTO_TEST_CASE(what_percolates_fills_the_lower_layer_first) {
  BalanceState state = field_capacity(0.7, 1.0);
  state.lower_mm = 10;
  const auto wet = noonleaf::daily_step(state, {.et0_mm_d = 0, .rain_mm = 25}, tomato_in_full(), loam, {});
  BOOST_CHECK_CLOSE(wet.dp_mm, 25, 1e-9);
  BOOST_CHECK_CLOSE(wet.drainage_mm, 15, 1e-9);
  BOOST_TEST(wet.end.lower_mm == 0);
}

BOOST_AUTO_TEST_CASE(evening_water_wets_tomorrows_surface) {
  const BalanceState dry = noonleaf::initial_state(loam, 0.7, 1.0, 0.8);
  const BalanceDay morning{.et0_mm_d = 6, .irrigation_mm = 20};
  const BalanceDay evening{.et0_mm_d = 6, .evening_irrigation_mm = 20};
  const auto a = noonleaf::daily_step(dry, morning, tomato_in_full(), loam, {});
  const auto b = noonleaf::daily_step(dry, evening, tomato_in_full(), loam, {});
  BOOST_TEST(a.evaporation_mm > b.evaporation_mm);
  BOOST_TEST(a.ks > b.ks);
  BOOST_TEST(b.end.de_mm == 0);
  BOOST_TEST(b.end.dr_mm < a.end.dr_mm);
}

BOOST_AUTO_TEST_CASE(depletion_now_and_at_the_close_are_two_numbers) {
  const BalanceState dry = noonleaf::initial_state(loam, 0.7, 1.0, 0.3);
  const auto day =
      noonleaf::daily_step(dry, {.et0_mm_d = 6, .evening_irrigation_mm = 10}, tomato_in_full(), loam, {});
  BOOST_CHECK_CLOSE(noonleaf::depletion_within_day_mm(day, 0), dry.dr_mm, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::depletion_within_day_mm(day, 1), day.end.dr_mm + 10, 1e-9);
  BOOST_TEST(noonleaf::depletion_within_day_mm(day, 0.5) > noonleaf::depletion_within_day_mm(day, 0.2));
}

BOOST_AUTO_TEST_CASE(drip_wets_a_part_and_rain_the_rest) {
  const BalanceState dry = noonleaf::initial_state(loam, 0.7, 1.0, 0.9);
  BalanceSettings drip;
  drip.irrigated_frac = 0.35;
  auto open_crop = tomato_in_full();
  open_crop.kcb = 0.3;
  open_crop.cover_frac = 0.1;
  const auto watered = noonleaf::daily_step(dry, {.et0_mm_d = 6, .irrigation_mm = 7}, open_crop, loam, drip);
  BOOST_TEST(watered.de_wet_mm == 0);  // 20 mm on the wetted part
  BOOST_TEST(watered.de_rain_wet_mm == dry.de_rain_mm);
  BOOST_CHECK_CLOSE(watered.few + watered.few_rain, 0.9, 1e-9);
  const auto rained = noonleaf::daily_step(dry, {.et0_mm_d = 6, .rain_mm = 7}, open_crop, loam, drip);
  BOOST_CHECK_CLOSE(rained.de_rain_wet_mm, dry.de_rain_mm - 7, 1e-9);
  BOOST_TEST(rained.evaporation_mm > watered.evaporation_mm);
  // A can over the whole bed wets both parts alike.
  const auto by_hand = noonleaf::daily_step(dry, {.et0_mm_d = 6, .irrigation_mm = 7, .irrigation_fw = 1},
                                            open_crop, loam, drip);
  BOOST_CHECK_CLOSE(by_hand.evaporation_mm, rained.evaporation_mm, 1e-9);
}

// Until the ground is full or exhausted, the account of two parts and the printed one are the same under a
// sprinkler.
BOOST_AUTO_TEST_CASE(under_a_sprinkler_both_accounts_of_the_surface_agree) {
  BalanceState one = noonleaf::initial_state(loam, 0.7, 1.0, 0.5), two = one;
  BalanceSettings printed;
  printed.surface = noonleaf::SurfaceAccount::as_printed;
  for (int i = 0; i < 20; ++i) {
    const BalanceDay day{.et0_mm_d = 5, .irrigation_mm = i % 4 == 0 ? 9.0 : 0.0};
    const auto a = noonleaf::daily_step(one, day, tomato_in_full(), loam, printed);
    const auto b = noonleaf::daily_step(two, day, tomato_in_full(), loam, {});
    BOOST_TEST(a.end.dr_mm == b.end.dr_mm);
    BOOST_TEST(a.end.de_mm == b.end.de_mm);
    one = a.end;
    two = b.end;
  }
}

BOOST_AUTO_TEST_CASE(a_full_root_zone_has_no_dry_surface) {
  auto open_crop = tomato_in_full();
  open_crop.kcb = 0.3;
  open_crop.cover_frac = 0.1;
  const BalanceState state = noonleaf::initial_state(loam, 0.7, 1.0, 0.2);
  const BalanceDay soaked{.et0_mm_d = 6, .irrigation_mm = 60};
  const auto tied = noonleaf::daily_step(state, soaked, open_crop, loam, {});
  BOOST_TEST(tied.end.dr_mm == 0);
  BOOST_TEST(tied.end.de_mm == 0);
  BOOST_TEST(tied.de_tied_mm < 0);
  BalanceSettings printed;
  printed.surface = noonleaf::SurfaceAccount::as_printed;
  const auto apart = noonleaf::daily_step(state, soaked, open_crop, loam, printed);
  BOOST_TEST(apart.end.dr_mm == 0);
  BOOST_TEST(apart.end.de_mm > 5);
  BOOST_TEST(apart.de_tied_mm == 0);
  BOOST_TEST(apart.few_rain == 0);  // the printed account knows one part
}

BOOST_AUTO_TEST_CASE(roots_take_what_is_there_and_give_it_back) {
  BalanceState state = field_capacity(0.2, 1.0);
  state.dr_mm = 10;
  state.lower_mm = 40;  // the ground below is dry: never taken for full
  const double whole = state.dr_mm + state.lower_mm;
  BOOST_CHECK_CLOSE(noonleaf::move_root_boundary(state, loam, 0.6), 20, 1e-9);
  BOOST_CHECK_CLOSE(state.dr_mm, 30, 1e-9);
  BOOST_CHECK_CLOSE(state.lower_mm, 20, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::move_root_boundary(state, loam, 0.1), -25, 1e-9);
  BOOST_CHECK_CLOSE(state.dr_mm + state.lower_mm, whole, 1e-9);
}

BOOST_AUTO_TEST_CASE(evaporation_and_transpiration_have_their_own_limits) {
  // A seedling with roots of 0.05 m over a top layer of 0.10 m, never watered.
  auto seedling = tomato_in_full();
  seedling.root_depth_m = 0.05;
  seedling.kcb = 0.3;
  seedling.cover_frac = 0.05;
  BalanceState state = field_capacity(0.05, 0.8);
  double transpired = 0, evaporated = 0;
  for (int i = 0; i < 200; ++i) {
    const auto day = noonleaf::daily_step(state, {.et0_mm_d = 8}, seedling, loam, {});
    transpired += day.transpiration_mm;
    evaporated += day.evaporation_mm;
    state = day.end;
  }
  const double taw = taw_mm(loam, 0.05);
  const auto limit = noonleaf::root_zone_limits(loam, 0.05);
  BOOST_TEST(state.dr_mm > taw);  // evaporation goes on below the wilting point
  BOOST_TEST(state.dr_mm <= limit.evaporation_mm + 1e-9);
  BOOST_TEST(transpired <= taw + 1e-9);
  BOOST_TEST(state.de_mm <= tew_mm(loam) + 1e-9);
  BOOST_TEST(evaporated <= tew_mm(loam) + 1e-9);
}

BOOST_AUTO_TEST_CASE(a_plant_factor_gets_no_soil_evaporation_on_top) {
  const auto flowers = noonleaf::growth_day(find_crop("annual_flowers"), {.start = may_1}, may_1, {});
  const auto day =
      noonleaf::daily_step(field_capacity(0.15, 1.0), {.et0_mm_d = 5, .rain_mm = 10}, flowers, loam, {});
  BOOST_TEST(day.evaporation_mm == 0);
  BOOST_CHECK_CLOSE(day.etc_adj_mm_d, 4.0, 1e-9);
}

BOOST_AUTO_TEST_CASE(bare_soil_evaporates_only) {
  const auto bare = noonleaf::growth_day(noonleaf::bare_soil(), {.start = may_1}, may_1, {});
  BalanceSettings single;
  single.method = noonleaf::CoefficientMethod::single;
  const auto day = noonleaf::daily_step(field_capacity(0.1, 1.0),
                                        {.et0_mm_d = 5, .u2_m_s = 2, .rh_min_pct = 45}, bare, loam, single);
  BOOST_TEST(day.transpiration_mm == 0);
  BOOST_CHECK_CLOSE(day.evaporation_mm, 6.0, 1e-9);  // Kc max of bare, wet ground: 1.20
}

BOOST_AUTO_TEST_CASE(runoff_takes_rain_only) {
  BalanceSettings field;
  field.curve_number = 80;
  const BalanceState state = noonleaf::initial_state(loam, 0.7, 1.0, 0.5);
  const auto rained =
      noonleaf::daily_step(state, {.et0_mm_d = 3, .rain_mm = 60}, tomato_in_full(), loam, field);
  BOOST_TEST(rained.runoff_mm > 0);
  const auto watered =
      noonleaf::daily_step(state, {.et0_mm_d = 3, .irrigation_mm = 60}, tomato_in_full(), loam, field);
  BOOST_TEST(watered.runoff_mm == 0);
  const auto framed = noonleaf::daily_step(state, {.et0_mm_d = 3, .rain_mm = 60}, tomato_in_full(), loam, {});
  BOOST_TEST(framed.runoff_mm == 0);
}

BOOST_AUTO_TEST_CASE(roots_that_drink_from_the_top_layer_dry_it) {
  const BalanceState state = noonleaf::initial_state(loam, 0.3, 1.0, 0.2);
  auto lettuce = noonleaf::growth_day(find_crop("lettuce"), {.start = may_1}, 2024y / 6 / 25, {});
  BalanceSettings drawn;
  drawn.top_roots = noonleaf::TopLayerRoots::drawn;
  const auto without = noonleaf::daily_step(state, {.et0_mm_d = 5}, lettuce, loam, {});
  const auto with = noonleaf::daily_step(state, {.et0_mm_d = 5}, lettuce, loam, drawn);
  BOOST_TEST(with.end.de_mm > without.end.de_mm);
  BOOST_TEST(with.end.dr_mm == without.end.dr_mm);  // the same water, seen from the surface
  BOOST_TEST(with.top_transpiration_mm <= with.transpiration_mm);
}

BOOST_AUTO_TEST_CASE(missing_days_stay_missing) {
  const auto state = field_capacity(0.7, 1.0);
  for (const BalanceDay& day :
       {BalanceDay{.et0_mm_d = missing}, BalanceDay{.et0_mm_d = 5, .rain_mm = missing},
        BalanceDay{.et0_mm_d = 5, .irrigation_mm = missing}}) {
    const auto result = noonleaf::daily_step(state, day, tomato_in_full(), loam, {});
    BOOST_TEST(noonleaf::is_missing(result.end.dr_mm));
    BOOST_TEST(noonleaf::is_missing(result.ks));
    BOOST_TEST(noonleaf::is_missing(result.evaporation_mm));
  }
  const auto without_climate = noonleaf::daily_step(state, {.et0_mm_d = 5}, tomato_in_full(), loam, {});
  BOOST_TEST(without_climate.kc_max == tomato_in_full().kc_max);
}

BOOST_AUTO_TEST_CASE(absurd_days_are_refused) {
  const auto state = field_capacity(0.7, 1.0);
  const auto refused = [&](const BalanceDay& day) {
    noonleaf::daily_step(state, day, tomato_in_full(), loam, {});
  };
  BOOST_CHECK_THROW(refused({.et0_mm_d = -1}), Error);
  BOOST_CHECK_THROW(refused({.et0_mm_d = 5, .rain_mm = -2}), Error);
  BOOST_CHECK_THROW(refused({.et0_mm_d = 5, .irrigation_mm = 3, .irrigation_fw = 1.2}), Error);
  BOOST_CHECK_THROW(
      noonleaf::daily_step(field_capacity(0.3, 0.4), {.et0_mm_d = 5}, tomato_in_full(), loam, {}), Error);
  BOOST_CHECK_THROW(noonleaf::daily_step(state, {.et0_mm_d = 5}, tomato_in_full(), SoilWater{}, {}), Error);
}

BOOST_AUTO_TEST_SUITE_END()
