// The day on plain numbers, looked at from outside: water of every layer is added up, no layer gives more than it has,
// the surface agrees with the ground below it, roots take what lies where they go.
#include "noonleaf/balance/step_formula.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/profile.hpp"
#include "noonleaf/balance/run.hpp"
#include "noonleaf/balance/seed_zone.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/soil/texture.hpp"

#include "random_garden.hpp"

using namespace std::chrono_literals;
using namespace noonleaf::step_formula;
using noonleaf::soil_of;

namespace {

/// A day drawn at random, wet or dry, close to the limits more often than not.
struct Drawn {
  Soil soil{};
  Day day{};
  State before{};
  double profile = 0;
};

Drawn draw(Draws& draws, bool shallow, bool two_parts) {
  Drawn out;
  const double wp = draws.between(0.05, 0.2), fc = wp + draws.between(0.08, 0.18), ze = 0.1;
  const double tew = 1000 * (fc - 0.5 * wp) * ze, rew = tew * draws.between(0.2, 0.6);
  out.soil = {rew, tew, 1000 * (fc - wp), 500 * wp, ze, 1 / (tew - rew)};
  Day& day = out.day;
  day.et0 = draws.between(0, 12);
  day.zr = shallow ? draws.between(0.02, 0.099) : draws.between(0.1, 0.5);
  out.profile = std::max(day.zr, ze) + draws.between(0, 0.02);  // so thin that the layer below is soon empty
  day.lower_depth = out.profile - day.zr;
  day.kcb = draws.between(0.1, 0.9);
  day.kc_max = draws.between(1.0, 1.3);
  const double fw = two_parts ? draws.between(0.1, 0.9) : 1, fc_leaf = draws.between(0, 0.9);
  day.few = std::min(1 - fc_leaf, fw);
  day.few_rain = two_parts ? std::max(0.0, 1 - fc_leaf - day.few) : 0;
  day.per_few = 1 / day.few;
  day.per_few_rain = day.few_rain > 0 ? 1 / day.few_rain : 0;
  day.p = draws.between(0.2, 0.7);
  day.salt = 1;
  day.evaporation_factor = draws.between(0.5, 1);
  day.top_depth = std::pow(ze / day.zr, 0.6);
  if (draws.uniform() < 0.4) day.morning = draws.between(0, 30);
  if (draws.uniform() < 0.4) day.evening = draws.between(0, 30);
  day.surface_morning = day.morning * draws.between(1, 2);
  day.surface_evening = day.evening * draws.between(1, 2);
  day.rain_part_morning = day.morning * draws.uniform();
  day.rain_part_evening = day.evening * draws.uniform();
  const double in_roots =
      out.soil.available_mm_m * day.zr + out.soil.below_wilting_mm_m * std::min(ze, day.zr);
  const double in_lower =
      out.soil.available_mm_m * day.lower_depth + out.soil.below_wilting_mm_m * std::max(0.0, ze - day.zr);
  const auto share = [&] { return draws.uniform() < 0.5 ? draws.uniform() : 1 - 0.02 * draws.uniform(); };
  out.before = {tew * draws.uniform(), tew * draws.uniform(), in_roots * share(), in_lower * share()};
  return out;
}

double fixed(double p, double) { return p; }

/// One day through one form, with what must hold of every form.
template <Parts parts, Tie tie, TopRoots top_roots, Reach reach>
void check_day(const Drawn& one) {
  const Soil& soil = one.soil;
  const Day& day = one.day;
  Flows f{};
  const State after = dual<parts, tie, top_roots, reach>(soil, day, one.before, fixed, f);
  const double in_roots = soil.available_mm_m * day.zr + soil.below_wilting_mm_m * std::min(soil.ze, day.zr);
  const double in_lower =
      soil.available_mm_m * day.lower_depth + soil.below_wilting_mm_m * std::max(0.0, soil.ze - day.zr);
  // Water of the ground: what came, what went, what is left.
  BOOST_REQUIRE_SMALL(day.morning + day.evening - f.transpiration - f.evaporation - f.drainage -
                          (one.before.dr + one.before.lower - after.dr - after.lower),
                      1e-9);
  // No layer gives more than it has.
  BOOST_REQUIRE(after.dr >= 0 && after.dr <= in_roots + 1e-9);
  BOOST_REQUIRE(after.lower >= 0 && after.lower <= in_lower + 1e-9);
  BOOST_REQUIRE(f.transpiration >= 0 && f.evaporation_irrigated >= 0 && f.evaporation_rain_part >= 0);
  BOOST_REQUIRE_SMALL(f.evaporation - f.evaporation_irrigated - f.evaporation_rain_part, 1e-12);
  // Roots draw no more from the top layer than they draw at all.
  BOOST_REQUIRE(f.top_draw >= 0 && f.top_draw <= f.transpiration + 1e-12);
  BOOST_REQUIRE(f.rain_part_top_draw >= 0 && f.rain_part_top_draw <= f.transpiration + 1e-12);
  // Water of the top layer, where irrigation wets it; untied.
  BOOST_REQUIRE_SMALL(one.before.de - day.surface_morning - day.surface_evening +
                          f.evaporation_irrigated / day.few + f.top_draw + f.dpe - f.de_untied,
                      1e-9);
  if (tie == Tie::none && parts == Parts::two) {  // and where rain alone does
    const double evaporated = day.few_rain > 0 ? f.evaporation_rain_part / day.few_rain : 0;
    BOOST_REQUIRE_SMALL(one.before.de_rain - day.rain_part_morning - day.rain_part_evening + evaporated +
                            f.rain_part_top_draw + f.dpe_rain - after.de_rain,
                        1e-9);
    BOOST_REQUIRE(after.de_rain >= 0 && f.dpe_rain >= 0);
  }
  if (tie == Tie::to_root_zone) {
    // The exposed top layer is a part of the root zone: it lacks no more than that lacks, it holds no more either.
    const double share = std::min(soil.ze, day.zr) / soil.ze;
    const double rain_part = parts == Parts::two ? day.few_rain * after.de_rain : 0;
    const double lacking = share * (day.few * after.de + rain_part);
    const double holding = share * soil.tew * (day.few + (parts == Parts::two ? day.few_rain : 0)) - lacking;
    BOOST_REQUIRE(lacking <= after.dr + 1e-9);
    BOOST_REQUIRE(holding <= in_roots - after.dr + 1e-9);
  }
}

noonleaf::SoilWater loam() { return soil_of(noonleaf::find_texture("loam")); }  // 130 mm/m, 60 below wilting

}  // namespace

BOOST_AUTO_TEST_SUITE(step_formula)

BOOST_AUTO_TEST_CASE(ten_thousand_days_of_each_form) {
  Draws draws(17);
  for (int i = 0; i < 10000; ++i) {
    const Drawn deep_one = draw(draws, false, false), deep_two = draw(draws, false, true),
                shallow_one = draw(draws, true, false), shallow_two = draw(draws, true, true);
    check_day<Parts::one, Tie::to_root_zone, TopRoots::ignored, Reach::whole_top_layer>(deep_one);
    check_day<Parts::one, Tie::none, TopRoots::drawn, Reach::whole_top_layer>(deep_one);
    check_day<Parts::two, Tie::to_root_zone, TopRoots::drawn, Reach::whole_top_layer>(deep_two);
    check_day<Parts::two, Tie::none, TopRoots::drawn, Reach::whole_top_layer>(deep_two);
    check_day<Parts::one, Tie::to_root_zone, TopRoots::drawn, Reach::part_of_it>(shallow_one);
    check_day<Parts::two, Tie::to_root_zone, TopRoots::drawn, Reach::part_of_it>(shallow_two);
    check_day<Parts::two, Tie::none, TopRoots::drawn, Reach::part_of_it>(shallow_two);
  }
}

// FAO-56 eq. 69 and Table 22, footnote 2, from what the day tells.
BOOST_AUTO_TEST_CASE(the_day_as_eq_69_has_it) {
  auto growth =
      noonleaf::growth_day(noonleaf::find_crop("tomato"), {.start = 2024y / 5 / 1}, 2024y / 8 / 1, {});
  growth.kcb = 0.6;
  growth.cover_frac = 0.3;
  for (const double fw : {1.0, 0.4}) {
    noonleaf::BalanceSettings settings;
    settings.irrigated_frac = fw;
    const auto day = noonleaf::daily_step(noonleaf::initial_state(loam(), 0.7, 1, 0.1), {.et0_mm_d = 6},
                                          growth, loam(), settings);
    BOOST_TEST(day.evaporation_mm > 0.5);
    BOOST_CHECK_CLOSE(day.etc_mm_d, 0.6 * 6 + day.evaporation_mm, 1e-9);
    BOOST_CHECK_CLOSE(day.p_frac, growth.p_frac + 0.04 * (5 - day.etc_mm_d), 1e-9);
  }
}

// Allen et al. 2005: Tew = Kt T, Kt = (1 - De/TEW) / (1 - Dr/TAW) (Ze/Zr)^0.6; numbers of our own. With De 5 of 20 mm
// and Dr 10 of 50 mm, roots of 0.4 m: 0.75 / 0.8 x 0.25^0.6 = 0.9375 x 0.43528 = 0.40807.
BOOST_AUTO_TEST_CASE(what_roots_draw_from_the_top_layer) {
  const Soil soil{8, 20, 125, 60, 0.1, 1.0 / 12};
  Day day{};
  day.zr = 0.4;
  day.top_depth = std::pow(0.25, 0.6);
  Flows f{};
  f.dr_wet = 10;
  f.taw = 50;
  f.transpiration = 3;
  BOOST_CHECK_SMALL(top_draw(soil, day, f, 5, 0) - 3 * 0.40807, 1e-4);
  f.dr_wet = 45;  // a dry root zone under a wet surface: 0.75 / 0.1 x 0.43528 is more than all
  BOOST_CHECK_CLOSE(top_draw(soil, day, f, 5, 0), 3, 1e-9);
  BOOST_TEST(top_draw(soil, day, f, 20, 0) == 0);
  BOOST_CHECK_CLOSE(top_draw(soil, day, f, 5, 6), 1.5, 1e-9);  // 12.5 mm are available in 0.1 m, 11 are gone
}

BOOST_AUTO_TEST_CASE(nothing_is_held_back_while_there_is_enough) {
  const Soil soil{8, 20, 125, 60, 0.1, 1.0 / 12};
  Day day{};
  day.et0 = 5;
  day.zr = 0.05;
  day.lower_depth = 0.95;
  day.kcb = 0.2;
  day.kc_max = 1.2;
  day.few = day.per_few = 1;
  day.p = 0.5;
  day.salt = day.evaporation_factor = 1;
  Flows f{};
  dual<Parts::one, Tie::none, TopRoots::ignored, Reach::part_of_it>(soil, day, {0, 0, 0, 20}, fixed, f);
  BOOST_CHECK_CLOSE(f.evaporation, 5.0, 1e-9);  // (1.2 - 0.2) 5
  BOOST_CHECK_CLOSE(f.lower_evaporation, 2.5, 1e-9);
}

// 130 mm/m available, in the top 0.10 m 60 mm/m more that evaporation alone takes: ground as dry as it gets.
BOOST_AUTO_TEST_CASE(roots_move_through_ground_that_is_dry_below_the_wilting_point) {
  const auto moved = [](double from, double to, double dr, double lower) {
    noonleaf::BalanceState state{.de_mm = 0,
                                 .de_rain_mm = 0,
                                 .dr_mm = dr,
                                 .lower_mm = lower,
                                 .root_depth_m = from,
                                 .profile_depth_m = 1};
    const double gain = noonleaf::move_root_boundary(state, loam(), to);
    BOOST_CHECK_CLOSE(state.dr_mm + state.lower_mm, dr + lower, 1e-9);
    return gain;
  };
  BOOST_CHECK_CLOSE(moved(0.05, 0.10, 0, 123.5 + 3), 6.5 + 3, 1e-9);
  BOOST_CHECK_CLOSE(moved(0.05, 0.075, 0, 123.5 + 3), 3.25 + 1.5, 1e-9);
  BOOST_CHECK_CLOSE(moved(0.05, 0.30, 0, 123.5 + 3), 32.5 + 3, 1e-9);
  BOOST_CHECK_CLOSE(moved(0.30, 0.60, 0, 91), 39, 1e-9);
  BOOST_CHECK_CLOSE(moved(0.10, 0.05, 13 + 6, 0), -(6.5 + 3), 1e-9);
  BOOST_CHECK_CLOSE(moved(0.30, 0.20, 39 + 6, 0), -13, 1e-9);
  BOOST_CHECK_CLOSE(moved(0.30, 0.05, 39 + 6, 0), -(32.5 + 3), 1e-9);
}

// FAO-56 eq. 71 to 77 for bare ground, Kc max 1.20, worked by hand; TEW 10, REW 4 mm, the seed damp up to 5 mm.
BOOST_AUTO_TEST_CASE(a_seed_zone_by_hand) {
  const noonleaf::SeedZone zone{.depth_m = 0.05, .tew_mm = 10, .rew_mm = 4, .damp_mm = 5};
  BOOST_CHECK_CLOSE(noonleaf::seed_zone_depletion_mm(zone, 0, 0, 0.5), 0.6, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::seed_zone_depletion_mm(zone, 3, 1, 0.5), 2.6, 1e-9);
  BOOST_CHECK_SMALL(noonleaf::seed_zone_depletion_mm(zone, 0, 0, 10) - 8.4184, 0.0001);  // 10 - 6 exp(-8/6)
  const auto plan = noonleaf::seed_zone_watering(zone, 5);  // 4 + 6 ln(6/5) = 5.0939 mm of demand, 6 a day
  BOOST_TEST(plan.depth_mm == 5);
  BOOST_CHECK_SMALL(plan.per_day - 1.1779, 0.0001);
  BOOST_CHECK_CLOSE(plan.hours_between * plan.per_day, 12, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::seed_zone_depletion_mm(zone, 0, 0, 5 / plan.per_day), 5, 1e-9);
  // Half of what a layer of 24 mm of loam holds available: 0.5 x 130 x 0.024 mm.
  BOOST_CHECK_CLOSE(noonleaf::seed_zone(loam(), 0.012).damp_mm, 1.56, 1e-9);
}

BOOST_AUTO_TEST_SUITE_END()
