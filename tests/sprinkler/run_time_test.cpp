#include "noonleaf/sprinkler/run_time.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <ostream>
#include <string>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/units.hpp"

#include "refusal.hpp"

using namespace noonleaf;

namespace {

struct Efficient {
  double net_mm, rate_mm_h, efficiency, gross_mm, minutes;
  const char* source;
};
std::ostream& operator<<(std::ostream& out, const Efficient& row) { return out << row.source; }

// gross = net / efficiency, minutes = 60 net / (rate efficiency): derived from the equations.
const std::vector<Efficient> efficient = {
    {20, 25, 0.75, 26.6667, 64.0, "20 mm at 25 mm/h, 75 %"},
    {12, 15, 0.7, missing, 68.571, "12 mm at 15 mm/h, 70 %"},
    {25.4, 24.4475, 0.75, missing, 83.117, "one inch at 0.9625 in/h, 75 %"},
    {8, 40, 0.8, missing, 15.0, "8 mm at 40 mm/h, 80 %"},
    {12, 60, 0.6, 20.0, 20.0, "12 mm, 60 %"},
    {10, 20, 0.9, 11.1111, 33.3333, "10 mm, 90 %"},
};

struct Uneven {
  double du_lq_frac, multiplier;
};
std::ostream& operator<<(std::ostream& out, const Uneven& row) { return out << "DU " << row.du_lq_frac; }

// 1/(0.4 + 0.6 DU): the form is from memory (landscape audit practice), the values derived from it.
const std::vector<Uneven> uneven = {
    {0.9, 1.0638}, {0.8, 1.1364}, {0.7, 1.2195}, {0.6, 1.3158}, {0.5, 1.4286}};

RunRequest request_of(double net_mm, double rate_mm_h) {
  return {.net_depth_mm = net_mm,
          .bed_area_m2 = 10,
          .sprinkler = {
              .basis = RateBasis::cans_in_bed, .rate_mm_h = rate_mm_h, .du_lq_frac = 0.7, .flow_l_min = 12}};
}

}  // namespace

BOOST_AUTO_TEST_SUITE(run_time)

BOOST_DATA_TEST_CASE(net_to_gross_to_minutes, boost::unit_test::data::make(efficient), row) {
  const RunPlan plan = run_plan({.net_depth_mm = row.net_mm,
                                 .sprinkler = {.basis = RateBasis::flow_and_area,
                                               .rate_mm_h = row.rate_mm_h,
                                               .spray_loss_frac = 1.0 - row.efficiency}});
  BOOST_CHECK_SMALL(plan.exact_min - row.minutes, 0.0005);
  if (is_known(row.gross_mm)) BOOST_CHECK_SMALL(plan.gross_depth_mm - row.gross_mm, 0.00005);
}

BOOST_DATA_TEST_CASE(multiplier_of_the_lower_half, boost::unit_test::data::make(uneven), row) {
  const RunTimeMultiplier multiplier = run_time_multiplier(row.du_lq_frac);
  BOOST_CHECK_SMALL(multiplier.value - row.multiplier, 0.00005);
  BOOST_CHECK(multiplier.rule == MultiplierRule::lower_half);
}

BOOST_AUTO_TEST_CASE(multiplier_is_capped_and_says_so) {
  const RunTimeMultiplier poor = run_time_multiplier(0.4);
  BOOST_TEST(poor.value == multiplier_cap);
  BOOST_CHECK_SMALL(poor.before_cap - 1.5625, 0.00005);
  BOOST_CHECK(poor.rule == MultiplierRule::lower_half_capped);
  const RunTimeMultiplier even = run_time_multiplier(1.0);
  BOOST_TEST(even.value == 1.0);
  BOOST_CHECK(even.rule == MultiplierRule::even);
  BOOST_TEST(refused_fields([] { run_time_multiplier(missing); }).size() == 1U);
  BOOST_TEST(refused_fields([] { run_time_multiplier(1.01); }).size() == 1U);
}

// The longer form of the same practice is 1/DU_LH with DU_LH = 38.6 + 0.614 DU_LQ in percent (from
// memory; 78.51 at 65 and 87.72 at 80). The short form used here stays within 0.04 of it and is always the
// smaller.
BOOST_AUTO_TEST_CASE(short_form_of_the_multiplier_is_close_to_the_long_form) {
  const auto lower_half_pct = [](double du_pct) { return 38.6 + 0.614 * du_pct; };
  BOOST_CHECK_SMALL(lower_half_pct(65) - 78.51, 0.005);
  BOOST_CHECK_SMALL(lower_half_pct(80) - 87.72, 0.005);
  for (double du_pct = 45; du_pct <= 100; du_pct += 5) {
    const double difference = 100.0 / lower_half_pct(du_pct) - run_time_multiplier(du_pct / 100).value;
    BOOST_TEST(difference >= 0.0);
    BOOST_TEST(difference < 0.04);
  }
}

BOOST_AUTO_TEST_CASE(a_rate_caught_in_the_bed_ignores_losses_it_has_already_had) {
  RunRequest request = request_of(9, 20);
  const double plain = run_plan(request).exact_min;
  request.sprinkler.off_target_frac = 0.3;
  request.sprinkler.spray_loss_frac = 0.2;
  BOOST_TEST(run_plan(request).exact_min == plain);
  request.sprinkler.basis = RateBasis::flow_and_area;
  BOOST_CHECK_SMALL(run_plan(request).exact_min - plain / (0.7 * 0.8), 1e-9);
}

BOOST_AUTO_TEST_CASE(a_run_by_hand) {
  // 9 mm, DU 0.7: M = 1/0.82; 20 mm/h: 60 x 9/0.82/20 = 32.93 min, to the nearest five 35.
  const RunPlan plan = run_plan(request_of(9, 20));
  BOOST_CHECK_SMALL(plan.exact_min - 32.9268, 0.00005);
  BOOST_TEST(plan.minutes == 35.0);
  BOOST_CHECK_SMALL(plan.mean_depth_mm - 35.0 / 3.0, 1e-12);
  BOOST_CHECK_SMALL(plan.low_quarter_depth_mm - 0.7 * 35.0 / 3.0, 1e-12);
  BOOST_CHECK_SMALL(plan.litres_in_bed - 10 * 35.0 / 3.0, 1e-12);
  BOOST_CHECK_SMALL(plan.litres_from_tap - 12 * 35.0, 1e-12);
  BOOST_TEST(plan.left_over_net_mm == 0.0);
  BOOST_CHECK(plan.limit == RunLimit::none);
}

BOOST_AUTO_TEST_CASE(what_is_not_known_is_missing_not_zero) {
  RunRequest request = request_of(9, 20);
  request.bed_area_m2 = missing;
  request.sprinkler.flow_l_min = missing;
  const RunPlan plan = run_plan(request);
  BOOST_TEST(is_missing(plan.litres_in_bed));
  BOOST_TEST(is_missing(plan.litres_from_tap));
  BOOST_TEST(plan.minutes == 35.0);
}

struct Rounded {
  double minutes, rounded;
};
std::ostream& operator<<(std::ostream& out, const Rounded& row) { return out << row.minutes; }
const std::vector<Rounded> rounding = {
    {0, 0},      {0.01, 1},  {0.4, 1},   {1.5, 1},   {1.6, 2},   {7.4, 7},   {7.5, 7},
    {7.51, 8},   {14.4, 14}, {14.5, 14}, {14.9, 15}, {15, 15},   {17.4, 15}, {17.5, 15},
    {17.51, 20}, {22.5, 20}, {22.6, 25}, {62.4, 60}, {62.6, 65}, {118, 120},
};
BOOST_DATA_TEST_CASE(minutes_as_a_person_opens_a_tap, boost::unit_test::data::make(rounding), row) {
  BOOST_TEST(rounded_run_min(row.minutes) == row.rounded);
}

BOOST_AUTO_TEST_CASE(rounding_moves_at_most_half_a_step_and_never_backwards) {
  double before = 0.0;
  for (double minutes = 0.5; minutes < 200.0; minutes += 0.13) {
    const double rounded = rounded_run_min(minutes);
    BOOST_TEST(std::abs(rounded - minutes) <= (minutes < 15.0 ? 0.5 : 2.5) + 1e-5);
    BOOST_TEST(rounded >= before);
    before = rounded;
  }
  BOOST_TEST(is_missing(rounded_run_min(missing)));
  BOOST_TEST(refused_fields([] { rounded_run_min(-1); }).size() == 1U);
}

BOOST_AUTO_TEST_CASE(us_and_metric_gardens_get_the_same_minutes_on_a_tie) {
  // 0.5 in at 12/7 in/h is 17.5 min exactly; the way through inches leaves rounding behind.
  for (const double inches : {0.1, 0.3, 0.5, 0.7, 1.1}) {
    const double minutes = 17.5;
    RunRequest us = request_of(mm_from_inches(inches), mm_from_inches(inches * 60.0 / minutes));
    us.sprinkler.du_lq_frac = 1.0;
    RunRequest metric = request_of(inches * 25.4, inches * 25.4 / minutes * 60.0);
    metric.sprinkler.du_lq_frac = 1.0;
    BOOST_TEST(run_plan(us).minutes == 15.0);
    BOOST_TEST(run_plan(metric).minutes == 15.0);
  }
}

BOOST_AUTO_TEST_CASE(limits_change_a_run_and_are_named) {
  RunRequest request = request_of(9, 20);
  request.limits = {.shortest_min = 5, .longest_min = 20};
  const RunPlan cut = run_plan(request);
  BOOST_TEST(cut.minutes == 20.0);
  BOOST_CHECK(cut.limit == RunLimit::cut_to_longest);
  // Mean landed in the bed 20 mm/h x 20 min = 6.667 mm, worth 6.667 x 0.82 net; the rest of 9 mm is left.
  BOOST_CHECK_SMALL(cut.left_over_net_mm - (9.0 - 20.0 / 3.0 * 0.82), 1e-9);

  request.net_depth_mm = 0.5;
  const RunPlan raised = run_plan(request);
  BOOST_TEST(raised.minutes == 5.0);
  BOOST_CHECK(raised.limit == RunLimit::raised_to_shortest);

  request.net_depth_mm = 0.0;
  const RunPlan none = run_plan(request);
  BOOST_TEST(none.minutes == 0.0);
  BOOST_TEST(none.mean_depth_mm == 0.0);
  BOOST_CHECK(none.limit == RunLimit::not_needed);
}

BOOST_AUTO_TEST_CASE(a_needed_run_is_never_rounded_to_nothing) {
  RunRequest request = request_of(0.01, 50);
  request.limits.shortest_min = 1.0;
  BOOST_TEST(run_plan(request).minutes == 1.0);
}

BOOST_AUTO_TEST_CASE(minutes_and_depth_are_each_others_inverse) {
  for (const RateBasis basis : {RateBasis::cans_in_bed, RateBasis::flow_and_area, RateBasis::bucket,
                                RateBasis::drip_spacing, RateBasis::guess}) {
    RunRequest request = request_of(13, 17);
    request.sprinkler.basis = basis;
    request.sprinkler.off_target_frac = 0.25;
    request.sprinkler.spray_loss_frac = 0.08;
    const RunPlan plan = run_plan(request);
    const InfiltratedDepth depth = infiltrated_depth_mm(request.sprinkler, plan.exact_min);
    BOOST_CHECK_SMALL(depth.mean_mm - plan.depth_in_bed_mm, 1e-9);
    BOOST_CHECK_SMALL(depth.low_quarter_mm - 0.7 * plan.depth_in_bed_mm, 1e-9);
  }
  const ApplicationRate sprinkler = request_of(9, 20).sprinkler;
  BOOST_TEST(infiltrated_depth_mm(sprinkler, 0.0).mean_mm == 0.0);
  BOOST_TEST(is_missing(infiltrated_depth_mm(sprinkler, missing).mean_mm));
  BOOST_TEST(refused_fields([&] { infiltrated_depth_mm(sprinkler, -1); }).size() == 1U);
}

// The multiplier's promise: the mean of the lower half gets the net depth. For depths spread evenly about
// their mean DU_LQ = 1 - 3r/4 and DU_LH = 1 - r/2 = 1/3 + 2/3 DU_LQ; the short form is kind to such a
// sprinkler by a few percent.
BOOST_AUTO_TEST_CASE(lower_half_gets_nearly_the_net_depth) {
  for (const double du : {0.6, 0.75, 0.9}) {
    const double lower_half = 1.0 / 3.0 + 2.0 / 3.0 * du;
    const double received = run_time_multiplier(du).value * lower_half;
    BOOST_TEST(received > 0.95);
    BOOST_TEST(received <= 1.0);
  }
}

BOOST_AUTO_TEST_CASE(a_sprinkler_forgotten_over_night) {
  // Derived: 5 gpm on 400 ft2 from 16:00 to 07:00 is 4,500 gal and 458.4 mm.
  ApplicationRate sprinkler{.basis = RateBasis::flow_and_area, .flow_l_min = litres_from_gallons(5)};
  sprinkler.rate_mm_h = rate_from_flow_mm_h({sprinkler.flow_l_min, m2_from_square_feet(400)});
  BOOST_CHECK_SMALL(infiltrated_depth_mm(sprinkler, 15 * 60).mean_mm - 458.4, 0.05);
  BOOST_CHECK_SMALL(gallons_from_litres(sprinkler.flow_l_min * 15 * 60) - 4500, 1e-9);
}

BOOST_AUTO_TEST_CASE(by_hand_with_watering_cans) {
  // Derived: 0.75 in on 48 ft2 is 22.442 gal, 1 in on 128 ft2 is 79.792 gal.
  const HandWatering small = hand_watering({.net_depth_mm = mm_from_inches(0.75),
                                            .bed_area_m2 = m2_from_square_feet(48),
                                            .can_l = litres_from_gallons(2)});
  BOOST_CHECK_SMALL(gallons_from_litres(small.litres) - 22.442, 0.0005);
  BOOST_TEST(small.cans == 11.0);
  const HandWatering large = hand_watering({.net_depth_mm = 25.4, .bed_area_m2 = m2_from_square_feet(128)});
  BOOST_CHECK_SMALL(gallons_from_litres(large.litres) - 79.792, 0.0005);
  BOOST_TEST(is_missing(large.cans));
  BOOST_TEST(hand_watering({.net_depth_mm = 0.1, .bed_area_m2 = 1, .can_l = 10}).cans == 1.0);
  BOOST_TEST(hand_watering({.net_depth_mm = 0, .bed_area_m2 = 1, .can_l = 10}).cans == 0.0);
  BOOST_TEST(
      refused_fields([] { hand_watering({.net_depth_mm = -1, .bed_area_m2 = 0, .can_l = 0}); }).size() == 3U);
}

BOOST_AUTO_TEST_CASE(every_fault_at_once) {
  RunRequest request;
  request.limits = {.shortest_min = 30, .longest_min = 20};
  request.bed_area_m2 = 0;
  const std::vector<std::string> expected = {"rate_mm_h", "net_depth_mm", "bed_area_m2", "shortest_min"};
  BOOST_TEST(refused_fields([&] { run_plan(request); }) == expected, boost::test_tools::per_element());
}

BOOST_AUTO_TEST_CASE(terms_explain_every_number_once) {
  const auto terms = run_plan_terms();
  const RunPlan plan = run_plan(request_of(9, 20));
  for (const RunPlanTerm& term : terms) {
    BOOST_TEST(std::isfinite(plan.*term.member));
    BOOST_TEST(!term.name.empty());
    BOOST_TEST(!term.symbol.empty());
    BOOST_TEST(!term.equation.empty());
    BOOST_TEST(!term.source.empty());
    BOOST_TEST(std::count_if(terms.begin(), terms.end(),
                             [&](const RunPlanTerm& other) { return other.member == term.member; }) == 1);
  }
  // Fourteen doubles come before the three enums: none is left unexplained.
  BOOST_TEST(terms.size() == offsetof(RunPlan, basis) / sizeof(double));
}

BOOST_AUTO_TEST_SUITE_END()
