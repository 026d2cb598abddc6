#include "noonleaf/weather/merge.hpp"

#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/missing.hpp"

using namespace std::chrono_literals;
using noonleaf::DailyWeather;
using noonleaf::DayOrigin;
using noonleaf::WeatherFile;
using noonleaf::WeatherKind;

namespace {

DailyWeather day(unsigned number, double t_max_c, double rain_mm) {
  DailyWeather weather;
  weather.date = 2025y / 7 / std::chrono::day{number};
  weather.t_max_c = t_max_c;
  weather.rain_mm = rain_mm;
  return weather;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(merge)

BOOST_AUTO_TEST_CASE(a_measured_value_beats_a_forecast_and_gaps_stay_gaps) {
  const std::vector<WeatherFile> files{
      {.name = "forecast.csv",
       .kind = WeatherKind::forecast,
       .days = {day(2, 31, 1), day(3, 32, 2), day(6, 33, 3)}},
      {.name = "station.csv", .days = {day(1, 20, 0), day(2, 21, noonleaf::missing)}}};
  const auto series = noonleaf::merge_daily_weather(files);
  BOOST_REQUIRE_EQUAL(series.days.size(), 6U);
  BOOST_REQUIRE_EQUAL(series.origins.size(), 6U);
  for (std::size_t index = 0; index < 6; ++index)
    BOOST_TEST((series.days[index].date == 2025y / 7 / std::chrono::day{static_cast<unsigned>(index) + 1}));
  BOOST_TEST((series.origins[0] == DayOrigin::measured));
  BOOST_TEST((series.origins[1] == DayOrigin::mixed));
  BOOST_TEST(series.days[1].t_max_c == 21.0);
  BOOST_TEST(series.days[1].rain_mm == 1.0);
  const auto rain = static_cast<std::size_t>(noonleaf::WeatherQuantity::rain);
  const auto t_max = static_cast<std::size_t>(noonleaf::WeatherQuantity::t_max);
  BOOST_TEST(series.forecast[1].test(rain));
  BOOST_TEST(!series.forecast[1].test(t_max));
  BOOST_TEST((series.origins[2] == DayOrigin::forecast));
  BOOST_TEST((series.origins[3] == DayOrigin::none));
  BOOST_TEST(noonleaf::is_missing(series.days[3].t_max_c));
  BOOST_TEST(series.days[5].t_max_c == 33.0);
  BOOST_TEST(series.conflicts.empty());
}

BOOST_AUTO_TEST_CASE(measured_files_that_disagree_are_named_and_the_first_is_used) {
  const std::vector<WeatherFile> files{{.name = "a.csv", .days = {day(1, 20, 5)}, .lines = {2}},
                                       {.name = "b.csv", .days = {day(1, 22, 5)}, .lines = {7}}};
  const auto series = noonleaf::merge_daily_weather(files);
  BOOST_TEST(series.days.at(0).t_max_c == 20.0);
  BOOST_REQUIRE_EQUAL(series.conflicts.size(), 1U);
  BOOST_TEST(series.conflicts[0].check == "files_disagree");
  BOOST_TEST(noonleaf::headline(series.conflicts[0].problem) ==
             "b.csv:7: tmax_c: 22 on 2025-07-01, but a.csv says 20, which is used");
}

BOOST_AUTO_TEST_CASE(the_latest_forecast_counts) {
  std::vector<WeatherFile> files{{.name = "old", .kind = WeatherKind::forecast, .days = {day(1, 20, 5)}},
                                 {.name = "new", .kind = WeatherKind::forecast, .days = {day(1, 22, 6)}}};
  BOOST_TEST(noonleaf::merge_daily_weather(files).days.at(0).t_max_c == 22.0);
  files[0].issued = std::chrono::sys_days(2025y / 7 / 2);
  files[1].issued = std::chrono::sys_days(2025y / 7 / 1);
  BOOST_TEST(noonleaf::merge_daily_weather(files).days.at(0).t_max_c == 20.0);
}

BOOST_AUTO_TEST_CASE(a_forecast_does_not_contradict_what_was_measured) {
  DailyWeather forecast = day(1, 35, 0);
  forecast.t_min_c = 25;
  const std::vector<WeatherFile> files{
      {.name = "station", .days = {day(1, 20, 0)}},
      {.name = "forecast", .kind = WeatherKind::forecast, .days = {forecast}}};
  const auto series = noonleaf::merge_daily_weather(files);
  BOOST_TEST(series.days.at(0).t_max_c == 20.0);
  BOOST_TEST(noonleaf::is_missing(series.days.at(0).t_min_c));
}

BOOST_AUTO_TEST_CASE(nothing_merges_to_nothing) {
  BOOST_TEST(noonleaf::merge_daily_weather({}).days.empty());
}

BOOST_AUTO_TEST_SUITE_END()
