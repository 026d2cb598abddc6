#include "noonleaf/atmosphere/pressure.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

#include "noonleaf/missing.hpp"

#include "refusal.hpp"

BOOST_AUTO_TEST_SUITE(pressure)

BOOST_AUTO_TEST_CASE(fao56_examples) {                                       // values from memory of the page
  BOOST_CHECK_SMALL(noonleaf::atmospheric_pressure_kpa(1800) - 81.8, 0.05);  // example 2
  BOOST_CHECK_SMALL(noonleaf::psychrometric_constant_kpa_c(81.8) - 0.054, 0.0005);  // example 2
  BOOST_CHECK_SMALL(noonleaf::atmospheric_pressure_kpa(1200) - 87.9, 0.05);         // example 4
  BOOST_CHECK_SMALL(noonleaf::latent_heat_mj_kg(20.0) - 2.45, 0.005);               // annex 3
  BOOST_CHECK_SMALL(noonleaf::evaporation_equivalent_mm(12.0) - 4.9, 0.05);         // example 1
  BOOST_CHECK_SMALL(noonleaf::evaporation_equivalent_mm(1.0) - 0.408, 0.0005);      // table 1
}

BOOST_AUTO_TEST_CASE(
    latent_heat_of_steam_tables) {  // IAPWS-IF97: 2.5009 at 0 °C, 2.4060 at 40 °C; from memory
  BOOST_CHECK_SMALL(noonleaf::latent_heat_mj_kg(0) - 2.5009, 0.001);  // the fit is a straight line
  BOOST_CHECK_SMALL(noonleaf::latent_heat_mj_kg(40) - 2.4060, 0.001);
}

BOOST_AUTO_TEST_CASE(falls_with_elevation) {
  double last = 200.0;
  for (double z = -400; z <= 9000; z += 100) {
    const double p = noonleaf::atmospheric_pressure_kpa(z);
    BOOST_TEST(p < last);
    last = p;
  }
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(std::isnan(noonleaf::atmospheric_pressure_kpa(noonleaf::missing)));
  BOOST_TEST(std::isnan(noonleaf::psychrometric_constant_kpa_c(noonleaf::missing)));
  BOOST_TEST(std::isnan(noonleaf::latent_heat_mj_kg(noonleaf::missing)));
  BOOST_TEST(std::isnan(noonleaf::evaporation_equivalent_mm(noonleaf::missing)));
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  BOOST_CHECK_EXCEPTION(noonleaf::atmospheric_pressure_kpa(9001), noonleaf::Error, NamesField{"elevation_m"});
  BOOST_CHECK_EXCEPTION(noonleaf::atmospheric_pressure_kpa(-501), noonleaf::Error, NamesField{"elevation_m"});
  BOOST_CHECK_EXCEPTION(noonleaf::psychrometric_constant_kpa_c(1013), noonleaf::Error,
                        NamesField{"pressure_kpa"});  // hectopascals
  BOOST_CHECK_EXCEPTION(noonleaf::latent_heat_mj_kg(68), noonleaf::Error, NamesField{"t_c"});
  BOOST_CHECK_EXCEPTION(noonleaf::atmospheric_pressure_kpa(HUGE_VAL), noonleaf::Error,
                        NamesField{"elevation_m"});
}

BOOST_AUTO_TEST_SUITE_END()
