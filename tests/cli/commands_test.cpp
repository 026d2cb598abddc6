#include <algorithm>
#include <regex>
#include <sstream>

#include <boost/test/unit_test.hpp>
#include <nlohmann/json.hpp>

#include "command_run.hpp"
#include "number_in.hpp"

namespace {

/// A workplace with the demo garden in `demo`.
struct DemoPlace : Workplace {
  DemoPlace() { BOOST_REQUIRE(run_noonleaf(*this, "new demo --demo").exit_code == 0); }
};

std::size_t widest_line(const std::string& text) {
  std::size_t widest = 0, width = 0;
  for (const char byte : text) {
    if (byte == '\n') {
      widest = std::max(widest, width);
      width = 0;
    } else if ((static_cast<unsigned char>(byte) & 0xC0U) != 0x80U) {
      ++width;
    }
  }
  return std::max(widest, width);
}

}  // namespace

BOOST_AUTO_TEST_SUITE(commands)

BOOST_AUTO_TEST_CASE(new_makes_the_whole_demo_and_says_what_next) {
  const Workplace place;
  const CommandRun made = run_noonleaf(place, "new demo --demo");
  BOOST_TEST(made.exit_code == 0);
  BOOST_TEST(made.err == "");
  check_golden("new_demo.txt", made.out);
  for (const char* name : {"demo/garden.toml", "demo/journal.csv", "demo/weather/station_2025.csv"}) {
    const std::string source = std::string(NOONLEAF_SOURCE_DIR "/weather_samples/") + name;
    std::ifstream stream(source, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    BOOST_TEST(place.read(name) == text.str(), name);
  }
}

BOOST_FIXTURE_TEST_CASE(today_on_the_demo_garden, DemoPlace) {
  const CommandRun today = run_noonleaf(*this, "today demo");
  BOOST_TEST(today.exit_code == 0);
  BOOST_TEST(today.err == "");
  check_golden("today_demo.txt", today.out);
  BOOST_TEST(widest_line(today.out) <= 80U);
}

BOOST_FIXTURE_TEST_CASE(today_in_spanish, DemoPlace) {
  const CommandRun today = run_noonleaf(*this, "today demo --lang es");
  BOOST_TEST(today.exit_code == 0, today.err);
  BOOST_TEST(today.err == "");
  check_golden("today_demo_es.txt", today.out);
  BOOST_TEST(widest_line(today.out) <= 80U);
  check_golden("today_demo_0900_es.txt", run_noonleaf(*this, "today demo --at 09:00 --lang es").out);
  check_golden("today_demo_saturday_es.txt",
               run_noonleaf(*this, "today demo --date 2025-07-19 --lang es").out);
  BOOST_TEST(run_noonleaf(*this, "today demo --lang en").out == run_noonleaf(*this, "today demo").out);
}

BOOST_FIXTURE_TEST_CASE(codes_and_numbers_of_today_are_the_same_in_both_languages, DemoPlace) {
  auto english = nlohmann::json::parse(run_noonleaf(*this, "today demo --format json").out);
  auto spanish = nlohmann::json::parse(run_noonleaf(*this, "today demo --format json --lang es").out);
  BOOST_TEST(spanish["language"] == "es");
  for (auto* answer : {&english, &spanish}) {
    for (const char* sentences : {"language", "estimated", "cautions"}) answer->erase(sentences);
    for (auto& bed : (*answer)["beds"]) {
      bed.erase("why");
      if (bed["open_question"].is_object()) bed["open_question"].erase("sentence");
    }
    for (auto& alert : (*answer)["alerts"])
      for (const char* words : {"sentence", "evidence", "action"}) alert.erase(words);
    for (const char* words : {"assumed", "measure_next"}) (*answer)["likelihood"].erase(words);
  }
  BOOST_TEST(english == spanish);
}

BOOST_FIXTURE_TEST_CASE(today_as_json, DemoPlace) {
  const CommandRun today = run_noonleaf(*this, "today demo --format json");
  BOOST_TEST(today.exit_code == 0);
  check_golden("today_demo.json", today.out);
}

BOOST_FIXTURE_TEST_CASE(alerts_end_with_3_only_when_asked, DemoPlace) {
  BOOST_TEST(run_noonleaf(*this, "today demo --alert-exit").exit_code == 3);
  BOOST_TEST(run_noonleaf(*this, "today demo").exit_code == 0);
}

BOOST_FIXTURE_TEST_CASE(today_later_in_the_day_and_on_another_day, DemoPlace) {
  check_golden("today_demo_0900.txt", run_noonleaf(*this, "today demo --at 09:00").out);
  check_golden("today_demo_saturday.txt", run_noonleaf(*this, "today demo --date 2025-07-19").out);
}

BOOST_FIXTURE_TEST_CASE(check_on_the_demo_garden, DemoPlace) {
  const CommandRun checked = run_noonleaf(*this, "check demo");
  BOOST_TEST(checked.exit_code == 0);
  check_golden("check_demo.txt", checked.out);
  BOOST_TEST(run_noonleaf(*this, "check demo --format json").exit_code == 0);
  replace("demo/weather/station_2025.csv", "2025-07-15,", "2025-07-14,");
  const CommandRun twice = run_noonleaf(*this, "check demo");
  BOOST_TEST(twice.exit_code == 0, twice.err);
  BOOST_TEST(twice.out.find("[duplicate]") != std::string::npos, twice.out);
  BOOST_TEST(twice.out.find("fix: keep the row that is right") != std::string::npos, twice.out);
  BOOST_TEST(run_noonleaf(*this, "check demo --strict").exit_code == 1);
}

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

BOOST_FIXTURE_TEST_CASE(real_open_weather_through_a_garden, DemoPlace) {
  std::filesystem::remove_all(folder() / "demo/weather");
  std::filesystem::create_directories(folder() / "demo/weather");
  std::filesystem::copy_file(NOONLEAF_SOURCE_DIR "/weather_samples/open/seattle_newyork_daily_2012_2015.csv",
                             folder() / "demo/weather/seattle.csv");
  replace("demo/garden.toml", "[weather]\n", "[weather]\nwhere = { station = \"Seattle\" }\n");
  std::string garden = read("demo/garden.toml");
  for (std::size_t place = garden.find("= 2025-"); place != std::string::npos;
       place = garden.find("= 2025-")) {
    garden.replace(place, 7, "= 2015-");
  }
  garden.replace(garden.find("= 2023-"), 7, "= 2013-");
  write("demo/garden.toml", garden);
  write("demo/journal.csv", "id,date,event\n");
  const CommandRun today = run_noonleaf(*this, "today demo");
  BOOST_TEST(today.exit_code == 0, today.err);
  check_golden("today_seattle_2015.txt", today.out);
  check_golden("today_seattle_2015_es.txt", run_noonleaf(*this, "today demo --lang es").out);
}

BOOST_FIXTURE_TEST_CASE(us_and_metric_units_give_the_same_minutes, DemoPlace) {
  const std::string american = run_noonleaf(*this, "today demo --format json").out;
  const std::vector<std::pair<std::string, std::string>> metric{
      {"elevation_ft = 950", "elevation_m = 289.56"},
      {"wind_height_ft = 6.6", "wind_height_m = 2.01168"},
      {"units = \"us\"", "units = \"metric\""},
      {"flow_gal_min = 6.0", "flow_l_min = 22.712470704"},
      {"flow_gal_min = 4.5", "flow_l_min = 17.034353028"},
      {"cans_depth_in = [0.22, 0.25, 0.19, 0.28, 0.24, 0.21, 0.17, 0.26, 0.23, 0.20, 0.25, 0.24]",
       "cans_depth_mm = [5.588, 6.35, 4.826, 7.112, 6.096, 5.334, 4.318, 6.604, 5.842, 5.08, 6.35, 6.096]"},
      {"flow_gal_min = 2.6", "flow_l_min = 9.8420706384"},
      {"wetted_area_ft2 = 150", "wetted_area_m2 = 13.935456"},
      {"area_ft2 = 96", "area_m2 = 8.91869184"},
      {"area_ft2 = 96", "area_m2 = 8.91869184"},
      {"area_ft2 = 64", "area_m2 = 5.94579456"},
      {"area_ft2 = 64", "area_m2 = 5.94579456"},
      {"area_ft2 = 48", "area_m2 = 4.45934592"},
      {"rooting_depth_in = 18", "rooting_depth_m = 0.4572"}};
  for (const auto& [us, si] : metric) replace("demo/garden.toml", us, si);
  const std::string european = run_noonleaf(*this, "today demo --format json").out;
  const auto minutes = [](const std::string& json) {
    std::string lines;
    std::istringstream stream(json);
    for (std::string line; std::getline(stream, line);) {
      if (line.find("\"minutes\":") != std::string::npos || line.find("\"begin\":") != std::string::npos)
        lines += line + "\n";
    }
    return lines;
  };
  BOOST_TEST(!minutes(american).empty());
  BOOST_TEST(minutes(american) == minutes(european));
}

BOOST_AUTO_TEST_CASE(help_and_version) {
  const Workplace place;
  const CommandRun help = run_noonleaf(place, "--help");
  BOOST_TEST(help.exit_code == 0);
  check_golden("help.txt", help.out);
  std::istringstream lines(help.out.substr(help.out.find("Commands:\n") + 10));
  std::size_t commands = 0;
  for (std::string line; std::getline(lines, line) && !line.empty(); ++commands) {
    const std::string command = line.substr(2, line.find(' ', 2) - 2);
    const CommandRun each = run_noonleaf(place, command + " --help");
    BOOST_TEST(each.exit_code == 0);
    BOOST_TEST(each.out.find("Example: noonleaf " + command) != std::string::npos, command);
  }
  BOOST_TEST(commands > 10U);
  // The version, then the build: its type, the compiler, the machine, the kind of libraries.
  const std::regex version(
      R"(noonleaf \d+\.\d+\.\d+ \(\w+, \w+ [\d.]+, \w+ \w+, (static|shared) libraries\)\n)");
  BOOST_TEST(std::regex_match(run_noonleaf(place, "--version").out, version));
}

BOOST_FIXTURE_TEST_CASE(a_closed_pipe_ends_quietly, DemoPlace) {
  const std::string line = "cd '" + folder().string() +
                           "' && ('" NOONLEAF_COMMAND
                           "' et0 demo/weather/station_2025.csv "
                           "--latitude 46 --elevation 290; echo $? >.code) 2>.err | head -n 1 >.out";
  BOOST_TEST(std::system(line.c_str()) == 0);
  BOOST_TEST(read(".out") == "date,et0_mm,estimated\n");
  BOOST_TEST(read(".code") == "0\n");
}

BOOST_FIXTURE_TEST_CASE(a_full_disk_is_said, DemoPlace) {
  if (!std::filesystem::exists("/dev/full")) {
    BOOST_TEST_MESSAGE("no /dev/full on this machine: not tested");
    return;
  }
  const std::string line =
      "cd '" + folder().string() + "' && '" NOONLEAF_COMMAND "' today demo >/dev/full 2>.err";
  BOOST_TEST(WEXITSTATUS(std::system(line.c_str())) == 1);
  BOOST_TEST(read(".err").find("the answer could not be written") == 0U);
}

BOOST_FIXTURE_TEST_CASE(the_time_away_in_both_languages, Workplace) {
  BOOST_REQUIRE(run_noonleaf(*this, "new demo --demo").exit_code == 0);
  for (const std::string language : {"en", "es"}) {
    const std::string question = "away demo --from 2025-07-17 --to 2025-07-31 --lang " + language;
    check_golden("away_demo_" + language + ".txt", run_noonleaf(*this, question).out);
    check_golden("away_sheet_" + language + ".txt", run_noonleaf(*this, question + " --format sheet").out);
  }
}

BOOST_FIXTURE_TEST_CASE(a_round_of_gardens_of_one_name_shows_the_folders, Workplace) {
  BOOST_REQUIRE(run_noonleaf(*this, "new demo --demo").exit_code == 0);
  BOOST_REQUIRE(run_noonleaf(*this, "new other --demo").exit_code == 0);
  const std::string answer = run_noonleaf(*this, "round demo other").out;
  BOOST_TEST(answer.find(" demo ") != std::string::npos, answer);
  BOOST_TEST(answer.find(" other ") != std::string::npos, answer);
  check_golden("round_two.txt", answer);
}

BOOST_FIXTURE_TEST_CASE(a_frost_is_told_and_no_heat, Workplace) {
  BOOST_REQUIRE(run_noonleaf(*this, "new demo --demo").exit_code == 0);
  write("demo/weather/frost.csv",
        "date,tmin_f,tmax_f,rhmin_pct,rhmax_pct,wind_mph,rs_mj_m2,rain_in\n2025-07-17,28,96,20,80,3,25,0\n");
  const std::string answer = run_noonleaf(*this, "today demo --date 2025-07-17").out;
  BOOST_TEST(answer.find("Tomato in bed a: frost, a low of 28 °F") != std::string::npos, answer);
  BOOST_TEST(answer.find("Heat, not thirst") == std::string::npos, answer);
  BOOST_TEST(answer.find("hot enough for") == std::string::npos, answer);
}

BOOST_AUTO_TEST_SUITE_END()
