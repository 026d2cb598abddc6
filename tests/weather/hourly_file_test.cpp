#include <string>
#include <string_view>

#include <boost/test/unit_test.hpp>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/daily_file.hpp"
#include "noonleaf/weather/hours_to_days.hpp"

#include "open_weather_file.hpp"
#include "refusal.hpp"
#include "text_checks.hpp"
#include "weather/temporary_file.hpp"

using namespace std::chrono_literals;
using noonleaf::Error;
using noonleaf::HourlyWeather;
using noonleaf::StampMark;
using noonleaf::WeatherFile;
using noonleaf::WeatherOptions;
using std::chrono::sys_days;

namespace {

const WeatherOptions in_chicago{.zone = "America/Chicago", .stamps = StampMark::period_begin};

WeatherFile read(std::string_view bytes, const WeatherOptions& options = in_chicago) {
  const TemporaryFile file(bytes);
  return noonleaf::read_hourly_weather(file.path(), "h.csv", options);
}

std::string refusal(std::string_view bytes, const WeatherOptions& options = in_chicago) {
  return refusal_text([&] { read(bytes, options); });
}

// A run of hours from `begin` on with the temperature rising by 1 each hour.
std::vector<HourlyWeather> rising(std::chrono::sys_seconds begin, int count) {
  std::vector<HourlyWeather> hours;
  for (int index = 0; index < count; ++index) {
    HourlyWeather hour;
    hour.begin = begin + std::chrono::hours{index};
    hour.t_c = index;
    hour.rs_mj_m2_h = 1.0;
    hour.rain_mm = 0.5;
    hours.push_back(hour);
  }
  return hours;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(hourly_file)

BOOST_AUTO_TEST_CASE(stamps_with_an_offset_or_in_the_zone_of_the_site) {
  const std::string_view spellings[] = {
      "time,t_c\n2024-07-06T13:00-05:00,20\n2024-07-06T14:00-05:00,21\n",
      "time,t_c\n2024-07-06T18:00Z,20\n2024-07-06T19:00Z,21\n",
      "time,t_c\n2024-07-06T13:00,20\n2024-07-06T14:00,21\n",
      "time_begin,t_c\n2024-07-06 13:00:00,20\n2024-07-06 14:00:00,21\n",
      "time_end,t_c\n2024-07-06 14:00,20\n2024-07-06 15:00,21\n",
      "date,time,t_c\n2024-07-06,13:00,20\n2024-07-06,14:00:00,21\n",
      "time_begin,time_end,t_c\n2024-07-06T13:00,2024-07-06T14:00,20\n2024-07-06T14:00,2024-07-06T15:00,21\n",
  };
  for (const std::string_view spelling : spellings) {
    BOOST_TEST_CONTEXT(spelling) {
      const WeatherFile file = read(spelling);
      BOOST_REQUIRE_EQUAL(file.hours.size(), 2U);
      BOOST_TEST((file.hours[0].begin == sys_days(2024y / 7 / 6) + 18h));
      BOOST_TEST((file.hours[1].begin == sys_days(2024y / 7 / 6) + 19h));
      BOOST_TEST((file.hours[0].length == 3600s));
      BOOST_TEST(file.hours[1].t_c == 21.0);
    }
  }
}

BOOST_AUTO_TEST_CASE(the_end_of_a_period_is_said_or_refused) {
  const std::string_view bytes = "time,t_c\n2024-07-06T13:00,20\n2024-07-06T14:00,21\n";
  BOOST_TEST(holds(refusal(bytes, {.zone = "America/Chicago"}),
                   "it is not said whether a row's time is the begin or the end"));
  const WeatherFile file = read(bytes, {.zone = "America/Chicago", .stamps = StampMark::period_end});
  BOOST_TEST((file.hours.at(0).begin == sys_days(2024y / 7 / 6) + 17h));
}

BOOST_AUTO_TEST_CASE(the_midnight_at_the_end_of_a_day) {
  const WeatherFile file = read("date,time,t_c\n2024-07-06,23:00,20\n2024-07-06,24:00,21\n",
                                {.zone = "Etc/UTC", .stamps = StampMark::period_end});
  BOOST_TEST((file.hours.at(1).begin == sys_days(2024y / 7 / 6) + 23h));
}

BOOST_AUTO_TEST_CASE(no_offset_and_no_zone_is_refused) {
  BOOST_TEST(holds(refusal("time_begin,t_c\n2024-07-06T13:00,20\n", {}), "no zone is known"));
  BOOST_TEST(holds(refusal("time_begin,t_c\n2024-07-06T13:00,20\n", {.zone = "America/Chigago"}),
                   "did you mean \"America/Chicago\"?"));
  BOOST_TEST(read("time_begin,t_c\n2024-07-06T13:00Z,20\n2024-07-06T14:00Z,20\n", {}).hours.size() == 2U);
}

BOOST_AUTO_TEST_CASE(an_hour_that_is_left_out_does_not_exist) {
  const std::string text = refusal("time,t_c\n2024-03-10T01:00,1\n2024-03-10T02:30,1\n2024-03-10T03:00,1\n");
  BOOST_TEST(holds(text, "h.csv:3: time: this time does not exist in America/Chicago"), text);
}

BOOST_AUTO_TEST_CASE(an_hour_that_comes_twice_is_told_apart_by_the_order) {
  const WeatherFile file =
      read("time,t_c\n2024-11-03T00:00,1\n2024-11-03T01:00,2\n2024-11-03T01:00,3\n2024-11-03T02:00,4\n");
  BOOST_REQUIRE_EQUAL(file.hours.size(), 4U);
  for (int hour = 0; hour < 4; ++hour)
    BOOST_TEST((file.hours[static_cast<std::size_t>(hour)].begin ==
                sys_days(2024y / 11 / 3) + 5h + std::chrono::hours{hour}));
  BOOST_TEST(file.set_aside.empty());
}

BOOST_AUTO_TEST_CASE(radiation_is_a_mean_or_a_sum_of_the_period) {
  const WeatherFile mean = read("time_begin,rs_w_m2\n2024-07-06T13:00,500\n2024-07-06T14:00,400\n");
  BOOST_TEST(mean.hours.at(0).rs_mj_m2_h == 500 * 0.0036);
  const WeatherFile sum = read("time_begin,rs_mj_m2\n2024-07-06T13:00,1.8\n2024-07-06T14:00,1.5\n");
  BOOST_TEST(sum.hours.at(0).rs_mj_m2_h == 1.8);
  std::string bytes = "time_begin,rs_mj_m2,rain_mm,t_c\n";
  for (const char* minute : {"00", "10", "20", "30", "40", "50"})
    bytes += std::string("2024-07-06T13:") + minute + ",0.3,0.1,2" + minute[0] + "\n";
  const WeatherFile tens = read(bytes);
  BOOST_REQUIRE_EQUAL(tens.hours.size(), 1U);
  BOOST_CHECK_CLOSE(tens.hours[0].rs_mj_m2_h, 1.8, 1e-9);
  BOOST_CHECK_CLOSE(tens.hours[0].rain_mm, 0.6, 1e-9);
  BOOST_CHECK_CLOSE(tens.hours[0].t_c, 22.5, 1e-9);
  BOOST_TEST((tens.hours[0].length == 3600s));
}

BOOST_AUTO_TEST_CASE(an_hour_with_a_quarter_missing_still_counts) {
  std::string bytes = "time_begin,t_c\n";
  for (const char* time : {"13:00", "13:15", "13:30", "14:00", "14:15", "15:00", "15:15", "15:30", "15:45"})
    bytes += std::string("2024-07-06T") + time + ",20\n";
  const WeatherFile file = read(bytes, {.zone = "Etc/UTC", .longest_interpolated_gap = 0h});
  BOOST_REQUIRE_EQUAL(file.hours.size(), 3U);
  BOOST_TEST(file.hours[0].t_c == 20.0);
  BOOST_TEST(file.hours[0].interpolated.any());
  BOOST_TEST(noonleaf::is_missing(file.hours[1].t_c));
  BOOST_TEST(file.hours[2].interpolated.none());
}

BOOST_AUTO_TEST_CASE(short_gaps_are_filled_and_said_long_ones_are_not) {
  const std::string bytes =
      "time_begin,t_c,rain_mm\n2024-07-06T00:00Z,10,1\n2024-07-06T01:00Z,,1\n2024-07-06T02:00Z,12,1\n"
      "2024-07-06T05:00Z,18,1\n2024-07-06T12:00Z,20,1\n";
  const WeatherFile file = read(bytes, {.zone = "Etc/UTC"});
  BOOST_REQUIRE_EQUAL(file.hours.size(), 7U);
  BOOST_TEST(file.hours[1].t_c == 11.0);
  BOOST_TEST(file.hours[1].interpolated.test(static_cast<std::size_t>(noonleaf::WeatherQuantity::t_mean)));
  BOOST_TEST(file.hours[1].interpolated.count() == 1U);
  BOOST_TEST(file.hours[3].t_c == 14.0);
  BOOST_TEST(file.hours[4].t_c == 16.0);
  BOOST_TEST(noonleaf::is_missing(file.hours[3].rain_mm));
  BOOST_TEST((file.hours[6].begin == sys_days(2024y / 7 / 6) + 12h));
  std::string said;
  for (const auto& doubt : file.doubts)
    said += std::string(doubt.check) + ": " + noonleaf::headline(doubt.problem) + "\n";
  BOOST_TEST(
      holds(said, "interpolated: h.csv:4: 1 period before this row filled between the neighbours: tmean_c"),
      said);
  BOOST_TEST(holds(said, "interpolated: h.csv:5: 2 periods before this row"), said);
  BOOST_TEST(
      holds(said,
            "gap: h.csv:6: 6 rows are missing before this row: 2024-07-06 06:00 UTC to 2024-07-06 11:00 UTC"),
      said);
}

BOOST_AUTO_TEST_CASE(days_of_23_24_and_25_hours) {
  // Chicago: 2024-03-10 has 23 hours, 2024-11-03 has 25.
  for (const auto& [date, hours] :
       {std::pair{2024y / 3 / 10, 23}, {2024y / 7 / 6, 24}, {2024y / 11 / 3, 25}}) {
    const auto midnight = sys_days(date) + (hours == 23 ? 6h : 5h);
    const auto result = noonleaf::days_from_hours(rising(midnight, hours), "America/Chicago");
    BOOST_REQUIRE_EQUAL(result.days.size(), 1U);
    const noonleaf::DailyWeather& day = result.days[0];
    BOOST_TEST((day.date == date));
    BOOST_TEST(day.t_min_c == 0.0);
    BOOST_TEST(day.t_max_c == hours - 1.0);
    BOOST_TEST(day.t_mean_c == (hours - 1.0) / 2.0);
    BOOST_TEST(day.rs_mj_m2_d == hours);
    BOOST_TEST(day.rain_mm == hours / 2.0);
    BOOST_TEST(result.incomplete.empty());
  }
}

BOOST_AUTO_TEST_CASE(a_patchy_day_is_missing_but_its_rain_is_summed) {
  auto hours = rising(sys_days(2024y / 7 / 6), 24);
  hours.erase(hours.begin() + 3, hours.begin() + 8);
  const auto result = noonleaf::days_from_hours(hours, "Etc/UTC");
  BOOST_REQUIRE_EQUAL(result.days.size(), 1U);
  BOOST_TEST(noonleaf::is_missing(result.days[0].t_max_c));
  BOOST_TEST(noonleaf::is_missing(result.days[0].rs_mj_m2_d));
  BOOST_TEST(result.days[0].rain_mm == 9.5);
  BOOST_REQUIRE_EQUAL(result.incomplete.size(), 1U);
  BOOST_TEST(result.incomplete[0] ==
             "2024-07-06: tmean_c has 19 of 24 hours, taken as missing, rs_mj_m2 has 19 of 24 hours, taken "
             "as missing, "
             "rain_mm has 19 of 24 hours, summed");
}

BOOST_AUTO_TEST_CASE(a_daily_door_takes_hours) {
  std::string bytes = "time_begin,t_c,rs_w_m2\n";
  for (int hour = 0; hour < 48; ++hour)
    bytes += "2024-07-0" + std::to_string(6 + hour / 24) + "T" + (hour % 24 < 10 ? "0" : "") +
             std::to_string(hour % 24) + ":00," + std::to_string(hour % 24) + ",100\n";
  const TemporaryFile file(bytes);
  const WeatherFile result = noonleaf::read_daily_weather(file.path(), "h.csv", in_chicago);
  BOOST_REQUIRE_EQUAL(result.days.size(), 2U);
  BOOST_CHECK_CLOSE(result.days[1].rs_mj_m2_d, 8.64, 1e-9);
  BOOST_TEST(result.days[1].t_max_c == 23.0);
  BOOST_TEST(result.hours.size() == 48U);
  BOOST_TEST(result.format == "weather CSV, hourly or shorter");
}

BOOST_AUTO_TEST_CASE(steps_that_are_no_period_are_refused) {
  BOOST_TEST(holds(refusal("time_begin,t_c\n2024-07-06T00:00,1\n2024-07-06T00:07,1\n2024-07-06T00:14,1\n"),
                   "7 minutes apart"));
  BOOST_TEST(
      holds(refusal("time_begin,t_c\n2024-07-06T00:00,1\n2024-07-07T00:00,1\n"), "name the column date"));
  BOOST_TEST(holds(refusal("date,t_c\n2024-07-06,1\n"), "the file holds days"));
}

BOOST_AUTO_TEST_CASE(a_real_typical_year) {
  const auto path = open_weather_file("typical_year_hourly_45n_8e.csv");
  if (!path) return;
  const WeatherFile year = noonleaf::read_daily_weather(
      *path, "open",
      {.zone = "Etc/UTC",
       .site = {.latitude_deg = 45.0, .longitude_deg = 8.0, .elevation_m = 250.0},
       .stamps = StampMark::period_begin});
  BOOST_TEST(year.hours.size() == 8760U);
  BOOST_TEST(year.days.size() == 365U);
  BOOST_TEST(year.set_aside.empty());
  BOOST_TEST_MESSAGE("typical year: " << noonleaf::describe(noonleaf::problems_of(year.doubts)));
  BOOST_TEST_MESSAGE("set aside: " << noonleaf::describe(noonleaf::problems_of(year.set_aside)));
}

BOOST_AUTO_TEST_SUITE_END()
