#include "noonleaf/crop/coefficients.hpp"

#include <ostream>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

using noonleaf::CropClimate;
using noonleaf::Error;
using noonleaf::missing;

BOOST_AUTO_TEST_SUITE(coefficients)

struct Adjusted {
  double kc_table;
  CropClimate climate;
  double height_m, kc, tol;
  const char* source;
};
std::ostream& operator<<(std::ostream& out, const Adjusted& row) { return out << row.source; }

// FAO-56, from memory. Half the last printed digit.
const std::vector<Adjusted> adjusted = {
    {1.20, {1.3, 75}, 2, 1.07, 0.005, "ch. 6, example 27, maize, Taipei, eq. 62"},
    {1.20, {4.6, 44}, 2, 1.30, 0.005, "ch. 6, example 27, maize, Mocha, eq. 62"},
    {1.15, {2.2, 30}, 0.4, 1.19, 0.005, "ch. 6, case study of dry beans at Kimberly, Kc mid"},
    {0.35, {2.2, 30}, 0.4, 0.35, 1e-12, "ch. 6, the same, Kc end below 0.45 is not adjusted, eq. 65"},
    {0.25,
     {2.2, 30},
     0.4,
     0.25,
     1e-12,
     "ch. 7, example 29, dry beans at Kimberly: Kcb end below 0.45 is not adjusted, eq. 70"},
    {1.10, {2.2, 30}, 0.4, 1.14, 0.005, "ch. 7, example 29, the same, Kcb mid, eq. 70"},
};
BOOST_DATA_TEST_CASE(climate_adjustment, boost::unit_test::data::make(adjusted), row) {
  BOOST_CHECK_SMALL(noonleaf::adjusted_kc(row.kc_table, row.climate, row.height_m) - row.kc, row.tol);
}

struct OnDay {
  double day, ini, mid, end, expected, tol;
  const char* source;
};
std::ostream& operator<<(std::ostream& out, const OnDay& row) {
  return out << row.source << ", day " << row.day;
}

// Stage lengths of the case study: 25, 25, 30, 20 days. Day 40 is printed 0.77 where the rounded inputs give
// 0.774.
const std::vector<OnDay> days = {
    {20, 0.15, 1.19, 0.35, 0.15, 0.005, "FAO-56, ch. 6, example 28"},
    {40, 0.15, 1.19, 0.35, 0.77, 0.005, "FAO-56, ch. 6, example 28"},
    {70, 0.15, 1.19, 0.35, 1.19, 0.005, "FAO-56, ch. 6, example 28"},
    {95, 0.15, 1.19, 0.35, 0.56, 0.005,
     "FAO-56, ch. 6, example 28: arithmetic on eq. 66, not remembered as printed"},
    {65, 0.15, 1.14, 0.25, 1.14, 0.005, "FAO-56, ch. 7, example 30"},
    // 1.14 + (10/20) (0.25 - 1.14) = 0.695, printed 0.70: the sum lies on the rounding boundary.
    {90, 0.15, 1.14, 0.25, 0.70, 0.00501, "FAO-56, ch. 7, example 30"},
};
BOOST_DATA_TEST_CASE(curve, boost::unit_test::data::make(days), row) {
  const noonleaf::KcCurve curve{row.ini, row.mid, row.end, 25, 25, 30, 20};
  BOOST_CHECK_SMALL(noonleaf::kc_on_day(curve, row.day) - row.expected, row.tol);
}

BOOST_AUTO_TEST_CASE(curve_has_no_steps_and_holds_its_end) {
  const noonleaf::KcCurve curve{0.15, 1.1, 0.7, 20, 30, 40, 20};
  for (double day = 1; day < 130; day += 0.25)
    BOOST_TEST(std::abs(noonleaf::kc_on_day(curve, day + 0.25) - noonleaf::kc_on_day(curve, day)) < 0.02);
  BOOST_TEST(noonleaf::kc_on_day(curve, 110) == 0.7);
  BOOST_TEST(noonleaf::kc_on_day(curve, 500) == 0.7);
}

BOOST_AUTO_TEST_CASE(a_stage_of_no_length_is_passed_over) {
  const noonleaf::KcCurve curve{0.15, 1.1, 1.05, 90, 45, 40, 0};
  BOOST_TEST(noonleaf::kc_on_day(curve, 175) == 1.1);
  BOOST_TEST(noonleaf::kc_on_day(curve, 176) == 1.05);
  BOOST_CHECK_THROW(noonleaf::kc_on_day({0.15, 1.1, 1.05, -1, 45, 40, 0}, 3), Error);
  BOOST_CHECK_THROW(noonleaf::kc_on_day(curve, 0), Error);
}

// FAO-56 ch. 7, examples 32 and 35, from memory.
BOOST_AUTO_TEST_CASE(upper_limit) {
  BOOST_CHECK_SMALL(noonleaf::kc_max(0.9, {3, 20}, 1) - 1.30, 0.005);
  BOOST_CHECK_SMALL(noonleaf::kc_max(0.3, {1.6, 35}, 0.3) - 1.21, 0.005);
  BOOST_CHECK_CLOSE(noonleaf::kc_max(1.2, {2, 45}, 1), 1.25, 1e-9);  // the crop itself sets it
  BOOST_CHECK_CLOSE(noonleaf::kc_max(0, {6, 20}, 0), 1.2, 1e-9);  // bare ground: no height, no climate term
}

// FAO-56 ch. 7, example 32: fc printed 0.53, 1 - fc 0.47, from the rounded Kc max 1.30.
BOOST_AUTO_TEST_CASE(ground_cover) {
  const double top = noonleaf::kc_max(0.9, {3, 20}, 1);
  BOOST_CHECK_SMALL(noonleaf::cover_frac(0.9, top, 1) - 0.53, 0.005);
  BOOST_TEST(noonleaf::cover_frac(0.15, 1.2, 0.1) < 0.01);
  BOOST_TEST(noonleaf::cover_frac(0, 1.2, 0) == 0);
  double before = 0;
  for (double kcb = 0.15; kcb < 1.2; kcb += 0.05) {
    const double now = noonleaf::cover_frac(kcb, 1.25, 0.5);
    BOOST_TEST(now >= before);
    BOOST_TEST(now <= 0.99);
    before = now;
  }
}

// FAO-56 eq. 76, its limits for numerical stability: Kcb - Kc min at least 0.01, fc at most 0.99.
BOOST_AUTO_TEST_CASE(limits_of_ground_cover) {
  BOOST_CHECK_CLOSE(noonleaf::cover_frac(0.10, 1.2, 0), 0.01 / 1.05, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::cover_frac(0.15, 1.2, 0), 0.01 / 1.05, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::cover_frac(0.1605, 1.2, 0), 0.01, 1e-9);
  BOOST_TEST(noonleaf::cover_frac(1.2, 1.2, 0) == 0.99);
  BOOST_TEST(noonleaf::cover_frac(1.19999, 1.2, 0) == 0.99);
}

// FAO-56 eq. 65 and 70: from a table value of 0.45 on.
BOOST_AUTO_TEST_CASE(adjusted_from_0_45_on) {
  BOOST_CHECK_CLOSE(noonleaf::adjusted_kc(0.45, {3, 45}, 3), 0.49, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::adjusted_kc(0.48, {3, 45}, 3), 0.52, 1e-9);
  BOOST_TEST(noonleaf::adjusted_kc(0.44, {3, 45}, 3) == 0.44);
}

BOOST_AUTO_TEST_CASE(a_curve_without_lengths_is_at_its_end) {
  BOOST_TEST(noonleaf::kc_on_day({.ini = 0.15, .mid = 1.1, .end = 0.7}, 1) == 0.7);
}

BOOST_AUTO_TEST_CASE(limits_of_the_source_are_applied_and_said) {
  const auto still = noonleaf::climate_term({0.5, 90}, 2);
  BOOST_TEST(still.u2_m_s == 1);
  BOOST_TEST(still.rh_min_pct == 80);
  const auto windy = noonleaf::climate_term({9, 10}, 2);
  BOOST_TEST(windy.u2_m_s == 6);
  BOOST_TEST(windy.rh_min_pct == 20);
  BOOST_TEST(windy.kc == noonleaf::climate_term({6, 20}, 2).kc);
}

BOOST_AUTO_TEST_CASE(missing_and_absurd) {
  BOOST_TEST(noonleaf::is_missing(noonleaf::adjusted_kc(1.1, {missing, 45}, 1)));
  BOOST_TEST(noonleaf::is_missing(noonleaf::adjusted_kc(1.1, {2, missing}, 1)));
  BOOST_TEST(noonleaf::is_missing(noonleaf::kc_max(missing, {2, 45}, 1)));
  BOOST_TEST(noonleaf::is_missing(noonleaf::cover_frac(missing, 1.2, 1)));
  BOOST_CHECK_THROW(noonleaf::climate_term({-1, 45}, 1), Error);
  BOOST_CHECK_THROW(noonleaf::climate_term({2, 101}, 1), Error);
  BOOST_CHECK_THROW(noonleaf::climate_term({2, 45}, -0.1), Error);
}

BOOST_AUTO_TEST_SUITE_END()
