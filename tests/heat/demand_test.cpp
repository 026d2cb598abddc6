#include "noonleaf/heat/demand.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include <boost/test/unit_test.hpp>

#include "heat/hot_day.hpp"
#include "refusal.hpp"

using noonleaf::DailyShape;
using noonleaf::hourly_transpiration_mm_h;
using noonleaf::hours_of_day;
using noonleaf::missing;
using noonleaf::transpiration_share;
using noonleaf::WeatherHours;

namespace {

double sum(const std::array<double, 24>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

}  // namespace

BOOST_AUTO_TEST_SUITE(demand)

BOOST_AUTO_TEST_CASE(the_hours_add_up_to_the_day) {
  for (const double total_mm : {0.0, 0.37, 4.2, 11.9})
    for (const double t_max_c : {12.0, 25.0, 41.0}) {
      DailyShape day = hot_day();
      day.t_max_c = t_max_c;
      day.t_min_c = t_max_c - 11;
      day.ea_kpa = 0.9;
      const auto demand = hourly_transpiration_mm_h(hours_of_day(day).hours, day.site, total_mm);
      BOOST_CHECK_SMALL(sum(demand) - total_mm, 1e-12);
      BOOST_TEST(*std::min_element(demand.begin(), demand.end()) >= 0.0);
    }
}

BOOST_AUTO_TEST_CASE(most_of_it_falls_around_noon) {
  const auto share = transpiration_share(hours_of_day(hot_day()).hours, hot_day().site);
  const auto peak = std::max_element(share.begin(), share.end()) - share.begin();
  BOOST_TEST(peak == 13);             // solar noon is at 13.6 h on this clock, the heat comes after it
  BOOST_TEST(share[15] > share[11]);  // warm, dry afternoon
  BOOST_TEST(share[3] < 0.01);
  BOOST_TEST(*std::max_element(share.begin(), share.end()) < 3.14159 / 24);  // flatter than a sine of 12 h
}

BOOST_AUTO_TEST_CASE(a_day_without_demand_is_shared_by_the_sun) {
  DailyShape day = hot_day();
  day.site.date = std::chrono::year(2025) / std::chrono::January / 10;
  day.site.location.latitude_deg = 64;
  day.t_max_c = day.t_min_c = -5;
  day.ea_kpa = 0.5;  // saturated all day
  day.rs_mj_m2_d = 0.05;
  const WeatherHours hours = hours_of_day(day).hours;
  const auto share = transpiration_share(hours, day.site);
  BOOST_CHECK_SMALL(sum(share) - 1, 1e-12);
  BOOST_CHECK_CLOSE(share[13], hours[13].rs_mj_m2_h / 0.05, 1e-6);
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  DailyShape day = hot_day();
  WeatherHours hours = hours_of_day(day).hours;
  hours[4].u2_m_s = missing;
  BOOST_TEST(std::isnan(transpiration_share(hours, day.site)[12]));
  hours = hours_of_day(day).hours;
  BOOST_TEST(std::isnan(hourly_transpiration_mm_h(hours, day.site, missing)[12]));
  day.site.location.elevation_m = missing;
  BOOST_TEST(std::isnan(transpiration_share(hours, day.site)[12]));
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  WeatherHours hours = hours_of_day(hot_day()).hours;
  BOOST_CHECK_EXCEPTION(hourly_transpiration_mm_h(hours, hot_day().site, -1), noonleaf::Error,
                        NamesField{"total_mm_d"});
  hours[0].t_c = 99;
  BOOST_CHECK_EXCEPTION(transpiration_share(hours, hot_day().site), noonleaf::Error, NamesField{"t_c"});
}

BOOST_AUTO_TEST_SUITE_END()
