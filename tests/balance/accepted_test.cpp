// The ranges of the doors of this folder, as their headers or their messages name them: both ends are taken, the next
// number beyond is not.
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/evaporation.hpp"
#include "noonleaf/balance/initial_state.hpp"
#include "noonleaf/balance/mixed_bed.hpp"
#include "noonleaf/balance/mulch.hpp"
#include "noonleaf/balance/root_zone.hpp"
#include "noonleaf/balance/run.hpp"
#include "noonleaf/balance/seed_zone.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/soil/texture.hpp"

#include "accepted_range.hpp"

using namespace noonleaf;
using namespace std::chrono_literals;

namespace {

const SoilWater loam = soil_of(find_texture("loam"));  // FC 0.25, WP 0.12

GrowthDay tomato() { return growth_day(find_crop("tomato"), {.start = 2024y / 5 / 1}, 2024y / 8 / 1, {}); }

BalanceDetail day_with(const BalanceDay& day, const BalanceSettings& settings = {}) {
  return daily_step(initial_state(loam, 0.7, 1.0, 0.5), day, tomato(), loam, settings);
}

BalanceDetail settings_with(double BalanceSettings::*which, double value) {
  BalanceSettings settings;
  settings.*which = value;
  return day_with({.et0_mm_d = 5}, settings);
}

}  // namespace

BOOST_AUTO_TEST_SUITE(accepted)

BOOST_AUTO_TEST_CASE(of_building_blocks) {
  check_accepted("fc", 0, 0.99, [](double x) { return exposed_wetted_frac(x, 1, EmitterPlace::open); });
  check_accepted("fw", 0.01, 1, [](double x) { return exposed_wetted_frac(0.5, x, EmitterPlace::open); });
  check_accepted("p_frac", 0, 1, [](double x) { return depletion_fraction(x, 5); });
}

BOOST_AUTO_TEST_CASE(of_a_day) {
  check_accepted("et0_mm_d", 0, 30, [](double x) { return day_with({.et0_mm_d = x}); });
  check_accepted("rain_mm", 0, 2000, [](double x) { return day_with({.et0_mm_d = 5, .rain_mm = x}); });
  check_accepted("rain_mm", 0, 2000,
                 [](double x) { return day_with({.et0_mm_d = 5, .evening_rain_mm = x}); });
  check_accepted("irrigation_mm", 0, 2000,
                 [](double x) { return day_with({.et0_mm_d = 5, .irrigation_mm = x}); });
  check_accepted("irrigation_mm", 0, 2000,
                 [](double x) { return day_with({.et0_mm_d = 5, .evening_irrigation_mm = x}); });
  check_accepted("irrigation_fw", 0.01, 1,
                 [](double x) { return day_with({.et0_mm_d = 5, .irrigation_mm = 3, .irrigation_fw = x}); });
  check_accepted("evaporation_factor", 0, 1,
                 [](double x) { return day_with({.et0_mm_d = 5, .evaporation_factor = x}); });
  check_accepted("irrigated_frac", 0.01, 1,
                 [](double x) { return settings_with(&BalanceSettings::irrigated_frac, x); });
  check_accepted("salt_stress", 0, 1,
                 [](double x) { return settings_with(&BalanceSettings::salt_stress, x); });
  check_accepted("evaporation_factor", 0, 1,
                 [](double x) { return settings_with(&BalanceSettings::evaporation_factor, x); });
}

BOOST_AUTO_TEST_CASE(of_depths) {
  check_accepted("root_depth_m", 0.01, 10, [](double x) { return initial_state(loam, x, 10, 0); });
  check_accepted("profile_depth_m", 0.7, 10, [](double x) { return initial_state(loam, 0.7, x, 0); });
  check_accepted("profile_depth_m", 0.1, 10, [](double x) { return initial_state(loam, 0.05, x, 0); });
  check_accepted("depleted_frac", 0, 1, [](double x) { return initial_state(loam, 0.7, 1, x); });
  check_accepted("root_depth_m", 0.01, 10, [](double x) {
    GrowthDay growth = tomato();
    growth.root_depth_m = x;
    BalanceState state = initial_state(loam, 0.7, 10, 0.5);
    if (x > 10) state.profile_depth_m = 11;  // the guard on the depth itself must speak
    return daily_step(state, {.et0_mm_d = 5}, growth, loam, {});
  });
  check_accepted("root_depth_m", 0.01, 10, [](double x) {
    BalanceState state = initial_state(loam, 0.7, 10, 0.5);
    state.root_depth_m = x;
    state.profile_depth_m = 11;
    return daily_step(state, {.et0_mm_d = 5}, tomato(), loam, {});
  });
}

BOOST_AUTO_TEST_CASE(of_a_probe) {
  const auto probe = [](const MeasuredMoisture& moisture) {
    return state_from_moisture(loam, 0.5, 1.2, moisture);
  };
  SoilWater unknown = loam;
  unknown.saturation_m3_m3 = missing;
  const double wilting = loam.wilting_point_m3_m3, full = loam.saturation_m3_m3;
  check_accepted("root_zone_m3_m3", wilting / 2, full, [&](double x) { return probe({x, 0.2, 0.2}); });
  check_accepted("top_layer_m3_m3", wilting / 2, full, [&](double x) { return probe({0.2, x, 0.2}); });
  check_accepted("lower_m3_m3", wilting / 2, full, [&](double x) { return probe({0.2, 0.2, x}); });
  check_accepted("root_zone_m3_m3", wilting / 2, 0.6, [&](double x) {
    return state_from_moisture(unknown, 0.5, 1.2, {x, 0.2, 0.2});
  });
}

// A hundred thousand days and no more, one and no fewer: told before anything is reckoned.
BOOST_AUTO_TEST_CASE(of_the_days_of_a_start) {
  const std::vector<BalanceDay> many(100001, BalanceDay{.et0_mm_d = 3});
  const std::vector<GrowthDay> growth(100001, tomato());
  const auto field_of = [&](std::size_t n, auto door) -> std::string {
    try {
      door(loam, 1.2, std::span(many).first(n), std::span(growth).first(n), BalanceSettings{});
    } catch (const Error& refused) {
      return refused.problems().front().field;
    }
    return "";
  };
  for (const auto& door : {+[](const SoilWater&soil, double profile, std::span<const BalanceDay> days,
                               std::span<const GrowthDay> crop, const BalanceSettings&settings) {
                             spin_up(soil, profile, days, crop, settings);
                           },
                           +[](const SoilWater&soil, double profile, std::span<const BalanceDay> days,
                               std::span<const GrowthDay> crop, const BalanceSettings&settings) {
                             start_matters(soil, profile, days, crop, settings);
                           }}) {
    BOOST_TEST(field_of(0, door) == "days");
    BOOST_TEST(field_of(1, door) == "");
    BOOST_TEST(field_of(100000, door) == "date");  // as many are looked at, and they have no dates
    BOOST_TEST(field_of(100001, door) == "days");
  }
}

BOOST_AUTO_TEST_CASE(of_beds) {
  const auto bed = [](double share) { return water_mixed_bed(std::vector<BedShare>{{share, 12, 30, 80}}); };
  check_accepted("share_frac", 1e-6, 1, bed);
  BOOST_CHECK_NO_THROW(water_mixed_bed(std::vector<BedShare>{{0.5, 12, 30, 80}, {0.5 + 0.95e-9, 9, 8, 20}}));
  BOOST_CHECK_THROW(water_mixed_bed(std::vector<BedShare>{{0.5, 12, 30, 80}, {0.5 + 1.05e-9, 9, 8, 20}}),
                    Error);
  check_accepted("depth_mm", 0, 2000, [](double x) {
    return outcomes_of_depth(std::vector<BedShare>{{1, 12, 30, 80}}, x);
  });
  check_accepted("covered_frac", 0, 1,
                 [](double x) { return mulch_evaporation_factor(MulchKind::plastic, x); });
}

BOOST_AUTO_TEST_CASE(of_the_seed_zone) {
  const SeedZone zone = seed_zone(loam, 0.01);
  check_accepted("sowing_depth_m", 0, 0.15, [](double x) { return seed_zone(loam, x); });
  check_accepted("water_mm", 0, 500, [&](double x) { return seed_zone_depletion_mm(zone, 1, x, 2); });
  check_accepted("et0_mm", 0, 20, [&](double x) { return seed_zone_depletion_mm(zone, 1, 0, x); });
  check_accepted("et0_mm_d", 0.1, 20, [&](double x) { return seed_zone_watering(zone, x); });
}

BOOST_AUTO_TEST_SUITE_END()
