#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/daily_file.hpp"
#include "noonleaf/weather/merge.hpp"

#include "file_text.hpp"
#include "weather/temporary_file.hpp"

using noonleaf::Finding;
using noonleaf::QualityCheck;
using noonleaf::WeatherFile;
using noonleaf::WeatherOptions;

namespace {

const std::filesystem::path corpus =
    std::filesystem::path(NOONLEAF_SOURCE_DIR) / "tests/corpus/weather/checks";

WeatherOptions at_45_n() {
  WeatherOptions options;
  options.zone = "Etc/UTC";
  options.site = {.latitude_deg = 45.0, .longitude_deg = 8.0, .elevation_m = 250.0};
  return options;
}

std::vector<std::string> check_names() {
  std::vector<std::string> names;
  for (const QualityCheck& check : noonleaf::quality_checks()) names.emplace_back(check.name);
  return names;
}

WeatherFile read(const std::string& name, const WeatherOptions& options = at_45_n()) {
  return noonleaf::read_daily_weather(corpus / name, name, options);
}

// Everything that the checks say of a corpus file (and its second, for checks between files).
std::vector<Finding> findings(const std::string& name, const WeatherOptions& options = at_45_n()) {
  std::vector<WeatherFile> files{read(name + ".csv", options)};
  if (std::filesystem::exists(corpus / (name + ".second.csv")))
    files.push_back(read(name + ".second.csv", options));
  std::vector<Finding> all = noonleaf::merge_daily_weather(files).conflicts;
  for (const WeatherFile& file : files) {
    all.insert(all.end(), file.set_aside.begin(), file.set_aside.end());
    all.insert(all.end(), file.doubts.begin(), file.doubts.end());
  }
  return all;
}

std::size_t count_of(const std::vector<Finding>& all, const std::string& check) {
  return static_cast<std::size_t>(
      std::count_if(all.begin(), all.end(), [&](const Finding& finding) { return finding.check == check; }));
}

std::string text_of(const std::vector<Finding>& all) {
  return noonleaf::describe(noonleaf::problems_of(all));
}

const Finding& finding_of(const std::vector<Finding>& all, const std::string& check) {
  return *std::find_if(all.begin(), all.end(),
                       [&](const Finding& finding) { return finding.check == check; });
}

}  // namespace

BOOST_AUTO_TEST_SUITE(quality_checks)

// Every check has a file that triggers it and one that comes near and does not.
BOOST_DATA_TEST_CASE(each_check_finds_its_file_and_leaves_the_clean_one_alone,
                     boost::unit_test::data::make(check_names()), check) {
  const std::vector<Finding> found = findings(check + ".found");
  BOOST_TEST(count_of(found, check) > 0U, text_of(found));
  const std::vector<Finding> clean = findings(check + ".clean");
  BOOST_TEST(count_of(clean, check) == 0U, text_of(clean));
  for (const Finding& finding : found) {
    BOOST_TEST(!finding.problem.message.empty());
    BOOST_TEST(!finding.problem.fix.empty());
    BOOST_TEST(!finding.problem.file.empty());
  }
}

BOOST_DATA_TEST_CASE(each_check_can_be_accepted_and_refuses_when_strict,
                     boost::unit_test::data::make(check_names()), check) {
  if (check == "files_disagree") return;  // said when files are merged, after they were read
  WeatherOptions accepting = at_45_n();
  accepting.accept = {check};
  BOOST_TEST(count_of(findings(check + ".found", accepting), check) == 0U);
  const auto notes = read(check + ".found.csv", accepting).notes;
  BOOST_TEST(std::any_of(notes.begin(), notes.end(), [&](const std::string& note) {
    return note.find("check " + check + " accepted by you") != std::string::npos;
  }));
  WeatherOptions strict = at_45_n();
  strict.strictness = noonleaf::Strictness::strict;
  BOOST_CHECK_THROW(read(check + ".found.csv", strict), noonleaf::Error);
}

BOOST_AUTO_TEST_CASE(the_clean_files_are_clean_of_every_check_but_what_they_lack) {
  for (const std::string& check : check_names()) {
    const std::vector<Finding> all = findings(check + ".clean");
    BOOST_TEST(all.empty(), check + ":\n" + text_of(all));
  }
}

BOOST_AUTO_TEST_CASE(what_cannot_be_true_is_missing) {
  const WeatherFile range = read("range.found.csv");
  BOOST_TEST(noonleaf::is_missing(range.days.at(0).t_max_c));
  BOOST_TEST(range.days.at(0).t_min_c == 12.3);
  BOOST_TEST(noonleaf::is_missing(range.days.at(1).t_min_c));
  const WeatherFile swapped = read("tmin_above_tmax.found.csv");
  BOOST_TEST(noonleaf::is_missing(swapped.days.at(0).t_min_c));
  BOOST_TEST(noonleaf::is_missing(swapped.days.at(0).t_max_c));
  BOOST_TEST(swapped.days.at(1).t_max_c == 22.0);
  const WeatherFile mixed = read("unit_mixup.found.csv");
  BOOST_TEST(mixed.set_aside.size() == 3U, text_of(mixed.set_aside));
  for (const noonleaf::DailyWeather& day : mixed.days) {
    BOOST_TEST(noonleaf::is_missing(day.t_max_c));
    BOOST_TEST(noonleaf::is_missing(day.t_min_c));
    BOOST_TEST(noonleaf::is_missing(day.pressure_kpa));
  }
  const WeatherFile twice = read("duplicate.found.csv");
  BOOST_REQUIRE_EQUAL(twice.days.size(), 2U);
  BOOST_TEST(twice.days[0].t_min_c == 12.0);
}

BOOST_AUTO_TEST_CASE(what_is_doubtful_is_used) {
  const WeatherFile humid = read("rh_above_100.found.csv");
  BOOST_TEST(humid.days.at(0).rh_max_pct == 103.5);
  BOOST_TEST(noonleaf::is_missing(humid.days.at(1).rh_max_pct));
  BOOST_TEST(read("unusual.found.csv").days.at(0).t_max_c == 51.4);
  BOOST_TEST(read("spike.found.csv").days.at(1).t_max_c == 48.1);
  BOOST_TEST(read("rs_above_clear_sky.found.csv").days.at(0).rs_mj_m2_d == 36.5);
  const WeatherFile night = read("rs_below_zero.found.csv");
  BOOST_TEST(night.hours.at(0).rs_mj_m2_h == 0.0);
}

BOOST_AUTO_TEST_CASE(an_accepted_value_is_used_as_it_stands) {
  WeatherOptions accepting = at_45_n();
  accepting.accept = {"range", "tmin_above_tmax"};
  BOOST_TEST(read("range.found.csv", accepting).days.at(0).t_max_c == 61.4);
  BOOST_TEST(read("tmin_above_tmax.found.csv", accepting).days.at(0).t_min_c == 21.5);
}

BOOST_AUTO_TEST_CASE(a_finding_reads_like_an_error) {
  const std::vector<Finding> all = findings("range.found");
  BOOST_TEST(noonleaf::describe(finding_of(all, "range").problem) ==
             "range.found.csv:3:17: tmax_c: 61.4 is outside -60 to 60 °C; taken as missing\n"
             "  2024-07-06,12.3,61.4,2.1\n"
             "                  ^^^^\n"
             "  fix: check the logger's unit; 61.4 °F would be 16.3 °C\n");
  BOOST_TEST(noonleaf::describe(all.at(1).problem) ==
             "range.found.csv:4:12: tmin_c: -9999 is outside -60 to 60 °C; taken as missing\n"
             "  2024-07-07,-9999,24.0,2.0\n"
             "             ^^^^^\n"
             "  fix: leave the cell empty where the value is missing\n");
}

BOOST_AUTO_TEST_CASE(the_manual_has_every_check_and_column) {
  const std::string manual = file_text(NOONLEAF_SOURCE_DIR "/docs/weather.md");
  for (const QualityCheck& check : noonleaf::quality_checks()) {
    const std::string row = "| `" + std::string(check.name) + "` | " + std::string(check.finds) + " | " +
                            std::string(check.verdict) + " | " + std::string(check.source) + " |";
    BOOST_TEST(manual.find(row) != std::string::npos, row);
  }
  for (const noonleaf::WeatherColumn& column : noonleaf::weather_columns())
    BOOST_TEST(manual.find(column.name) != std::string::npos, column.name);
}

BOOST_AUTO_TEST_CASE(ranges_are_shown_in_the_unit_of_the_file) {
  const TemporaryFile file("date,tmax_f\n2024-07-06,161.4\n");
  const WeatherFile weather = noonleaf::read_daily_weather(file.path(), "f.csv");
  BOOST_TEST(noonleaf::headline(weather.set_aside.at(0).problem) ==
             "f.csv:2:12: tmax_f: 161.4 is outside -76 to 140 °F; taken as missing");
}

BOOST_AUTO_TEST_SUITE_END()
