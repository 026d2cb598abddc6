// What is asked of `noonleaf today`: the demo garden, its journal written on, other weather, other units.
#include <cmath>
#include <filesystem>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include <boost/test/unit_test.hpp>
#include <nlohmann/json.hpp>

#include "command_run.hpp"
#include "number_in.hpp"
#include "text_checks.hpp"

BOOST_AUTO_TEST_SUITE(today_command)

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

BOOST_FIXTURE_TEST_CASE(a_frost_is_told_and_no_heat, DemoPlace) {
  write("demo/weather/frost.csv",
        "date,tmin_f,tmax_f,rhmin_pct,rhmax_pct,wind_mph,rs_mj_m2,rain_in\n2025-07-17,28,96,20,80,3,25,0\n");
  const std::string answer = run_noonleaf(*this, "today demo --date 2025-07-17").out;
  BOOST_TEST(answer.find("Tomato in bed a: frost, a low of 28 °F") != std::string::npos, answer);
  BOOST_TEST(answer.find("Heat, not thirst") == std::string::npos, answer);
  BOOST_TEST(answer.find("hot enough for") == std::string::npos, answer);
  // The taps stay closed: nobody is sent to water all the same.
  BOOST_TEST(answer.find("by hand") == std::string::npos, answer);
  BOOST_TEST(answer.find("find a person") == std::string::npos, answer);
  const std::string before = run_noonleaf(*this, "today demo --date 2025-07-16").out;
  BOOST_TEST(before.find("Tomato in bed a: frost in the night to come, a low of 28 °F") != std::string::npos,
             before);
  BOOST_TEST(before.find("cover it before the evening") != std::string::npos, before);
}

// No line says the opposite of the one above it.
BOOST_FIXTURE_TEST_CASE(a_bed_that_may_be_short_is_not_said_to_last_either_way, DemoPlace) {
  BOOST_TEST(run_noonleaf(*this, "log demo water a --minutes 50 --at 06:00 --date 2025-07-16").exit_code ==
             0);
  const std::string watered = run_noonleaf(*this, "today demo --date 2025-07-16").out;
  const std::string bed = watered.substr(watered.find("LEAVE ALONE"));
  BOOST_TEST(bed.find("short before the next chance to water") != std::string::npos, bed);
  BOOST_TEST(bed.find("If the soil is dry it will be") != std::string::npos, bed);
}

// "ran 10 of the planned 25 minutes": today asks for the rest, in one line.
BOOST_FIXTURE_TEST_CASE(a_run_that_was_stopped_is_asked_for_to_its_end, DemoPlace) {
  BOOST_TEST(run_noonleaf(*this, "log demo water c --minutes 10 --at 06:00 --date 2025-07-16").exit_code ==
             0);
  const std::string today = run_noonleaf(*this, "today demo").out;
  BOOST_TEST(today.find("Carrot seedbed (bed c), 15 minutes") != std::string::npos, today);
  BOOST_TEST(today.find("10 of the planned 25 minutes ran today; this is the rest.") != std::string::npos,
             today);
}

BOOST_FIXTURE_TEST_CASE(a_soil_check_is_shown_before_after_and_why, DemoPlace) {
  BOOST_TEST(run_noonleaf(*this, "log demo feel a --feel moist --date 2025-07-15 --at 08:00").exit_code == 0);
  const std::string today = run_noonleaf(*this, "today demo").out;
  BOOST_TEST(today.find("Soil check on Tuesday 15 July, by feel: moist. The account had Tomato down") !=
                 std::string::npos,
             today);
  const std::string json = run_noonleaf(*this, "today demo --format json").out;
  const std::size_t place = json.find("\"soil_check\": {");
  BOOST_REQUIRE(place != std::string::npos);
  for (const char* key : {"\"before\"", "\"found\"", "\"after\""})
    BOOST_TEST(json.find(key, place) < place + 500, key);
}

BOOST_FIXTURE_TEST_CASE(a_multiplier_at_its_cap_is_said, DemoPlace) {
  BOOST_TEST(run_noonleaf(*this, "today demo").out.find("waters so unevenly") == std::string::npos);
  replace("demo/garden.toml", "uniformity_pct = 60", "uniformity_pct = 35");
  const std::string today = run_noonleaf(*this, "today demo").out;
  BOOST_TEST(today.find("(DU 0.35)") != std::string::npos, today);
  BOOST_TEST(today.find("lengthened 1.5 times") != std::string::npos, today);
}

// 45 gallons or so on 20 ft2 of pots: as many cans of two gallons, no minutes to mind.
BOOST_FIXTURE_TEST_CASE(a_bed_watered_by_hand_gets_its_cans_counted, DemoPlace) {
  write("demo/garden.toml",
        read("demo/garden.toml") +
            "\n[[sprinkler]]\nid = \"can\"\nname = \"watering can\"\nkind = \"hand\"\ntap = "
            "\"shed\"\ncan_gal = 2\n"
            "[[bed]]\nid = \"p\"\nname = \"Pots\"\narea_ft2 = 20\nsprinkler = \"can\"\nsoil = "
            "\"sandy_loam\"\nframed = true\n"
            "rooting_depth_in = 12\n[[bed.planting]]\ncrop = \"tomato\"\ntransplanted = 2025-05-17\n");
  BOOST_TEST(run_noonleaf(*this, "log demo feel p --feel dry --date 2025-07-15 --at 08:00").exit_code == 0);
  const std::string today = run_noonleaf(*this, "today demo").out;
  const std::size_t place = today.find("By hand: ");
  BOOST_REQUIRE_MESSAGE(place != std::string::npos, today);
  const std::string line = today.substr(place, 60);
  const double gallons = number_in(line.substr(9)), cans = number_in(line.substr(line.find("gal, ") + 5));
  BOOST_TEST(line.find("cans of 2 gal") != std::string::npos, line);
  BOOST_TEST(std::abs(cans - gallons / 2) <= 0.75, line);  // whole cans; gallons are printed without decimals
  BOOST_TEST(today.find("watering can: its rate is a guess") == std::string::npos);
  BOOST_TEST(run_noonleaf(*this, "check demo").exit_code == 0);
}

// 12 of 13 cans: told in cans, with the reason of the bed as it is now, and no other run waits for them.
BOOST_FIXTURE_TEST_CASE(cans_that_were_carried_move_no_other_run, DemoPlace) {
  const std::string garden = read("demo/garden.toml");
  const std::size_t chard = garden.find("sprinkler = \"oscillating\"", garden.find("id = \"e\""));
  write("demo/garden.toml", std::string(garden).replace(chard, 25, "sprinkler = \"can\"") +
                                "\n[[sprinkler]]\nid = \"can\"\nname = \"watering can\"\nkind = \"hand\"\n"
                                "tap = \"shed\"\ncan_gal = 2\n");
  const std::string before = run_noonleaf(*this, "today demo").out;
  BOOST_TEST(before.find("Chard, newly set (bed e), 25 gal (13 cans)") != std::string::npos, before);
  BOOST_TEST(before.find("minutes for bed e") == std::string::npos, before);
  BOOST_TEST(run_noonleaf(*this, "log demo water e --cans 12 --date 2025-07-16 --at 06:55").exit_code == 0);
  const std::string after = run_noonleaf(*this, "today demo").out;
  for (const char* words :
       {"06:00 to 06:25  Carrot seedbed", "06:30 to 06:50  Strawberries (bed d), 20 minutes",
        "24 gal (12 cans) of the planned 25 gal (13 cans) went on today; this is the\n    rest.",
        "down 0.01 in (0.36 in by tonight) and can spare 0.26 in;\n    without water it passes that today"})
    BOOST_TEST(after.find(words) != std::string::npos, words + after);
  const std::string sheet = run_noonleaf(*this, "week demo").out;
  BOOST_TEST(sheet.find(": 5 cans of 2 gallons") != std::string::npos, sheet);
}

// `round` asked for a bed that `today` left alone.
BOOST_FIXTURE_TEST_CASE(a_round_asks_for_no_more_than_today, DemoPlace) {
  for (const char* run : {"a --minutes 50 --at 06:00", "d --minutes 20 --at 06:30",
                          "e --minutes 40 --at 06:55", "c --minutes 25 --at 06:00"})
    BOOST_TEST(run_noonleaf(*this, std::string("log demo water ") + run + " --date 2025-07-16").exit_code ==
               0);
  BOOST_TEST(run_noonleaf(*this, "today demo").out.find("Nothing today.") != std::string::npos);
  const std::string round = run_noonleaf(*this, "round demo").out;
  BOOST_TEST(round.find("1 garden: 0 need a person, 0 water today") == 0U, round);
  BOOST_TEST(round.find("has to be watered") == std::string::npos, round);
}

// Tomatoes of Monday 14 July: 60 minutes were planned, and nobody wrote down whether they ran.
BOOST_FIXTURE_TEST_CASE(a_run_that_nobody_wrote_down_is_asked_about_until_somebody_does, DemoPlace) {
  const std::string open = run_noonleaf(*this, "today demo").out;
  BOOST_TEST(open.find("Not in the journal, done or not: the run of Monday 14 July (60 minutes).") !=
                 std::string::npos,
             open);
  for (const char* day : {"2025-07-14", "2025-07-15"}) {
    const std::string words = std::string("log demo water a --minutes 0 --note thunder --date ") + day;
    BOOST_TEST(run_noonleaf(*this, words).exit_code == 0);
  }
  BOOST_TEST(run_noonleaf(*this, "today demo").out.find("done or not") == std::string::npos);
}

BOOST_AUTO_TEST_SUITE_END()
