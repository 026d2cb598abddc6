#include "noonleaf/plan/sky.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/reference/penman_monteith.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::Et0From;
using noonleaf::missing;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
const std::string tomato = tomatoes_from("2025-06-01");

void take_temperature(noonleaf::DailySeries& series, std::size_t from, std::size_t to) {
  for (std::size_t day = from; day < to; ++day) series.days[day].t_max_c = missing;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(sky)

BOOST_AUTO_TEST_CASE(each_day_is_the_reference_equation_on_its_weather) {
  const auto garden = invented_garden(tomato);
  const auto series = steady_weather(first, 5);
  const auto sky = noonleaf::sky_over(garden.site, series);
  const auto estimate = noonleaf::complete_daily(series.days[3], garden.site.location);
  BOOST_TEST(sky.days[3].et0_mm_d == noonleaf::daily_et0_mm_d(estimate, garden.site.location));
  BOOST_TEST((sky.find(first + std::chrono::days(3)) == &sky.days[3]));
  BOOST_TEST((sky.find(first - std::chrono::days(1)) == nullptr));
  BOOST_TEST((sky.find(first + std::chrono::days(5)) == nullptr));
}

BOOST_AUTO_TEST_CASE(a_short_gap_is_the_mean_of_its_neighbours_and_says_so) {
  const auto garden = invented_garden(tomato);
  auto series = steady_weather(first, 12);
  take_temperature(series, 4, 9);  // five days
  const auto sky = noonleaf::sky_over(garden.site, series);
  double sum = 0;
  for (const int day : {1, 2, 3, 9, 10, 11}) sum += sky.days[static_cast<std::size_t>(day)].et0_mm_d;
  for (std::size_t day = 4; day < 9; ++day) {
    BOOST_TEST((sky.days[day].et0_from == Et0From::neighbours));
    BOOST_TEST(sky.days[day].et0_mm_d == sum / 6, boost::test_tools::tolerance(1e-14));
  }
}

BOOST_AUTO_TEST_CASE(a_long_gap_stays_missing) {
  const auto garden = invented_garden(tomato);
  auto series = steady_weather(first, 12);
  take_temperature(series, 3, 9);  // six days
  const auto sky = noonleaf::sky_over(garden.site, series);
  BOOST_TEST((sky.days[5].et0_from == Et0From::none));
  BOOST_TEST(noonleaf::is_missing(sky.days[5].et0_mm_d));
}

// A station that lacks its rain and a forecast that has some: the day is mixed, and no rain was measured.
BOOST_AUTO_TEST_CASE(forecast_rain_on_a_measured_day_is_not_measured) {
  noonleaf::DailySeries series = steady_weather(std::chrono::sys_days(2025y / 7 / 1), 3);
  for (auto& day : series.days) day.rain_mm = 12;
  series.origins[1] = noonleaf::DayOrigin::mixed;
  series.forecast[1].set(static_cast<std::size_t>(noonleaf::WeatherQuantity::rain));
  const noonleaf::Sky sky = noonleaf::sky_over({.location = {46, 0, 300}}, series);
  BOOST_TEST(noonleaf::measured_rain_mm(sky.days[0]) == 12.0);
  BOOST_TEST(noonleaf::is_missing(noonleaf::measured_rain_mm(sky.days[1])));
}

BOOST_AUTO_TEST_SUITE_END()
