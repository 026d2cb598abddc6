#include "noonleaf/reference/hourly.hpp"

#include <chrono>
#include <cmath>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "accepted_range.hpp"
#include "refusal.hpp"

using namespace std::chrono;
using namespace std::chrono_literals;
using noonleaf::Equation;
using noonleaf::HourlyEt0Detail;
using noonleaf::HourlyInputs;
using noonleaf::Location;
using noonleaf::missing;
using noonleaf::Surface;

namespace {

struct Printed {
  double HourlyEt0Detail::*value;
  double printed, half_digit;
};

void check(const HourlyEt0Detail& detail, const std::vector<Printed>& rows) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    BOOST_TEST_CONTEXT("row " << i << ", printed " << rows[i].printed) {
      BOOST_CHECK_SMALL(detail.*rows[i].value - rows[i].printed, rows[i].half_digit);
    }
  }
}

// FAO-56 example 19: N'Diaye, Senegal, 16°13' N 16°15' W, 8 m, 1 October; local standard time is that of 15°
// W.
const Location ndiaye{.latitude_deg = 16 + 13.0 / 60, .longitude_deg = -16.25, .elevation_m = 8};
constexpr sys_seconds local_midnight = sys_days{2023y / October / 1} + 1h;

HourlyInputs ndiaye_hour(int hour, double t_c, double rh_pct, double u2_m_s, double rs_mj_m2_h) {
  return {.begin = local_midnight + hours{hour},
          .t_c = t_c,
          .ea_kpa = noonleaf::vapour_pressure_from_rh_kpa({t_c, rh_pct}),
          .rs_mj_m2_h = rs_mj_m2_h,
          .u2_m_s = u2_m_s,
          .earlier_relative_sun = 0.8};
}

/// A summer afternoon hour at Greeley, complete.
HourlyInputs afternoon() {
  return {.begin = sys_days{2000y / July / 1} + 22h,  // 15 to 16 h mountain standard time
          .t_c = 30.9,
          .ea_kpa = 1.09,
          .rs_mj_m2_h = 2.24,
          .u2_m_s = 3.75,
          .earlier_relative_sun = 0.8};
}
const Location greeley{.latitude_deg = 40.41, .longitude_deg = -104.78, .elevation_m = 1462.4};

}  // namespace

BOOST_AUTO_TEST_SUITE(hourly)

BOOST_AUTO_TEST_CASE(fao56_example_19_night) {  // 02-03 h; from memory of the page
  const HourlyEt0Detail detail = noonleaf::hourly_et0(ndiaye_hour(2, 28, 90, 1.9, 0), ndiaye);
  check(detail, {{&HourlyEt0Detail::delta_kpa_c, 0.220, 0.0005},
                 {&HourlyEt0Detail::gamma_kpa_c, 0.0673, 0.00005},
                 {&HourlyEt0Detail::es_kpa, 3.780, 0.0005},
                 {&HourlyEt0Detail::ea_kpa, 3.402, 0.0005},
                 {&HourlyEt0Detail::vpd_kpa, 0.378, 0.0005},
                 {&HourlyEt0Detail::ra_mj_m2_h, 0, 0},
                 {&HourlyEt0Detail::rso_mj_m2_h, 0, 0},
                 {&HourlyEt0Detail::rns_mj_m2_h, 0, 0},
                 {&HourlyEt0Detail::relative_sun, 0.8, 1e-15},
                 {&HourlyEt0Detail::rnl_mj_m2_h, 0.100, 0.0005},
                 {&HourlyEt0Detail::rn_mj_m2_h, -0.100, 0.0005},
                 {&HourlyEt0Detail::g_mj_m2_h, -0.050, 0.0005},
                 {&HourlyEt0Detail::et0_mm_h, 0.00, 0.005}});
}

BOOST_AUTO_TEST_CASE(fao56_example_19_day) {  // 14-15 h; from memory of the page
  const HourlyEt0Detail detail = noonleaf::hourly_et0(ndiaye_hour(14, 38, 52, 3.3, 2.450), ndiaye);
  check(detail, {{&HourlyEt0Detail::delta_kpa_c, 0.358, 0.0005},
                 {&HourlyEt0Detail::es_kpa, 6.625, 0.0005},
                 {&HourlyEt0Detail::ea_kpa, 3.445, 0.0005},
                 {&HourlyEt0Detail::vpd_kpa, 3.180, 0.0005},
                 {&HourlyEt0Detail::day_of_year, 274, 0},
                 {&HourlyEt0Detail::seasonal_correction_h, 0.1889, 0.00005},
                 {&HourlyEt0Detail::time_angle_rad, 0.682, 0.0005},
                 {&HourlyEt0Detail::ra_mj_m2_h, 3.543, 0.0005},
                 {&HourlyEt0Detail::rso_mj_m2_h, 2.658, 0.0005},
                 {&HourlyEt0Detail::relative_sun, 0.922, 0.0005},
                 {&HourlyEt0Detail::rns_mj_m2_h, 1.887, 0.0005},  // 0.77 x 2.450 = 1.8865, printed rounded up
                 {&HourlyEt0Detail::rnl_mj_m2_h, 0.137, 0.0005},
                 {&HourlyEt0Detail::rn_mj_m2_h, 1.749, 0.0005},
                 {&HourlyEt0Detail::g_mj_m2_h, 0.175, 0.0005},
                 {&HourlyEt0Detail::et0_mm_h, 0.63, 0.005}});
}

// ASCE-EWRI 2005, appendix C: Greeley, Colorado, 1 July 2000, wind at 3 m; the stamps end their hours,
// mountain standard time. From memory of the page. Half of the last printed digit throughout.
BOOST_AUTO_TEST_CASE(asce_appendix_c) {
  struct Hour {
    int ends_at;
    double t_c, ea_kpa, rs_mj_m2_h, wind_m_s, short_mm_h, tall_mm_h;
  };
  for (const Hour& row :
       {Hour{16, 30.9, 1.09, 2.24, 4.07, 0.61, 0.82}, Hour{17, 31.2, 1.15, 1.65, 3.58, 0.48, 0.66},
        Hour{18, 29.1, 1.21, 0.34, 1.15, 0.14, missing}}) {
    const HourlyInputs in{.begin = sys_days{2000y / July / 1} + 7h + hours{row.ends_at - 1},
                          .t_c = row.t_c,
                          .ea_kpa = row.ea_kpa,
                          .rs_mj_m2_h = row.rs_mj_m2_h,
                          .u2_m_s = row.wind_m_s * 4.87 / std::log(67.8 * 3 - 5.42),
                          .earlier_relative_sun = 0.8};
    const HourlyEt0Detail detail = noonleaf::hourly_et0(in, greeley, Equation::asce);
    BOOST_CHECK_SMALL(detail.et0_mm_h - row.short_mm_h, 0.005);
    const double tall = noonleaf::hourly_et0_mm_h(in, greeley, Equation::asce, Surface::tall_crop);
    if (noonleaf::is_known(row.tall_mm_h)) BOOST_CHECK_SMALL(tall - row.tall_mm_h, 0.005);
    if (row.ends_at != 16) continue;
    BOOST_CHECK_SMALL(detail.ra_mj_m2_h - 3.26, 0.005);
    BOOST_CHECK_SMALL(detail.rnl_mj_m2_h - 0.284, 0.0005);
  }
}

BOOST_AUTO_TEST_CASE(day_and_night_constants_of_asce) {
  HourlyInputs in = afternoon();
  const HourlyEt0Detail day = noonleaf::hourly_et0(in, greeley, Equation::asce);
  BOOST_CHECK_SMALL(day.g_mj_m2_h - 0.1 * day.rn_mj_m2_h, 1e-15);
  // ASCE prints 2503 (eq. 5, 36) where FAO-56 has 4098 times 0.6108 (eq. 13)
  const double by_asce = 2503 * std::exp(17.27 * in.t_c / (in.t_c + 237.3)) / std::pow(in.t_c + 237.3, 2);
  BOOST_CHECK_CLOSE(day.delta_kpa_c, by_asce, 1e-10);
  BOOST_CHECK_CLOSE(noonleaf::hourly_et0(in, greeley).delta_kpa_c, by_asce * 4098 * 0.6108 / 2503, 1e-10);
  const HourlyEt0Detail tall_day = noonleaf::hourly_et0(in, greeley, Equation::asce, Surface::tall_crop);
  BOOST_CHECK_SMALL(tall_day.g_mj_m2_h - 0.04 * tall_day.rn_mj_m2_h, 1e-15);
  in.begin += 12h;
  in.rs_mj_m2_h = 0;
  const HourlyEt0Detail night = noonleaf::hourly_et0(in, greeley, Equation::asce);
  BOOST_TEST(night.rn_mj_m2_h < 0);
  BOOST_CHECK_SMALL(night.g_mj_m2_h - 0.5 * night.rn_mj_m2_h, 1e-15);
  const HourlyEt0Detail tall_night = noonleaf::hourly_et0(in, greeley, Equation::asce, Surface::tall_crop);
  BOOST_CHECK_SMALL(tall_night.g_mj_m2_h - 0.2 * tall_night.rn_mj_m2_h, 1e-15);
  // FAO-56 keeps 0.34 through the night, ASCE takes 0.96: more wind resistance, less ET
  BOOST_TEST(night.et0_mm_h < noonleaf::hourly_et0_mm_h(in, greeley));
}

// What the result says of Cd, with everything else of the printed equation as the working shows it.
double wind_resistance(const HourlyEt0Detail& hour, double cn) {
  const double numerator = 0.408 * hour.delta_kpa_c * (hour.rn_mj_m2_h - hour.g_mj_m2_h) +
                           hour.gamma_kpa_c * cn / (hour.t_c + 273) * hour.u2_m_s * hour.vpd_kpa;
  return ((numerator / hour.et0_mm_h - hour.delta_kpa_c) / hour.gamma_kpa_c - 1) / hour.u2_m_s;
}

BOOST_AUTO_TEST_CASE(wind_resistance_by_day_and_by_night) {  // FAO-56 eq. 53; ASCE-EWRI 2005, table 1
  HourlyInputs in = afternoon();
  const auto hour = [&](Equation equation, Surface surface) {
    return noonleaf::hourly_et0(in, greeley, equation, surface);
  };
  BOOST_CHECK_SMALL(wind_resistance(hour(Equation::fao56, Surface::short_crop), 37) - 0.34, 1e-9);
  BOOST_CHECK_SMALL(wind_resistance(hour(Equation::asce, Surface::short_crop), 37) - 0.24, 1e-9);
  BOOST_CHECK_SMALL(wind_resistance(hour(Equation::asce, Surface::tall_crop), 66) - 0.25, 1e-9);
  in.begin += 12h;
  in.rs_mj_m2_h = 0;
  BOOST_CHECK_SMALL(wind_resistance(hour(Equation::fao56, Surface::short_crop), 37) - 0.34, 1e-9);
  BOOST_CHECK_SMALL(wind_resistance(hour(Equation::asce, Surface::short_crop), 37) - 0.96, 1e-9);
  BOOST_CHECK_SMALL(wind_resistance(hour(Equation::asce, Surface::tall_crop), 66) - 1.7, 1e-9);
}

// J is that of local mean solar time, 4 minutes later for every degree to the east, whatever any clock says.
BOOST_AUTO_TEST_CASE(the_day_of_the_year_is_that_of_the_place) {
  HourlyInputs in = afternoon();
  const auto day = [&](double longitude_deg, sys_seconds middle) {
    in.begin = middle - 30min;
    return noonleaf::hourly_et0(in, {40, longitude_deg, 0}).day_of_year;
  };
  const sys_seconds midnight = sys_days{2021y / March / 2};  // J 61 begins at Greenwich
  for (const double longitude_deg : {-174.8, -75.0, 0.0, 15.0, 174.8}) {
    const seconds there{static_cast<int>(std::lround(longitude_deg * 240))};
    BOOST_TEST(day(longitude_deg, midnight - there - 1min) == 60);
    BOOST_TEST(day(longitude_deg, midnight - there + 1min) == 61);
  }
}

BOOST_AUTO_TEST_CASE(low_sun_takes_an_earlier_ratio) {
  HourlyInputs in = afternoon();
  in.begin =
      sys_days{2000y / July / 2} + 1h;  // 18 to 19 h: sun at about 0.2 rad, still up for the whole hour
  in.rs_mj_m2_h = 0.3;
  const HourlyEt0Detail asce = noonleaf::hourly_et0(in, greeley, Equation::asce);
  BOOST_TEST(asce.sun_altitude_rad < 0.3);
  BOOST_TEST(asce.sun_altitude_rad > 0.0);
  BOOST_TEST(asce.relative_sun == 0.8);
  const HourlyEt0Detail fao = noonleaf::hourly_et0(in, greeley);
  BOOST_CHECK_SMALL(fao.relative_sun - 0.3 / fao.rso_mj_m2_h, 1e-12);
  in.earlier_relative_sun = 0.1;  // ASCE holds the ratio at 0.3
  BOOST_TEST(noonleaf::hourly_et0(in, greeley, Equation::asce).relative_sun == 0.3);
  in.earlier_relative_sun = 0.31;  // and leaves it above
  BOOST_TEST(noonleaf::hourly_et0(in, greeley, Equation::asce).relative_sun == 0.31);
}

// Where the sun never reaches 0.3 rad the period of solar noon counts.
BOOST_AUTO_TEST_CASE(winter_in_the_north_still_sees_its_noon) {
  const Location oslo{.latitude_deg = 59.9, .longitude_deg = 10.7, .elevation_m = 90};
  HourlyInputs in = afternoon();
  in.begin = sys_days{2000y / December / 21} + 10h + 45min;  // solar noon is near 11:15 UTC
  in.rs_mj_m2_h = 0.25;
  in.t_c = -3;
  in.ea_kpa = 0.4;
  const HourlyEt0Detail noon = noonleaf::hourly_et0(in, oslo, Equation::asce);
  BOOST_TEST(noon.sun_altitude_rad < 0.3);
  BOOST_TEST(noon.relative_sun != 0.8);
  in.begin += 1h;
  BOOST_TEST(noonleaf::hourly_et0(in, oslo, Equation::asce).relative_sun == 0.8);
}

BOOST_AUTO_TEST_CASE(halves_and_quarters_of_an_hour) {
  HourlyInputs in = afternoon();
  const double whole = noonleaf::hourly_et0_mm_h(in, greeley);
  in.length = 30min;
  const double first = noonleaf::hourly_et0_mm_h(in, greeley);
  in.begin += 30min;
  const double second = noonleaf::hourly_et0_mm_h(in, greeley);
  BOOST_CHECK_SMALL((first + second) / 2 - whole, 0.001);  // the same weather; only Rs/Rso moves
  BOOST_TEST(first != second);
}

BOOST_AUTO_TEST_CASE(polar_day_and_night) {
  const Location ny_alesund{.latitude_deg = 78.9, .longitude_deg = 11.9, .elevation_m = 10};
  HourlyInputs in = afternoon();
  in.t_c = 2;
  in.ea_kpa = 0.5;
  in.rs_mj_m2_h = 0.4;
  for (int hour = 0; hour < 24; ++hour) {
    in.begin = sys_days{2000y / June / 21} + hours{hour};
    const HourlyEt0Detail summer = noonleaf::hourly_et0(in, ny_alesund);
    BOOST_TEST(summer.ra_mj_m2_h > 0.0);
    BOOST_TEST(std::isfinite(summer.et0_mm_h));
    BOOST_TEST(summer.relative_sun != 0.8);  // the sun can tell at midnight too
  }
  in.rs_mj_m2_h = 0;
  in.begin = sys_days{2000y / December / 21} + 12h;
  const HourlyEt0Detail winter = noonleaf::hourly_et0(in, ny_alesund);
  BOOST_TEST(winter.ra_mj_m2_h == 0.0);
  BOOST_TEST(winter.relative_sun == 0.8);
  BOOST_TEST(std::isfinite(winter.et0_mm_h));
}

BOOST_AUTO_TEST_CASE(every_member_has_a_column) {
  for (const Equation equation : {Equation::fao56, Equation::asce}) {
    const auto columns = noonleaf::hourly_et0_columns(equation);
    BOOST_TEST(columns.size() * sizeof(double) == sizeof(HourlyEt0Detail));
    const HourlyEt0Detail detail = noonleaf::hourly_et0(afternoon(), greeley, equation);
    for (std::size_t i = 0; i < columns.size(); ++i) {
      BOOST_TEST(!columns[i].equation.empty());
      BOOST_TEST(noonleaf::is_known(detail.*columns[i].value), columns[i].header);
      for (std::size_t k = 0; k < i; ++k) {
        BOOST_TEST((columns[i].value != columns[k].value));
        BOOST_TEST(columns[i].header != columns[k].header);
      }
    }
    BOOST_CHECK_SMALL(detail.radiation_term_mm_h + detail.wind_term_mm_h - detail.et0_mm_h, 1e-12);
  }
}

BOOST_AUTO_TEST_CASE(columns_name_their_publication) {
  for (const auto& column : noonleaf::hourly_et0_columns(Equation::fao56)) {
    BOOST_TEST(column.equation.find("ASCE") == std::string_view::npos, column.header);
  }
  const auto asce = noonleaf::hourly_et0_columns(Equation::asce);
  BOOST_TEST(asce.back().equation.find("ASCE") == 0U);
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  for (const auto field :
       {&HourlyInputs::t_c, &HourlyInputs::ea_kpa, &HourlyInputs::rs_mj_m2_h, &HourlyInputs::u2_m_s}) {
    HourlyInputs in = afternoon();
    in.*field = missing;
    BOOST_TEST(std::isnan(noonleaf::hourly_et0_mm_h(in, greeley)));
  }
  for (const auto field : {&Location::latitude_deg, &Location::longitude_deg, &Location::elevation_m}) {
    Location place = greeley;
    place.*field = missing;
    BOOST_TEST(std::isnan(noonleaf::hourly_et0_mm_h(afternoon(), place)));
  }
  HourlyInputs in = afternoon();
  in.earlier_relative_sun = missing;
  BOOST_TEST(std::isfinite(noonleaf::hourly_et0_mm_h(in, greeley)));  // not used by day
  in.begin += 12h;
  BOOST_TEST(std::isnan(noonleaf::hourly_et0_mm_h(in, greeley)));
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  const auto refused = [](auto change, const char* field) {
    HourlyInputs in = afternoon();
    change(in);
    BOOST_CHECK_EXCEPTION(noonleaf::hourly_et0_mm_h(in, greeley), noonleaf::Error, NamesField{field});
  };
  refused([](HourlyInputs& in) { in.t_c = 88; }, "t_c");
  refused([](HourlyInputs& in) { in.ea_kpa = -1; }, "ea_kpa");
  refused([](HourlyInputs& in) { in.rs_mj_m2_h = 620; }, "rs_mj_m2_h");
  refused([](HourlyInputs& in) { in.u2_m_s = 99; }, "u2_m_s");
  refused([](HourlyInputs& in) { in.pressure_kpa = 850; }, "pressure_kpa");
  refused([](HourlyInputs& in) { in.length = 3h; }, "length");
  refused([](HourlyInputs& in) { in.earlier_relative_sun = 1.1; }, "earlier_relative_sun");
  check_accepted_whole("length", 60, 3600, [](int length_s) {
    HourlyInputs in = afternoon();
    in.length = seconds{length_s};
    return noonleaf::hourly_et0_mm_h(in, greeley);
  });
  BOOST_CHECK_EXCEPTION(noonleaf::hourly_et0_mm_h(afternoon(), {40, 190, 0}), noonleaf::Error,
                        NamesField{"longitude_deg"});
  BOOST_CHECK_EXCEPTION(noonleaf::hourly_et0_mm_h(afternoon(), greeley, Equation::fao56, Surface::tall_crop),
                        noonleaf::Error, NamesField{"surface"});
}

BOOST_AUTO_TEST_CASE(gaps_of_an_hour_are_filled_as_far_as_published) {
  noonleaf::HourRecord record{.begin = sys_days{2000y / July / 1} + 19h,
                              .t_c = 28,
                              .rh_pct = 40,
                              .wind_m_s = 3,
                              .rs_mj_m2_h = 3,
                              .pressure_kpa = 85};
  noonleaf::HourEstimate hour = noonleaf::complete_hour(record, greeley, {.wind_height_m = 3});
  BOOST_CHECK_SMALL(hour.inputs.ea_kpa - noonleaf::vapour_pressure_from_rh_kpa({28, 40}), 1e-15);
  BOOST_TEST((hour.humidity == noonleaf::HumidityFrom::measured));
  BOOST_TEST((hour.wind == noonleaf::WindFrom::other_height));
  BOOST_TEST((hour.pressure == noonleaf::PressureFrom::measured));
  BOOST_TEST((hour.radiation == noonleaf::RadiationFrom::measured));
  record.t_dew_c = 12;
  record.wind_m_s = record.rs_mj_m2_h = record.pressure_kpa = missing;
  record.sunshine_h = 1;
  hour = noonleaf::complete_hour(record, greeley);
  BOOST_TEST((hour.humidity == noonleaf::HumidityFrom::dew_point));
  BOOST_TEST((hour.wind == noonleaf::WindFrom::usual_wind));
  BOOST_TEST((hour.pressure == noonleaf::PressureFrom::elevation));
  BOOST_TEST((hour.radiation == noonleaf::RadiationFrom::sunshine));
  hour.inputs.earlier_relative_sun = 0.8;
  const HourlyEt0Detail detail = noonleaf::hourly_et0(hour.inputs, greeley);
  BOOST_CHECK_SMALL(hour.inputs.rs_mj_m2_h - 0.75 * detail.ra_mj_m2_h, 1e-12);
  record.sunshine_h = record.rh_pct = record.t_dew_c = missing;
  hour = noonleaf::complete_hour(record, greeley);
  BOOST_TEST((hour.radiation == noonleaf::RadiationFrom::none));
  BOOST_TEST((hour.humidity == noonleaf::HumidityFrom::none));
  BOOST_CHECK_EXCEPTION(noonleaf::complete_hour(record, {.latitude_deg = 40, .elevation_m = 0}),
                        noonleaf::Error, NamesField{"longitude_deg"});
  for (const double sunshine_h : {0.0, 1.0}) {
    record.sunshine_h = sunshine_h;
    BOOST_CHECK_NO_THROW(noonleaf::complete_hour(record, greeley));
  }
  record.sunshine_h = 1.1;
  BOOST_CHECK_EXCEPTION(noonleaf::complete_hour(record, greeley), noonleaf::Error, NamesField{"sunshine_h"});
}

BOOST_AUTO_TEST_SUITE_END()
