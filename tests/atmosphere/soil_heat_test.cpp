#include "noonleaf/atmosphere/soil_heat.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

#include "refusal.hpp"

using noonleaf::missing;

BOOST_AUTO_TEST_SUITE(soil_heat)

BOOST_AUTO_TEST_CASE(matches_print) {  // from memory of the page
  // FAO-56 example 13: March 14.1, April 16.1, May 18.8 °C
  BOOST_CHECK_SMALL(noonleaf::soil_heat_of_month_mj_m2_d({14.1, 16.1, 18.8}) - 0.33, 0.005);
  // FAO-56 example 17: April 30.2, March 29.2 °C
  BOOST_CHECK_SMALL(noonleaf::soil_heat_of_last_month_mj_m2_d({.previous_c = 29.2, .this_c = 30.2}) - 0.14,
                    0.005);
}

// Eq. 43 is eq. 41 over two months: 2.1 x dz / 60.8 days = 0.07 at 2.03 m
BOOST_AUTO_TEST_CASE(general_equation_holds_the_monthly_one) {
  const double general = noonleaf::soil_heat_mj_m2_d({14.1, 18.8, 60.8, 0.07 * 60.8 / 2.1});
  BOOST_CHECK_SMALL(general - noonleaf::soil_heat_of_month_mj_m2_d({14.1, missing, 18.8}), 1e-12);
}

BOOST_AUTO_TEST_CASE(steady_soil_takes_nothing) {
  BOOST_TEST(noonleaf::soil_heat_of_month_mj_m2_d({12, 14, 12}) == 0.0);
  BOOST_TEST(noonleaf::soil_heat_of_last_month_mj_m2_d({12, 12}) == 0.0);
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(std::isnan(noonleaf::soil_heat_of_month_mj_m2_d({missing, 16, 18})));
  BOOST_TEST(std::isnan(noonleaf::soil_heat_of_last_month_mj_m2_d({14})));
  BOOST_TEST(std::isnan(noonleaf::soil_heat_mj_m2_d({14, 16, 30})));
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  BOOST_CHECK_EXCEPTION(noonleaf::soil_heat_of_month_mj_m2_d({14, 16, 64}), noonleaf::Error,
                        NamesField{"next_c"});
  BOOST_CHECK_EXCEPTION(noonleaf::soil_heat_mj_m2_d({14, 16, 0, 1}), noonleaf::Error, NamesField{"days"});
}

BOOST_AUTO_TEST_SUITE_END()
