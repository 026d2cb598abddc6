// The ranges that the headers name, at every door: both ends are taken, the next number beyond is not.
#include <numbers>

#include <boost/test/unit_test.hpp>

#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/atmosphere/soil_heat.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/atmosphere/wind.hpp"

#include "accepted_range.hpp"

using namespace noonleaf;

BOOST_AUTO_TEST_SUITE(accepted)

BOOST_AUTO_TEST_CASE(of_pressure) {
  check_accepted("elevation_m", -500, 9000, atmospheric_pressure_kpa);
  check_accepted("pressure_kpa", 30, 110, psychrometric_constant_kpa_c);
  check_accepted("t_c", -60, 60, latent_heat_mj_kg);
}

BOOST_AUTO_TEST_CASE(of_vapour) {
  check_accepted("t_c", -60, 60, [](double x) { return saturation_vapour_pressure_kpa(x); });
  check_accepted("t_c", -60, 60, [](double x) { return saturation_slope_kpa_c(x); });
  check_accepted("t_max_c", -60, 60, [](double x) { return mean_saturation_vapour_pressure_kpa({x, 0}); });
  check_accepted("t_min_c", -60, 60, [](double x) { return mean_saturation_vapour_pressure_kpa({0, x}); });
  check_accepted("t_dew_c", -60, 60, vapour_pressure_from_dew_point_kpa);
  check_accepted("ea_kpa", 0.001, 20, dew_point_c);
  check_accepted("pressure_kpa", 30, 110, [](double x) {
    return vapour_pressure_from_psychrometer_kpa({20, 20, x});
  });
  check_accepted("rh_max_pct", 0, 100, [](double x) {
    return vapour_pressure_from_rh_max_min_kpa({20, 10, x, 50});
  });
  check_accepted("rh_min_pct", 0, 100, [](double x) {
    return vapour_pressure_from_rh_max_min_kpa({20, 10, 50, x});
  });
  check_accepted("rh_mean_pct", 0, 100, [](double x) {
    return vapour_pressure_from_rh_mean_kpa({20, 10, missing, missing, x});
  });
  check_accepted("rh_pct", 0, 100, [](double x) { return vapour_pressure_from_rh_kpa({20, x}); });
  check_accepted("arid_offset_c", 0, 10, [](double x) {
    return dew_point_from_t_min_c({.t_min_c = 10, .dryness = Dryness::arid, .arid_offset_c = x});
  });
}

BOOST_AUTO_TEST_CASE(of_the_sun) {
  check_accepted_whole("day_of_year", 1, 366, inverse_relative_distance);
  check_accepted_whole("day_of_year", 1, 366, solar_declination_rad);
  check_accepted_whole("day_of_year", 1, 366, seasonal_correction_h);
  check_accepted_whole("day_of_year", 1, 366, [](int j) { return sin_mean_sun_altitude(40, j); });
  check_accepted("latitude_deg", -90, 90, [](double x) { return sin_mean_sun_altitude(x, 100); });
  check_accepted("latitude_deg", -90, 90, [](double x) { return sunset_hour_angle_rad({x, 100}); });
  check_accepted("clock_h", 0, 24, [](double x) { return solar_time_angle_rad({x, 0, 0, 100}); });
  check_accepted("zone_meridian_deg", -180, 180, [](double x) {
    return solar_time_angle_rad({12, x, 0, 100});
  });
  check_accepted("longitude_deg", -180, 180, [](double x) { return solar_time_angle_rad({12, 0, x, 100}); });
  check_accepted("length_h", 0.01, 24, [](double x) {
    return extraterrestrial_radiation_mj_m2_h({40, 100, 0}, x);
  });
  check_accepted("time_angle_rad", -std::numbers::pi, std::numbers::pi, [](double x) {
    return extraterrestrial_radiation_mj_m2_h({40, 100, x}, 1);
  });
}

BOOST_AUTO_TEST_CASE(of_radiation) {
  check_accepted("sunshine_h", 0, 13, [](double x) { return radiation_from_sunshine_mj_m2_d({x, 12, 40}); });
  check_accepted("daylight_h", 0, 24, [](double x) { return radiation_from_sunshine_mj_m2_d({0, x, 40}); });
  check_accepted("ra_mj_m2_d", 0, 60, radiation_of_island_mj_m2_d);
  check_accepted("angstrom_a", 0, 1, [](double x) {
    return clear_sky_from_angstrom_mj_m2_d({missing, missing, 40, x, 0.5});
  });
  check_accepted("angstrom_b", 0, 1, [](double x) {
    return clear_sky_from_angstrom_mj_m2_d({missing, missing, 40, 0.2, x});
  });
  check_accepted("elevation_m", -500, 9000, [](double x) { return clear_sky_radiation({40, x}); });
  check_accepted("sin_sun_altitude", -1, 1, [](double x) { return clear_sky_from_beam({30, x, 100, 1}); });
  check_accepted("ea_kpa", 0, 20, [](double x) { return clear_sky_from_beam({30, 0.5, 100, x}); });
  check_accepted("turbidity", 0.5, 1, [](double x) { return clear_sky_from_beam({30, 0.5, 100, 1, x}); });
  check_accepted("albedo", 0, 1, [](double x) { return net_solar_radiation(20, x); });
}

BOOST_AUTO_TEST_CASE(of_wind_and_soil_heat) {
  check_accepted("wind_m_s", 0, 60, [](double x) { return wind_speed_at_2m_m_s({x, 10}); });
  check_accepted("height_m", 0.5, 200, [](double x) { return wind_speed_at_2m_m_s({3, x}); });
  check_accepted("previous_c", -60, 60, [](double x) { return soil_heat_of_month_mj_m2_d({x, 0, 0}); });
  check_accepted("days", 0.01, 366, [](double x) { return soil_heat_mj_m2_d({10, 12, x, 1}); });
  check_accepted("depth_m", 0.01, 5, [](double x) { return soil_heat_mj_m2_d({10, 12, 30, x}); });
  check_accepted("heat_capacity_mj_m3_c", 0.1, 5, [](double x) {
    return soil_heat_mj_m2_d({10, 12, 30, 1, x});
  });
}

BOOST_AUTO_TEST_SUITE_END()
