// Corners of the day and of the run: little water, none, half a bed, ground that can give no more.
#include <algorithm>
#include <string>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/initial_state.hpp"
#include "noonleaf/balance/mixed_bed.hpp"
#include "noonleaf/balance/profile.hpp"
#include "noonleaf/balance/quantities.hpp"
#include "noonleaf/balance/run.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/soil/texture.hpp"

using namespace std::chrono_literals;
using noonleaf::BalanceDay;
using noonleaf::BalanceSettings;
using noonleaf::BalanceState;
using noonleaf::BedShare;
using noonleaf::Error;
using noonleaf::find_crop;
using noonleaf::find_texture;
using noonleaf::GrowthDay;
using noonleaf::initial_state;
using noonleaf::missing;
using noonleaf::soil_of;
using noonleaf::SoilWater;

namespace {

const SoilWater loam = soil_of(find_texture("loam"));  // FC 0.25, WP 0.12, Ze 0.10
constexpr auto may_1 = 2024y / 5 / 1;

GrowthDay open_crop() {
  GrowthDay growth = noonleaf::growth_day(find_crop("tomato"), {.start = may_1}, 2024y / 8 / 1, {});
  growth.kcb = 0.3;
  growth.cover_frac = 0.1;
  return growth;
}

std::vector<GrowthDay> lawn(std::size_t n) {
  return noonleaf::growth_days(find_crop("turf_cool"), {.start = 2020y / 1 / 1}, may_1, n, {});
}

std::vector<BalanceDay> dry_days(std::size_t n, double et0 = 4) {
  std::vector<BalanceDay> days(n);
  for (std::size_t i = 0; i < n; ++i)
    days[i] = {.date = std::chrono::sys_days{may_1} + std::chrono::days{static_cast<int>(i)},
               .et0_mm_d = et0};
  return days;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(corners)

// 1000 (0.25 - 0.12) = 130 mm in each metre, and half the wilting point, 60 mm/m, more in the top 0.10 m.
BOOST_AUTO_TEST_CASE(what_each_layer_can_give) {
  const auto roots = noonleaf::root_zone_limits(loam, 0.05);
  BOOST_CHECK_CLOSE(roots.transpiration_mm, 6.5, 1e-9);
  BOOST_CHECK_CLOSE(roots.evaporation_mm, 6.5 + 3, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::root_zone_limits(loam, 0.5).evaporation_mm, 65 + 6, 1e-9);
  const auto lower = noonleaf::lower_layer_limits(loam, 0.05, 1);
  BOOST_CHECK_CLOSE(lower.transpiration_mm, 0.95 * 130, 1e-9);
  BOOST_CHECK_CLOSE(lower.evaporation_mm, 0.95 * 130 + 3, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::lower_layer_limits(loam, 0.3, 1).evaporation_mm, 0.7 * 130, 1e-9);
}

BOOST_AUTO_TEST_CASE(roots_that_stay_bring_nothing) {
  const auto day =
      noonleaf::daily_step(initial_state(loam, 0.7, 1, 0.5), {.et0_mm_d = 5}, open_crop(), loam, {});
  BOOST_TEST(day.root_gain_mm == 0);
  BOOST_TEST(day.correction_mm == 0);
  BOOST_TEST(day.amended_mm == 0);
  BOOST_TEST(day.amended_drained_mm == 0);
}

// 0.8 mm of rain on sealed ground: all of it runs off, none goes in.
BOOST_AUTO_TEST_CASE(a_little_rain_runs_off_too) {
  BalanceSettings sealed;
  sealed.curve_number = 100;
  const BalanceState state = initial_state(loam, 0.7, 1, 0.5);
  const auto day = noonleaf::daily_step(state, {.et0_mm_d = 0, .rain_mm = 0.8}, open_crop(), loam, sealed);
  BOOST_CHECK_CLOSE(day.runoff_mm, 0.8, 1e-9);
  BOOST_CHECK_CLOSE(day.end.dr_mm, state.dr_mm, 1e-9);
}

// Water over seven tenths of a bed of which drip wets 0.35: 10 mm where it falls, which is all of the irrigated part
// and (0.7 - 0.35) / 0.65 of the rest.
BOOST_AUTO_TEST_CASE(water_on_more_than_the_irrigated_part) {
  BalanceSettings drip;
  drip.irrigated_frac = 0.35;
  const BalanceState dry = initial_state(loam, 0.7, 1, 0.9);
  const auto morning = noonleaf::daily_step(dry, {.et0_mm_d = 6, .irrigation_mm = 7, .irrigation_fw = 0.7},
                                            open_crop(), loam, drip);
  BOOST_CHECK_CLOSE(morning.de_wet_mm, dry.de_mm - 10, 1e-9);
  BOOST_CHECK_CLOSE(morning.de_rain_wet_mm, dry.de_rain_mm - 10 * 0.35 / 0.65, 1e-9);
  const auto evening = noonleaf::daily_step(
      dry, {.et0_mm_d = 0, .evening_irrigation_mm = 7, .irrigation_fw = 0.7}, open_crop(), loam, drip);
  BOOST_CHECK_CLOSE(evening.end.de_rain_mm, dry.de_rain_mm - 10 * 0.35 / 0.65, 1e-9);
}

BOOST_AUTO_TEST_CASE(the_part_that_only_rain_wets_dries_out_too) {
  BalanceSettings drip;
  drip.irrigated_frac = 0.35;
  const auto day =
      noonleaf::daily_step(initial_state(loam, 0.7, 1, 0), {.et0_mm_d = 5}, open_crop(), loam, drip);
  BOOST_CHECK_CLOSE(day.end.de_rain_mm, day.evaporation_mm / (day.few + day.few_rain),
                    1e-6);  // as the other part
  BOOST_CHECK_CLOSE(day.end.de_mm, day.end.de_rain_mm, 1e-6);
}

// FAO-56 ch. 7, text to eq. 75: significant rain, 3 to 4 mm (3 here), wets all of the ground; any irrigation its part.
BOOST_AUTO_TEST_CASE(what_wetted_the_ground_last) {
  BalanceSettings printed;
  printed.surface = noonleaf::SurfaceAccount::as_printed;
  printed.irrigated_frac = 0.35;
  BalanceState state = initial_state(loam, 0.7, 1, 0.9);
  state.wetted_frac = 0.35;
  const auto fw = [&](double before, double rain, double irrigation) {
    BalanceState start = state;
    start.wetted_frac = before;
    return noonleaf::daily_step(start, {.et0_mm_d = 5, .rain_mm = rain, .irrigation_mm = irrigation},
                                open_crop(), loam, printed)
        .fw;
  };
  BOOST_TEST(fw(0.35, 2.9, 0) == 0.35);
  BOOST_TEST(fw(0.35, 3.0, 0) == 1);
  BOOST_TEST(fw(0.35, 3.5, 0) == 1);
  BOOST_TEST(fw(1, 0, 0.5) == 0.35);
  BOOST_TEST(fw(1, 0, 0) == 1);
}

BOOST_AUTO_TEST_CASE(ke_of_a_day_with_little_demand) {
  const auto bare = noonleaf::growth_day(noonleaf::bare_soil(), {.start = may_1}, may_1, {});
  const auto ke = [&](double et0) {
    return noonleaf::daily_step(initial_state(loam, 0.1, 1, 0), {.et0_mm_d = et0}, bare, loam, {}).ke;
  };
  BOOST_CHECK_CLOSE(ke(0.5), 1.2, 1e-9);  // FAO-56 eq. 72 for wet, bare ground
  BOOST_TEST(ke(0) == 0);
}

// Roots of 0.05 m over a top layer of 0.10 m: half of the evaporation comes from below them, while there is any.
BOOST_AUTO_TEST_CASE(below_shallow_roots_evaporation_stops_at_half_the_wilting_point) {
  GrowthDay seedling = open_crop();
  seedling.root_depth_m = 0.05;
  BalanceState state = initial_state(loam, 0.05, 0.1, 0);
  const double limit = noonleaf::lower_layer_limits(loam, 0.05, 0.1).evaporation_mm;
  BOOST_CHECK_CLOSE(limit, 6.5 + 3, 1e-9);
  state.lower_mm = limit - 0.2;
  for (int i = 0; i < 5; ++i) {
    state.de_mm = state.de_rain_mm = 0;  // however wet the surface is said to be
    state = noonleaf::daily_step(state, {.et0_mm_d = 8}, seedling, loam, {}).end;
    BOOST_TEST(state.lower_mm <= limit + 1e-9);
  }
  BOOST_CHECK_CLOSE(state.lower_mm, limit, 1e-6);
}

BOOST_AUTO_TEST_CASE(snow_and_frost_at_their_edges) {
  using noonleaf::GroundState;
  const auto after = [](double t_max, double t_min, double rain) {
    return noonleaf::ground_state(GroundState::open, t_max, t_min, rain);
  };
  BOOST_TEST((after(3, -1, 0.5) == GroundState::snow));  // a mean of 1 °C
  BOOST_TEST((after(3.2, -1, 0.5) == GroundState::open));
  BOOST_TEST((after(4, -1.5, 5) == GroundState::open));
  BOOST_TEST((after(-2, -6, 0) == GroundState::frozen));
  BOOST_TEST((after(0, -6, 0) == GroundState::frozen));
  BOOST_TEST((after(0.5, -6, 0) == GroundState::open));
  BOOST_TEST((noonleaf::ground_state(GroundState::snow, 5, 0, 0) == GroundState::snow));
  BOOST_TEST((noonleaf::ground_state(GroundState::snow, 5, 0.5, 0) == GroundState::open));
}

// USDA-NRCS 1998, from memory: quarters of the available water, and the last step at field capacity.
BOOST_AUTO_TEST_CASE(steps_of_the_hand_as_printed) {
  const double edges[][2] = {{0, 0.25}, {0.25, 0.5}, {0.5, 0.75}, {0.75, 1}, {1, 1}};
  const auto table = noonleaf::feel_table();
  BOOST_REQUIRE_EQUAL(table.size(), 5U);
  for (std::size_t i = 0; i < 5; ++i) {
    BOOST_TEST(table[i].available_low == edges[i][0]);
    BOOST_TEST(table[i].available_high == edges[i][1]);
  }
}

BOOST_AUTO_TEST_CASE(a_start_without_weather_stays_in_the_middle) {
  const auto state = noonleaf::spin_up(loam, 1.2, dry_days(1, 0), lawn(1), {});
  BOOST_CHECK_CLOSE(state.dr_mm, 0.5 * taw_mm(loam, lawn(1).front().root_depth_m), 1e-9);
}

BOOST_AUTO_TEST_CASE(a_soaking_on_the_first_day_is_the_day_it_is_forgotten) {
  auto days = dry_days(5, 0);
  days[0].rain_mm = 400;
  const auto matters = noonleaf::start_matters(loam, 1.2, days, lawn(5), {});
  BOOST_REQUIRE(matters.forgotten_on.has_value());
  BOOST_TEST(*matters.forgotten_on == 0U);
}

BOOST_AUTO_TEST_CASE(the_mean_of_what_passes_the_roots) {
  const std::vector<BedShare> bed = {{0.5, 2, 30, 80}, {0.3, 9, 8, 20}, {0.2, 4, 40, 100}};
  BOOST_CHECK_CLOSE(noonleaf::water_mixed_bed(bed)->mean_percolation_mm, 0.5 * 7 + 0.2 * 5, 1e-9);
  const auto little = noonleaf::water_mixed_bed(std::vector<BedShare>{{1, 0.4, 0.5, 1}});
  BOOST_REQUIRE(little.has_value());
  BOOST_TEST(little->depth_mm == 0.4);
}

BOOST_AUTO_TEST_CASE(which_day_does_not_follow) {
  const auto start = initial_state(loam, 0.15, 1, 0);
  const auto message = [&](std::size_t moved) {
    auto days = dry_days(4);
    days[moved].date = 2024y / 9 / 1;
    try {
      noonleaf::run_balance(start, days, lawn(4), loam, {});
    } catch (const Error& refused) {
      return refused.problems().front().message;
    }
    return std::string("none");
  };
  BOOST_TEST(message(0) == "day 2 does not follow the day before");
  BOOST_TEST(message(3) == "day 4 does not follow the day before");
}

// On dry ground a finding changes both accounts: Dr by the difference, the surface too where all is full.
BOOST_AUTO_TEST_CASE(a_finding_on_dry_ground) {
  const auto days = dry_days(12);
  const auto growth = lawn(12);
  const auto start = initial_state(loam, growth.front().root_depth_m, 1, 0.3);
  const auto found = [&](noonleaf::Correction one) {
    one.date = days[8].date;
    return noonleaf::run_balance(start, days, growth, loam, {}, std::vector<noonleaf::Correction>{one});
  };
  const auto by_dr = found({.date = {}, .dr_mm = 3});
  const double before = by_dr.days[7].end.dr_mm;
  BOOST_TEST(before > 10);
  BOOST_CHECK_CLOSE(by_dr.days[8].correction_mm, 3 - before, 1e-9);
  BOOST_CHECK_CLOSE(by_dr.days[8].start.de_mm, by_dr.days[7].end.de_mm,
                    1e-9);  // nothing was said of the surface
  const auto full = found({.date = {}, .dr_mm = 0});
  BOOST_TEST(full.days[7].end.de_mm > 1);
  BOOST_TEST(full.days[8].start.de_mm == 0);
  const auto by_de = found({.date = {}, .dr_mm = missing, .de_mm = 0.5});
  BOOST_TEST(by_de.days[8].start.de_mm == 0.5);
  BOOST_TEST(by_de.days[8].correction_mm == 0);
  BOOST_CHECK_NO_THROW(found({.date = {}, .dr_mm = missing, .de_mm = 0}));
  BOOST_CHECK_NO_THROW(found({.date = {}, .dr_mm = missing, .de_mm = tew_mm(loam)}));
  BOOST_CHECK_THROW(found({.date = {}, .dr_mm = missing, .de_mm = -0.001}), Error);
  BOOST_CHECK_THROW(found({.date = {}, .dr_mm = missing, .de_mm = tew_mm(loam) + 0.001}), Error);
}

// After a gap the ground below is taken as dry as the roots were found, and never drier than empty.
BOOST_AUTO_TEST_CASE(below_the_roots_after_a_gap) {
  auto days = dry_days(6);
  days[1].et0_mm_d = missing;
  const auto growth = lawn(6);
  const double zr = growth.front().root_depth_m, taw = taw_mm(loam, zr);
  const auto restarted = [&](double dr) {
    const std::vector<noonleaf::Correction> found = {{.date = days[3].date, .dr_mm = dr}};
    return noonleaf::run_balance(initial_state(loam, zr, 1.2, 0.4), days, growth, loam, {}, found)
        .days[3]
        .start;
  };
  BOOST_CHECK_CLOSE(restarted(0.25 * taw).lower_mm, 0.25 * taw_mm(loam, 1.2 - zr), 1e-9);
  BOOST_CHECK_CLOSE(restarted(taw + 2).lower_mm, taw_mm(loam, 1.2 - zr),
                    1e-9);  // 2 mm of it lie below wilting
}

BOOST_AUTO_TEST_CASE(a_plant_with_enough_loses_nothing) {
  auto days = dry_days(20);
  for (auto& day : days) day.irrigation_mm = 6;
  const auto growth = lawn(20);
  const auto run =
      noonleaf::run_balance(initial_state(loam, growth.front().root_depth_m, 1, 0), days, growth, loam, {});
  BOOST_CHECK_SMALL(run.stress_mm, 1e-9);
}

// Which rows the working of a day shows: those that the day needs.
BOOST_AUTO_TEST_CASE(rows_that_a_day_needs) {
  const auto day_with = [](const BalanceSettings& settings, double rain = 0, double et0 = 5) {
    BalanceState state = initial_state(loam, 0.3, 1, 0.2);
    return noonleaf::daily_step(
        state, {.et0_mm_d = et0, .rain_mm = rain},
        [] {
          GrowthDay growth = open_crop();
          growth.root_depth_m = 0.3;
          return growth;
        }(),
        loam, settings);
  };
  const auto shown = [](const noonleaf::BalanceDetail& day, std::string_view member,
                        std::string_view equation = {}) {
    for (const auto& row : noonleaf::balance_quantities())
      if (row.member == member && (equation.empty() || row.equation == equation) &&
          (row.applies == nullptr || row.applies(day)))
        return true;
    return false;
  };
  BalanceSettings drip, mulched, salty, drawn, sheds;
  drip.irrigated_frac = 0.35;
  mulched.evaporation_factor = 0.75;
  salty.salt_stress = 0.9;
  drawn.top_roots = noonleaf::TopLayerRoots::drawn;
  sheds.curve_number = 80;
  const auto plain = day_with({});
  BOOST_TEST(!shown(plain, "few_rain"));
  BOOST_TEST(shown(day_with(drip), "few_rain"));
  BOOST_TEST(!shown(plain, "evaporation_factor"));
  BOOST_TEST(shown(day_with(mulched), "evaporation_factor"));
  BOOST_TEST(!shown(plain, "salt_stress"));
  BOOST_TEST(shown(day_with(salty), "salt_stress"));
  BOOST_TEST(!shown(plain, "top_transpiration_mm"));
  BOOST_TEST(shown(day_with(drawn), "top_transpiration_mm"));
  BOOST_TEST(!shown(plain, "evaporation_mm"));  // nothing was cut
  BOOST_TEST(shown(plain, "ke"));
  BOOST_TEST(shown(day_with({}, 0, 0.5), "ke"));
  BOOST_TEST(!shown(day_with({}, 0, 0), "ke"));
  BOOST_TEST(!shown(plain, "curve_number"));
  BOOST_TEST(shown(day_with(sheds, 30), "curve_number"));
  for (const double fc : {0.1, 0.9}) {
    auto leaves = plain;
    leaves.fc = fc;
    leaves.few = std::min(1 - fc, leaves.fw);
    BOOST_TEST(shown(leaves, "few", "min(1 - fc, fw)"));
    leaves.few *= 0.8;
    BOOST_TEST(shown(leaves, "few", "min(1 - fc, (1 - 0.67 fc) fw)"));
  }
  auto told = plain;
  BOOST_TEST(!shown(told, "correction_mm"));
  BOOST_TEST(!shown(told, "amended_mm"));
  told.correction_mm = 1;
  told.amended_mm = 1;
  BOOST_TEST(shown(told, "correction_mm"));
  BOOST_TEST(shown(told, "amended_mm"));
  auto of_curve = day_with(sheds, 30);
  of_curve.curve_number = 80;  // TR-55 eq. 2-4: 25400 / 80 - 254 = 63.5 mm
  for (const auto& row : noonleaf::balance_quantities())
    if (row.symbol == "S") BOOST_CHECK_CLOSE(row.value(of_curve), 63.5, 1e-9);
  told.irrigation_mm = 14;  // of the whole day
  told.evening_irrigation_mm = 4;
  for (const auto& row : noonleaf::balance_quantities())
    if (row.symbol == "I") BOOST_TEST(row.value(told) == 10);
}

BOOST_AUTO_TEST_CASE(little_depletions_are_depletions) {
  BalanceState state = initial_state(loam, 0.5, 1, 0);
  state.dr_mm = 0.4;
  state.lower_mm = 0.3;
  BOOST_TEST(noonleaf::net_refill_mm(state) == 0.4);
  const auto same = noonleaf::state_in_other_soil(state, loam, loam);
  BOOST_TEST(same.state.dr_mm == 0.4);
  BOOST_TEST(same.state.lower_mm == 0.3);
  BOOST_TEST(same.drained_mm == 0);
  const auto day = noonleaf::daily_step(state, {.et0_mm_d = 0}, open_crop(), loam, {});
  BOOST_TEST(noonleaf::depletion_within_day_mm(day, 0) < 1);
  BOOST_CHECK_NO_THROW(noonleaf::depletion_within_day_mm(day, 1));
  BOOST_CHECK_THROW(noonleaf::depletion_within_day_mm(day, 1.001), Error);
  BOOST_CHECK_THROW(noonleaf::depletion_within_day_mm(day, -0.001), Error);
}

// What evaporates below shallow roots is not taken from them.
BOOST_AUTO_TEST_CASE(within_the_day_of_a_seedling) {
  GrowthDay seedling = open_crop();
  seedling.root_depth_m = 0.05;
  const auto day =
      noonleaf::daily_step(initial_state(loam, 0.05, 1, 0.2), {.et0_mm_d = 4}, seedling, loam, {});
  BOOST_TEST(day.lower_evaporation_mm > 0.5);
  BOOST_CHECK_CLOSE(noonleaf::depletion_within_day_mm(day, 1), day.end.dr_mm, 1e-9);
}

BOOST_AUTO_TEST_CASE(beyond_the_limit_on_the_first_day) {
  const auto days = dry_days(3);
  const auto growth = lawn(3);
  const auto run =
      noonleaf::run_balance(initial_state(loam, growth.front().root_depth_m, 1, 0.9), days, growth, loam, {});
  BOOST_REQUIRE(noonleaf::first_day_beyond_raw(run.days).has_value());
  BOOST_TEST(*noonleaf::first_day_beyond_raw(run.days) == 0U);
}

BOOST_AUTO_TEST_SUITE_END()
