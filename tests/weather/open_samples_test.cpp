#include <filesystem>
#include <string>

#include <boost/test/unit_test.hpp>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/daily_file.hpp"

#include "open_weather_file.hpp"

using namespace std::chrono_literals;
using noonleaf::WeatherFile;
using noonleaf::WeatherOptions;

namespace {

const std::filesystem::path source_folder = NOONLEAF_SOURCE_DIR;

double rain_of_year(const WeatherFile& file, std::chrono::year year) {
  double sum = 0.0;
  for (const noonleaf::DailyWeather& day : file.days)
    if (day.date.year() == year) sum += day.rain_mm;
  return sum;
}

}  // namespace

// Real open tables, as published. The last one stays beside the project.
BOOST_AUTO_TEST_SUITE(open_samples)

BOOST_AUTO_TEST_CASE(seattle_and_new_york) {
  const auto path = source_folder / "weather_samples/open/seattle_newyork_daily_2012_2015.csv";
  BOOST_CHECK_THROW(noonleaf::read_daily_weather(path, "open"), noonleaf::Error);  // two stations
  const WeatherFile seattle =
      noonleaf::read_daily_weather(path, "open", {.where = noonleaf::RowFilter{"station", "Seattle"}});
  BOOST_REQUIRE_EQUAL(seattle.days.size(), 1461U);
  // Yearly rain as the file's README gives it.
  BOOST_CHECK_CLOSE(rain_of_year(seattle, 2012y), 1226.0, 1e-9);
  BOOST_CHECK_CLOSE(rain_of_year(seattle, 2015y), 1139.2, 1e-9);
  BOOST_TEST(seattle.set_aside.empty());
  BOOST_TEST_MESSAGE("Seattle: " << noonleaf::describe(noonleaf::problems_of(seattle.doubts)));
  const WeatherFile york =
      noonleaf::read_daily_weather(path, "open", {.where = noonleaf::RowFilter{"station", "New York"}});
  BOOST_CHECK_CLOSE(rain_of_year(york, 2014y), 1289.8, 1e-9);
  BOOST_TEST(york.set_aside.empty());
  BOOST_TEST_MESSAGE("New York: " << noonleaf::describe(noonleaf::problems_of(york.doubts)));
}

BOOST_AUTO_TEST_CASE(chicago_by_its_own_headers) {
  WeatherOptions options;
  options.columns = {{"tmin_f", "temp_min_f"},
                     {"tmean_f", "temp_median_f"},
                     {"tmax_f", "temp_max_f"},
                     {"tdew_f", "dew_median_f"},
                     {"rh_pct", "rh_median_pct"},
                     {"wind_mph", "wind_median_mph"},
                     {"pressure_inhg", "pressure_median_inhg"}};
  const WeatherFile chicago = noonleaf::read_daily_weather(
      source_folder / "weather_samples/open/chicago_daily_2001_2016.csv", "open", options);
  BOOST_TEST(chicago.days.size() == 5698U);
  BOOST_TEST(chicago.set_aside.empty());
  BOOST_TEST_MESSAGE("Chicago: " << chicago.doubts.size() << " doubts\n"
                                 << noonleaf::describe(noonleaf::problems_of(chicago.doubts)));
}

BOOST_AUTO_TEST_CASE(chicago_as_celsius_is_found_out) {
  WeatherOptions options;
  options.columns = {{"tmin_c", "temp_min_f"}, {"tmax_c", "temp_max_f"}, {"wind_m_s", "wind_max_mph"}};
  const WeatherFile chicago = noonleaf::read_daily_weather(
      source_folder / "weather_samples/open/chicago_daily_2001_2016.csv", "open", options);
  BOOST_TEST_MESSAGE("Chicago: " << noonleaf::describe(noonleaf::problems_of(chicago.set_aside)));
  BOOST_TEST(chicago.set_aside.size() > 0U);
}

BOOST_AUTO_TEST_CASE(the_weather_of_the_demo_garden_is_clean) {
  const WeatherOptions options{
      .zone = "America/Los_Angeles",
      .site = {.latitude_deg = 46.07, .longitude_deg = -118.33, .elevation_m = 290.0}};
  std::size_t files = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(source_folder / "weather_samples/demo/weather")) {
    const WeatherFile file =
        noonleaf::read_daily_weather(entry.path(), entry.path().filename().string(), options);
    const bool forecast = file.name.starts_with("forecast");
    BOOST_TEST((file.kind == (forecast ? noonleaf::WeatherKind::forecast : noonleaf::WeatherKind::measured)));
    BOOST_TEST(file.set_aside.empty(), noonleaf::describe(noonleaf::problems_of(file.set_aside)));
    BOOST_TEST(file.doubts.empty(), noonleaf::describe(noonleaf::problems_of(file.doubts)));
    ++files;
  }
  BOOST_TEST(files > 0U);
}

BOOST_AUTO_TEST_CASE(climate_reference_station) {
  const auto path = open_weather_file("climate_reference_daily_2015.csv");
  if (!path) return;
  const WeatherFile station = noonleaf::read_daily_weather(
      *path, "open", {.site = {.latitude_deg = 30.62, .longitude_deg = -98.08, .elevation_m = 400.0}});
  BOOST_TEST(station.days.size() == 365U);
  std::size_t without_temperature = 0;
  for (const noonleaf::DailyWeather& day : station.days)
    without_temperature += noonleaf::is_missing(day.t_max_c);
  BOOST_TEST(without_temperature == 7U);  // by the README of the data
  BOOST_TEST_MESSAGE("reference station: " << noonleaf::describe(noonleaf::problems_of(station.set_aside))
                                           << noonleaf::describe(noonleaf::problems_of(station.doubts)));
}

BOOST_AUTO_TEST_SUITE_END()
