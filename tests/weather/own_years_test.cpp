#include "noonleaf/weather/own_years.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/missing.hpp"

using namespace std::chrono_literals;
using noonleaf::DailySeries;
using noonleaf::DailyWeather;
using noonleaf::DayOrigin;
using noonleaf::WeatherQuantity;

namespace {

// Whole years 2020 to 2024 in which t_max is 20, 21, 22, 23, 24 by year, t_min 10 below, rain 1 every day.
DailySeries five_years() {
  DailySeries series;
  const std::chrono::sys_days end = 2025y / 1 / 1;
  for (std::chrono::sys_days date = 2020y / 1 / 1; date < end; date += std::chrono::days{1}) {
    DailyWeather day;
    day.date = date;
    day.t_max_c = static_cast<int>(day.date.year()) - 2000;
    day.t_min_c = day.t_max_c - 10;
    day.rain_mm = 1.0;
    series.days.push_back(day);
    series.origins.push_back(DayOrigin::measured);
  }
  return series;
}

DailyWeather& day_at(DailySeries& series, std::chrono::sys_days date) {
  return series.days[static_cast<std::size_t>((date - std::chrono::sys_days(2020y / 1 / 1)).count())];
}

void empty(DailySeries& series, std::chrono::sys_days date) {
  DailyWeather& day = day_at(series, date);
  day = {.date = date};
  series.origins[static_cast<std::size_t>((date - std::chrono::sys_days(2020y / 1 / 1)).count())] =
      DayOrigin::none;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(own_years)

BOOST_AUTO_TEST_CASE(an_empty_day_is_the_mean_of_the_other_years) {
  DailySeries series = five_years();
  empty(series, 2024y / 7 / 6);
  const auto bridged = noonleaf::bridge_with_own_years(series);
  BOOST_REQUIRE_EQUAL(bridged.size(), 1U);
  BOOST_TEST((bridged[0].date == 2024y / 7 / 6));
  BOOST_TEST(bridged[0].years == 4U);
  BOOST_TEST(bridged[0].quantities.count() == 2U);
  BOOST_TEST(day_at(series, 2024y / 7 / 6).t_max_c == 21.5);  // of 20, 21, 22, 23
  BOOST_TEST(day_at(series, 2024y / 7 / 6).t_min_c == 11.5);
  BOOST_TEST(noonleaf::is_missing(day_at(series, 2024y / 7 / 6).rain_mm));
}

BOOST_AUTO_TEST_CASE(a_leap_day_and_the_turn_of_the_year_have_neighbours_too) {
  DailySeries series = five_years();
  empty(series, 2024y / 2 / 29);
  empty(series, 2022y / 12 / 31);
  BOOST_TEST(noonleaf::bridge_with_own_years(series).size() == 2U);
  BOOST_TEST(day_at(series, 2024y / 2 / 29).t_max_c == 21.5);
}

BOOST_AUTO_TEST_CASE(too_few_years_bridge_nothing) {
  DailySeries series = five_years();
  for (const auto year : {2020y, 2021y, 2022y})
    for (int shift = -7; shift <= 7; ++shift)
      empty(series, std::chrono::sys_days(year / 7 / 6) + std::chrono::days{shift});
  noonleaf::bridge_with_own_years(series);
  BOOST_TEST(noonleaf::is_missing(day_at(series, 2020y / 7 / 6).t_max_c));  // only two years know its week
  BOOST_TEST(noonleaf::is_known(day_at(series, 2020y / 6 / 29).t_max_c));   // four know the days before
}

BOOST_AUTO_TEST_CASE(a_forecast_is_no_climate) {
  DailySeries series = five_years();
  for (DayOrigin& origin : series.origins) origin = DayOrigin::forecast;
  empty(series, 2024y / 7 / 6);
  BOOST_TEST(noonleaf::bridge_with_own_years(series).empty());
}

BOOST_AUTO_TEST_CASE(what_the_day_knows_itself_stays) {
  DailySeries series = five_years();
  DailyWeather& day = day_at(series, 2024y / 7 / 6);
  day.t_min_c = noonleaf::missing;
  day.t_max_c = 9.0;  // measured alone: the pair is taken from the other years, or it would contradict itself
  day.wind_m_s = 3.0;
  const auto bridged = noonleaf::bridge_with_own_years(series);
  BOOST_REQUIRE_EQUAL(bridged.size(), 1U);
  BOOST_TEST(day_at(series, 2024y / 7 / 6).t_max_c == 21.5);
  BOOST_TEST(day_at(series, 2024y / 7 / 6).wind_m_s == 3.0);
  BOOST_TEST(day_at(series, 2024y / 7 / 6).rain_mm == 1.0);
  BOOST_TEST(!bridged[0].quantities.test(static_cast<std::size_t>(WeatherQuantity::wind)));
}

BOOST_AUTO_TEST_CASE(nothing_to_bridge) {
  DailySeries empty_series;
  BOOST_TEST(noonleaf::bridge_with_own_years(empty_series).empty());
  DailySeries series = five_years();
  BOOST_TEST(noonleaf::bridge_with_own_years(series).empty());
}

// Two rows at both ends of the accepted years kept the fuzzer busy for more than ten seconds: the years
// around each of 64,000 empty days were gone through anew.
BOOST_AUTO_TEST_CASE(a_gap_of_centuries_is_bridged_in_no_time) {
  DailySeries series;
  for (std::chrono::sys_days date = 1800y / 1 / 1; date <= std::chrono::sys_days(2200y / 12 / 31);
       date += std::chrono::days{1}) {
    DailyWeather day;
    day.date = date;
    const bool measured = day.date.year() < 1805y;
    if (measured) day.t_max_c = 20;
    if (measured) day.t_min_c = 10;
    series.days.push_back(day);
    series.origins.push_back(measured ? DayOrigin::measured : DayOrigin::none);
  }
  const auto bridged = noonleaf::bridge_with_own_years(series);
  BOOST_TEST(bridged.size() == series.days.size() - 5 * 365 - 1);
  BOOST_TEST(series.days.back().t_max_c == 20);
}

BOOST_AUTO_TEST_SUITE_END()
