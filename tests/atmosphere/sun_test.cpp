#include "noonleaf/atmosphere/sun.hpp"

#include <cmath>
#include <numbers>

#include <boost/test/unit_test.hpp>

#include "refusal.hpp"

using noonleaf::missing;
using namespace std::chrono;

BOOST_AUTO_TEST_SUITE(sun)

BOOST_AUTO_TEST_CASE(day_numbers) {
  BOOST_TEST(noonleaf::day_of_year(2023y / September / 3) == 246);  // FAO-56 example 8, table 2.5
  BOOST_TEST(noonleaf::day_of_year(2023y / May / 15) == 135);       // example 10
  BOOST_TEST(noonleaf::day_of_year(2023y / July / 6) == 187);       // example 18
  BOOST_TEST(noonleaf::day_of_year(2023y / January / 1) == 1);
  BOOST_TEST(noonleaf::day_of_year(2023y / December / 31) == 365);
  BOOST_TEST(noonleaf::day_of_year(2024y / February / 29) == 60);
  BOOST_TEST(noonleaf::day_of_year(2024y / March / 1) == 61);
  BOOST_TEST(noonleaf::day_of_year(2024y / December / 31) == 366);
  BOOST_CHECK_EXCEPTION(noonleaf::day_of_year(2023y / February / 29), noonleaf::Error, NamesField{"date"});
}

BOOST_AUTO_TEST_CASE(fao56_examples_8_and_9) {  // 3 September at 20° S; from memory of the page
  BOOST_CHECK_SMALL(noonleaf::inverse_relative_distance(246) - 0.985, 0.0005);
  BOOST_CHECK_SMALL(noonleaf::solar_declination_rad(246) - 0.120, 0.0005);
  BOOST_CHECK_SMALL(noonleaf::sunset_hour_angle_rad({-20, 246}) - 1.527, 0.0005);
  BOOST_CHECK_SMALL(noonleaf::extraterrestrial_radiation_mj_m2_d({-20, 246}) - 32.2, 0.05);
  BOOST_CHECK_SMALL(0.408 * noonleaf::extraterrestrial_radiation_mj_m2_d({-20, 246}) - 13.1, 0.05);
  BOOST_CHECK_SMALL(noonleaf::daylight_h({-20, 246}) - 11.7, 0.05);
}

BOOST_AUTO_TEST_CASE(other_fao56_examples) {  // from memory of the page
  BOOST_CHECK_SMALL(noonleaf::extraterrestrial_radiation_mj_m2_d({-22.9, 135}) - 25.1, 0.05);  // 10
  BOOST_CHECK_SMALL(noonleaf::daylight_h({-22.9, 135}) - 10.9, 0.05);                          // 10
  // 15 prints 40.6, 20 prints 40.55 for the same place and day
  BOOST_CHECK_SMALL(noonleaf::extraterrestrial_radiation_mj_m2_d({45 + 43.0 / 60, 196}) - 40.6, 0.05);
  BOOST_CHECK_SMALL(noonleaf::extraterrestrial_radiation_mj_m2_d({45 + 43.0 / 60, 196}) - 40.55, 0.005);
  BOOST_CHECK_SMALL(noonleaf::extraterrestrial_radiation_mj_m2_d({13 + 44.0 / 60, 105}) - 38.06,
                    0.005);                                                                     // 16, 17
  BOOST_CHECK_SMALL(noonleaf::daylight_h({13 + 44.0 / 60, 105}) - 12.31, 0.005);                // 17
  BOOST_CHECK_SMALL(noonleaf::extraterrestrial_radiation_mj_m2_d({50.8, 187}) - 41.09, 0.005);  // 18
  BOOST_CHECK_SMALL(noonleaf::daylight_h({50.8, 187}) - 16.1, 0.05);                            // 18
}

BOOST_AUTO_TEST_CASE(example_19_hour) {  // N'Diaye, 16°13' N 16°15' W, 1 October 14-15 h, zone meridian 15° W
  BOOST_CHECK_SMALL(noonleaf::seasonal_correction_h(274) - 0.1889, 0.00005);
  const double w = noonleaf::solar_time_angle_rad(
      {.clock_h = 14.5, .zone_meridian_deg = -15, .longitude_deg = -16.25, .day_of_year = 274});
  BOOST_CHECK_SMALL(w - 0.682, 0.0005);
  const noonleaf::SunMoment moment{16 + 13.0 / 60, 274, w};
  BOOST_CHECK_SMALL(noonleaf::extraterrestrial_radiation_mj_m2_h(moment, 1.0) - 3.543, 0.0005);
  const double night = noonleaf::solar_time_angle_rad(
      {.clock_h = 2.5, .zone_meridian_deg = -15, .longitude_deg = -16.25, .day_of_year = 274});
  BOOST_TEST(noonleaf::extraterrestrial_radiation_mj_m2_h({16 + 13.0 / 60, 274, night}, 1.0) == 0.0);
}

BOOST_AUTO_TEST_CASE(a_clock_that_keeps_utc_gives_the_same_angle) {
  const double zone = noonleaf::solar_time_angle_rad({14.5, -15, -16.25, 274});
  const double utc = noonleaf::solar_time_angle_rad({15.5, 0, -16.25, 274});
  BOOST_CHECK_SMALL(zone - utc, 1e-12);
  const double east = noonleaf::solar_time_angle_rad({12, 0, 30, 274});  // two hours past noon there
  BOOST_CHECK_SMALL(east - (2 + noonleaf::seasonal_correction_h(274)) * std::numbers::pi / 12, 1e-12);
  const double around = noonleaf::solar_time_angle_rad({23.5, 0, 170, 1});  // the date line is crossed
  BOOST_TEST(std::abs(around) <= std::numbers::pi);
  // The same moment by the clock 12 hours ahead of UTC, where it is the next day already, 11:30
  BOOST_CHECK_SMALL(around - noonleaf::solar_time_angle_rad({11.5, 180, 170, 1}), 1e-12);
}

BOOST_AUTO_TEST_CASE(polar_night_and_day_are_exact) {
  BOOST_TEST(noonleaf::extraterrestrial_radiation_mj_m2_d({75, 355}) == 0.0);
  BOOST_TEST(noonleaf::daylight_h({75, 355}) == 0.0);
  BOOST_TEST(noonleaf::daylight_h({75, 172}) == 24.0);
  BOOST_TEST(noonleaf::sunset_hour_angle_rad({75, 172}) == std::numbers::pi);
  BOOST_TEST(noonleaf::daylight_h({-75, 172}) == 0.0);
  BOOST_TEST(noonleaf::extraterrestrial_radiation_mj_m2_d({-75, 172}) == 0.0);
  BOOST_TEST(noonleaf::daylight_h({90, 172}) == 24.0);
  BOOST_TEST(noonleaf::daylight_h({-90, 172}) == 0.0);
  // At the pole the sun keeps its height all day: Ra = 24 x 60 Gsc dr sin(declination)
  const double expected = 24 * 60 * 0.0820 * noonleaf::inverse_relative_distance(172) *
                          std::sin(noonleaf::solar_declination_rad(172));
  BOOST_CHECK_CLOSE(noonleaf::extraterrestrial_radiation_mj_m2_d({90, 172}), expected, 1e-10);
}

BOOST_AUTO_TEST_CASE(every_place_and_day_has_a_plain_answer) {
  for (double latitude = -90; latitude <= 90; latitude += 0.5) {
    for (int j = 1; j <= 366; ++j) {
      const double ra = noonleaf::extraterrestrial_radiation_mj_m2_d({latitude, j});
      const double n = noonleaf::daylight_h({latitude, j});
      if (!(ra >= 0.0 && ra < 50.0 && n >= 0.0 && n <= 24.0)) {
        BOOST_ERROR("latitude " << latitude << " day " << j << ": Ra " << ra << ", N " << n);
      }
    }
  }
}

BOOST_AUTO_TEST_CASE(hemispheres_and_equator) {
  for (int j = 1; j <= 365; j += 13) {
    BOOST_CHECK_SMALL(noonleaf::daylight_h({0, j}) - 12.0, 1e-12);
    BOOST_CHECK_SMALL(noonleaf::daylight_h({40, j}) + noonleaf::daylight_h({-40, j}) - 24.0, 1e-12);
  }
  BOOST_TEST(noonleaf::extraterrestrial_radiation_mj_m2_d({40, 172}) >
             noonleaf::extraterrestrial_radiation_mj_m2_d({-40, 172}));
}

// Hours add up to the day (eq. 28 against eq. 21): J and Sc are held, so only rounding is left.
BOOST_AUTO_TEST_CASE(hours_add_up_to_the_day) {
  for (const double latitude : {-90.0, -66.0, -35.0, 0.0, 16.2, 52.0, 67.0, 80.0}) {
    for (int j = 1; j <= 366; j += 5) {
      double sum = 0.0, sum_before = 0.0, halves = 0.0;
      for (int hour = 0; hour < 24; ++hour) {
        const double w = std::remainder((hour + 0.63 - 12) * std::numbers::pi / 12, 2 * std::numbers::pi);
        sum += noonleaf::extraterrestrial_radiation_mj_m2_h({latitude, j, w}, 1.0);
        // Now the hour of midnight belongs to the day after it, before it to the day before.
        sum_before += noonleaf::extraterrestrial_radiation_mj_m2_h(
            {latitude, j, (hour + 0.37 - 12) * std::numbers::pi / 12}, 1.0);
        for (const double shift : {-0.25, 0.25}) {
          const double part = std::remainder(w + shift * std::numbers::pi / 12, 2 * std::numbers::pi);
          halves += 0.5 * noonleaf::extraterrestrial_radiation_mj_m2_h({latitude, j, part}, 0.5);
        }
      }
      const double day = noonleaf::extraterrestrial_radiation_mj_m2_d({latitude, j});
      BOOST_CHECK_SMALL(sum - day, 1e-11);
      BOOST_CHECK_SMALL(sum_before - day, 1e-11);
      BOOST_CHECK_SMALL(halves - day, 1e-11);
    }
  }
}

BOOST_AUTO_TEST_CASE(altitude) {
  const double noon = noonleaf::sun_altitude_rad({40, 172, 0});
  BOOST_CHECK_SMALL(
      noon - (std::numbers::pi / 2 - 40 * std::numbers::pi / 180 + noonleaf::solar_declination_rad(172)),
      1e-12);
  const double ws = noonleaf::sunset_hour_angle_rad({40, 172});
  BOOST_CHECK_SMALL(noonleaf::sun_altitude_rad({40, 172, ws}), 1e-12);
  BOOST_TEST(noonleaf::sun_altitude_rad({40, 172, std::numbers::pi}) < 0);
}

BOOST_AUTO_TEST_CASE(without_a_day_it_is_the_first_of_january) {
  BOOST_TEST(noonleaf::daylight_h({.latitude_deg = 40}) == noonleaf::daylight_h({40, 1}));
  BOOST_TEST(noonleaf::sun_altitude_rad({.latitude_deg = 40, .time_angle_rad = 0}) ==
             noonleaf::sun_altitude_rad({40, 1, 0}));
  BOOST_TEST(noonleaf::solar_time_angle_rad({.clock_h = 12, .longitude_deg = 0}) ==
             noonleaf::solar_time_angle_rad({12, 0, 0, 1}));
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(std::isnan(noonleaf::sunset_hour_angle_rad({missing, 100})));
  BOOST_TEST(std::isnan(noonleaf::daylight_h({missing, 100})));
  BOOST_TEST(std::isnan(noonleaf::extraterrestrial_radiation_mj_m2_d({missing, 100})));
  BOOST_TEST(std::isnan(noonleaf::extraterrestrial_radiation_mj_m2_h({missing, 100, 0.0}, 1.0)));
  BOOST_TEST(std::isnan(noonleaf::extraterrestrial_radiation_mj_m2_h({40, 100, missing}, 1.0)));
  BOOST_TEST(std::isnan(noonleaf::extraterrestrial_radiation_mj_m2_h({40, 100, 0.0}, missing)));
  BOOST_TEST(std::isnan(noonleaf::sun_altitude_rad({40, 100, missing})));
  BOOST_TEST(std::isnan(noonleaf::solar_time_angle_rad({missing, 0, 10, 100})));
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  BOOST_CHECK_EXCEPTION(noonleaf::inverse_relative_distance(0), noonleaf::Error, NamesField{"day_of_year"});
  BOOST_CHECK_EXCEPTION(noonleaf::solar_declination_rad(367), noonleaf::Error, NamesField{"day_of_year"});
  BOOST_CHECK_EXCEPTION(noonleaf::daylight_h({91, 100}), noonleaf::Error, NamesField{"latitude_deg"});
  BOOST_CHECK_EXCEPTION(noonleaf::solar_time_angle_rad({12, 0, 181, 100}), noonleaf::Error,
                        NamesField{"longitude_deg"});
  BOOST_CHECK_EXCEPTION(noonleaf::extraterrestrial_radiation_mj_m2_h({40, 100, 0}, 0.0), noonleaf::Error,
                        NamesField{"length_h"});
}

BOOST_AUTO_TEST_SUITE_END()
