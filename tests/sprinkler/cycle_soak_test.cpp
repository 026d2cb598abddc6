#include "noonleaf/sprinkler/cycle_soak.hpp"

#include <cmath>
#include <ostream>
#include <string>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/units.hpp"

#include "refusal.hpp"

using namespace noonleaf;

namespace {

// A soil that takes in exactly `intake_mm_h` whatever it has had: saturated from the start. On it the
// protocol formula for the longest cycle, 60 SA / (PR - IR), and Green and Ampt agree.
IntakeState steady_intake(double intake_mm_h) {
  GreenAmptSoil soil = green_ampt_soil("loam");
  soil.conductivity_mm_h = intake_mm_h;
  return {.soil = soil, .initial_saturation_frac = 1.0};
}

struct LongestCycle {
  double rate_in_h, intake_in_h, storage_in, minutes;
};
std::ostream& operator<<(std::ostream& out, const LongestCycle& row) {
  return out << row.rate_in_h << " in/h on " << row.intake_in_h;
}

// Performance-test protocol (US EPA / ASABE): formula from memory, values derived. Half the last digit.
const std::vector<LongestCycle> longest_cycles = {
    {1.5, 0.1, 0.2, 8.571}, {1.0, 0.35, 0.3, 27.692}, {1.6, 0.4, 0.33, 16.5}};

struct Split {
  double total_min, longest_min;
  std::size_t cycles;
  double each_min;
};
std::ostream& operator<<(std::ostream& out, const Split& row) {
  return out << row.total_min << " min in cycles of " << row.longest_min;
}

// cycles = ceil(total / longest), equal: derived.
const std::vector<Split> splits = {{48, 15, 4, 12}, {60, 20, 3, 20}, {25, 30, 1, 25}};

double total_minutes(const CyclePlan& plan) {
  double sum = 0.0;
  for (const Cycle& cycle : plan.cycles) sum += cycle.minutes;
  return sum;
}

CycleRequest loam_request(double rate_mm_h, double minutes) {
  return {.intake = {.soil = green_ampt_soil("loam"), .initial_saturation_frac = 0.5},
          .rate_mm_h = rate_mm_h,
          .minutes = minutes,
          .surface_storage_mm = surface_storage_mm("loam", 2.0)};
}

}  // namespace

BOOST_AUTO_TEST_SUITE(cycle_soak)

BOOST_DATA_TEST_CASE(longest_cycle_as_the_protocol_has_it, boost::unit_test::data::make(longest_cycles),
                     row) {
  CycleRequest request{.intake = steady_intake(mm_from_inches(row.intake_in_h)),
                       .rate_mm_h = mm_from_inches(row.rate_in_h),
                       .minutes = row.minutes - 0.0005,
                       .surface_storage_mm = mm_from_inches(row.storage_in),
                       .most_cycles = 1};
  BOOST_CHECK(cycle_plan(request).reason == CycleReason::one_run);
  BOOST_CHECK_SMALL(inches_from_mm(cycle_plan(request).cycles[0].standing_mm) - row.storage_in, 5e-5);
  request.minutes = row.minutes + 0.0005;
  BOOST_CHECK(cycle_plan(request).reason == CycleReason::too_many_cycles);
}

BOOST_DATA_TEST_CASE(fewest_equal_cycles, boost::unit_test::data::make(splits), row) {
  const double rate = 30.0;
  const double intake = 10.0;
  const CyclePlan plan = cycle_plan({.intake = steady_intake(intake),
                                     .rate_mm_h = rate,
                                     .minutes = row.total_min,
                                     .surface_storage_mm = (rate - intake) * row.longest_min / 60.0,
                                     .most_cycles = 20});
  BOOST_TEST(plan.cycles.size() == row.cycles);
  for (const Cycle& cycle : plan.cycles) BOOST_TEST(cycle.minutes == row.each_min);
}

BOOST_AUTO_TEST_CASE(the_pause_lets_the_standing_water_in) {
  // Protocol, derived: 1.0 in/h on 0.35 in/h for 27.69 min leaves 0.30 in, which takes 51.43 min: in
  // fives, 55.
  const CyclePlan plan = cycle_plan({.intake = steady_intake(mm_from_inches(0.35)),
                                     .rate_mm_h = mm_from_inches(1.0),
                                     .minutes = 54,
                                     .surface_storage_mm = mm_from_inches(0.3)});
  BOOST_TEST(plan.cycles.size() == 2U);
  BOOST_TEST(plan.soak_min == 55.0);
}

BOOST_AUTO_TEST_CASE(a_rate_the_soil_takes_is_one_run) {
  const CyclePlan plan = cycle_plan(loam_request(3.0, 240));
  BOOST_CHECK(plan.reason == CycleReason::one_run);
  BOOST_TEST(plan.cycles.size() == 1U);
  BOOST_TEST(plan.soak_min == 0.0);
  BOOST_TEST(std::isinf(plan.cycles[0].ponds_after_min));
  BOOST_TEST(plan.cycles[0].standing_mm == 0.0);
  BOOST_CHECK_SMALL(plan.cycles[0].infiltrated_mm - 12.0, 1e-12);
}

BOOST_AUTO_TEST_CASE(first_cycle_is_green_and_ampt) {
  const CycleRequest request = loam_request(25.0, 40);
  const CyclePlan plan = cycle_plan(request);
  BOOST_CHECK_SMALL(plan.cycles[0].ponds_after_min - ponding_time_min(request.intake, 25.0), 1e-12);
  const double minutes = plan.cycles[0].minutes;
  BOOST_CHECK_SMALL(plan.cycles[0].standing_mm -
                        (25.0 * minutes / 60 - infiltrated_under_rate_mm(request.intake, 25.0, minutes)),
                    1e-9);
}

// Whatever the soil and the rate: nothing lost, nothing over the storage, no cycle too many.
BOOST_AUTO_TEST_CASE(plans_keep_their_promises) {
  for (const GreenAmptSoil& soil : green_ampt_soils()) {
    for (const double saturation : {0.0, 0.5, 0.95, 1.0}) {
      for (const double rate : {5.0, 25.0, 60.0, 200.0}) {
        for (const double minutes : {0.5, 1.0, 7.0, 25.0, 62.5}) {
          const CycleRequest request{.intake = {.soil = soil, .initial_saturation_frac = saturation},
                                     .rate_mm_h = rate,
                                     .minutes = minutes,
                                     .surface_storage_mm = surface_storage_mm(soil.texture, 5.0),
                                     .most_cycles = 3};
          const CyclePlan plan = cycle_plan(request);
          BOOST_CHECK_SMALL(total_minutes(plan) + plan.left_out_min - minutes, 1e-9);
          BOOST_TEST(plan.cycles.size() <= 3U);
          double infiltrated = 0.0;
          for (const Cycle& cycle : plan.cycles) {
            BOOST_TEST(cycle.standing_mm <= request.surface_storage_mm + 1e-6);
            infiltrated += rate * cycle.minutes / 60.0;
            BOOST_CHECK_SMALL(cycle.infiltrated_mm - infiltrated, 1e-9);  // carried over the cycles
            BOOST_TEST(cycle.ponds_after_min <= plan.cycles[0].ponds_after_min + 1e-9);
          }
          if (plan.cycles.size() > 1) BOOST_TEST(plan.soak_min >= 15.0);
          BOOST_TEST((plan.left_out_min > 0.0) == (plan.reason == CycleReason::too_many_cycles));
        }
      }
    }
  }
}

BOOST_AUTO_TEST_CASE(more_allowed_cycles_never_leave_out_more) {
  double before = 1e9;
  for (int most = 1; most <= 6; ++most) {
    CycleRequest request = loam_request(40.0, 60);
    request.most_cycles = most;
    const double left_out = cycle_plan(request).left_out_min;
    BOOST_TEST(left_out <= before);
    before = left_out;
  }
  BOOST_TEST(before < 20.0);
}

// The second cycle marched in small steps: the front runs through the dried layer, meets the old one, goes on
// below.
BOOST_AUTO_TEST_CASE(second_cycle_agrees_with_a_march_through_the_layers) {
  for (const double rate : {25.0, 40.0}) {
    const CycleRequest request = loam_request(rate, rate > 30 ? 30.0 : 52.0);
    const CyclePlan plan = cycle_plan(request);
    BOOST_REQUIRE(plan.cycles.size() == 2U);
    const GreenAmptSoil& soil = request.intake.soil;
    const double k = soil.conductivity_mm_h;
    const double initial = request.intake.initial_saturation_frac;
    const double carried = plan.cycles[0].infiltrated_mm;

    // Drying starts when the standing water of the first cycle is in.
    double depth = carried - plan.cycles[0].standing_mm;
    double soaked_min = 0.0;
    const double step_min = 0.001;
    while (depth < carried) {
      depth += step_min / 60.0 * intake_rate_mm_h(request.intake, depth);
      soaked_min += step_min;
    }
    const double saturation =
        saturation_after_pause_frac(request.intake, carried, plan.soak_min - soaked_min);
    const double layer_mm = carried / ((1.0 - initial) * soil.effective_porosity_m3_m3);  // thickness, full
    const double layer_now_mm = carried / ((saturation - initial) * soil.effective_porosity_m3_m3);
    BOOST_TEST(layer_now_mm > layer_mm);

    double front_mm = 0.0;  // depth of the new front
    double standing = 0.0;
    for (double minute = 0.0; minute < plan.cycles[1].minutes - 1e-9; minute += step_min) {
      const double deficit =
          (front_mm < layer_now_mm ? 1.0 - saturation : 1.0 - initial) * soil.effective_porosity_m3_m3;
      const double capacity = front_mm > 0.0 ? k * (1.0 + soil.suction_head_mm / front_mm) : 1e9;
      const double supply = rate + standing / (step_min / 60.0);
      const double taken = std::min(capacity, supply) * step_min / 60.0;
      standing += rate * step_min / 60.0 - taken;
      front_mm += taken / deficit;
    }
    BOOST_CHECK_SMALL(plan.cycles[1].standing_mm - standing, 0.02);  // the march's own step
  }
}

BOOST_AUTO_TEST_CASE(a_pause_dries_the_layer_by_its_equation) {
  for (const GreenAmptSoil& soil : green_ampt_soils()) {
    const IntakeState state{.soil = soil, .initial_saturation_frac = 0.3};
    const double carried = 12.0;
    const double exponent = 3.0 + 2.0 / soil.pore_size_index;
    double saturation = 1.0;
    const int steps = 20000;
    const double step_h = 1.0 / steps;
    const auto slope = [&](double s) {
      return -(s - 0.3) * soil.conductivity_mm_h * std::pow(s, exponent) / carried;
    };
    for (int step = 0; step < steps; ++step)
      saturation += step_h * slope(saturation + 0.5 * step_h * slope(saturation));
    BOOST_CHECK_SMALL(saturation_after_pause_frac(state, carried, 60.0) - saturation, 1e-5);
  }
}

BOOST_AUTO_TEST_CASE(a_longer_pause_dries_more_and_never_below_the_start) {
  const IntakeState state{.soil = green_ampt_soil("sandy loam"), .initial_saturation_frac = 0.4};
  BOOST_TEST(saturation_after_pause_frac(state, 10.0, 0.0) == 1.0);
  double before = 1.0;
  for (double minutes = 5.0; minutes <= 14400.0; minutes *= 2.0) {
    const double saturation = saturation_after_pause_frac(state, 10.0, minutes);
    BOOST_TEST(saturation < before);
    BOOST_TEST(saturation > 0.4);
    before = saturation;
  }
  const IntakeState full{.soil = green_ampt_soil("sand"), .initial_saturation_frac = 1.0};
  BOOST_TEST(saturation_after_pause_frac(full, 10.0, 600.0) == 1.0);
  const IntakeState quick{.soil = green_ampt_soil("sand"), .initial_saturation_frac = 0.9};
  BOOST_CHECK_SMALL(saturation_after_pause_frac(quick, 0.01, 14400.0) - 0.9, 1e-12);
}

struct Storage {
  const char* texture;
  double slope_pct, inches;
};
std::ostream& operator<<(std::ostream& out, const Storage& row) {
  return out << row.texture << " " << row.slope_pct;
}

// Performance-test protocol tables (US EPA / ASABE), from memory, confidence medium.
const std::vector<Storage> storages = {
    {"clay loam", 2, 0.26},  {"clay loam", 5, 0.22},  {"clay loam", 10, 0.18},  {"clay loam", 20, 0.15},
    {"loam", 3, 0.30},       {"loam", 4, 0.25},       {"loam", 7, 0.21},        {"loam", 13, 0.17},
    {"sandy loam", 0, 0.33}, {"sandy loam", 6, 0.29}, {"sandy loam", 12, 0.24}, {"sandy loam", 100, 0.20},
    {"sand", 1, 0.40},       {"sand", 5, 0.35},       {"sand", 9, 0.30},        {"sand", 14, 0.25},
};
BOOST_DATA_TEST_CASE(storage_by_texture_and_slope, boost::unit_test::data::make(storages), row) {
  BOOST_CHECK_SMALL(inches_from_mm(surface_storage_mm(row.texture, row.slope_pct)) - row.inches, 1e-12);
}

// USDA suggested maximum sprinkler rates, slopes to 5 %, bare over covered, in/h; from memory (NEH sect. 15,
// ch. 11).
BOOST_AUTO_TEST_CASE(bare_ground_takes_its_share_of_covered) {
  BOOST_TEST(noonleaf::bare_intake_share("sand") == 2.0 / 2.0);
  BOOST_TEST(noonleaf::bare_intake_share("sandy_loam") == 1.0 / 1.75);
  BOOST_TEST(noonleaf::bare_intake_share("Silt Loam") == 0.5 / 1.0);
  BOOST_TEST(noonleaf::bare_intake_share("clay loam") == 0.15 / 0.2);
  for (const auto& soil : noonleaf::green_ampt_soils()) {
    BOOST_TEST(noonleaf::bare_intake_share(soil.texture) > 0);
    BOOST_TEST(noonleaf::bare_intake_share(soil.texture) <= 1);
  }
  BOOST_CHECK_THROW(noonleaf::bare_intake_share("chalk"), noonleaf::Error);
}

BOOST_AUTO_TEST_CASE(every_texture_has_a_storage_that_shrinks_with_slope) {
  for (const GreenAmptSoil& soil : green_ampt_soils()) {
    double before = 100.0;
    for (const double slope : {0.0, 5.0, 10.0, 15.0}) {
      BOOST_TEST(surface_storage_mm(soil.texture, slope) < before);
      before = surface_storage_mm(soil.texture, slope);
    }
  }
  BOOST_TEST(refused_fields([] { surface_storage_mm("loam", -1.0); }).size() == 1U);
  BOOST_TEST(refused_fields([] { surface_storage_mm("rock", 1.0); }).size() == 1U);
}

BOOST_AUTO_TEST_CASE(no_minutes_no_cycles_and_every_fault_at_once) {
  const CyclePlan none = cycle_plan(loam_request(25.0, 0.0));
  BOOST_TEST(none.cycles.empty());
  CycleRequest wrong = loam_request(0.0, -1.0);
  wrong.most_cycles = 0;
  const std::vector<std::string> expected = {"rate_mm_h", "minutes", "most_cycles"};
  BOOST_TEST(refused_fields([&] { cycle_plan(wrong); }) == expected, boost::test_tools::per_element());
  BOOST_TEST(!pause_rule_text().empty());
}

BOOST_AUTO_TEST_SUITE_END()
