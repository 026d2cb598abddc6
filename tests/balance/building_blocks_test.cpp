#include <ostream>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/evaporation.hpp"
#include "noonleaf/balance/root_zone.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/soil/soil_water.hpp"

using noonleaf::EmitterPlace;
using noonleaf::missing;

BOOST_AUTO_TEST_SUITE(building_blocks)

struct Water {
  const char* crop;
  double fc, wp, zr, p, taw, raw;
};
std::ostream& operator<<(std::ostream& out, const Water& row) { return out << row.crop << " FC " << row.fc; }

// FAO-56, ch. 8, example 36, from memory: loamy sand, silt, silty clay. Printed in whole mm.
const std::vector<Water> example_36 = {
    {"onion", 0.15, 0.06, 0.4, 0.30, 36, 11},   {"onion", 0.32, 0.15, 0.4, 0.30, 68, 20},
    {"onion", 0.35, 0.23, 0.4, 0.30, 48, 14},   {"tomato", 0.15, 0.06, 0.8, 0.40, 72, 29},
    {"tomato", 0.32, 0.15, 0.8, 0.40, 136, 54}, {"tomato", 0.35, 0.23, 0.8, 0.40, 96, 38},
    {"maize", 0.15, 0.06, 1.2, 0.55, 108, 59},  {"maize", 0.32, 0.15, 1.2, 0.55, 204, 112},
    {"maize", 0.35, 0.23, 1.2, 0.55, 144, 79},
};
BOOST_DATA_TEST_CASE(available_water, boost::unit_test::data::make(example_36), row) {
  const noonleaf::SoilWater soil{.field_capacity_m3_m3 = row.fc, .wilting_point_m3_m3 = row.wp};
  const double taw = noonleaf::taw_mm(soil, row.zr);
  BOOST_CHECK_SMALL(taw - row.taw, 0.5);
  BOOST_CHECK_SMALL(noonleaf::raw_mm(taw, row.p) - row.raw, 0.5);
}

struct Fraction {
  double p, etc, expected;
};
std::ostream& operator<<(std::ostream& out, const Fraction& row) { return out << row.p << " at " << row.etc; }

// Arithmetic on the equation of FAO-56 Table 22, footnote 2, with its limits.
const std::vector<Fraction> fractions = {{0.40, 5, 0.40}, {0.45, 8, 0.33}, {0.30, 12, 0.10},
                                         {0.65, 1, 0.80}, {0.50, 0, 0.70}, {0.20, 7, 0.12}};
BOOST_DATA_TEST_CASE(depletion_fraction, boost::unit_test::data::make(fractions), row) {
  BOOST_CHECK_CLOSE(noonleaf::depletion_fraction(row.p, row.etc), row.expected, 1e-9);
}

// FAO-56, ch. 8, example 39 (the part without salt), from memory: TAW 110, RAW 44.
BOOST_AUTO_TEST_CASE(stress_of_example_39) {
  const double dr[] = {0, 35, 40, 44, 50, 60, 80, 110};
  const double ks[] = {1, 1, 1, 1, 0.91, 0.76, 0.45, 0};
  for (int i = 0; i < 8; ++i) BOOST_CHECK_SMALL(noonleaf::stress_coefficient(dr[i], 110, 44) - ks[i], 0.005);
  BOOST_TEST(noonleaf::stress_coefficient(150, 110, 44) == 0);
}

// FAO-56, ch. 7, examples 32 to 34, from memory.
BOOST_AUTO_TEST_CASE(exposed_and_wetted) {
  BOOST_CHECK_SMALL(noonleaf::exposed_wetted_frac(0.53, 1, EmitterPlace::open) - 0.47, 1e-12);
  BOOST_CHECK_SMALL(noonleaf::exposed_wetted_frac(0.53, 0.3, EmitterPlace::open) - 0.3, 1e-12);
  BOOST_CHECK_SMALL(noonleaf::exposed_wetted_frac(0.53, 0.3, EmitterPlace::under_canopy) - 0.19, 0.005);
  BOOST_CHECK_CLOSE(noonleaf::exposed_wetted_frac(0.53, 1, EmitterPlace::under_canopy), 0.47,
                    1e-9);  // 1 - fc decides
  BOOST_TEST(noonleaf::exposed_wetted_frac(0.99, 1, EmitterPlace::open) > 0);
  BOOST_CHECK_THROW(noonleaf::exposed_wetted_frac(1, 1, EmitterPlace::open), noonleaf::Error);
  BOOST_CHECK_THROW(noonleaf::exposed_wetted_frac(0.5, 0, EmitterPlace::open), noonleaf::Error);
}

BOOST_AUTO_TEST_CASE(evaporation_falls_from_rew_to_tew) {
  BOOST_TEST(noonleaf::evaporation_reduction(9, 9, 20) == 1);
  BOOST_CHECK_CLOSE(noonleaf::evaporation_reduction(14.5, 9, 20), 0.5, 1e-9);
  BOOST_TEST(noonleaf::evaporation_reduction(20, 9, 20) == 0);
  BOOST_TEST(noonleaf::evaporation_reduction(25, 9, 20) == 0);
  BOOST_CHECK_THROW(noonleaf::evaporation_reduction(5, 20, 20), noonleaf::Error);
}

// FAO-56 eq. 71: Kr (Kc max - Kcb), at most few Kc max.
BOOST_AUTO_TEST_CASE(evaporation_coefficient_by_hand) {
  BOOST_CHECK_CLOSE(noonleaf::evaporation_coefficient(0.5, 1.2, 0.3, 1), 0.45, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::evaporation_coefficient(1, 1.2, 0.3, 0.5), 0.6, 1e-9);
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(noonleaf::is_missing(noonleaf::depletion_fraction(0.4, missing)));
  BOOST_TEST(noonleaf::is_missing(noonleaf::stress_coefficient(missing, 100, 40)));
  BOOST_TEST(noonleaf::is_missing(noonleaf::evaporation_reduction(missing, 9, 20)));
  BOOST_TEST(noonleaf::is_missing(noonleaf::exposed_wetted_frac(missing, 1, EmitterPlace::open)));
  BOOST_TEST(noonleaf::is_missing(noonleaf::evaporation_coefficient(1, missing, 0.3, 1)));
}

BOOST_AUTO_TEST_SUITE_END()
