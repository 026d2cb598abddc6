#include "noonleaf/atmosphere/vapour.hpp"

#include <cmath>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/atmosphere/pressure.hpp"

#include "refusal.hpp"

using noonleaf::missing;

namespace {

struct Printed {
  double t_c, e_kpa, tol_kpa;
  const char* source;
};
std::ostream& operator<<(std::ostream& out, const Printed& row) {
  return out << row.source << " at " << row.t_c;
}

const std::vector<Printed> printed = {
    // all from memory of the page
    {24.5, 3.075, 0.0005, "FAO-56, ch. 3, example 3"},
    {15.0, 1.705, 0.0005, "FAO-56, ch. 3, example 3"},
    {19.75, 2.30, 0.005, "FAO-56, ch. 3, example 3: e° of the mean, the wrong way"},
    {19.5, 2.267, 0.0005, "FAO-56, ch. 3, example 4"},
    {18.0, 2.064, 0.0005, "FAO-56, ch. 3, example 5"},
    {25.0, 3.168, 0.0005, "FAO-56, ch. 3, example 5"},
    {34.8, 5.56, 0.005, "FAO-56, ch. 4, example 17"},
    {25.6, 3.28, 0.005, "FAO-56, ch. 4, example 17"},
    {21.5, 2.564, 0.0005, "FAO-56, ch. 4, example 18"},
    {12.3, 1.431, 0.0005, "FAO-56, ch. 4, example 18"},
};

}  // namespace

BOOST_AUTO_TEST_SUITE(vapour)

BOOST_DATA_TEST_CASE(matches_print, boost::unit_test::data::make(printed), row) {
  BOOST_CHECK_SMALL(noonleaf::saturation_vapour_pressure_kpa(row.t_c) - row.e_kpa, row.tol_kpa);
}

BOOST_AUTO_TEST_CASE(mean_of_the_extremes) {
  BOOST_CHECK_SMALL(noonleaf::mean_saturation_vapour_pressure_kpa({24.5, 15.0}) - 2.39, 0.005);  // example 3
  BOOST_CHECK_SMALL(noonleaf::mean_saturation_vapour_pressure_kpa({25.0, 18.0}) - 2.62, 0.005);  // example 6
  BOOST_TEST(noonleaf::mean_saturation_vapour_pressure_kpa({25.0, 18.0}) >
             noonleaf::saturation_vapour_pressure_kpa(21.5));  // the curve bends upward
}

BOOST_AUTO_TEST_CASE(psychrometer) {  // FAO-56 example 4: 25.6 dry, 19.5 wet, 1200 m
  const double p = noonleaf::atmospheric_pressure_kpa(1200);
  BOOST_CHECK_SMALL(0.000662 * p - 0.058, 0.0005);
  BOOST_CHECK_SMALL(noonleaf::vapour_pressure_from_psychrometer_kpa({25.6, 19.5, p}) - 1.91, 0.005);
  // In cold air it is less than 1 kPa: e°(3 °C) = 0.758 (annex 2, table 2.3), less 0.000662 x 101.3 x 2
  BOOST_CHECK_SMALL(noonleaf::vapour_pressure_from_psychrometer_kpa({5, 3, 101.3}) - (0.758 - 0.134), 0.001);
  const double forced = noonleaf::vapour_pressure_from_psychrometer_kpa({25.6, 19.5, p});
  const double natural =
      noonleaf::vapour_pressure_from_psychrometer_kpa({25.6, 19.5, p, noonleaf::Ventilation::natural_1_m_s});
  const double indoor =
      noonleaf::vapour_pressure_from_psychrometer_kpa({25.6, 19.5, p, noonleaf::Ventilation::indoor_0_m_s});
  BOOST_CHECK_SMALL((forced - natural) - (0.000800 - 0.000662) * p * 6.1, 1e-12);
  BOOST_CHECK_SMALL((forced - indoor) - (0.001200 - 0.000662) * p * 6.1, 1e-12);
  BOOST_CHECK_SMALL(noonleaf::vapour_pressure_from_psychrometer_kpa({20, 20, 101.3}) -
                        noonleaf::saturation_vapour_pressure_kpa(20),
                    1e-14);  // saturated air
  BOOST_CHECK_EXCEPTION(noonleaf::vapour_pressure_from_psychrometer_kpa({19.5, 25.6, p}), noonleaf::Error,
                        NamesField{"t_dry_c"});
  BOOST_CHECK_EXCEPTION(noonleaf::vapour_pressure_from_psychrometer_kpa({45, 5, 101.3}), noonleaf::Error,
                        NamesField{"t_wet_c"});
}

BOOST_AUTO_TEST_CASE(relative_humidity) {  // FAO-56 examples 5 and 6
  const noonleaf::DailyHumidity day{25.0, 18.0, 82.0, 54.0, 68.0};
  BOOST_CHECK_SMALL(noonleaf::vapour_pressure_from_rh_max_min_kpa(day) - 1.70, 0.005);
  BOOST_CHECK_SMALL(noonleaf::vapour_pressure_from_rh_mean_kpa(day) - 1.78, 0.005);
  BOOST_CHECK_SMALL(noonleaf::vapour_pressure_from_rh_max_kpa(day) - 2.064 * 0.82, 0.0005);
  BOOST_CHECK_SMALL(noonleaf::mean_saturation_vapour_pressure_kpa({25.0, 18.0}) -
                        noonleaf::vapour_pressure_from_rh_max_min_kpa(day) - 0.91,
                    0.005);
  BOOST_CHECK_SMALL(noonleaf::vapour_pressure_from_rh_kpa({38.0, 52.0}) - 3.445, 0.0005);  // example 19
  BOOST_CHECK_SMALL(noonleaf::vapour_pressure_from_rh_kpa({28.0, 90.0}) - 3.402, 0.0005);  // example 19
  BOOST_CHECK_EXCEPTION(noonleaf::vapour_pressure_from_rh_kpa({28.0, 101.0}), noonleaf::Error,
                        NamesField{"rh_pct"});
  BOOST_CHECK_EXCEPTION(noonleaf::vapour_pressure_from_rh_max_min_kpa({25, 18, 82, -1}), noonleaf::Error,
                        NamesField{"rh_min_pct"});
}

BOOST_AUTO_TEST_CASE(dew_point) {
  BOOST_CHECK_SMALL(noonleaf::vapour_pressure_from_dew_point_kpa(14.8) - 1.68, 0.005);  // example 20
  for (double t = -40; t <= 45;
       t += 5) {  // eq. 3-11 gives eq. 14 back as well as its rounded constants allow
    const double ea = noonleaf::vapour_pressure_from_dew_point_kpa(t);
    BOOST_CHECK_CLOSE(noonleaf::vapour_pressure_from_dew_point_kpa(noonleaf::dew_point_c(ea)), ea, 0.2);
  }
  BOOST_TEST(noonleaf::dew_point_from_t_min_c({14.8}) == 14.8);
  BOOST_TEST(noonleaf::dew_point_from_t_min_c({14.8, noonleaf::Dryness::arid}) == 12.3);
  BOOST_TEST(noonleaf::dew_point_from_t_min_c({14.8, noonleaf::Dryness::arid, 2.0}) == 12.8);
  BOOST_CHECK_EXCEPTION(noonleaf::dew_point_c(0.0), noonleaf::Error, NamesField{"ea_kpa"});
}

BOOST_AUTO_TEST_CASE(rises_and_its_slope_is_its_derivative) {
  for (double t = -59; t <= 59; t += 1) {
    const double h = 1e-4;
    const double up = noonleaf::saturation_vapour_pressure_kpa(t + h);
    const double down = noonleaf::saturation_vapour_pressure_kpa(t - h);
    BOOST_TEST(up > down);
    // 4098 is 17.27 x 237.3 = 4098.17 rounded: 0.004 %
    BOOST_CHECK_CLOSE(noonleaf::saturation_slope_kpa_c(t), (up - down) / (2 * h), 0.005);
  }
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(std::isnan(noonleaf::saturation_vapour_pressure_kpa(missing)));
  BOOST_TEST(std::isnan(noonleaf::saturation_slope_kpa_c(missing)));
  BOOST_TEST(std::isnan(noonleaf::mean_saturation_vapour_pressure_kpa({20.0, missing})));
  BOOST_TEST(std::isnan(noonleaf::vapour_pressure_from_dew_point_kpa(missing)));
  BOOST_TEST(std::isnan(noonleaf::dew_point_c(missing)));
  BOOST_TEST(std::isnan(noonleaf::vapour_pressure_from_psychrometer_kpa({20.0, missing, 101.3})));
  BOOST_TEST(std::isnan(noonleaf::vapour_pressure_from_psychrometer_kpa({20.0, 15.0})));
  BOOST_TEST(std::isnan(noonleaf::vapour_pressure_from_rh_max_min_kpa({25, 18, 82, missing})));
  BOOST_TEST(std::isnan(noonleaf::vapour_pressure_from_rh_max_kpa({25, missing, 82})));
  BOOST_TEST(std::isnan(noonleaf::vapour_pressure_from_rh_mean_kpa({25, 18, 82, 54})));
  BOOST_TEST(std::isnan(noonleaf::vapour_pressure_from_rh_kpa({})));
  BOOST_TEST(std::isnan(noonleaf::dew_point_from_t_min_c({})));
}

BOOST_AUTO_TEST_CASE(refuses_fahrenheit) {
  BOOST_CHECK_EXCEPTION(noonleaf::saturation_vapour_pressure_kpa(75), noonleaf::Error, NamesField{"t_c"});
  BOOST_CHECK_EXCEPTION(noonleaf::saturation_slope_kpa_c(-61), noonleaf::Error, NamesField{"t_c"});
  BOOST_CHECK_EXCEPTION(noonleaf::mean_saturation_vapour_pressure_kpa({75, 50}), noonleaf::Error,
                        NamesField{"t_max_c"});
  BOOST_CHECK_EXCEPTION(noonleaf::vapour_pressure_from_dew_point_kpa(75), noonleaf::Error,
                        NamesField{"t_dew_c"});
}

BOOST_AUTO_TEST_SUITE_END()
