#include <algorithm>
#include <filesystem>
#include <string>
#include <sys/stat.h>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "cli/command_run.hpp"

// Files as people really hand them in (tests/corpus/bad_days). Each has beside it what the command says of
// it: the way it ended, its messages, and the first lines of its answer.

namespace {

namespace fs = std::filesystem;

const fs::path bad_days = fs::path(NOONLEAF_SOURCE_DIR) / "tests/corpus/bad_days";

std::vector<fs::path> files_in(const std::string& kind) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(bad_days / kind))
    if (entry.path().extension() != ".said") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  return files;
}

std::string first_lines(const std::string& text, int count) {
  std::size_t end = 0;
  for (int line = 0; line < count && end < text.size(); ++line) {
    end = text.find('\n', end);
    if (end == std::string::npos) return text;
    ++end;
  }
  return text.substr(0, end);
}

std::string said(const CommandRun& run) {
  const std::string answer = run.exit_code == 0 ? "answer:\n" + first_lines(run.out, 4) : std::string();
  return "exit " + std::to_string(run.exit_code) + "\n" + run.err + answer;
}

/// No message may hold bytes that steer a terminal, nor end without a fix where it refuses.
void check_message(const fs::path& file, const CommandRun& run) {
  BOOST_TEST_CONTEXT(file.filename().string()) {
    BOOST_TEST((run.exit_code == 0 || run.exit_code == 1), "ended with " << run.exit_code);
    for (const char byte : run.err + run.out) {
      const auto code = static_cast<unsigned char>(byte);
      BOOST_REQUIRE_MESSAGE(byte == '\n' || (code >= 0x20U && code != 0x7FU),
                            "a control character is printed");
    }
    if (run.exit_code == 1) BOOST_TEST(run.err.find("fix: ") != std::string::npos, run.err);
    const fs::path golden = fs::path(file).replace_extension(".said");
    check_golden("../../corpus/bad_days/" + fs::relative(golden, bad_days).string(), said(run));
  }
}

void make_small_garden(const Workplace& work) {
  fs::create_directories(work.folder() / "g/weather");
  fs::copy_file(bad_days / "garden/good.toml", work.folder() / "g/garden.toml",
                fs::copy_options::overwrite_existing);
  work.write("g/weather/july.csv",
             "date,tmin_c,tmax_c,rain_mm\n2025-07-01,12,28,0\n2025-07-02,13,29,0\n2025-07-03,13,30,0\n");
}

/// The garden of the corpus with one of its files replaced.
void check_garden_with(const std::string& kind, const std::string& name_in_garden) {
  for (const fs::path& file : files_in(kind)) {
    const Workplace work;
    make_small_garden(work);
    fs::copy_file(file, work.folder() / name_in_garden, fs::copy_options::overwrite_existing);
    if (kind == "calendar")
      work.write("g/garden.toml",
                 work.read("g/garden.toml") + "[rules]\nquiet_calendars = [\"school.ics\"]\n");
    check_message(file, run_noonleaf(work, "check g"));
  }
}

}  // namespace

BOOST_AUTO_TEST_SUITE(corpus)

BOOST_AUTO_TEST_CASE(weather_files) {
  for (const fs::path& file : files_in("weather")) {
    const Workplace work;
    fs::copy_file(file, work.folder() / "w.csv");
    check_message(file, run_noonleaf(work,
                                     "et0 w.csv --latitude 46 --longitude -118 --elevation 290 --zone "
                                     "America/Los_Angeles"));
  }
}

BOOST_AUTO_TEST_CASE(garden_files) { check_garden_with("garden", "g/garden.toml"); }

BOOST_AUTO_TEST_CASE(journals) { check_garden_with("journal", "g/journal.csv"); }

BOOST_AUTO_TEST_CASE(calendars) { check_garden_with("calendar", "g/school.ics"); }

BOOST_AUTO_TEST_CASE(catch_can_sheets) {
  for (const fs::path& file : files_in("cans")) {
    const Workplace work;
    fs::copy_file(file, work.folder() / "cans.csv");
    check_message(file, run_noonleaf(work, "cans cans.csv --minutes 15"));
  }
}

BOOST_AUTO_TEST_CASE(there_are_more_than_two_hundred) {
  std::size_t count = 0;
  for (const char* kind : {"weather", "garden", "journal", "calendar", "cans"})
    count += files_in(kind).size();
  BOOST_TEST(count >= 200U);
}

BOOST_AUTO_TEST_CASE(what_is_no_file) {
  const Workplace work;
  make_small_garden(work);
  const std::string et0 = " --latitude 46 --elevation 290";
  fs::create_directory(work.folder() / "folder.csv");
  BOOST_REQUIRE(::mkfifo((work.folder() / "pipe.csv").c_str(), 0600) == 0);
  fs::create_symlink("loop.csv", work.folder() / "loop.csv");
  for (const char* name : {"folder.csv", "loop.csv", "absent.csv"}) {
    const CommandRun run = run_noonleaf(work, std::string("et0 ") + name + et0);
    BOOST_TEST(run.exit_code == 1, name);
    BOOST_TEST(run.err.find("fix: ") != std::string::npos, run.err);
  }
  // A pipe into which nobody writes: the garden does not wait for it.
  fs::create_directory(work.folder() / "g2");
  BOOST_REQUIRE(::mkfifo((work.folder() / "g2/garden.toml").c_str(), 0600) == 0);
  BOOST_TEST(run_noonleaf(work, "check g2").exit_code == 1);
  fs::rename(work.folder() / "pipe.csv", work.folder() / "g/journal.csv");
  const CommandRun piped = run_noonleaf(work, "check g");
  BOOST_TEST(piped.exit_code == 1);
  BOOST_TEST(piped.err.find("not a plain file") != std::string::npos, piped.err);
}

BOOST_AUTO_TEST_CASE(a_line_of_200_megabytes_is_refused_at_once) {
  const Workplace work;
  {
    std::ofstream file(work.folder() / "w.csv", std::ios::binary);
    const std::string block(1 << 20, '3');
    file << "date,tmin_c,tmax_c\n";
    for (int mebibyte = 0; mebibyte < 200; ++mebibyte) file << block;
  }
  const CommandRun run = run_noonleaf(work, "et0 w.csv --latitude 46 --elevation 290");
  BOOST_TEST(run.exit_code == 1);
  BOOST_TEST(run.err.size() < 2000U);
  BOOST_TEST(run.err.find("fix: ") != std::string::npos, run.err);
}

BOOST_AUTO_TEST_CASE(a_million_beds_are_refused_by_size) {
  const Workplace work;
  make_small_garden(work);
  const std::string head = work.read("g/garden.toml");
  {
    std::ofstream file(work.folder() / "g/garden.toml", std::ios::binary);
    file << head;
    for (int bed = 0; bed < 1'000'000; ++bed) file << "[[bed]]\nid = \"" << bed << "\"\n";
  }
  const CommandRun run = run_noonleaf(work, "check g");
  BOOST_TEST(run.exit_code == 1);
  BOOST_TEST(run.err.find("larger than") != std::string::npos, run.err);
}

BOOST_AUTO_TEST_SUITE_END()
