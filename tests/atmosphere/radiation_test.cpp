#include "noonleaf/atmosphere/radiation.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/sun.hpp"

#include "refusal.hpp"

using noonleaf::missing;

BOOST_AUTO_TEST_SUITE(radiation)

BOOST_AUTO_TEST_CASE(fao56_examples_10_to_12) {  // Rio de Janeiro, 15 May; from memory of the page
  const double ra = noonleaf::extraterrestrial_radiation_mj_m2_d({-22.9, 135});
  const double n = noonleaf::daylight_h({-22.9, 135});
  const noonleaf::Sunshine day{7.1, n, ra};
  BOOST_CHECK_SMALL(noonleaf::radiation_from_sunshine_mj_m2_d(day) - 14.5, 0.05);
  BOOST_CHECK_SMALL(noonleaf::clear_sky_from_angstrom_mj_m2_d(day) - 18.8, 0.05);
  BOOST_CHECK_SMALL(noonleaf::net_longwave_radiation_mj_m2_d({25.1, 19.1, 2.1, 14.5, 18.8}) - 3.5, 0.05);
  // Printed 11.1 for 0.77 x 14.5 = 11.165: the page cuts where it should round. The equation is right.
  BOOST_CHECK_SMALL(noonleaf::net_solar_radiation(14.5) - 11.165, 1e-12);
  // Printed 7.6 = 11.1 - 3.5; with 11.165 - 3.534 it is 7.63, which rounds to the same.
  BOOST_CHECK_SMALL(
      noonleaf::net_radiation(noonleaf::net_solar_radiation(14.5),
                              noonleaf::net_longwave_radiation_mj_m2_d({25.1, 19.1, 2.1, 14.5, 18.8})) -
          7.6,
      0.05);
}

BOOST_AUTO_TEST_CASE(fao56_examples_15_and_16) {  // from memory of the page
  BOOST_CHECK_SMALL(noonleaf::radiation_from_temperature_mj_m2_d(
                        {26.6, 14.8, noonleaf::extraterrestrial_radiation_mj_m2_d({45 + 43.0 / 60, 196})}) -
                        22.3,
                    0.05);
  // 16 prints 21.9 from Ra = 38.06; 0.19 sqrt(9.2) 38.06 = 21.93
  BOOST_CHECK_SMALL(
      noonleaf::radiation_from_temperature_mj_m2_d({34.8, 25.6, 38.06, noonleaf::Setting::coast}) - 21.9,
      0.05);
}

BOOST_AUTO_TEST_CASE(fao56_examples_17_and_18) {  // from memory of the page
  const noonleaf::SunDay bangkok{13 + 44.0 / 60, 105};
  const double ra = noonleaf::extraterrestrial_radiation_mj_m2_d(bangkok);
  const double rs = noonleaf::radiation_from_sunshine_mj_m2_d({8.5, noonleaf::daylight_h(bangkok), ra});
  const double rso = noonleaf::clear_sky_radiation({ra, 2.0});
  BOOST_CHECK_SMALL(rs - 22.65, 0.005);
  BOOST_CHECK_SMALL(rso - 28.54, 0.005);
  BOOST_CHECK_SMALL(rs / rso - 0.79, 0.005);
  BOOST_CHECK_SMALL(noonleaf::net_solar_radiation(rs) - 17.44, 0.005);
  BOOST_CHECK_SMALL(noonleaf::net_longwave_radiation_mj_m2_d({34.8, 25.6, 2.85, rs, rso}) - 3.11, 0.005);
  const noonleaf::SunDay uccle{50.8, 187};
  const double ra2 = noonleaf::extraterrestrial_radiation_mj_m2_d(uccle);
  const double rs2 = noonleaf::radiation_from_sunshine_mj_m2_d({9.25, noonleaf::daylight_h(uccle), ra2});
  const double rso2 = noonleaf::clear_sky_radiation({ra2, 100.0});
  BOOST_CHECK_SMALL(rs2 - 22.07, 0.005);
  BOOST_CHECK_SMALL(rso2 - 30.90, 0.005);
  BOOST_CHECK_SMALL(noonleaf::net_solar_radiation(rs2) - 17.0, 0.005);
  BOOST_CHECK_SMALL(noonleaf::net_longwave_radiation_mj_m2_d({21.5, 12.3, 1.409, rs2, rso2}) - 3.71, 0.005);
}

BOOST_AUTO_TEST_CASE(sunshine_limits) {
  BOOST_CHECK_SMALL(noonleaf::radiation_from_sunshine_mj_m2_d({0, 12, 40}) - 10.0, 1e-12);  // overcast
  BOOST_CHECK_SMALL(noonleaf::radiation_from_sunshine_mj_m2_d({12, 12, 40}) - 30.0, 1e-12);
  BOOST_CHECK_SMALL(noonleaf::radiation_from_sunshine_mj_m2_d({12.3, 12, 40}) - 30.0, 1e-12);  // refraction
  BOOST_TEST(noonleaf::radiation_from_sunshine_mj_m2_d({0, 0, 0}) == 0.0);                     // polar night
  BOOST_TEST(noonleaf::radiation_from_sunshine_mj_m2_d({0.5, 0, 2}) ==
             0.0);  // a glow above it is no sunshine
  BOOST_CHECK_SMALL(noonleaf::radiation_from_sunshine_mj_m2_d({6, 12, 40, 0.2, 0.6}) - 20.0, 1e-12);
  BOOST_CHECK_EXCEPTION(noonleaf::radiation_from_sunshine_mj_m2_d({13.1, 12, 40}), noonleaf::Error,
                        NamesField{"sunshine_h"});
  BOOST_CHECK_EXCEPTION(noonleaf::radiation_from_sunshine_mj_m2_d({25, 24, 40}), noonleaf::Error,
                        NamesField{"sunshine_h"});
}

BOOST_AUTO_TEST_CASE(other_ways_to_solar_radiation) {
  BOOST_CHECK_SMALL(noonleaf::radiation_of_island_mj_m2_d(40) - 24.0, 1e-12);              // eq. 51
  BOOST_CHECK_SMALL(noonleaf::radiation_from_nearby_mj_m2_d({20, 40, 38}) - 19.0, 1e-12);  // eq. 49
  BOOST_TEST(std::isnan(noonleaf::radiation_from_nearby_mj_m2_d({0, 0, 5})));
  BOOST_TEST(std::isnan(noonleaf::radiation_from_nearby_mj_m2_d({0.2, 0, 5})));  // not infinite
  BOOST_TEST(noonleaf::radiation_from_temperature_mj_m2_d({20, 20, 40}) == 0.0);
  BOOST_CHECK_EXCEPTION(noonleaf::radiation_from_temperature_mj_m2_d({10, 20, 40}), noonleaf::Error,
                        NamesField{"t_max_c"});
}

BOOST_AUTO_TEST_CASE(beam_and_diffuse_sky_worked_by_hand) {
  // Worked apart from the code, not published. W = 0.14 x 1 x 100 + 2.1 = 16.1 mm; W / sin = 32.2.
  // ASCE-EWRI eq. D.2: KB = 0.98 exp(-0.292 - 0.075 x 32.2^0.4) = 0.54175; KD = 0.35 - 0.36 KB = 0.15497
  const noonleaf::BeamClearSky sky{30, 0.5, 100, 1.0, 1.0, noonleaf::ClearSkyEdition::asce};
  BOOST_CHECK_SMALL(noonleaf::clear_sky_from_beam(sky) - 20.9016, 5e-5);
  // FAO-56 annex 3: KB = 0.98 exp(-0.292 - 0.091 x 32.2^0.25) = 0.58921; KD = 0.35 - 0.33 KB = 0.15556
  noonleaf::BeamClearSky older = sky;
  older.edition = noonleaf::ClearSkyEdition::fao56;
  BOOST_CHECK_SMALL(noonleaf::clear_sky_from_beam(older) - 22.3431, 5e-5);
}

BOOST_AUTO_TEST_CASE(under_a_low_sun_the_diffuse_share_has_its_other_line) {
  // As printed: KD = 0.18 + 0.82 KB for KB < 0.15. The sun on the horizon has no beam left: KB = 0, so Rso = 0.18 Ra.
  BOOST_CHECK_SMALL(noonleaf::clear_sky_from_beam({30, 1e-4, 100, 1.0}) - 0.18 * 30, 1e-9);
  // sin = 0.1: KB = 0.98 exp(-1.46 - 0.075 x 161^0.4) = 0.1284, KD = 0.2853; sin = 0.113: KB = 0.1561 and the line
  // for a higher sun holds, KD = 0.35 - 0.36 KB = 0.2938; worked with a pocket calculator, not published
  BOOST_CHECK_SMALL(noonleaf::clear_sky_from_beam({30, 0.1, 100, 1.0}) - (0.1284 + 0.2853) * 30, 0.005);
  BOOST_CHECK_SMALL(noonleaf::clear_sky_from_beam({30, 0.113, 100, 1.0}) - (0.1561 + 0.2938) * 30, 0.005);
}

BOOST_AUTO_TEST_CASE(beam_and_diffuse_sky_behaves) {
  noonleaf::BeamClearSky sky{30, 0.7, 100, 1.5};
  const double clean = noonleaf::clear_sky_from_beam(sky);
  sky.turbidity = 0.6;
  BOOST_TEST(noonleaf::clear_sky_from_beam(sky) < clean);  // dust
  sky.turbidity = 1.0;
  sky.ea_kpa = 3.0;
  BOOST_TEST(noonleaf::clear_sky_from_beam(sky) < clean);  // water vapour
  sky.sin_sun_altitude = 0.02;
  const double low_sun = noonleaf::clear_sky_from_beam(sky);  // KB under 0.15, where KD = 0.18 + 0.82 KB
  BOOST_TEST(low_sun > 0.18 * 30);
  BOOST_TEST(low_sun < 0.35 * 30);
  sky.sin_sun_altitude = 0.0;
  BOOST_TEST(noonleaf::clear_sky_from_beam(sky) == 0.0);
  sky.sin_sun_altitude = -0.3;
  BOOST_TEST(noonleaf::clear_sky_from_beam(sky) == 0.0);
  sky.ea_kpa = missing;
  BOOST_TEST(std::isnan(noonleaf::clear_sky_from_beam(sky)));
  // Both clear-sky forms should tell of the same sky on a summer's day: within 10 %
  const noonleaf::SunDay day{40, 172};
  const double ra = noonleaf::extraterrestrial_radiation_mj_m2_d(day);
  const double beam = noonleaf::clear_sky_from_beam(
      {ra, noonleaf::sin_mean_sun_altitude(40, 172), noonleaf::atmospheric_pressure_kpa(500), 1.5});
  BOOST_CHECK_CLOSE(beam, noonleaf::clear_sky_radiation({ra, 500.0}), 10.0);
}

BOOST_AUTO_TEST_CASE(mean_altitude_of_the_day) {
  BOOST_TEST(noonleaf::sin_mean_sun_altitude(40, 172) > noonleaf::sin_mean_sun_altitude(40, 355));
  BOOST_TEST(noonleaf::sin_mean_sun_altitude(90, 355) == 0.0);
  // The printed equation with a pocket calculator: 0.85 rad at the equator on any day; at 40° (0.6981 rad) the sine of
  // the season is 1 on day 172, 0.0043 on day 81, -1 on day 355
  BOOST_CHECK_SMALL(noonleaf::sin_mean_sun_altitude(0, 200) - 0.7513, 0.0001);
  BOOST_CHECK_SMALL(noonleaf::sin_mean_sun_altitude(40, 172) - 0.7544, 0.0002);
  BOOST_CHECK_SMALL(noonleaf::sin_mean_sun_altitude(40, 81) - 0.6021, 0.0002);
  BOOST_CHECK_SMALL(noonleaf::sin_mean_sun_altitude(40, 355) - 0.4222, 0.0002);
  BOOST_TEST(std::isnan(noonleaf::sin_mean_sun_altitude(missing, 172)));
}

BOOST_AUTO_TEST_CASE(longwave_limits) {
  const double clear = noonleaf::net_longwave_radiation_mj_m2_d({25, 15, 1.5, 25, 25});
  BOOST_TEST(noonleaf::net_longwave_radiation_mj_m2_d({25, 15, 1.5, 30, 25}) ==
             clear);  // Rs/Rso limited to 1
  BOOST_TEST(noonleaf::net_longwave_radiation_mj_m2_d({25, 15, 1.5, 15, 25}) < clear);
  BOOST_TEST(noonleaf::net_longwave_radiation_mj_m2_d({25, 15, 2.5, 25, 25}) < clear);
  BOOST_TEST(noonleaf::net_longwave_radiation_mj_m2_d({25, 15, 1.5, 2, 25}) <
             0.0);  // as printed, no lower limit
  const double polar = noonleaf::net_longwave_radiation_mj_m2_d({-20, -30, 0.05, 0, 0});
  BOOST_CHECK_SMALL(polar - noonleaf::net_longwave_radiation_mj_m2_d({-20, -30, 0.05, 12, 20}),
                    1e-12);  // 0.6
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(std::isnan(noonleaf::radiation_from_sunshine_mj_m2_d({missing, 12, 40})));
  BOOST_TEST(std::isnan(noonleaf::radiation_from_sunshine_mj_m2_d({7, missing, 40})));
  BOOST_TEST(std::isnan(noonleaf::radiation_from_sunshine_mj_m2_d({0, 0, missing})));
  BOOST_TEST(std::isnan(noonleaf::radiation_from_temperature_mj_m2_d({missing, 10, 40})));
  BOOST_TEST(std::isnan(noonleaf::radiation_of_island_mj_m2_d(missing)));
  BOOST_TEST(std::isnan(noonleaf::radiation_from_nearby_mj_m2_d({20, 40})));
  BOOST_TEST(std::isnan(noonleaf::clear_sky_radiation({40.0, missing})));
  BOOST_TEST(std::isnan(noonleaf::net_solar_radiation(missing)));
  BOOST_TEST(std::isnan(noonleaf::net_longwave_radiation_mj_m2_d({25, 15, missing, 25, 25})));
  BOOST_TEST(std::isnan(noonleaf::net_longwave_radiation_mj_m2_d({25, 15, 1.5, missing, 25})));
  BOOST_TEST(std::isnan(noonleaf::net_longwave_radiation_mj_m2_d({25, 15, 1.5, 25, missing})));
  BOOST_TEST(std::isnan(noonleaf::net_radiation(missing, 1.0)));
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  BOOST_CHECK_EXCEPTION(noonleaf::net_solar_radiation(250), noonleaf::Error, NamesField{"rs"});  // W/m2
  BOOST_CHECK_EXCEPTION(noonleaf::net_solar_radiation(20, 23), noonleaf::Error, NamesField{"albedo"});
  BOOST_CHECK_EXCEPTION(noonleaf::net_longwave_radiation_mj_m2_d({25, 15, 21, 25, 25}), noonleaf::Error,
                        NamesField{"ea_kpa"});
  BOOST_CHECK_EXCEPTION(noonleaf::clear_sky_radiation({-1.0, 100.0}), noonleaf::Error, NamesField{"ra"});
  BOOST_CHECK_EXCEPTION(noonleaf::clear_sky_from_beam({30, 0.5, 100, 1.0, 0.3}), noonleaf::Error,
                        NamesField{"turbidity"});
}

BOOST_AUTO_TEST_SUITE_END()
