// Heat for people outside, through the command. Heat index: chart of the US National Weather Service, 96 °F
// and 65 % is 121 °F (read in a stored copy of the agency page).
#include <cmath>
#include <string>

#include <boost/test/unit_test.hpp>
#include <nlohmann/json.hpp>

#include "cli/command_run.hpp"

BOOST_AUTO_TEST_SUITE(outdoors)

BOOST_AUTO_TEST_CASE(heat_index_of_the_chart) {
  const Workplace place;
  const CommandRun run = run_noonleaf(place, "outdoors --t-f 96 --rh 65 --format json");
  BOOST_REQUIRE_MESSAGE(run.exit_code == 0, run.err);
  const auto json = nlohmann::json::parse(run.out);
  BOOST_TEST(std::abs(json.at("heat_index_f").get<double>() - 121) <= 1.0, run.out);
  BOOST_TEST(std::abs(json.at("heat_index_c").get<double>() - (121 - 32) / 1.8) <= 1 / 1.8, run.out);
  BOOST_TEST(json.at("heat_category") == "Danger");
  BOOST_TEST(json.at("wbgt_c").is_null());
}

BOOST_AUTO_TEST_CASE(globe_temperature_with_wind_and_sun) {
  const Workplace place;
  const auto wbgt_c = [&](const std::string& options) {
    const CommandRun run = run_noonleaf(place, "outdoors --t-c 35 --rh 50 --format json " + options);
    BOOST_REQUIRE_MESSAGE(run.exit_code == 0, run.err);
    return nlohmann::json::parse(run.out).at("wbgt_c").get<double>();
  };
  const double sunny = wbgt_c("--wind-m-s 1.5 --sun-w-m2 850");
  BOOST_TEST(sunny > wbgt_c("--wind-m-s 1.5 --sun-w-m2 100"));
  BOOST_TEST(sunny > wbgt_c("--wind-m-s 6 --sun-w-m2 850"));
  // Between what an aspirated, shaded wet bulb shows, 26.2 °C by Stull (2011), and the mean of the three
  // temperatures with their weights where the globe were 30 °C hotter than the air and the wet bulb as hot as
  // the air: 0.7 x 35 + 0.2 x 65 + 0.1 x 35 = 41 °C. The value itself is tested in tests/heat.
  BOOST_TEST(sunny > 26.2);
  BOOST_TEST(sunny < 41.0);
}

BOOST_AUTO_TEST_CASE(says_what_it_assumes_and_who_decides) {
  const Workplace place;
  check_golden("outdoors.txt",
               run_noonleaf(place, "outdoors --t-f 96 --rh 65 --wind-m-s 1.5 --sun-w-m2 850").out);
  check_golden("outdoors_mild.txt", run_noonleaf(place, "outdoors --t-c 20 --rh 50").out);
  check_golden("outdoors_es.txt",
               run_noonleaf(place, "outdoors --t-f 96 --rh 65 --wind-m-s 1.5 --sun-w-m2 850 --lang es").out);
  check_golden("outdoors_mild_es.txt", run_noonleaf(place, "outdoors --t-c 20 --rh 50 --lang es").out);
  check_golden("outdoors_beyond.txt", run_noonleaf(place, "outdoors --t-f 118 --rh 60").out);
  check_golden("outdoors_beyond_es.txt", run_noonleaf(place, "outdoors --t-f 118 --rh 60 --lang es").out);
  BOOST_TEST(
      run_noonleaf(place, "outdoors --t-f 118 --rh 60 --format json").out.find("beyond the published") !=
      std::string::npos);
  BOOST_TEST(run_noonleaf(place, "outdoors --t-f 96").exit_code == 2);
  BOOST_TEST(run_noonleaf(place, "outdoors --rh 60").exit_code == 2);
  BOOST_TEST(run_noonleaf(place, "outdoors --t-c 35 --t-f 96 --rh 60").exit_code == 2);
  BOOST_TEST(run_noonleaf(place, "outdoors --t-c 35 --rh 60 --wind-m-s 2").exit_code == 2);
}

BOOST_AUTO_TEST_SUITE_END()
