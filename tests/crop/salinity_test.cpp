#include "noonleaf/crop/salinity.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/root_zone.hpp"
#include "noonleaf/error.hpp"

using noonleaf::missing;
using noonleaf::SaltTolerance;

BOOST_AUTO_TEST_SUITE(salinity)

// FAO-56, ch. 8, example 39, from memory: beans, ECe 1.5 dS/m; threshold 1.0, b 19 %, Ky 1.15; TAW 110,
// RAW 44.
BOOST_AUTO_TEST_CASE(example_39) {
  const double salt = noonleaf::salt_stress_coefficient(1.5, {1.0, 19, 1.15});
  const double dr[] = {40, 44, 60, 70, 90}, ks[] = {0.92, 0.92, 0.70, 0.56, 0.28};
  for (int i = 0; i < 5; ++i)
    // 0.6950 at 60 mm is printed 0.70: it lies on the rounding boundary.
    BOOST_CHECK_SMALL(salt * noonleaf::stress_coefficient(dr[i], 110, 44) - ks[i], 0.00501);
}

BOOST_AUTO_TEST_CASE(below_the_threshold_salt_does_nothing) {
  BOOST_TEST(noonleaf::salt_yield_frac(0.9, {1.0, 19, 1.15}) == 1);
  BOOST_TEST(noonleaf::salt_stress_coefficient(1.0, {1.0, 19, 1.15}) == 1);
  BOOST_CHECK_CLOSE(noonleaf::salt_yield_frac(2.0, {1.0, 19, 1.15}), 0.81, 1e-9);
  BOOST_TEST(noonleaf::salt_yield_frac(20, {1.0, 19, 1.15}) == 0);
}

// Eq. 90 is eq. 89 with the yield response of eq. 90's Ky in between: 1 - Ya/Ym = Ky (1 - Ks).
BOOST_AUTO_TEST_CASE(stress_and_yield_are_bound_by_ky) {
  for (const double ece : {0.5, 1.2, 2.0, 3.0, 4.5}) {
    const SaltTolerance beans{1.0, 19, 1.15};
    BOOST_CHECK_SMALL(1.15 * (1 - noonleaf::salt_stress_coefficient(ece, beans)) -
                          (1 - noonleaf::salt_yield_frac(ece, beans)),
                      1e-12);
  }
}

// Ayers & Westcot 1985, eq. 9: arithmetic, water of 1 dS/m and a root zone of 1.5 dS/m.
BOOST_AUTO_TEST_CASE(leaching) {
  BOOST_CHECK_CLOSE(noonleaf::leaching_requirement(1, 1.5), 1 / 6.5, 1e-9);
  BOOST_TEST(noonleaf::leaching_requirement(0, 1.5) == 0);
  BOOST_CHECK_CLOSE(noonleaf::leaching_requirement(2, 1), 2.0 / 3, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::leaching_requirement(2.49, 1), 2.49 / 2.51, 1e-9);
  BOOST_CHECK_THROW(noonleaf::leaching_requirement(2.5, 1), noonleaf::Error);  // all of it
  BOOST_CHECK_THROW(noonleaf::leaching_requirement(4, 1.5), noonleaf::Error);
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(noonleaf::is_missing(noonleaf::salt_yield_frac(missing, {1.0, 19, 1.15})));
  BOOST_TEST(noonleaf::is_missing(noonleaf::salt_stress_coefficient(2, {1.0, 19, missing})));
  BOOST_TEST(noonleaf::is_missing(noonleaf::leaching_requirement(missing, 2)));
}

BOOST_AUTO_TEST_SUITE_END()
