#include <string>
#include <string_view>

#include <boost/test/unit_test.hpp>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/daily_file.hpp"

#include "refusal.hpp"
#include "text_checks.hpp"
#include "weather/temporary_file.hpp"

using namespace std::chrono_literals;
using noonleaf::Error;
using noonleaf::WeatherFile;
using noonleaf::WeatherOptions;
using std::chrono::sys_days;

namespace {

WeatherFile read(std::string_view bytes, const WeatherOptions& options = {.zone = "America/Chicago"}) {
  const TemporaryFile file(bytes, "some.file");
  return noonleaf::read_daily_weather(file.path(), "f", options);
}

std::string refusal(std::string_view bytes, const WeatherOptions& options = {.zone = "America/Chicago"}) {
  return refusal_text([&] { read(bytes, options); });
}

std::string with(std::string text, std::string_view what, std::string_view by) {
  return text.replace(text.find(what), what.size(), by);
}

bool notes_hold(const WeatherFile& file, std::string_view part) {
  for (const std::string& note : file.notes)
    if (holds(note, part)) return true;
  return false;
}

// The layout of readme-by_station; the station and its values are invented.
constexpr std::string_view ghcn_rows =
    "USC00000001,20240705,TMAX,311,,,7,0700\n"
    "USC00000001,20240705,TMIN,-17,,,7,0700\n"
    "USC00000001,20240705,PRCP,25,,,7,0700\n"
    "USC00000001,20240705,AWND,31,,,W,\n"
    "USC00000001,20240705,SNOW,0,,,7,\n"
    "USC00000001,20240706,TMAX,500,,X,7,1800\n"
    "USC00000001,20240706,TMIN,172,,,7,1800\n"
    "USC00000001,20240706,PRCP,0,T,,7,1800\n"
    "USC00000001,20240707,TMAX,-9999,,,7,1800\n"
    "USC00000001,20240707,MDPR,300,,,7,1800\n"
    "USC00000001,20240707,TMIN,180,,,7,1800\n";

constexpr std::string_view hourly_json =
    R"({"properties": {"updateTime": "2024-07-01T11:00:00+00:00", "periods": [
 {"number": 1, "startTime": "2024-07-01T06:00:00-05:00", "endTime": "2024-07-01T07:00:00-05:00", "temperature": 77,
  "temperatureUnit": "F", "probabilityOfPrecipitation": {"unitCode": "wmoUnit:percent", "value": 20},
  "dewpoint": {"unitCode": "wmoUnit:degC", "value": 18.5}, "relativeHumidity": {"unitCode": "wmoUnit:percent", "value": 71},
  "windSpeed": "5 to 10 mph", "windDirection": "SW", "shortForecast": "Sunny"},
 {"number": 2, "startTime": "2024-07-01T07:00:00-05:00", "endTime": "2024-07-01T08:00:00-05:00",
  "temperature": {"unitCode": "wmoUnit:degC", "value": 26}, "dewpoint": {"unitCode": "wmoUnit:degC", "value": null},
  "relativeHumidity": {"unitCode": "wmoUnit:percent", "value": 70}, "windSpeed": "10 mph"}]}})";

constexpr std::string_view grid_json = R"({"properties": {"updateTime": "2024-07-01T11:00:00+00:00",
 "temperature": {"uom": "wmoUnit:degC", "values": [
   {"validTime": "2024-07-01T05:00:00+00:00/PT3H", "value": 20.5}, {"validTime": "2024-07-01T08:00:00+00:00/PT1H", "value": 22}]},
 "relativeHumidity": {"uom": "wmoUnit:percent", "values": [{"validTime": "2024-07-01T05:00:00+00:00/PT4H", "value": 80}]},
 "windSpeed": {"uom": "wmoUnit:km_h-1", "values": [{"validTime": "2024-07-01T05:00:00+00:00/PT4H", "value": 18}]},
 "quantitativePrecipitation": {"uom": "wmoUnit:mm", "values": [
   {"validTime": "2024-07-01T05:00:00+00:00/PT4H", "value": 6}, {"validTime": "2024-07-01T09:00:00+00:00/P1DT6H", "value": null}]},
 "skyCover": {"uom": "wmoUnit:percent", "values": [{"validTime": "2024-07-01T05:00:00+00:00/PT4H", "value": 30}]}}})";

constexpr std::string_view surface_rows =
    "\"STATION\",\"DATE\",\"SOURCE\",\"LATITUDE\",\"LONGITUDE\",\"ELEVATION\",\"NAME\",\"REPORT_TYPE\","
    "\"CALL_SIGN\",\"QUALITY_CONTROL\",\"WND\",\"CIG\",\"VIS\",\"TMP\",\"DEW\",\"SLP\",\"AA1\",\"MA1\"\n"
    "\"00000000001\",\"2024-07-01T12:00:00\",\"4\",\"41.0\",\"-87.0\",\"200.0\",\"NOWHERE, IL "
    "US\",\"FM-12\",\"99999\",\"V020\",\"180,1,N,0041,1\",\"22000,1,9,N\",\"016093,1,9,9\",\"+0230,1\",\"+"
    "0170,1\",\"10132,1\",\"06,0051,9,1\",\"\"\n"
    "\"00000000001\",\"2024-07-01T11:53:00\",\"7\",\"41.0\",\"-87.0\",\"200.0\",\"NOWHERE, IL "
    "US\",\"FM-15\",\"KXXX "
    "\",\"V030\",\"190,5,N,0036,5\",\"22000,5,9,N\",\"016093,5,9,5\",\"+0228,5\",\"+0172,5\",\"10131,5\","
    "\"01,0003,9,5\",\"10125,5,09893,5\"\n"
    "\"00000000001\",\"2024-07-01T12:53:00\",\"7\",\"41.0\",\"-87.0\",\"200.0\",\"NOWHERE, IL "
    "US\",\"FM-15\",\"KXXX "
    "\",\"V030\",\"999,9,C,0000,5\",\"22000,5,9,N\",\"016093,5,9,5\",\"+9999,9\",\"-0012,2\",\"10131,5\","
    "\"01,9999,9,9\",\"10125,5,99999,9\"\n"
    "\"00000000001\",\"2024-07-01T23:59:00\",\"7\",\"41.0\",\"-87.0\",\"200.0\",\"NOWHERE, IL US\",\"SOD  "
    "\",\"KXXX "
    "\",\"V030\",\"999,9,9,9999,9\",\"99999,9,9,N\",\"999999,9,9,9\",\"+9999,9\",\"+9999,9\",\"99999,9\","
    "\"24,0003,9,5\",\"\"\n";

}  // namespace

BOOST_AUTO_TEST_SUITE(open_formats)

BOOST_AUTO_TEST_CASE(ghcn_daily_with_and_without_header) {
  const std::string with_header =
      "ID,DATE,ELEMENT,DATA_VALUE,M_FLAG,Q_FLAG,S_FLAG,OBS_TIME\n" + std::string(ghcn_rows);
  for (const std::string& bytes : {std::string(ghcn_rows), with_header}) {
    const WeatherFile file = read(bytes);
    BOOST_TEST(file.format == "NOAA GHCN-Daily by station");
    BOOST_REQUIRE_EQUAL(file.days.size(), 3U);
    BOOST_TEST(file.days[0].t_max_c == 31.1);
    BOOST_TEST(file.days[0].t_min_c == -1.7);
    BOOST_TEST(file.days[0].rain_mm == 2.5);
    BOOST_TEST(file.days[0].wind_m_s == 3.1);
    BOOST_TEST(noonleaf::is_missing(file.days[1].t_max_c));  // flagged
    BOOST_TEST(file.days[1].t_min_c == 17.2);
    BOOST_TEST(file.days[1].rain_mm == 0.0);  // a trace
    BOOST_TEST(noonleaf::is_missing(file.days[2].t_max_c));
    BOOST_TEST(noonleaf::is_missing(file.days[2].rain_mm));  // a total of several days
    BOOST_REQUIRE_EQUAL(file.set_aside.size(), 1U);
    BOOST_TEST(file.set_aside[0].check == "flagged");
    BOOST_TEST(file.set_aside[0].problem.line == (bytes.front() == 'I' ? 7U : 6U));
    BOOST_TEST(notes_hold(file, "elements not read: MDPR, SNOW"));
    BOOST_TEST(notes_hold(file, "1 days with a trace"));
    BOOST_TEST(notes_hold(file, "(MDPR)"));
    BOOST_TEST(notes_hold(file, "read off before noon"));
  }
}

BOOST_AUTO_TEST_CASE(ghcn_daily_accepts_flags_on_the_users_word) {
  const WeatherFile file = read(ghcn_rows, {.accept = {"flagged"}});
  BOOST_TEST(file.days.at(1).t_max_c == 50.0);
  BOOST_TEST(file.set_aside.empty());
  BOOST_TEST(notes_hold(file, "check flagged accepted by you: it let 1 value pass"));
}

BOOST_AUTO_TEST_CASE(ghcn_daily_refuses_what_it_is_not) {
  std::string two_stations(ghcn_rows);
  two_stations.append("USC00000002,20240705,TMAX,311,,,7,0700\n");
  BOOST_TEST(holds(refusal(two_stations), "several stations"));
  BOOST_TEST(holds(refusal(ghcn_rows, {.where = noonleaf::RowFilter{"ID", "USC00000003"}}),
                   "did you mean \"USC00000001\""));
  BOOST_TEST(holds(refusal("USC00000001,20240705,TMAX,31.1,,,7,0700\n"),
                   "f:1:27: DATA_VALUE: \"31.1\" is not a whole number"));
  BOOST_TEST(holds(refusal("USC00000001,20240732,TMAX,311,,,7,0700\n"), "does not exist"));
  BOOST_TEST(
      holds(refusal("USC00000001,20240705,TMAX,311\nUSC00000001,20240706,TMAX\n"), "the row has 3 cells"));
  BOOST_TEST(holds(refusal("USC00000001,20240705,SNOW,311,,,7,0700\n"), "no weather that is read"));
}

BOOST_AUTO_TEST_CASE(a_wide_table_of_the_same_office_must_say_its_units) {
  const std::string_view bytes =
      "STATION,DATE,NAME,PRCP,PRCP_ATTRIBUTES,TMAX,TMIN\n\"USC1\",\"2024-07-05\",\"NOWHERE, IL US\",\"  "
      "0.10\",\",,7,0700\",\"  88\",\"  66\"\n";
  BOOST_TEST(holds(refusal(bytes), "\"TMAX\" does not say its unit; did you mean tmax_c or tmax_f?"));
  const WeatherFile file =
      read(bytes, {.columns = {{"tmax_f", "TMAX"}, {"tmin_f", "TMIN"}, {"rain_in", "PRCP"}}});
  BOOST_CHECK_CLOSE(file.days.at(0).rain_mm, 2.54, 1e-9);
}

BOOST_AUTO_TEST_CASE(surface_hourly) {
  const TemporaryFile saved(surface_rows);
  const WeatherFile file = noonleaf::read_hourly_weather(saved.path(), "f", {});
  BOOST_TEST(file.format == "NOAA Integrated Surface Database, global-hourly CSV");
  BOOST_REQUIRE_EQUAL(file.hours.size(), 2U);
  const noonleaf::HourlyWeather& first = file.hours[0];
  BOOST_TEST((first.begin == sys_days(2024y / 7 / 1) + 11h));
  BOOST_TEST(first.t_c == 22.8);  // the regular report, not the synoptic one
  BOOST_TEST(first.t_dew_c == 17.2);
  BOOST_TEST(first.wind_m_s == 3.6);
  BOOST_TEST(first.rain_mm == 0.3);
  BOOST_TEST(first.pressure_kpa == 98.93);  // at the station, not reduced to sea level
  const noonleaf::HourlyWeather& second = file.hours[1];
  BOOST_TEST(noonleaf::is_missing(second.t_c));
  BOOST_TEST(noonleaf::is_missing(second.t_dew_c));
  BOOST_TEST(second.wind_m_s == 0.0);
  BOOST_TEST(noonleaf::is_missing(second.rain_mm));
  BOOST_REQUIRE_EQUAL(file.set_aside.size(), 1U);
  BOOST_TEST(file.set_aside[0].check == "flagged");
}

BOOST_AUTO_TEST_CASE(hourly_forecast) {
  const TemporaryFile saved(hourly_json);
  const WeatherFile file = noonleaf::read_hourly_weather(saved.path(), "f", {});
  BOOST_TEST(file.format == "NWS hourly forecast, JSON");
  BOOST_TEST((file.kind == noonleaf::WeatherKind::forecast));
  BOOST_TEST((*file.issued == sys_days(2024y / 7 / 1) + 11h));
  BOOST_REQUIRE_EQUAL(file.hours.size(), 2U);
  BOOST_TEST((file.hours[0].begin == sys_days(2024y / 7 / 1) + 11h));
  BOOST_TEST(file.hours[0].t_c == 25.0);
  BOOST_TEST(file.hours[0].t_dew_c == 18.5);
  BOOST_TEST(file.hours[0].rh_pct == 71.0);
  BOOST_CHECK_CLOSE(file.hours[0].wind_m_s, 7.5 * 0.44704, 1e-9);
  BOOST_TEST(noonleaf::is_missing(file.hours[0].rain_mm));
  BOOST_TEST(file.hours[1].t_c == 26.0);
  BOOST_TEST(noonleaf::is_missing(file.hours[1].t_dew_c));
  BOOST_TEST(notes_hold(file, "no amount of rain"));
}

BOOST_AUTO_TEST_CASE(raw_grid_spreads_amounts_and_repeats_states) {
  const TemporaryFile saved(grid_json);
  const WeatherFile file = noonleaf::read_hourly_weather(saved.path(), "f", {});
  BOOST_TEST(file.format == "NWS gridpoint forecast, JSON");
  BOOST_REQUIRE_EQUAL(file.hours.size(), 4U);
  double rain = 0.0;
  for (const noonleaf::HourlyWeather& hour : file.hours) {
    BOOST_TEST(hour.rain_mm == 1.5);
    BOOST_TEST(hour.rh_pct == 80.0);
    BOOST_TEST(hour.wind_m_s == 5.0);
    rain += hour.rain_mm;
  }
  BOOST_TEST(rain == 6.0);
  BOOST_TEST(file.hours[2].t_c == 20.5);
  BOOST_TEST(file.hours[3].t_c == 22.0);
}

BOOST_AUTO_TEST_CASE(broken_forecasts_are_refused_with_their_place) {
  const std::string cut = refusal(std::string(hourly_json.substr(0, 300)));
  BOOST_TEST(holds(cut, "f:4: the JSON is broken here"), cut);
  BOOST_TEST(holds(refusal("[1, 2]"), "no forecast that is known"));
  BOOST_TEST(holds(refusal("{\"properties\": {\"x\": 1}}"), "neither periods nor a layer"));
  BOOST_TEST(holds(refusal("{\"properties\": {\"temperature\": 1e999}}"), "cannot be read"));
  BOOST_TEST(holds(refusal("{\"properties\": {\"periods\": {}}}"), "not a list"));
  BOOST_TEST(
      holds(refusal("{\"properties\": {\"periods\": [1, {\"startTime\": 2}]}}"), "periods[1].startTime"));
  BOOST_TEST(holds(refusal(with(std::string(hourly_json), "5 to 10 mph", "breezy")),
                   "periods[0].windSpeed: \"breezy\""));
  BOOST_TEST(holds(refusal(with(std::string(hourly_json), "\"F\"", "7")), "the unit \"\" is not known"));
  BOOST_TEST(
      holds(refusal(with(std::string(hourly_json), "T07:00:00-05:00\", \"temp", "T18:00:00-05:00\", \"temp")),
            "not an hour long"));
  BOOST_TEST(holds(refusal(with(std::string(grid_json), "PT3H", "PT3X")), "temperature.values[0].validTime"));
  BOOST_TEST(
      holds(refusal(with(std::string(grid_json), "PT3H", "P99999D")), "temperature.values[0].validTime"));
  BOOST_TEST(holds(refusal(with(std::string(grid_json), "20.5", "\"warm\"")), "temperature.values[0].value"));
  BOOST_TEST(holds(refusal(with(std::string(grid_json), "wmoUnit:degC", "wmoUnit:K")),
                   "the unit \"wmoUnit:K\" is not known"));
  BOOST_TEST(holds(refusal(std::string(1'000'000, '[')), "the JSON is broken"));
}

// The open quote swallowed all rows behind it without a word.
BOOST_AUTO_TEST_CASE(a_quote_without_its_other_half_swallows_nothing) {
  BOOST_TEST(holds(refusal(with(std::string(ghcn_rows), "TMAX,311,,,7,0700", "TMAX,311,,,7,\"0700")),
                   "f:1:35: a quote is opened here and never closed"));
  const std::string open_cell =
      refusal(with(std::string(surface_rows), "\"190,5,N,0036,5\"", "\"190,5,N,0036,5"));
  BOOST_TEST(holds(open_cell, "f:3:104: text stands behind the closing quote of this cell"), open_cell);
  const std::string open_header = refusal(with(std::string(surface_rows), "\"MA1\"", "\"MA1"));
  BOOST_TEST(holds(open_header, "f:1:155: text stands behind the closing quote of this cell"), open_header);
}

// Sixty bytes stand for 744 hours: a file of some megabytes would have filled the memory of the machine.
BOOST_AUTO_TEST_CASE(a_forecast_holds_a_year_of_hours_at_most) {
  const auto grid = [](int months, int times) {
    std::string values;
    for (int time = 0; time < times; ++time) {
      for (int month = 0; month < months; ++month) {
        const std::string year = std::to_string(1900 + month / 12);
        const std::string name = std::to_string(101 + month % 12).substr(1);
        values += std::string(values.empty() ? "" : ",") + "{\"validTime\": \"" + year + "-" + name +
                  "-01T00:00:00+00:00/P28D\", \"value\": 20}";
      }
    }
    return "{\"properties\": {\"temperature\": {\"uom\": \"wmoUnit:degC\", \"values\": [" + values + "]}}}";
  };
  const std::string said = "the forecast holds more than a year of hours, or the same hours over and over";
  BOOST_TEST(read(grid(12, 1)).hours.size() == 12U * 28 * 24);
  BOOST_TEST(holds(refusal(grid(14, 1)), said));
  BOOST_TEST(holds(refusal(grid(12, 30)), said));
}

BOOST_AUTO_TEST_SUITE_END()
