#include "noonleaf/reference/missing_data.hpp"

#include <chrono>
#include <cmath>

#include <boost/test/unit_test.hpp>

#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/atmosphere/wind.hpp"
#include "noonleaf/reference/penman_monteith.hpp"

#include "accepted_range.hpp"
#include "refusal.hpp"

using namespace std::chrono;
using noonleaf::complete_daily;
using noonleaf::DailyEstimate;
using noonleaf::DailyWeather;
using noonleaf::HumidityFrom;
using noonleaf::missing;
using noonleaf::PressureFrom;
using noonleaf::RadiationFrom;
using noonleaf::RhMinFrom;
using noonleaf::TemperatureFrom;
using noonleaf::WindFrom;

namespace {

const noonleaf::Location lyon{.latitude_deg = 45.72, .longitude_deg = 4.83, .elevation_m = 200};

/// A day with everything on record. The several measures of humidity do not agree, so that the rung shows.
DailyWeather full_day() {
  return {.date = 2023y / July / 15,
          .t_max_c = 26.6,
          .t_min_c = 14.8,
          .t_mean_c = 20,
          .rh_max_pct = 90,
          .rh_min_pct = 45,
          .rh_mean_pct = 66,
          .t_dew_c = 13,
          .ea_kpa = 1.6,
          .wind_m_s = 3,
          .rs_mj_m2_d = 24,
          .sunshine_h = 10,
          .pressure_kpa = 98.5};
}

double e0(double t_c) { return noonleaf::saturation_vapour_pressure_kpa(t_c); }

}  // namespace

BOOST_AUTO_TEST_SUITE(missing_data)

BOOST_AUTO_TEST_CASE(a_full_day_is_taken_as_measured) {
  const DailyEstimate day = complete_daily(full_day(), lyon);
  BOOST_TEST(day.ea_kpa == 1.6);
  BOOST_TEST(day.rs_mj_m2_d == 24);
  BOOST_TEST(day.u2_m_s == 3);
  BOOST_TEST(day.pressure_kpa == 98.5);
  BOOST_TEST(day.rh_min_pct == 45);
  BOOST_TEST(day.is_complete());
  BOOST_TEST(day.is_measured());
  BOOST_TEST(noonleaf::estimated_phrases(day) == "");
  BOOST_TEST(noonleaf::estimated_codes(day) == "");
}

BOOST_AUTO_TEST_CASE(humidity_goes_down_its_rungs) {
  DailyWeather weather = full_day();
  const auto rung = [&](HumidityFrom expected, double ea_kpa) {
    const DailyEstimate day = complete_daily(weather, lyon);
    BOOST_TEST((day.humidity == expected), noonleaf::code(day.humidity));
    BOOST_CHECK_SMALL(day.ea_kpa - ea_kpa, 1e-12);
  };
  rung(HumidityFrom::measured, 1.6);
  weather.ea_kpa = missing;
  rung(HumidityFrom::dew_point, e0(13));
  weather.t_dew_c = missing;
  rung(HumidityFrom::rh_max_min, (e0(14.8) * 0.90 + e0(26.6) * 0.45) / 2);
  weather.rh_min_pct = missing;
  rung(HumidityFrom::rh_max, e0(14.8) * 0.90);
  weather.rh_max_pct = missing;
  rung(HumidityFrom::rh_mean, 0.66 * (e0(14.8) + e0(26.6)) / 2);
  weather.rh_mean_pct = missing;
  rung(HumidityFrom::t_min, e0(14.8));
  const DailyEstimate arid = complete_daily(weather, lyon, {.dryness = noonleaf::Dryness::arid});
  BOOST_CHECK_SMALL(arid.ea_kpa - e0(12.3), 1e-12);
  const DailyEstimate less =
      complete_daily(weather, lyon, {.dryness = noonleaf::Dryness::arid, .arid_offset_c = 2});
  BOOST_CHECK_SMALL(less.ea_kpa - e0(12.8), 1e-12);
}

BOOST_AUTO_TEST_CASE(rh_min_without_rh_max_falls_through_to_the_mean) {
  DailyWeather weather = full_day();
  weather.ea_kpa = weather.t_dew_c = weather.rh_max_pct = missing;
  BOOST_TEST((complete_daily(weather, lyon).humidity == HumidityFrom::rh_mean));
}

BOOST_AUTO_TEST_CASE(a_hygrometer_over_100_reads_saturated_air) {
  DailyWeather weather = full_day();
  weather.ea_kpa = weather.t_dew_c = weather.rh_min_pct = missing;
  weather.rh_max_pct = 103;
  BOOST_CHECK_SMALL(complete_daily(weather, lyon).ea_kpa - e0(14.8), 1e-12);
  check_accepted("rh_max_pct", 0, 105, [&](double x) {
    weather.rh_max_pct = x;
    return complete_daily(weather, lyon);
  });
  weather.rh_max_pct = 105.5;
  BOOST_CHECK_EXCEPTION(complete_daily(weather, lyon), noonleaf::Error, NamesField{"rh_max_pct"});
}

BOOST_AUTO_TEST_CASE(radiation_goes_down_its_rungs) {
  DailyWeather weather = full_day();
  const noonleaf::SunDay sun{45.72, 196};
  const double ra = noonleaf::extraterrestrial_radiation_mj_m2_d(sun);
  BOOST_TEST((complete_daily(weather, lyon).radiation == RadiationFrom::measured));
  weather.rs_mj_m2_d = missing;
  const DailyEstimate sunny = complete_daily(weather, lyon);
  BOOST_TEST((sunny.radiation == RadiationFrom::sunshine));
  BOOST_CHECK_SMALL(sunny.rs_mj_m2_d - (0.25 + 0.50 * 10 / noonleaf::daylight_h(sun)) * ra, 1e-12);
  const DailyEstimate local = complete_daily(weather, lyon, {.angstrom_a = 0.2, .angstrom_b = 0.55});
  BOOST_CHECK_SMALL(local.rs_mj_m2_d - (0.2 + 0.55 * 10 / noonleaf::daylight_h(sun)) * ra, 1e-12);
  weather.sunshine_h = missing;
  const DailyEstimate guessed = complete_daily(weather, lyon);
  BOOST_TEST((guessed.radiation == RadiationFrom::temperature_range));
  BOOST_CHECK_SMALL(guessed.rs_mj_m2_d - 0.16 * std::sqrt(11.8) * ra, 1e-12);
  const DailyEstimate coast = complete_daily(weather, lyon, {.setting = noonleaf::Setting::coast});
  BOOST_CHECK_SMALL(coast.rs_mj_m2_d - 0.19 * std::sqrt(11.8) * ra, 1e-12);
  weather.t_min_c = -2;  // a range of 28.6 °C would be brighter than a clear sky
  BOOST_CHECK_SMALL(complete_daily(weather, lyon).rs_mj_m2_d - (0.75 + 2e-5 * 200) * ra, 1e-12);
}

BOOST_AUTO_TEST_CASE(wind_goes_down_its_rungs) {
  DailyWeather weather = full_day();
  BOOST_TEST((complete_daily(weather, lyon).wind == WindFrom::measured));
  const DailyEstimate high = complete_daily(weather, lyon, {.wind_height_m = 10});
  BOOST_TEST((high.wind == WindFrom::other_height));
  BOOST_TEST(high.u2_m_s == noonleaf::wind_speed_at_2m_m_s({3, 10}));
  BOOST_TEST(high.is_measured());
  weather.wind_m_s = 0.2;
  const DailyEstimate calm = complete_daily(weather, lyon);
  BOOST_TEST((calm.wind == WindFrom::calm_limit));
  BOOST_TEST(calm.u2_m_s == 0.5);
  BOOST_TEST(!calm.is_measured());
  const DailyEstimate as_read = complete_daily(weather, lyon, {.calm_air = noonleaf::CalmAir::as_read});
  BOOST_TEST((as_read.wind == WindFrom::measured));
  BOOST_TEST(as_read.u2_m_s == 0.2);
  weather.wind_m_s = missing;
  const DailyEstimate usual = complete_daily(weather, lyon, {.wind_height_m = 10});
  BOOST_TEST((usual.wind == WindFrom::usual_wind));
  BOOST_TEST(usual.u2_m_s == 2.0);  // not brought down from 10 m once more
}

BOOST_AUTO_TEST_CASE(pressure_goes_down_its_rungs) {
  DailyWeather weather = full_day();
  weather.pressure_kpa = missing;
  const DailyEstimate day = complete_daily(weather, lyon);
  BOOST_TEST((day.pressure == PressureFrom::elevation));
  BOOST_TEST(day.pressure_kpa == noonleaf::atmospheric_pressure_kpa(200));
  BOOST_TEST(day.is_measured());
}

BOOST_AUTO_TEST_CASE(lowest_humidity_goes_down_its_rungs) {
  DailyWeather weather = full_day();
  BOOST_TEST((complete_daily(weather, lyon).rh_min == RhMinFrom::measured));
  weather.rh_min_pct = weather.ea_kpa = missing;
  const DailyEstimate dew = complete_daily(weather, lyon);
  BOOST_TEST((dew.rh_min == RhMinFrom::vapour_pressure));
  BOOST_CHECK_SMALL(dew.rh_min_pct - 100 * e0(13) / e0(26.6), 1e-10);  // FAO-56 eq. 63
  weather.t_dew_c = weather.rh_max_pct = weather.rh_mean_pct = missing;
  BOOST_CHECK_SMALL(complete_daily(weather, lyon).rh_min_pct - 100 * e0(14.8) / e0(26.6), 1e-10);  // eq. 64
  weather.ea_kpa = 5;  // more vapour than the day can hold: saturated all day
  BOOST_TEST(complete_daily(weather, lyon).rh_min_pct == 100.0);
}

BOOST_AUTO_TEST_CASE(without_a_temperature_there_is_no_answer) {
  for (double DailyWeather::*field : {&DailyWeather::t_max_c, &DailyWeather::t_min_c}) {
    DailyWeather weather = full_day();
    weather.*field = missing;
    const DailyEstimate day = complete_daily(weather, lyon);
    BOOST_TEST((day.temperature == TemperatureFrom::none));
    BOOST_TEST(!day.is_complete());
    BOOST_TEST(!day.is_measured());
    BOOST_TEST(std::isnan(noonleaf::daily_et0_mm_d(day, lyon)));
    BOOST_TEST(noonleaf::estimated_phrases(day) == "temperature missing");
  }
  DailyWeather bare{.date = 2023y / July / 15, .t_max_c = 20};
  const DailyEstimate day = complete_daily(bare, lyon);
  BOOST_TEST((day.radiation == RadiationFrom::none));
  BOOST_TEST((day.humidity == HumidityFrom::none));
  BOOST_TEST((day.rh_min == RhMinFrom::none));
  BOOST_TEST(!complete_daily({.t_max_c = 20, .t_min_c = 10}, lyon).is_complete());  // no date
}

BOOST_AUTO_TEST_CASE(says_what_was_estimated) {
  const DailyEstimate day =
      complete_daily({.date = 2023y / July / 15, .t_max_c = 26.6, .t_min_c = 14.8}, lyon);
  BOOST_TEST(day.is_complete());
  BOOST_TEST(noonleaf::estimated_phrases(day) ==
             "sun estimated from the day's temperature range; humidity estimated from the night's lowest "
             "temperature; wind taken as 2 m/s");
  BOOST_TEST(noonleaf::estimated_codes(day) == "rs=temperature_range ea=t_min u2=usual_wind");
}

BOOST_AUTO_TEST_CASE(every_origin_has_words_of_its_own) {
  for (int i = 0; i <= static_cast<int>(HumidityFrom::none); ++i) {
    for (int k = 0; k < i; ++k) {
      BOOST_TEST(noonleaf::code(static_cast<HumidityFrom>(i)) !=
                 noonleaf::code(static_cast<HumidityFrom>(k)));
      BOOST_TEST(noonleaf::phrase(static_cast<HumidityFrom>(i)) !=
                 noonleaf::phrase(static_cast<HumidityFrom>(k)));
    }
  }
  BOOST_TEST(noonleaf::phrase(WindFrom::calm_limit) ==
             "wind raised to 0.5 m/s, the least the equation should be given");
  BOOST_TEST(noonleaf::code(WindFrom::other_height) == "other_height");
  BOOST_TEST(noonleaf::code(RadiationFrom::sunshine) == "sunshine");
  BOOST_TEST(noonleaf::code(PressureFrom::elevation) == "elevation");
  BOOST_TEST(noonleaf::code(RhMinFrom::vapour_pressure) == "vapour_pressure");
  BOOST_TEST(noonleaf::code(TemperatureFrom::none) == "none");
}

BOOST_AUTO_TEST_CASE(polar_night_is_complete) {
  const noonleaf::Location far_north{.latitude_deg = 78.2, .longitude_deg = 15.6, .elevation_m = 20};
  const DailyEstimate day =
      complete_daily({.date = 2023y / December / 21, .t_max_c = -5, .t_min_c = -12}, far_north);
  BOOST_TEST(day.rs_mj_m2_d == 0.0);
  BOOST_TEST(std::isfinite(noonleaf::daily_et0_mm_d(day, far_north)));
  DailyWeather recorded{.date = 2023y / December / 21, .t_max_c = -5, .t_min_c = -12, .sunshine_h = 0};
  BOOST_TEST(complete_daily(recorded, far_north).rs_mj_m2_d == 0.0);
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  const auto refused = [](auto change, const char* field) {
    DailyWeather weather = full_day();
    change(weather);
    BOOST_CHECK_EXCEPTION(complete_daily(weather, lyon), noonleaf::Error, NamesField{field});
  };
  refused([](DailyWeather& day) { day.t_max_c = 80; }, "t_max_c");
  refused([](DailyWeather& day) { day.t_min_c = 27; }, "t_max_c");
  refused([](DailyWeather& day) { day.rh_min_pct = 95; }, "rh_max_pct");
  refused([](DailyWeather& day) { day.rh_mean_pct = -3; }, "rh_mean_pct");
  refused([](DailyWeather& day) { day.wind_m_s = 75; }, "wind_m_s");
  refused([](DailyWeather& day) { day.rs_mj_m2_d = 300; }, "rs_mj_m2_d");
  refused([](DailyWeather& day) { day.sunshine_h = 25; }, "sunshine_h");
  refused([](DailyWeather& day) { day.pressure_kpa = 1013; }, "pressure_kpa");
  refused([](DailyWeather& day) { day.date = 2023y / February / 29; }, "date");
  refused(
      [](DailyWeather& day) {
        day.rs_mj_m2_d = missing;
        day.sunshine_h = 17;
      },
      "sunshine_h");
  BOOST_CHECK_EXCEPTION(complete_daily(full_day(), {}), noonleaf::Error, NamesField{"latitude_deg"});
  BOOST_CHECK_EXCEPTION(complete_daily(full_day(), {.latitude_deg = 40}), noonleaf::Error,
                        NamesField{"elevation_m"});
}

BOOST_AUTO_TEST_SUITE_END()
