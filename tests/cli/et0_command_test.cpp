// `noonleaf et0` on bare weather files.
#include <algorithm>
#include <cmath>
#include <sstream>
#include <string>

#include <boost/test/unit_test.hpp>

#include "command_run.hpp"
#include "number_in.hpp"

BOOST_AUTO_TEST_SUITE(et0_command)

BOOST_AUTO_TEST_CASE(et0_from_a_bare_file) {
  const Workplace place;
  // FAO-56 example 18 (Uccle, 6 July): 3.88 mm/d; the second day lacks sun, humidity and wind.
  place.write("uccle.csv",
              "date,tmin_c,tmax_c,rhmin_pct,rhmax_pct,wind_m_s,sunshine_h\n"
              "2015-07-06,12.3,21.5,63,84,2.78,9.25\n"
              "2015-07-07,12.3,21.5,,,,\n"
              "2015-07-08,,21.5,,,,\n");
  const CommandRun et0 =
      run_noonleaf(place, "et0 uccle.csv --latitude 50.8 --elevation 100 --wind-height 10");
  BOOST_TEST(et0.exit_code == 0);
  check_golden("et0_uccle.csv", et0.out);
  BOOST_TEST(et0.out.find("2015-07-06,3.88,") != std::string::npos);
  check_golden(
      "et0_uccle_detail.csv",
      run_noonleaf(place,
                   "et0 uccle.csv --latitude 50.8 --elevation 100 --wind-height 10 --detail --precision 4")
          .out);
  check_golden(
      "et0_uccle.json",
      run_noonleaf(place, "et0 uccle.csv --latitude 50.8 --elevation 100 --wind-height 10 --format json")
          .out);
  const CommandRun tall = run_noonleaf(place,
                                       "et0 uccle.csv --latitude 50.8 --longitude -4.35 --elevation 100 "
                                       "--wind-height 10 --equation asce --surface tall");
  BOOST_TEST(tall.exit_code == 0);
  check_golden("et0_uccle_tall.csv", tall.out);
}

// FAO-56 example 19 (N'Diaye, Senegal, 1 October), hour 14-15: 0.63 mm. From memory. Its night hour has the
// sun of the day before, which this file does not: tests/reference holds that one.
BOOST_AUTO_TEST_CASE(et0_from_hours) {
  const Workplace place;
  std::string hours = "time_begin,t_c,rh_pct,wind_m_s,rs_mj_m2\n";
  for (int hour = 0; hour < 24; ++hour) {
    const std::string two = (hour < 10 ? "0" : "") + std::to_string(hour);
    hours += "2015-10-01T" + two + ":00-01:00," + (hour == 14 ? "38,52,3.3,2.45" : "28,90,1.9,0") + "\n";
  }
  place.write("hours.csv", hours);
  const std::string site = " --latitude 16.2167 --longitude -16.25 --elevation 8 --zone Etc/GMT+1";
  const CommandRun rows = run_noonleaf(place, "et0 hours.csv" + site + " --precision 6");
  BOOST_TEST(rows.exit_code == 0, rows.err);
  std::istringstream lines(rows.out);
  double sum = 0;
  std::string line;
  std::getline(lines, line);
  BOOST_TEST(line == "time,et0_mm,estimated");
  for (int hour = 0; std::getline(lines, line); ++hour) {
    const double et0_mm = number_in(line.substr(line.find(',') + 1));
    sum += et0_mm;
    if (hour == 14) BOOST_TEST(std::abs(et0_mm - 0.63) <= 0.005, line);
  }
  const CommandRun day = run_noonleaf(place, "et0 hours.csv" + site + " --precision 6 --daily-sum");
  BOOST_TEST(day.out.find("2015-10-01,") != std::string::npos, day.out);
  BOOST_TEST(std::abs(number_in(day.out.substr(day.out.find("2015-10-01,") + 11)) - sum) < 1e-4);
  // A day that begins an hour late is not a short day of the clocks: no sum is given for it.
  std::string late = hours;
  late.erase(late.find("2015-10-01T00"), late.find("2015-10-01T01") - late.find("2015-10-01T00"));
  place.write("late.csv", late);
  const CommandRun part = run_noonleaf(place, "et0 late.csv" + site + " --daily-sum");
  BOOST_TEST(part.out.find("2015-10-01,,only 23.0 hours of data\n") != std::string::npos, part.out);
  BOOST_TEST(run_noonleaf(place, "et0 hours.csv --latitude 16 --elevation 8 --zone Etc/GMT+1").exit_code ==
             1);
}

// FAO-56 example 18 (Uccle, 6 July), with a column withheld: the row says what was put in its place.
BOOST_AUTO_TEST_CASE(et0_with_a_column_left_out) {
  const Workplace place;
  place.write(
      "june.csv",
      "date,tmin_c,tmax_c,rhmin_pct,rhmax_pct,wind_m_s,rs_mj_m2\n2015-07-06,12.3,21.5,63,84,2.78,22.07\n");
  const std::string command = "et0 june.csv --latitude 50.8 --elevation 100 --wind-height 10";
  const CommandRun whole = run_noonleaf(place, command);
  BOOST_TEST(whole.out.find("2015-07-06,3.88,\n") != std::string::npos, whole.out);
  const CommandRun without = run_noonleaf(place, command + " --ignore rs_mj_m2");
  BOOST_TEST(without.out.find("rs=temperature_range") != std::string::npos, without.out);
  const CommandRun slip = run_noonleaf(place, command + " --ignore rs_mj_m3");
  BOOST_TEST(slip.exit_code == 1);
  BOOST_TEST(slip.err.find("did you mean \"rs_mj_m2\"?") != std::string::npos, slip.err);
}

BOOST_AUTO_TEST_CASE(real_open_weather_through_et0) {
  const Workplace place;
  const std::string open = NOONLEAF_SOURCE_DIR "/weather_samples/open/";
  const CommandRun seattle =
      run_noonleaf(place, "et0 " + open +
                              "seattle_newyork_daily_2012_2015.csv --where station=Seattle "
                              "--latitude 47.45 --elevation 130 --wind-height 10");
  BOOST_TEST(seattle.exit_code == 0);
  BOOST_TEST(std::count(seattle.out.begin(), seattle.out.end(), '\n') == 1 + 1461);
  const CommandRun chicago = run_noonleaf(
      place, "et0 " + open +
                 "chicago_daily_2001_2016.csv --latitude 41.79 --elevation 190 --wind-height 10 "
                 "--column tmin_f=temp_min_f --column tmax_f=temp_max_f --column tdew_f=dew_median_f "
                 "--column wind_mph=wind_median_mph");
  BOOST_TEST(chicago.exit_code == 0);
  BOOST_TEST(std::count(chicago.out.begin(), chicago.out.end(), '\n') == 1 + 5698);
}

BOOST_AUTO_TEST_SUITE_END()
