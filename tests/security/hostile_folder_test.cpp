#include <filesystem>
#include <string>
#include <sys/stat.h>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "cli/command_run.hpp"

// A garden folder that somebody sent: nothing outside of it is read, written or waited for (docs/security.md).

namespace {

namespace fs = std::filesystem;

const std::string secret = "the secret of the house";

/// The demo garden, and beside it a folder that is none of its business.
class Sent : public Workplace {
 public:
  Sent() {
    BOOST_REQUIRE(run_noonleaf(*this, "new g --demo").exit_code == 0);
    write("outside/private.txt", secret + "\n");
    write("outside/weather.csv", "date,tmin_c,tmax_c\n2025-07-01,12,28\n");
    write("outside/garden.toml", read("g/garden.toml"));
    write("outside/journal.csv", read("g/journal.csv"));
  }

  /// In place of a file, a link.
  void link(const std::string& name, const fs::path& target) const {
    fs::remove_all(folder() / name);
    fs::create_symlink(target, folder() / name);
  }
};

/// Refused, for its links or its paths, without a word of what lies outside.
void check_refused(const Sent& sent, const std::string& words, const std::string& message) {
  const CommandRun run = run_noonleaf(sent, words);
  BOOST_TEST_CONTEXT("noonleaf " << words) {
    BOOST_TEST(run.exit_code == 1);
    BOOST_TEST(run.out.find(secret) == std::string::npos);
    BOOST_TEST(run.err.find(secret) == std::string::npos, run.err);
    BOOST_TEST(run.err.find(message) != std::string::npos, run.err);
    BOOST_TEST(run.err.find("fix: ") != std::string::npos, run.err);
  }
}

const std::string out_of_folder = "out of the garden folder, and is not followed";

struct Link {
  const char* name;
  const char* target;
};
std::ostream& operator<<(std::ostream& stream, const Link& link) {
  return stream << link.name << " -> " << link.target;
}

const std::vector<Link> links_outside = {
    {"garden.toml", "../outside/private.txt"},
    {"garden.toml", "../outside/garden.toml"},
    {"journal.csv", "../outside/private.txt"},
    {"journal.csv", "../outside/journal.csv"},
    {"journal.csv", "/dev/zero"},
    {"weather/forecast_2025-07-16.csv", "../../outside/private.txt"},
    {"weather/forecast_2025-07-16.csv", "../../outside/weather.csv"},
    {"weather/forecast_2025-07-16.csv", "/dev/urandom"},
    {"weather/forecast_2025-07-16.csv", "/etc/passwd"},
    {"weather", "../outside"},
    {"weather", "/etc"},
};

}  // namespace

BOOST_AUTO_TEST_SUITE(hostile_folder)

BOOST_DATA_TEST_CASE(a_link_out_of_the_folder_is_not_followed, boost::unit_test::data::make(links_outside),
                     each) {
  const Sent sent;
  sent.link(std::string("g/") + each.name, each.target);
  for (const char* command : {"today g", "check g", "week g", "ledger g --from 2025-06-01 --to 2025-07-15",
                              "explain g a 2025-07-16"})
    check_refused(sent, command, out_of_folder);
  const CommandRun round = run_noonleaf(sent, "round g");  // which says so in its table
  BOOST_TEST(round.exit_code == 1);
  BOOST_TEST(round.out.find("1 cannot be told") != std::string::npos, round.out);
  BOOST_TEST((round.out + round.err).find(secret) == std::string::npos);
}

BOOST_AUTO_TEST_CASE(an_entry_is_not_written_through_a_link) {
  const std::string entry = "log g note hello --date 2025-07-16";
  {
    const Sent sent;
    const std::string before = sent.read("outside/journal.csv");
    sent.link("g/journal.csv", "../outside/journal.csv");
    check_refused(sent, entry, out_of_folder);
    BOOST_TEST(sent.read("outside/journal.csv") == before);
  }
  {
    const Sent sent;  // a link to nothing would make the file out there
    sent.link("g/journal.csv", "../outside/new.csv");
    check_refused(sent, entry, out_of_folder);
    BOOST_TEST(!fs::exists(sent.folder() / "outside/new.csv"));
  }
  {
    const Sent sent;
    sent.link("g/journal.csv.lock", "../outside/new.lock");
    check_refused(sent, entry, "the lock beside the journal is a link");
    BOOST_TEST(!fs::exists(sent.folder() / "outside/new.lock"));
  }
  {
    const Sent sent;
    sent.link("g/garden.toml", "../outside/garden.toml");
    check_refused(sent, entry, out_of_folder);
  }
}

BOOST_AUTO_TEST_CASE(links_within_the_folder_and_to_the_folder_are_followed) {
  const Sent sent;
  const CommandRun plain = run_noonleaf(sent, "today g");
  fs::rename(sent.folder() / "g/journal.csv", sent.folder() / "g/journal-2025.csv");
  sent.link("g/journal.csv", "journal-2025.csv");
  fs::create_directory(sent.folder() / "g/kept");
  fs::rename(sent.folder() / "g/weather/station_2025.csv", sent.folder() / "g/kept/station.csv");
  sent.link("g/weather/station_2025.csv", "../kept/station.csv");
  BOOST_TEST(run_noonleaf(sent, "today g").out == plain.out);
  sent.link("by-link", "g");
  BOOST_TEST(run_noonleaf(sent, "today by-link").out.size() > 0U);
  BOOST_TEST(run_noonleaf(sent, "today by-link").exit_code == 0);
  BOOST_TEST(run_noonleaf(sent, "log by-link note hello --date 2025-07-16").exit_code == 0);
  BOOST_TEST(sent.read("g/journal-2025.csv").find("hello") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(a_calendar_outside_is_not_read) {
  for (const std::string name : {"../outside/private.txt", "a/../../outside/private.txt", "/etc/passwd", "..",
                                 "/", "weather/../../outside/private.txt"}) {
    const Sent sent;
    sent.replace("g/garden.toml", "[rules]", "[rules]\nquiet_calendars = [\"" + name + "\"]");
    check_refused(sent, "check g", "a calendar outside the garden folder is not read");
  }
  const Sent sent;
  sent.replace("g/garden.toml", "[rules]", "[rules]\nholiday_calendars = [\"school.ics\"]");
  sent.link("g/school.ics", "../outside/private.txt");
  check_refused(sent, "check g", out_of_folder);
}

BOOST_AUTO_TEST_CASE(pipes_and_devices_are_not_waited_for) {
  for (const char* name : {"garden.toml", "journal.csv", "weather/forecast_2025-07-16.csv", "school.ics"}) {
    const Sent sent;
    sent.replace("g/garden.toml", "[rules]", "[rules]\nquiet_calendars = [\"school.ics\"]");
    sent.write("g/school.ics", "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n");
    fs::remove(sent.folder() / "g" / name);
    BOOST_REQUIRE(::mkfifo((sent.folder() / "g" / name).c_str(), 0600) == 0);
    check_refused(sent, "check g", "not a plain file");
  }
}

BOOST_AUTO_TEST_CASE(a_zone_is_a_name_and_no_path) {
  for (const std::string zone :
       {"../../outside/private.txt", "/etc/passwd", "../../../../etc/passwd", "posix/../../../etc/passwd"}) {
    const Sent sent;
    sent.replace("g/garden.toml", "America/Los_Angeles", zone);
    check_refused(sent, "check g", "zone");
  }
}

BOOST_AUTO_TEST_CASE(a_zone_of_a_calendar_is_no_path_either) {
  const Sent sent;
  sent.replace("g/garden.toml", "[rules]", "[rules]\nquiet_calendars = [\"school.ics\"]");
  sent.write("g/school.ics",
             "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nUID:1\r\nSUMMARY:x\r\n"
             "DTSTART;TZID=\"../../../../../../../../../../" +
                 sent.folder().string() +
                 "/outside/private.txt\":20250716T080000\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n");
  check_refused(sent, "check g", "a time zone is named like a path");
}

BOOST_AUTO_TEST_CASE(an_id_like_a_path_names_no_file) {
  const Sent sent;
  sent.replace("g/garden.toml", "id = \"a\"", "id = \"../../outside/made\"");
  sent.write("g/journal.csv", "id,date,event,bed,minutes\n");
  for (const char* words : {"today g", "week g --format html --out sheet.html",
                            "week g --format ics --out sheet.ics", "week g --format csv --out sheet.csv",
                            "log g water ../../outside/made --minutes 5 --date 2025-07-16"})
    BOOST_TEST(run_noonleaf(sent, words).exit_code == 0, words);
  std::size_t files = 0;
  for ([[maybe_unused]] const auto& entry : fs::recursive_directory_iterator(sent.folder() / "outside"))
    ++files;
  BOOST_TEST(files == 4U);
  BOOST_TEST(!fs::exists(sent.folder().parent_path() / "outside"));
}

BOOST_AUTO_TEST_CASE(what_it_writes_goes_through_no_link) {
  const Sent sent;  // --out takes the place of a link, and leaves alone what it led to
  const std::string before = sent.read("outside/private.txt");
  sent.link("sheet.html", "outside/private.txt");
  BOOST_TEST(run_noonleaf(sent, "week g --format html --out sheet.html").exit_code == 0);
  BOOST_TEST(sent.read("outside/private.txt") == before);
  BOOST_TEST(!fs::is_symlink(sent.folder() / "sheet.html"));
  sent.link("new", "outside/new");  // and `new` takes no name that is there
  BOOST_TEST(run_noonleaf(sent, "new new --demo").exit_code == 1);
  BOOST_TEST(!fs::exists(sent.folder() / "outside/new"));
}

// Two lines of weather, 400 years apart: every planting would get an account of 146,461 days.
BOOST_AUTO_TEST_CASE(centuries_of_days_are_refused_before_they_are_reckoned) {
  const Sent sent;
  std::string beds;
  for (int bed = 0; bed < 40; ++bed)
    beds += "[[bed]]\nid = \"x" + std::to_string(bed) +
            "\"\narea_m2 = 2\nsoil = \"loam\"\nsprinkler = \"fan\"\n[[bed.planting]]\ncrop = \"tomato\"\n"
            "transplanted = 2025-05-01\n";
  sent.write("g/garden.toml", sent.read("g/garden.toml") + "\n" + beds);
  fs::remove_all(sent.folder() / "g/weather");
  sent.write("g/weather/w.csv", "date,tmin_c,tmax_c\n1800-01-01,12,28\n2200-12-31,12,28\n");
  sent.write("g/journal.csv", "");
  fs::remove(sent.folder() / "g/journal.csv");
  const CommandRun run = run_noonleaf(sent, "today g --date 2200-12-31");
  BOOST_TEST(run.exit_code == 1);
  BOOST_TEST(run.err.find("the weather covers 146,462 days, too many for 4") != std::string::npos, run.err);
}

BOOST_AUTO_TEST_CASE(more_calendars_than_a_school_has_are_refused) {
  const Sent sent;
  std::string names = "\"a.ics\"";
  for (int count = 1; count < 21; ++count) names += ", \"a.ics\"";
  sent.replace("g/garden.toml", "[rules]", "[rules]\nquiet_calendars = [" + names + "]");
  sent.write("g/a.ics", "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n");
  check_refused(sent, "check g", "more than 20 calendars");
}

BOOST_AUTO_TEST_CASE(counts_on_the_command_line_are_bounded) {
  const Sent sent;
  for (const char* words : {"week g --days 1000000000", "week g --days 15", "round g --top 1000000000",
                            "et0 outside/weather.csv --latitude 46 --elevation 290 --precision 1000000000"}) {
    const CommandRun run = run_noonleaf(sent, words);
    BOOST_TEST(run.exit_code == 2, words);
    BOOST_TEST(run.err.find("is not a number from") != std::string::npos, run.err);
  }
  const CommandRun away = run_noonleaf(sent, "away g --from 2025-07-19 --to 9999-12-31");
  BOOST_TEST(away.exit_code == 1);
  BOOST_TEST(away.err.find("more than 120 days") != std::string::npos, away.err);
}

BOOST_AUTO_TEST_SUITE_END()
