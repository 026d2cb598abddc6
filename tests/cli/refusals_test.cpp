#include <boost/test/unit_test.hpp>

#include "command_run.hpp"

// Whole error texts, caret included: a person must be able to act on each of them.

namespace {

void refuses(const Workplace& place, const std::string& words, const std::string& golden) {
  const CommandRun refused = run_noonleaf(place, words);
  BOOST_TEST(refused.exit_code == 1, golden);
  BOOST_TEST(refused.out == "", golden);
  check_golden("refused/" + golden + ".txt", refused.err);
}

}  // namespace

BOOST_AUTO_TEST_SUITE(refusals)

BOOST_FIXTURE_TEST_CASE(weather_with_a_wrong_header, DemoPlace) {
  replace("demo/weather/station_2025.csv", "tmin_f", "tmn_f");
  refuses(*this, "today demo", "wrong_header");
}

BOOST_FIXTURE_TEST_CASE(text_in_a_number, DemoPlace) {
  write("demo/weather/july.csv", "date,tmin_c,tmax_c\n2025-07-01,12.3,2O.5\n2025-07-02,x,21\n");
  refuses(*this, "today demo", "text_in_a_number");
}

BOOST_FIXTURE_TEST_CASE(a_date_that_does_not_exist, DemoPlace) {
  write("demo/weather/july.csv", "date,tmin_c,tmax_c\n2025-02-30,12.3,20.5\n");
  refuses(*this, "today demo", "no_such_date");
}

BOOST_FIXTURE_TEST_CASE(a_bed_without_a_sprinkler, DemoPlace) {
  replace("demo/garden.toml", "sprinkler = \"oscillating\"\n", "");
  refuses(*this, "today demo", "bed_without_sprinkler");
}

BOOST_FIXTURE_TEST_CASE(an_unknown_crop, DemoPlace) {
  replace("demo/garden.toml", "crop = \"tomato\"", "crop = \"tomatoes\"");
  refuses(*this, "today demo", "unknown_crop");
}

BOOST_FIXTURE_TEST_CASE(an_area_of_nothing, DemoPlace) {
  replace("demo/garden.toml", "area_ft2 = 96", "area_ft2 = 0");
  refuses(*this, "today demo", "area_of_nothing");
}

BOOST_FIXTURE_TEST_CASE(a_missing_file, DemoPlace) {
  std::filesystem::remove(folder() / "demo/garden.toml");
  refuses(*this, "today demo", "missing_file");
  refuses(*this, "today nowhere", "missing_folder");
  refuses(*this, "et0 nowhere.csv --latitude 46 --elevation 290", "missing_weather");
}

BOOST_FIXTURE_TEST_CASE(an_empty_file, DemoPlace) {
  write("demo/weather/station_2025.csv", "");
  write("demo/garden.toml", "");
  refuses(*this, "today demo", "empty_files");
}

BOOST_FIXTURE_TEST_CASE(several_files_at_once, DemoPlace) {
  replace("demo/garden.toml", "area_ft2 = 96", "area_ft2 = -1");
  replace("demo/journal.csv", ",water,d,,", ",water,d,,x");
  replace("demo/weather/station_2025.csv", "tmax_f", "tmax_f,tmax_f");
  refuses(*this, "check demo", "several_files");
}

BOOST_FIXTURE_TEST_CASE(a_day_without_weather, DemoPlace) {
  refuses(*this, "today demo --date 2026-01-01", "no_weather");
}

BOOST_FIXTURE_TEST_CASE(a_folder_that_exists_is_left_alone, DemoPlace) {
  write("demo/garden.toml", "mine\n");
  refuses(*this, "new demo --demo", "exists_already");
  BOOST_TEST(read("demo/garden.toml") == "mine\n");
}

BOOST_AUTO_TEST_CASE(wrong_usage_ends_with_2) {
  const Workplace place;
  for (const auto& [words, golden] :
       std::vector<std::pair<std::string, std::string>>{{"tody demo", "command"},
                                                        {"", "nothing"},
                                                        {"today", "no_folder"},
                                                        {"today demo --date 16.7.2025", "date"},
                                                        {"today demo --formt json", "option"},
                                                        {"et0 w.csv --latitude 91 --elevation 0", "latitude"},
                                                        {"et0 w.csv --elevation 0", "no_latitude"}}) {
    const CommandRun refused = run_noonleaf(place, words);
    BOOST_TEST(refused.exit_code == 2, words);
    check_golden("usage/" + golden + ".txt", refused.err);
  }
}

BOOST_AUTO_TEST_CASE(the_tall_surface_needs_its_equation) {
  const Workplace place;
  place.write("w.csv", "date,tmin_c,tmax_c\n2025-07-01,12,24\n");
  refuses(place, "et0 w.csv --latitude 46 --elevation 290 --surface tall", "tall_surface");
}

BOOST_AUTO_TEST_SUITE_END()
