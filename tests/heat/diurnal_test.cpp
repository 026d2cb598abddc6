#include "noonleaf/heat/diurnal.hpp"

#include <algorithm>
#include <cmath>

#include <boost/test/unit_test.hpp>

#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/atmosphere/vapour.hpp"

#include "heat/hot_day.hpp"
#include "refusal.hpp"

using noonleaf::DailyShape;
using noonleaf::DiurnalDay;
using noonleaf::hours_of_day;
using noonleaf::missing;
using noonleaf::WeatherHour;
using noonleaf::WeatherHours;

namespace {

template <class Value>
double total(const WeatherHours& hours, Value value) {
  double sum = 0;
  for (const WeatherHour& hour : hours) sum += hour.*value;
  return sum;
}

std::size_t hottest_hour(const WeatherHours& hours) {
  return static_cast<std::size_t>(
      std::max_element(hours.begin(), hours.end(),
                       [](const WeatherHour& a, const WeatherHour& b) { return a.t_c < b.t_c; }) -
      hours.begin());
}

void check_kept(const DailyShape& day) {
  const DiurnalDay out = hours_of_day(day);
  const auto [low, high] =
      std::minmax_element(out.hours.begin(), out.hours.end(),
                          [](const WeatherHour& a, const WeatherHour& b) { return a.t_c < b.t_c; });
  BOOST_CHECK_SMALL(low->t_c - day.t_min_c, 1e-12);
  BOOST_CHECK_SMALL(high->t_c - day.t_max_c, 1e-12);
  BOOST_CHECK_SMALL(total(out.hours, &WeatherHour::rs_mj_m2_h) - day.rs_mj_m2_d, 1e-12);
  BOOST_CHECK_SMALL(total(out.hours, &WeatherHour::u2_m_s) / 24 - day.u2_m_s, 1e-12);
  BOOST_CHECK_SMALL(total(out.hours, &WeatherHour::ea_kpa) / 24 + out.ea_residual_kpa - day.ea_kpa, 1e-12);
  for (const WeatherHour& hour : out.hours) {
    BOOST_TEST(hour.rs_mj_m2_h >= 0);
    BOOST_TEST(hour.ea_kpa <= noonleaf::saturation_vapour_pressure_kpa(hour.t_c));
  }
}

}  // namespace

BOOST_AUTO_TEST_SUITE(diurnal)

BOOST_AUTO_TEST_CASE(the_day_is_kept) {
  for (const double latitude : {-66.0, -34.0, 0.0, 30.27, 52.0, 64.8, 66.0})
    for (const unsigned month : {1U, 4U, 6U, 12U})
      for (const double longitude : {-150.0, -97.74, 4.9, 179.0}) {
        DailyShape day = hot_day();
        day.site.date = std::chrono::year(2024) / std::chrono::month(month) / 21;
        day.site.location.latitude_deg = latitude;
        day.site.location.longitude_deg = longitude;
        day.site.utc_offset_h = std::round(longitude / 15);
        check_kept(day);
        day.t_max_before_c = 29;  // a front on either side
        day.t_min_after_c = 12;
        check_kept(day);
      }
}

BOOST_AUTO_TEST_CASE(the_sun_stands_where_it_stands) {
  const DiurnalDay out = hours_of_day(hot_day());
  // Longitude 97.74° W on a clock of UTC-5 is 1 h 31 min behind it; the equation of time in mid July is about
  // -6 min (almanacs). FAO-56 eq. 32 is good to a minute.
  BOOST_CHECK_SMALL(out.solar_noon_h - (12 + 1 + 31.0 / 60 + 6.0 / 60), 0.03);
  BOOST_CHECK_SMALL(
      out.sunset_h - out.sunrise_h - noonleaf::daylight_h({.latitude_deg = 30.27, .day_of_year = 197}), 1e-9);
  BOOST_TEST(out.hours[5].rs_mj_m2_h == 0.0);
  BOOST_TEST(out.hours[6].rs_mj_m2_h > 0.0);
  BOOST_TEST(out.hours[21].rs_mj_m2_h == 0.0);
}

BOOST_AUTO_TEST_CASE(the_heat_lags_behind_the_sun) {
  const DiurnalDay out = hours_of_day(hot_day());
  // Parton & Logan: the maximum lies a + c = 1.69 h after solar noon.
  BOOST_CHECK_SMALL(static_cast<double>(hottest_hour(out.hours)) + 0.5 - (out.solar_noon_h + 1.86 - 0.17),
                    0.51);
}

BOOST_AUTO_TEST_CASE(sampling_the_hours_costs_little) {
  // The curve's extremes fall between the middles of the hours; stretching the samples moves no hour by more
  // than half an hour's slope at the extremes.
  const DiurnalDay out = hours_of_day(hot_day());
  const double m = 9.5 - (out.sunrise_h - 0.17);
  const double curve = 24 + 13 * std::sin(std::acos(-1.0) * m / (out.sunset_h - out.sunrise_h + 2 * 1.86));
  BOOST_CHECK_SMALL(out.hours[9].t_c - curve, 0.6);
}

BOOST_AUTO_TEST_CASE(no_jump_at_midnight_or_dawn) {
  DailyShape first = hot_day();
  first.t_min_after_c = 22;
  DailyShape second = hot_day();
  second.site.date = std::chrono::year(2025) / std::chrono::July / 17;
  second.t_min_c = 22;
  second.t_max_before_c = first.t_max_c;
  const WeatherHours evening = hours_of_day(first).hours;
  const WeatherHours morning = hours_of_day(second).hours;
  const double over_midnight = morning[0].t_c - evening[23].t_c;
  BOOST_TEST(over_midnight < 0.0);
  BOOST_TEST(over_midnight > evening[23].t_c - evening[21].t_c);  // no steeper than the evening before
  BOOST_CHECK_SMALL(morning[0].u2_m_s - evening[23].u2_m_s, 1e-2);
  for (std::size_t i = 1; i < 24; ++i) BOOST_CHECK_SMALL(morning[i].t_c - morning[i - 1].t_c, 3.0);
}

BOOST_AUTO_TEST_CASE(saturated_nights_give_their_vapour_to_the_day) {
  DailyShape day = hot_day();
  day.ea_kpa = 3.2;  // dew point 25.1 °C, above the night's 24 °C
  const DiurnalDay out = hours_of_day(day);
  BOOST_TEST(out.ea_held_kpa > 3.2);
  BOOST_CHECK_SMALL(out.ea_residual_kpa, 1e-12);
  BOOST_TEST(out.hours[6].ea_kpa < 3.2);
  BOOST_TEST(out.hours[14].ea_kpa == out.ea_held_kpa);
}

BOOST_AUTO_TEST_CASE(vapour_that_no_hour_can_hold_is_reported) {
  DailyShape day = hot_day();
  day.ea_kpa = 6.0;
  const DiurnalDay out = hours_of_day(day);
  BOOST_TEST(out.ea_residual_kpa > 1.0);
  BOOST_CHECK_SMALL(total(out.hours, &WeatherHour::ea_kpa) / 24 + out.ea_residual_kpa - 6.0, 1e-12);
}

BOOST_AUTO_TEST_CASE(the_day_is_twice_as_windy_as_the_night) {
  const DiurnalDay out = hours_of_day(hot_day());
  double lit = 0, dark = 0;
  int lit_hours = 0;
  for (std::size_t i = 0; i < 24; ++i) {
    const double middle = static_cast<double>(i) + 0.5;
    const bool is_lit = middle > out.sunrise_h && middle < out.sunset_h;
    (is_lit ? lit : dark) += out.hours[i].u2_m_s;
    lit_hours += is_lit ? 1 : 0;
  }
  BOOST_CHECK_SMALL(lit / lit_hours / (dark / (24 - lit_hours)) - 2.0,
                    0.1);  // the hours that hold sunrise and sunset count whole
}

BOOST_AUTO_TEST_CASE(what_is_missing_stays_missing) {
  DailyShape day = hot_day();
  day.rs_mj_m2_d = missing;
  DiurnalDay out = hours_of_day(day);
  BOOST_TEST(std::isnan(out.hours[12].rs_mj_m2_h));
  BOOST_TEST(std::isfinite(out.hours[12].t_c));
  day = hot_day();
  day.t_min_c = missing;
  out = hours_of_day(day);
  BOOST_TEST(std::isnan(out.hours[12].t_c));
  BOOST_TEST(std::isnan(out.hours[12].ea_kpa));
  BOOST_TEST(std::isfinite(out.hours[12].u2_m_s));
  day = hot_day();
  day.site.utc_offset_h = missing;
  BOOST_TEST(std::isnan(hours_of_day(day).hours[12].t_c));
}

BOOST_AUTO_TEST_CASE(measured_hours_win) {
  const WeatherHours estimated = hours_of_day(hot_day()).hours;
  WeatherHours measured{};
  measured[13].t_c = 38.2;
  const WeatherHours mixed = noonleaf::prefer_measured(measured, estimated);
  BOOST_TEST(mixed[13].t_c == 38.2);
  BOOST_TEST(mixed[13].u2_m_s == estimated[13].u2_m_s);
  BOOST_TEST(mixed[12].t_c == estimated[12].t_c);
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  const auto refused = [](auto change, const char* field) {
    DailyShape day = hot_day();
    change(day);
    BOOST_CHECK_EXCEPTION(hours_of_day(day), noonleaf::Error, NamesField{field});
  };
  refused([](DailyShape& day) { day.t_min_c = 38; }, "t_min_c");
  refused([](DailyShape& day) { day.t_max_c = 99; }, "t_max_c");
  refused([](DailyShape& day) { day.rs_mj_m2_d = -1; }, "rs_mj_m2_d");
  refused([](DailyShape& day) { day.site.location.latitude_deg = 70; }, "latitude_deg");
  refused([](DailyShape& day) { day.site.utc_offset_h = 15; }, "utc_offset_h");
}

BOOST_AUTO_TEST_SUITE_END()
