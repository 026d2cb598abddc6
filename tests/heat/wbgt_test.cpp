#include "noonleaf/heat/wbgt.hpp"

#include <cmath>
#include <numbers>
#include <ostream>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "heat/hot_day.hpp"
#include "refusal.hpp"

using noonleaf::missing;
using noonleaf::outdoor_wbgt;
using noonleaf::OutdoorAir;
using noonleaf::OutdoorWbgt;
using noonleaf::psychrometric_wet_bulb_c;

namespace {

double cos_of(double zenith_deg) { return std::cos(zenith_deg * std::numbers::pi / 180); }

OutdoorAir noon() {
  return {
      .t_c = 32, .rh_pct = 50, .pressure_kpa = 100, .u2_m_s = 2, .rs_w_m2 = 800, .cos_zenith = cos_of(30)};
}

struct Worked {
  OutdoorAir air;
  double globe_c, natural_wet_bulb_c, wbgt_c;
};
std::ostream& operator<<(std::ostream& out, const Worked& row) { return out << row.air.t_c << " °C"; }

// Not published values: a second program of the same restatement of Liljegren et al. (2008), written apart
// from this one. They test that both say the same, to half the last digit given.
const std::vector<Worked> worked = {
    {{30, 50, 101.0, 2, 800, cos_of(30)}, 44.26, 24.07, 28.70},
    {{35, 40, 101.0, 3, 900, cos_of(25)}, 48.09, 25.41, 30.91},
    {{32, 60, 101.325, 1, 600, cos_of(45)}, 47.15, 27.98, 32.22},
    {{38, 25, 100.0, 4, 950, cos_of(20)}, 49.82, 23.44, 30.17},
    {{25, 70, 101.0, 2, 300, cos_of(60)}, 31.48, 22.15, 24.30},
};

}  // namespace

BOOST_AUTO_TEST_SUITE(wbgt)

BOOST_DATA_TEST_CASE(two_programs_agree, boost::unit_test::data::make(worked), row) {
  const OutdoorWbgt out = outdoor_wbgt(row.air);
  BOOST_CHECK_SMALL(out.globe_c - row.globe_c, 0.01);  // the second program stops its iteration at 0.02 K
  BOOST_CHECK_SMALL(out.natural_wet_bulb_c - row.natural_wet_bulb_c, 0.01);
  BOOST_CHECK_SMALL(out.wbgt_c - row.wbgt_c, 0.01);
}

BOOST_AUTO_TEST_CASE(mixture_of_iso_7243) {
  // Weights read in Parsons (2006), Ind. Health 44:368; the value is arithmetic.
  BOOST_CHECK_SMALL(noonleaf::wbgt_of_bulbs_c({.natural_wet_bulb_c = 25, .globe_c = 45, .t_c = 32}) - 29.7,
                    1e-12);
}

BOOST_AUTO_TEST_CASE(stull_as_printed) {
  // Stull (2011): 20 °C and 50 % give 13.7 °C (from memory).
  BOOST_CHECK_SMALL(psychrometric_wet_bulb_c(20, 50) - 13.7, 0.05);
  // The equation worked apart; not printed.
  BOOST_CHECK_SMALL(psychrometric_wet_bulb_c(10, 30) - 3.263, 0.0005);
  BOOST_CHECK_SMALL(psychrometric_wet_bulb_c(25, 40) - 16.384, 0.0005);
  BOOST_CHECK_SMALL(psychrometric_wet_bulb_c(30, 50) - 22.297, 0.0005);
  BOOST_CHECK_SMALL(psychrometric_wet_bulb_c(35, 30) - 22.144, 0.0005);
  BOOST_CHECK_SMALL(psychrometric_wet_bulb_c(40, 20) - 22.704, 0.0005);
}

BOOST_AUTO_TEST_CASE(without_sun_the_bulbs_know_only_the_air) {
  OutdoorAir night = noon();
  night.rs_w_m2 = 0;
  night.cos_zenith = -0.4;
  const OutdoorWbgt out = outdoor_wbgt(night);
  BOOST_TEST(out.globe_c < night.t_c);  // it loses to the sky
  BOOST_TEST(out.globe_c > night.t_c - 3);
  BOOST_TEST(out.natural_wet_bulb_c < out.globe_c);
  // Ventilated and unlit, the natural wet bulb comes to the psychrometric one; Stull is good to 1 °C.
  night.u2_m_s = 5;
  BOOST_CHECK_SMALL(outdoor_wbgt(night).natural_wet_bulb_c - psychrometric_wet_bulb_c(32, 50), 1.0);
}

BOOST_AUTO_TEST_CASE(saturated_dark_air_leaves_the_wick_near_the_air) {
  OutdoorAir night = noon();
  night.rs_w_m2 = 0;
  night.cos_zenith = -0.4;
  night.rh_pct = 100;
  BOOST_CHECK_SMALL(outdoor_wbgt(night).natural_wet_bulb_c - night.t_c, 1.0);
}

BOOST_AUTO_TEST_CASE(each_knob_turns_the_right_way) {
  const double before = outdoor_wbgt(noon()).wbgt_c;
  const auto after = [](auto change) {
    OutdoorAir air = noon();
    change(air);
    return outdoor_wbgt(air).wbgt_c;
  };
  BOOST_TEST(after([](OutdoorAir& air) { air.t_c += 1; }) > before);
  BOOST_TEST(after([](OutdoorAir& air) { air.rh_pct += 5; }) > before);
  BOOST_TEST(after([](OutdoorAir& air) { air.rs_w_m2 += 50; }) > before);
  BOOST_TEST(after([](OutdoorAir& air) { air.u2_m_s += 1; }) < before);
}

BOOST_AUTO_TEST_CASE(wind_below_the_floor_is_the_floor) {
  OutdoorAir calm = noon();
  calm.u2_m_s = 0;
  OutdoorAir floor = noon();
  floor.u2_m_s = 0.13;
  BOOST_TEST(outdoor_wbgt(calm).wbgt_c == outdoor_wbgt(floor).wbgt_c);
}

BOOST_AUTO_TEST_CASE(finds_an_end_in_all_accepted_air) {
  for (const double t_c : {-20.0, 10.0, 35.0, 55.0})
    for (const double rh_pct : {0.0, 50.0, 100.0})
      for (const double wind : {0.0, 3.0, 30.0})
        for (const double cosine : {-1.0, 0.0, 0.01, 0.2, 1.0})
          for (const double sun : {0.0, 200.0, 1400.0}) {
            const OutdoorWbgt out = outdoor_wbgt({.t_c = t_c,
                                                  .rh_pct = rh_pct,
                                                  .pressure_kpa = 95,
                                                  .u2_m_s = wind,
                                                  .rs_w_m2 = sun,
                                                  .cos_zenith = cosine});
            BOOST_TEST(std::isfinite(out.wbgt_c));
          }
}

BOOST_AUTO_TEST_CASE(a_day_by_hours) {
  const noonleaf::WeatherHours hours = noonleaf::hours_of_day(hot_day()).hours;
  const auto bulbs = noonleaf::outdoor_wbgt_by_hour(hours, hot_day().site);
  for (std::size_t i = 0; i < 24; ++i) {
    BOOST_TEST(std::isfinite(bulbs[i].wbgt_c));
    if (hours[i].rs_mj_m2_h == 0) BOOST_TEST(bulbs[i].globe_c < hours[i].t_c);
    if (hours[i].rs_mj_m2_h > 0.2) BOOST_TEST(bulbs[i].globe_c > hours[i].t_c);
  }
  // The one hour in full: 14:00 to 15:00 of 16 July at 30.27° N. The sun is 0.9 h past its noon, declination
  // 21.4°: zenith 15° by spherical geometry.
  const OutdoorWbgt alone = outdoor_wbgt(
      {.t_c = hours[14].t_c,
       .rh_pct = 100 * 2.4 / (0.6108 * std::exp(17.27 * hours[14].t_c / (hours[14].t_c + 237.3))),
       .pressure_kpa = 99.5,
       .u2_m_s = hours[14].u2_m_s,
       .rs_w_m2 = hours[14].rs_mj_m2_h / 3600e-6,
       .cos_zenith = cos_of(15),
       .sun_distance_au = 1.016});
  BOOST_CHECK_SMALL(bulbs[14].wbgt_c - alone.wbgt_c, 0.05);
  BOOST_TEST(std::isnan(noonleaf::outdoor_wbgt_by_hour({}, hot_day().site)[14].wbgt_c));
  BOOST_TEST(std::isnan(noonleaf::outdoor_wbgt_by_hour(hours, {})[14].wbgt_c));
}

BOOST_AUTO_TEST_CASE(limits_of_niosh) {
  // Equations from memory, values arithmetic on them; printed tables round to whole degrees.
  BOOST_CHECK_SMALL(noonleaf::alert_limit_wbgt_c(115) - 30.84, 0.005);
  BOOST_CHECK_SMALL(noonleaf::alert_limit_wbgt_c(180) - 28.10, 0.005);
  BOOST_CHECK_SMALL(noonleaf::alert_limit_wbgt_c(300) - 24.97, 0.005);
  BOOST_CHECK_SMALL(noonleaf::exposure_limit_wbgt_c(300) - 28.21, 0.005);
  BOOST_CHECK_SMALL(noonleaf::exposure_limit_wbgt_c(415) - 26.59, 0.005);
  BOOST_CHECK_SMALL(noonleaf::exposure_limit_wbgt_c(520) - 25.47, 0.005);
  BOOST_CHECK_EXCEPTION(noonleaf::alert_limit_wbgt_c(50), noonleaf::Error, NamesField{"metabolic_w"});
  BOOST_TEST(std::isnan(noonleaf::exposure_limit_wbgt_c(missing)));
}

BOOST_AUTO_TEST_CASE(missing_and_impossible) {
  OutdoorAir air = noon();
  air.rh_pct = missing;
  BOOST_TEST(std::isnan(outdoor_wbgt(air).wbgt_c));
  BOOST_TEST(std::isnan(psychrometric_wet_bulb_c(missing, 50)));
  air = noon();
  air.pressure_kpa = 1013;
  BOOST_CHECK_EXCEPTION(outdoor_wbgt(air), noonleaf::Error, NamesField{"pressure_kpa"});
  BOOST_CHECK_EXCEPTION(psychrometric_wet_bulb_c(20, 3), noonleaf::Error, NamesField{"rh_pct"});
}

BOOST_AUTO_TEST_SUITE_END()
