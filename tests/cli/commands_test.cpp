// The command as a whole: new, check, away, round, help, and what every command does with its output.
#include <cstdlib>
#include <filesystem>
#include <regex>
#include <sstream>
#include <string>

#include <boost/test/unit_test.hpp>

#include "command_run.hpp"
#include "file_text.hpp"

BOOST_AUTO_TEST_SUITE(commands)

BOOST_AUTO_TEST_CASE(new_makes_the_whole_demo_and_says_what_next) {
  const Workplace place;
  const CommandRun made = run_noonleaf(place, "new demo --demo");
  BOOST_TEST(made.exit_code == 0);
  BOOST_TEST(made.err == "");
  check_golden("new_demo.txt", made.out);
  for (const char* name : {"demo/garden.toml", "demo/journal.csv", "demo/weather/station_2025.csv"}) {
    BOOST_TEST(place.read(name) == file_text(std::string(NOONLEAF_SOURCE_DIR "/weather_samples/") + name),
               name);
  }
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

BOOST_FIXTURE_TEST_CASE(the_time_away_in_both_languages, DemoPlace) {
  for (const std::string language : {"en", "es"}) {
    const std::string question = "away demo --from 2025-07-17 --to 2025-07-31 --lang " + language;
    check_golden("away_demo_" + language + ".txt", run_noonleaf(*this, question).out);
    check_golden("away_sheet_" + language + ".txt", run_noonleaf(*this, question + " --format sheet").out);
  }
}

// Young roots: no sky wilts bed E, yet it does in half of what was tried.
BOOST_FIXTURE_TEST_CASE(a_bed_that_may_wilt_is_not_said_to_need_nobody, DemoPlace) {
  const std::string question = "away demo --from 2025-07-19 --to 2025-07-27";
  const std::string answer = run_noonleaf(*this, question).out;
  const std::string bed = answer.substr(answer.find("\nE "));
  BOOST_TEST(bed.find("Nothing done: short of water from Sat 19 Jul, does not wilt.") != std::string::npos,
             bed);
  BOOST_TEST(bed.find("-> It gets through if all is as reckoned, which is not sure") != std::string::npos,
             bed);
  const std::string sheet = run_noonleaf(*this, question + " --format sheet").out;
  BOOST_TEST(sheet.find("Chard") != std::string::npos, sheet);
  BOOST_TEST(sheet.find("before you leave") == std::string::npos, sheet);  // that is not for whoever comes
  // Whoever comes once reads that this does not save the strawberries.
  BOOST_TEST(
      sheet.find("- D: One visit is not enough: somebody has to come every 2 days.") != std::string::npos,
      sheet);
}

BOOST_FIXTURE_TEST_CASE(a_visit_that_may_come_too_late_says_so, DemoPlace) {
  const std::string answer = run_noonleaf(*this, "away demo --from 2025-07-19 --to 2025-07-30").out;
  const std::string bed = answer.substr(answer.find("\nE "));
  BOOST_TEST(bed.find("-> Find somebody who waters it on Thu 24 Jul at the latest: it may wilt") !=
                 std::string::npos,
             bed);
}

BOOST_FIXTURE_TEST_CASE(a_round_of_gardens_of_one_name_shows_the_folders, DemoPlace) {
  BOOST_REQUIRE(run_noonleaf(*this, "new other --demo").exit_code == 0);
  const std::string answer = run_noonleaf(*this, "round demo other").out;
  BOOST_TEST(answer.find(" demo ") != std::string::npos, answer);
  BOOST_TEST(answer.find(" other ") != std::string::npos, answer);
  check_golden("round_two.txt", answer);
}

BOOST_AUTO_TEST_SUITE_END()
