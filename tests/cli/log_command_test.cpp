#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <map>
#include <mutex>
#include <optional>
#include <random>
#include <spawn.h>
#include <sstream>
#include <sys/resource.h>
#include <thread>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "command_run.hpp"

extern char** environ;

namespace {

/// One `log` in a process of its own, perhaps killed after a while. Result: whether it said that the entry is
/// written.
bool log_note(const std::filesystem::path& garden, const std::string& text,
              std::optional<std::chrono::microseconds> kill_after) {
  int ends[2];
  if (::pipe2(ends, O_CLOEXEC) != 0) return false;
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
  std::vector<std::string> words{NOONLEAF_COMMAND, "log",        garden.string(), "note", text,
                                 "--date",         "2025-07-16", "--format",      "json"};
  std::vector<char*> pointers;
  for (std::string& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  pid_t child = 0;
  const int failed = ::posix_spawn(&child, NOONLEAF_COMMAND, &actions, nullptr, pointers.data(), environ);
  posix_spawn_file_actions_destroy(&actions);
  ::close(ends[1]);
  if (failed == 0 && kill_after) {
    std::this_thread::sleep_for(*kill_after);
    ::kill(child, SIGKILL);
  }
  std::string out;
  char block[256];
  for (ssize_t count = 0; (count = ::read(ends[0], block, sizeof block)) > 0;)
    out.append(block, static_cast<std::size_t>(count));
  ::close(ends[0]);
  int status = 0;
  if (failed == 0) ::waitpid(child, &status, 0);
  return out.find("\"id\"") != std::string::npos;
}

std::map<std::string, int> notes_in(const std::string& journal) {
  std::map<std::string, int> counts;
  for (std::size_t place = journal.find("writer-"); place != std::string::npos;
       place = journal.find("writer-", place + 1)) {
    ++counts[journal.substr(place, journal.find_first_of(",\n", place) - place)];
  }
  return counts;
}

/// The largest file that this process and its children may write, until the end of the scope.
class FileSizeLimit {
 public:
  explicit FileSizeLimit(rlim_t bytes) {
    ::getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit lower{bytes, before_.rlim_max};
    ::setrlimit(RLIMIT_FSIZE, &lower);
  }
  ~FileSizeLimit() { ::setrlimit(RLIMIT_FSIZE, &before_); }
  FileSizeLimit(const FileSizeLimit&) = delete;
  FileSizeLimit& operator=(const FileSizeLimit&) = delete;

 private:
  rlimit before_{};
};

}  // namespace

BOOST_AUTO_TEST_SUITE(log_command)

BOOST_FIXTURE_TEST_CASE(entries_are_added_and_said_back, DemoPlace) {
  const std::string before = read("demo/journal.csv");
  std::string answers;
  for (const char* words :
       {"water c --minutes 10 --at 06:00 --date 2025-07-16 --who custodian",
        "water bed-a --at 06:30 --until 07:05 --date 2025-07-16", "rain --rain-in 0.25 --date 2025-07-15",
        "feel e --feel moist --date 2025-07-16 --at 08:00", "probe e --tension-kpa 45 --date 2025-07-16",
        "droop b --crop squash_zucchini --date 2025-07-16 --at 13:00",
        "droop b --date 2025-07-15 --at 13:00 --recovered no",
        "note \"the gate was locked, no key\" --date 2025-07-16", "pull c --crop carrot --date 2025-07-16",
        "undo 155 --date 2025-07-16"}) {
    const CommandRun logged = run_noonleaf(*this, std::string("log demo ") + words);
    BOOST_TEST(logged.exit_code == 0, logged.err);
    answers += logged.out;
  }
  check_golden("log_answers.txt", answers);
  const std::string after = read("demo/journal.csv");
  BOOST_TEST(after.starts_with(before));
  check_golden("log_lines.csv", after.substr(before.size()));
  BOOST_TEST(run_noonleaf(*this, "check demo").exit_code == 0);
}

BOOST_FIXTURE_TEST_CASE(small_amounts_are_said_as_they_are, DemoPlace) {
  const auto said = [&](const char* words) {
    return run_noonleaf(*this, std::string("log demo water ") + words + " --date 2025-07-16").out;
  };
  BOOST_TEST(said("c --gallons 0.4").find("water, bed c, 0.4 gal, 2025") != std::string::npos);
  BOOST_TEST(said("c --gallons 0.003").find("bed c, 0.003 gal, ") != std::string::npos);
  BOOST_TEST(said("c --gallons 1.25").find("bed c, 1.25 gal, ") != std::string::npos);
  BOOST_TEST(said("c --gallons 10").find("bed c, 10 gal, ") != std::string::npos);
  BOOST_TEST(said("c --gallons 250").find("bed c, 250 gal, ") != std::string::npos);
  BOOST_TEST(said("c --litres 1").find("bed c, 0.264 gal, ") != std::string::npos);  // 1 / 3.785411784
  BOOST_TEST(said("c --litres 0").find("bed c, 0 gal, ") != std::string::npos);
  BOOST_TEST(said("c --minutes 1").find("bed c, 1 minute, ") != std::string::npos);
}

BOOST_FIXTURE_TEST_CASE(a_run_beyond_the_longest_of_its_sprinkler_is_asked_about, DemoPlace) {
  const std::string question = "\nLonger than the longest run of its sprinkler, 60 minutes.\n";
  const CommandRun longer = run_noonleaf(*this, "log demo water a --minutes 500 --date 2025-07-16");
  BOOST_TEST(longer.exit_code == 0);
  BOOST_TEST(longer.out.find(question) != std::string::npos, longer.out);
  BOOST_TEST(longer.out.find("If that is wrong: noonleaf log demo undo") != std::string::npos);
  const CommandRun usual = run_noonleaf(*this, "log demo water b --minutes 60 --date 2025-07-16");
  BOOST_TEST(usual.out.find("Longer") == std::string::npos);
}

/// The printed sheet with something written into the box "Ran" of every row, in its own order.
std::string filled_in(const std::string& sheet, const std::vector<std::string>& boxes) {
  std::istringstream lines(sheet);
  std::string line, result;
  std::getline(lines, line);
  result = line + "\n";
  for (std::size_t row = 0; std::getline(lines, line); ++row) {
    std::size_t comma = 0;
    for (int cell = 0; cell < 6; ++cell) comma = line.find(',', comma) + 1;
    result += line.substr(0, comma) + boxes[row % boxes.size()] + line.substr(comma) + "\n";
  }
  return result;
}

BOOST_FIXTURE_TEST_CASE(the_printed_sheet_is_typed_back_in_its_own_order, DemoPlace) {
  BOOST_REQUIRE(run_noonleaf(*this, "week demo --format csv --out week.csv").exit_code == 0);
  const std::string sheet = read("week.csv");
  const auto lines = static_cast<std::size_t>(std::count(sheet.begin(), sheet.end(), '\n'));
  BOOST_REQUIRE(lines > 11U);
  const std::size_t rows = lines - 1;
  write("week.csv", filled_in(sheet, {"20", "R", "", "240"}));
  const CommandRun typed = run_noonleaf(*this, "log demo --from week.csv");
  BOOST_TEST(typed.exit_code == 0, typed.err);
  check_golden("log_printed_sheet.txt", typed.out);
  const std::string journal = read("demo/journal.csv");
  std::size_t at = 0, found = 0;
  for (std::size_t run = 1; run <= rows; ++run) {
    if (run % 4 == 3) continue;  // nothing was written there
    const std::size_t place = journal.find("week sheet, run " + std::to_string(run), at);
    if (place == std::string::npos) continue;
    at = place;
    ++found;
  }
  BOOST_TEST(found == rows - (rows + 1) / 4);
  BOOST_TEST(journal.find("not run: rain") != std::string::npos);
  BOOST_TEST(typed.out.find("Longer than the longest run of its sprinkler, 60 minutes") != std::string::npos);
}

BOOST_FIXTURE_TEST_CASE(a_filled_in_sheet_is_brought_in_once, DemoPlace) {
  write("week.csv",
        "date,bed,run,open_at,close_at,planned_minutes,actual_minutes,who,not_done_because\n"
        "2025-07-14,a,1,06:00,07:00,60,55,JB,\n"
        "2025-07-15,a,2,06:00,06:20,20,,,thunder\n"
        "2025-07-15,b,3,06:30,06:45,15,14,JB,\n"
        "2025-07-16,c,4,06:00,06:25,25,,,\n"
        "2025-07-16,d,5,06:30,06:50,20,,JB,\n");
  const CommandRun first = run_noonleaf(*this, "log demo --from week.csv");
  BOOST_TEST(first.exit_code == 0, first.err);
  const std::string journal = read("demo/journal.csv");
  const CommandRun second = run_noonleaf(*this, "log demo --from week.csv");
  BOOST_TEST(read("demo/journal.csv") == journal);
  check_golden("log_sheet.txt", first.out + second.out);
  BOOST_TEST(journal.ends_with(
                 "147,2025-07-14,06:00,water,a,,55,,,JB,\"week sheet, run 1\",,,,,,,\n"
                 "148,2025-07-15,06:00,water,a,,0,,,,\"week sheet, run 2; not run: thunder\",,,,,,,\n"),
             journal.substr(journal.size() - 300));
  write("week.csv", read("week.csv") + "2025-07-16,e,6,06:55,07:35,40,4O,JB,\n");
  const CommandRun refused = run_noonleaf(*this, "log demo --from week.csv");
  BOOST_TEST(refused.exit_code == 1);
  BOOST_TEST(refused.err.find("week.csv:7:31: actual_minutes:") == 0U, refused.err);
  BOOST_TEST(read("demo/journal.csv") == journal);
  BOOST_TEST(run_noonleaf(*this, "log demo --from week.csv water").exit_code == 2);
  BOOST_TEST(run_noonleaf(*this, "log demo --from week.csv --at 07:00").exit_code == 2);  // was passed over
  BOOST_TEST(run_noonleaf(*this, "log demo").exit_code == 2);
}

BOOST_FIXTURE_TEST_CASE(litres_gallons_and_cans_are_water_too, DemoPlace) {
  const CommandRun logged = run_noonleaf(*this, "log demo water d --gallons 39 --date 2025-07-16 --at 06:30");
  BOOST_TEST(logged.out.find("Entry 147: water, bed d, 39 gal") == 0U, logged.out + logged.err);
  BOOST_TEST(run_noonleaf(*this, "today demo").out.find("15 of the planned 20 minutes ran today") !=
             std::string::npos);
  const CommandRun unknown = run_noonleaf(*this, "log demo water a --gallons 39 --date 2025-07-16");
  BOOST_TEST(unknown.exit_code == 1);
  BOOST_TEST(unknown.err.find("the flow of oscillating sprinkler is not known") != std::string::npos,
             unknown.err);
  BOOST_TEST(
      run_noonleaf(*this, "log demo water a --cans 3 --date 2025-07-16").err.find("how much a can holds") !=
      std::string::npos);
}

BOOST_FIXTURE_TEST_CASE(without_a_date_the_sites_clock_is_taken, DemoPlace) {
  BOOST_TEST(run_noonleaf(*this, "log demo note hello").exit_code == 0);
  const std::string journal = read("demo/journal.csv");
  const std::string last = journal.substr(journal.rfind('\n', journal.size() - 2) + 1);
  BOOST_TEST(std::count(last.begin(), last.end(), ':') == 1);  // it has a time
  BOOST_TEST(last.find("2025-") == std::string::npos);         // and is not of the demo's day
}

BOOST_FIXTURE_TEST_CASE(what_cannot_be_written_down_is_refused, DemoPlace) {
  const std::string before = read("demo/journal.csv");
  std::string complaints;
  for (const char* words : {"water z --minutes 10", "water c", "undo 999", "sow c --crop carot",
                            "pull a --crop carrot", "water c --at 07:00 --until 06:00"}) {
    const CommandRun refused = run_noonleaf(*this, std::string("log demo --date 2025-07-16 ") + words);
    BOOST_TEST(refused.exit_code == 1, words);
    BOOST_TEST(refused.out == "");
    complaints += refused.err;
  }
  for (const char* words : {"watr c", "feel c --feel moits", "water c --minutes ten"}) {
    const CommandRun refused = run_noonleaf(*this, std::string("log demo ") + words);
    BOOST_TEST(refused.exit_code == 2, words);
    complaints += refused.err;
  }
  check_golden("refused/log.txt", complaints);
  BOOST_TEST(read("demo/journal.csv") == before);
}

BOOST_FIXTURE_TEST_CASE(a_half_line_is_named, DemoPlace) {
  write("demo/journal.csv", read("demo/journal.csv") + "900,2025-07-16,06:00,water,b,,2");
  const CommandRun logged = run_noonleaf(*this, "log demo water c --minutes 10 --at 06:00 --date 2025-07-16");
  BOOST_TEST(logged.exit_code == 0);
  check_golden("log_after_half_line.txt", logged.out + logged.err);
  const CommandRun today = run_noonleaf(*this, "today demo");
  BOOST_TEST(today.exit_code == 1);
  check_golden("refused/half_line.txt", today.err);
}

BOOST_FIXTURE_TEST_CASE(a_disk_that_fills_up_leaves_the_journal_as_it_was, DemoPlace) {
  const std::string before = read("demo/journal.csv");
  const CommandRun refused = [&] {
    const FileSizeLimit limit(before.size() + 10);  // ten bytes fit, then the write fails
    return run_noonleaf(*this, "log demo note \"the disk is nearly full\" --date 2025-07-16");
  }();
  BOOST_TEST(refused.exit_code == 1);
  BOOST_TEST(refused.err.find("demo/journal.csv: the entry could not be written: File too large") == 0U,
             refused.err);
  BOOST_TEST(read("demo/journal.csv") == before);
  BOOST_TEST(run_noonleaf(*this, "log demo note \"room again\" --date 2025-07-16").exit_code == 0);
}

BOOST_FIXTURE_TEST_CASE(an_answer_that_cannot_be_shown_says_that_the_entry_is_written, DemoPlace) {
  if (!std::filesystem::exists("/dev/full")) {
    BOOST_TEST_MESSAGE("no /dev/full on this machine: not tested");
    return;
  }
  const std::string line =
      "cd '" + folder().string() + "' && '" NOONLEAF_COMMAND "' log demo note hello >/dev/full 2>.err";
  BOOST_TEST(WEXITSTATUS(std::system(line.c_str())) == 1);
  BOOST_TEST(read(".err").find("is in the journal") != std::string::npos);
  BOOST_TEST(read("demo/journal.csv").ends_with("hello,,,,,,,\n"));
}

// Four writers at once, every second call killed at a random moment: what was confirmed is there exactly
// once. NOONLEAF_KILL_CALLS sets how many calls there are.
BOOST_FIXTURE_TEST_CASE(killed_writers_lose_nothing_that_was_confirmed, DemoPlace) {
  const char* const wanted = std::getenv("NOONLEAF_KILL_CALLS");
  const int calls = wanted == nullptr ? 200 : std::atoi(wanted);
  constexpr int writers = 4;
  const auto begin = std::chrono::steady_clock::now();
  for (int round = 0; round < 3; ++round) BOOST_REQUIRE(log_note(folder() / "demo", "before", std::nullopt));
  const auto one_call =
      std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - begin) / 3;
  std::mutex guard;
  std::vector<std::string> confirmed;
  std::vector<std::thread> threads;
  for (int writer = 0; writer < writers; ++writer) {
    threads.emplace_back([&, writer] {
      std::mt19937 draw(static_cast<unsigned>(writer));
      for (int call = 0; call < calls / writers; ++call) {
        const std::string text = "writer-" + std::to_string(writer) + "-" + std::to_string(call);
        std::optional<std::chrono::microseconds> kill_after;
        if (call % 2 == 1)
          kill_after = std::chrono::microseconds(draw() % static_cast<unsigned>(one_call.count() * writers));
        if (!log_note(folder() / "demo", text, kill_after)) continue;
        const std::scoped_lock lock(guard);
        confirmed.push_back(text);
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  const auto counts = notes_in(read("demo/journal.csv"));
  BOOST_TEST_MESSAGE(calls << " calls, " << confirmed.size() << " confirmed, " << counts.size()
                           << " in the journal");
  BOOST_TEST(confirmed.size() >= static_cast<std::size_t>(calls) / 2);  // the calls that nobody killed
  BOOST_TEST(confirmed.size() < static_cast<std::size_t>(calls));       // and some kills came in time
  for (const std::string& text : confirmed) BOOST_TEST((counts.contains(text) && counts.at(text) == 1), text);
  for (const auto& [text, count] : counts) BOOST_TEST(count == 1, text);
  const CommandRun checked = run_noonleaf(*this, "check demo");
  BOOST_TEST((checked.exit_code == 0 || checked.err.find("cut off") != std::string::npos), checked.err);
}

BOOST_AUTO_TEST_SUITE_END()
