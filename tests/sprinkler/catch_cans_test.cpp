#include "noonleaf/sprinkler/catch_cans.hpp"

#include <cmath>
#include <numeric>
#include <ostream>
#include <string>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/sprinkler/student_t.hpp"
#include "noonleaf/units.hpp"

#include "refusal.hpp"

using namespace noonleaf;

namespace {

CatchCanTest test_of(const std::vector<double>& depths_mm, double minutes = 60.0) {
  CatchCanTest test{.minutes = minutes};
  for (const double depth : depths_mm) test.cans.push_back({.depth_mm = depth});
  return test;
}

const std::vector<double> a16 = {6.5, 7.0, 8.0, 9.0,  10.0, 10.5, 9.5, 8.5,
                                 7.5, 8.0, 9.0, 10.0, 11.0, 9.0,  8.0, 6.0};
const std::vector<double> b12 = {2.0, 3.5, 5.0, 6.0, 7.5, 9.0, 10.0, 8.0, 6.5, 4.5, 3.0, 1.5};
const std::vector<double> c8 = {0.2, 0.25, 0.3, 0.3, 0.35, 0.25, 0.2, 0.15};
const std::vector<double> d24 = {18, 22, 25, 20, 16, 24, 30, 28, 21, 19, 23, 27,
                                 26, 24, 20, 17, 15, 22, 29, 31, 25, 21, 18, 19};
const std::vector<double> e10 = {4, 5, 6, 7, 8, 8, 9, 10, 11, 12};
const std::vector<double> equal4 = {5, 5, 5, 5};
const std::vector<double> one_zero8 = {0, 4, 4, 4, 4, 4, 4, 4};

struct Row {
  const std::vector<double>* depths;
  double du_lq_frac, cu_frac;  // NaN: not in the check set
  QuarterRule rule;
  const char* name;
};
std::ostream& operator<<(std::ostream& out, const Row& row) { return out << row.name; }

// Catches and values worked by hand from the definitions (derived, not published); half the last digit.
const std::vector<Row> rows = {
    {&a16, 0.7855, 0.8655, QuarterRule::whole_cans, "16 cans, mm"},
    {&b12, missing, 0.5865, QuarterRule::whole_cans, "12 cans, mm"},
    {&c8, missing, 0.8, QuarterRule::whole_cans, "8 cans, inches"},
    {&d24, 0.763, 0.8352, QuarterRule::whole_cans, "24 cans, ml"},
    {&e10, 0.6, 0.75, QuarterRule::fractional_quarter, "10 cans: 4, 5 and half of 6 over 2.5"},
    {&equal4, 1.0, 1.0, QuarterRule::whole_cans, "all equal"},
    {&one_zero8, 0.5714, missing, QuarterRule::whole_cans, "one empty can of eight"},
};

}  // namespace

BOOST_AUTO_TEST_SUITE(catch_cans)

BOOST_DATA_TEST_CASE(uniformity_as_worked_by_hand, boost::unit_test::data::make(rows), row) {
  const CanResult result = catch_can_result(test_of(*row.depths));
  if (is_known(row.du_lq_frac)) BOOST_CHECK_SMALL(result.du_lq_frac.value - row.du_lq_frac, 0.00005);
  if (is_known(row.cu_frac)) BOOST_CHECK_SMALL(result.cu_frac.value - row.cu_frac, 0.00005);
  BOOST_CHECK(result.quarter_rule == row.rule);
  BOOST_CHECK(result.weighting == CanWeighting::equal);
  BOOST_CHECK_SMALL(result.low_quarter_depth_mm - result.du_lq_frac.value * result.mean_depth_mm, 1e-12);
}

// The other custom counts whole cans only. It gives other numbers for ten cans, which is why the rule is
// named.
BOOST_AUTO_TEST_CASE(ten_cans_by_the_whole_can_custom_differ) {
  const double ours = catch_can_result(test_of(e10)).du_lq_frac.value;
  BOOST_TEST(ours > 0.5625);             // of the two lowest: (4 + 5) / 2 over the mean of 8
  BOOST_TEST(ours < 0.625);              // of the three lowest: (4 + 5 + 6) / 3
  BOOST_CHECK_SMALL(ours - 0.6, 1e-12);  // of the lowest two and a half: (4 + 5 + 6 / 2) / 2.5
}

BOOST_AUTO_TEST_CASE(rate_is_depth_over_time) {
  // Extension rule "depth x 4 for a 15 minute test" (read): 0.25 in in 15 min is 1 in/h. The pooled-can test
  // of Denver Water (method read, numbers ours): 0.2 + 0.25 + 0.3 + 0.25 in together are 1 in/h.
  std::vector<double> depths;
  for (const double inches : {0.2, 0.25, 0.3, 0.25}) depths.push_back(mm_from_inches(inches));
  const CanResult result = catch_can_result(test_of(depths, 15.0));
  BOOST_CHECK_SMALL(inches_from_mm(result.rate_mm_h.value) - 1.0, 1e-12);
  BOOST_CHECK_SMALL(inches_from_mm(result.mean_depth_mm) - 0.25, 1e-12);
}

BOOST_AUTO_TEST_CASE(interval_of_the_rate_is_the_usual_t_interval) {
  const CanResult result = catch_can_result(test_of(a16));
  double mean = 0.0;
  for (const double depth : a16) mean += depth / 16.0;
  double squares = 0.0;
  for (const double depth : a16) squares += (depth - mean) * (depth - mean);
  const double half = student_t_two_sided(0.90, 15) * std::sqrt(squares / 15.0 / 16.0);
  BOOST_CHECK_SMALL(result.rate_mm_h.low - (mean - half), 1e-9);
  BOOST_CHECK_SMALL(result.rate_mm_h.high - (mean + half), 1e-9);
  BOOST_CHECK_SMALL(result.coefficient_of_variation - std::sqrt(squares / 15.0) / mean, 1e-12);
}

BOOST_AUTO_TEST_CASE(intervals_hold_their_value_and_narrow_with_cans) {
  std::vector<double> four_times;
  for (int copy = 0; copy < 4; ++copy) four_times.insert(four_times.end(), b12.begin(), b12.end());
  const CanResult few = catch_can_result(test_of(b12));
  const CanResult many = catch_can_result(test_of(four_times));
  for (const auto estimate : {&CanResult::rate_mm_h, &CanResult::du_lq_frac, &CanResult::cu_frac}) {
    const CanEstimate& wide = few.*estimate;
    const CanEstimate& narrow = many.*estimate;
    BOOST_TEST(wide.low <= wide.value);
    BOOST_TEST(wide.value <= wide.high);
    BOOST_CHECK_SMALL(wide.value - narrow.value, 1e-12);
    BOOST_TEST(narrow.high - narrow.low < 0.6 * (wide.high - wide.low));
  }
}

BOOST_AUTO_TEST_CASE(fractions_stay_fractions) {
  const CanResult poor = catch_can_result(test_of({0.0, 0.1, 12.0, 15.0}));
  BOOST_TEST(poor.du_lq_frac.low == 0.0);
  BOOST_TEST(poor.du_lq_frac.high <= 1.0);
  const CanResult good = catch_can_result(test_of({9.9, 10.0, 10.1}));
  BOOST_TEST(good.du_lq_frac.high <= 1.0);
  BOOST_TEST(good.cu_frac.high <= 1.0);
}

BOOST_AUTO_TEST_CASE(one_wet_can_alone_has_no_interval) {
  const CanResult result = catch_can_result(test_of({0.0, 0.0, 5.0}));
  BOOST_TEST(result.du_lq_frac.value == 0.0);
  BOOST_TEST(is_missing(result.du_lq_frac.low));
  BOOST_TEST(is_missing(result.du_lq_frac.high));
}

BOOST_AUTO_TEST_CASE(order_of_the_cans_and_their_unit_do_not_matter) {
  const CanResult forward = catch_can_result(test_of(d24));
  std::vector<double> turned(d24.rbegin(), d24.rend());
  for (double& depth : turned) depth *= 2.5;
  const CanResult backward = catch_can_result(test_of(turned));
  BOOST_CHECK_SMALL(forward.du_lq_frac.value - backward.du_lq_frac.value, 1e-12);
  BOOST_CHECK_SMALL(forward.cu_frac.low - backward.cu_frac.low, 1e-12);
  BOOST_CHECK_SMALL(2.5 * forward.rate_mm_h.value - backward.rate_mm_h.value, 1e-9);
  BOOST_TEST(forward.driest_can == 16U);
  BOOST_TEST(forward.wettest_can == 19U);
}

BOOST_AUTO_TEST_CASE(positions_weigh_cans_by_their_ground) {
  // In a row at 0, 1 and 3 m the cans stand for 1/4, 3/8 and 3/8 of the ground (can_areas test).
  const CatchCanTest test{.cans = {{4.0, 0.0, 0.0}, {8.0, 1.0, 0.0}, {8.0, 3.0, 0.0}}, .minutes = 30.0};
  const CanResult result = catch_can_result(test);
  BOOST_CHECK(result.weighting == CanWeighting::thiessen_area);
  BOOST_CHECK_SMALL(result.mean_depth_mm - 7.0, 1e-12);
  BOOST_CHECK_SMALL(result.rate_mm_h.value - 14.0, 1e-12);
  BOOST_CHECK_SMALL(result.du_lq_frac.value - 4.0 / 7.0, 1e-12);
  BOOST_CHECK_SMALL(result.cu_frac.value - (1.0 - (0.25 * 3.0 + 0.75 * 1.0) / 7.0), 1e-12);
  BOOST_CHECK(result.quarter_rule == QuarterRule::whole_cans);
}

BOOST_AUTO_TEST_CASE(a_regular_grid_gives_what_equal_cans_give) {
  CatchCanTest grid{.minutes = 60.0};
  for (std::size_t i = 0; i < a16.size(); ++i)
    grid.cans.push_back({a16[i], 2.0 * static_cast<double>(i % 4), 2.0 * static_cast<double>(i / 4)});
  const CanResult with = catch_can_result(grid);
  const CanResult without = catch_can_result(test_of(a16));
  BOOST_CHECK_SMALL(with.du_lq_frac.value - without.du_lq_frac.value, 1e-9);
  BOOST_CHECK_SMALL(with.cu_frac.value - without.cu_frac.value, 1e-9);
  BOOST_CHECK_SMALL(with.du_lq_frac.low - without.du_lq_frac.low, 1e-6);
  BOOST_CHECK_SMALL(with.rate_mm_h.high - without.rate_mm_h.high, 1e-9);
  BOOST_CHECK(with.quarter_rule == QuarterRule::whole_cans);
}

BOOST_AUTO_TEST_CASE(depth_from_volume) {
  // Derived: 20 ml in an 83 mm can, 25 ml in a 100 mm can.
  BOOST_CHECK_SMALL(can_depth_mm({.caught_ml = 20, .can_diameter_mm = 83}) - 3.6964, 0.00005);
  BOOST_CHECK_SMALL(can_depth_mm({.caught_ml = 25, .can_diameter_mm = 100}) - 3.1831, 0.00005);
  BOOST_TEST(is_missing(can_depth_mm({.caught_ml = missing, .can_diameter_mm = 100})));
  BOOST_TEST(refused_fields([] { can_depth_mm({.caught_ml = -1, .can_diameter_mm = 100}); }) ==
                 std::vector<std::string>{"caught_ml"},
             boost::test_tools::per_element());
  BOOST_TEST(refused_fields([] { can_depth_mm({.caught_ml = 1, .can_diameter_mm = 0}); }) ==
                 std::vector<std::string>{"can_diameter_mm"},
             boost::test_tools::per_element());
}

BOOST_AUTO_TEST_CASE(cans_needed_is_the_fewest_that_do) {
  for (const double cv : {0.0, 0.1, 0.2, 0.35, 0.5, 1.0}) {
    const std::size_t count = cans_needed({.coefficient_of_variation = cv});
    const auto error = [&](std::size_t n) {
      return student_t_two_sided(0.90, n - 1) * cv / std::sqrt(static_cast<double>(n));
    };
    BOOST_TEST(error(count) <= 0.25);
    if (count > 2) BOOST_TEST(error(count - 1) > 0.25);
  }
  // J. Am. Water Resour. Assoc. 2007 (abstract): 6 to over 50 cans for hose-end sprinklers. These counts
  // belong to a CV of about 0.27 to 1.1, which is what uneven catches have.
  BOOST_TEST(cans_needed({.coefficient_of_variation = 0.27}) == 6U);
  BOOST_TEST(cans_needed({.coefficient_of_variation = 1.1}) > 50U);
  BOOST_TEST(refused_fields([] { cans_needed({}); }) == std::vector<std::string>{"coefficient_of_variation"},
             boost::test_tools::per_element());
}

BOOST_AUTO_TEST_CASE(every_fault_is_named_with_its_can) {
  const auto problems_of = [](const CatchCanTest& test) {
    try {
      catch_can_result(test);
    } catch (const Error& error) {
      return error.problems();
    }
    return std::vector<Problem>{};
  };
  const auto fields_of = [&](const CatchCanTest& test) { return problems_of(test).size(); };
  BOOST_TEST(fields_of(test_of({5, 6})) == 1U);          // too few
  BOOST_TEST(fields_of(test_of({})) == 1U);              // none at all
  BOOST_TEST(fields_of(test_of({0, 0, 0, 0})) == 1U);    // no water
  BOOST_TEST(fields_of(test_of({5, 6, 7}, 0.0)) == 1U);  // no time
  BOOST_TEST(fields_of(test_of({5, 6, 7}, missing)) == 1U);
  BOOST_TEST(fields_of(test_of(std::vector<double>(1001, 5.0))) == 1U);
  const std::vector<Problem> problems = problems_of(test_of({5, -1, 7, missing, 2000}, -3));
  BOOST_REQUIRE(problems.size() == 4U);
  BOOST_TEST(problems[0].field == "minutes");
  BOOST_TEST(problems[0].message == "-3 is not above 0 and at most 1440 min");
  BOOST_TEST(problems[1].row == 1U);
  BOOST_TEST(problems[1].message == "-1 is outside 0 to 1000 mm");
  BOOST_TEST(problems[2].row == 3U);
  BOOST_TEST(problems[3].row == 4U);
}

BOOST_AUTO_TEST_CASE(positions_are_for_all_cans_or_none_and_each_its_own) {
  const CatchCanTest half{.cans = {{5, 0, 0}, {5, 1, missing}, {5}}, .minutes = 10};
  BOOST_TEST(refused_fields([&] { catch_can_result(half); }).size() == 2U);
  const CatchCanTest twins{.cans = {{5, 0, 0}, {5, 1, 1}, {5, 1, 1}}, .minutes = 10};
  BOOST_TEST(refused_fields([&] { catch_can_result(twins); }).size() == 1U);
  const CatchCanTest far{.cans = {{5, 0, 0}, {5, 1, 1}, {5, 1e9, 1}}, .minutes = 10};
  BOOST_TEST(refused_fields([&] { catch_can_result(far); }).size() == 1U);
}

BOOST_AUTO_TEST_SUITE_END()
