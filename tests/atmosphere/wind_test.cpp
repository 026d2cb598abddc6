#include "noonleaf/atmosphere/wind.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

#include "refusal.hpp"

using noonleaf::missing;

BOOST_AUTO_TEST_SUITE(wind)

BOOST_AUTO_TEST_CASE(matches_print) {                                        // from memory of the page
  BOOST_CHECK_SMALL(noonleaf::wind_speed_at_2m_m_s({3.2, 10}) - 2.4, 0.05);  // FAO-56 example 14
  // Example 18 prints 2.078 from 10 km/h at 10 m, rounded on the way to 2.78 m/s (which would give 2.079)
  BOOST_CHECK_SMALL(noonleaf::wind_speed_at_2m_m_s({10 / 3.6, 10}) - 2.078, 0.0005);
  BOOST_CHECK_SMALL(noonleaf::wind_speed_at_2m_m_s({1.94, 3.0}) - 1.79, 0.005);  // ASCE-EWRI 2005, app. C
}

BOOST_AUTO_TEST_CASE(two_metres_is_two_metres) {
  BOOST_TEST(noonleaf::wind_speed_at_2m_m_s({3.7, 2.0}) == 3.7);
  BOOST_TEST(noonleaf::wind_speed_at_2m_m_s({0.0, 10}) == 0.0);
  BOOST_TEST(noonleaf::wind_speed_at_2m_m_s({.wind_m_s = 3.7}) == 3.7);  // where no height is given
}

BOOST_AUTO_TEST_CASE(falls_with_the_height_of_the_reading) {
  double last = 100.0;
  for (double z = 0.5; z <= 200; z *= 1.1) {
    const double u2 = noonleaf::wind_speed_at_2m_m_s({5, z});
    BOOST_TEST(u2 < last);
    last = u2;
  }
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(std::isnan(noonleaf::wind_speed_at_2m_m_s({})));
  BOOST_TEST(std::isnan(noonleaf::wind_speed_at_2m_m_s({3.0, missing})));
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  BOOST_CHECK_EXCEPTION(noonleaf::wind_speed_at_2m_m_s({-1, 10}), noonleaf::Error, NamesField{"wind_m_s"});
  BOOST_CHECK_EXCEPTION(noonleaf::wind_speed_at_2m_m_s({3, 0.05}), noonleaf::Error, NamesField{"height_m"});
}

BOOST_AUTO_TEST_SUITE_END()
