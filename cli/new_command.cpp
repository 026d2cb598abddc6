#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <string>
#include <system_error>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_file.hpp"
#include "noonleaf/garden/garden_start.hpp"

#include "commands.hpp"
#include "demo_files.hpp"
#include "new_options.hpp"
#include "new_questions.hpp"
#include "terminal.hpp"
#include "whole_files.hpp"

namespace noonleaf::cli {
namespace {

namespace fs = std::filesystem;

constexpr int done = 0, wrong_usage = 2;

[[noreturn]] void refuse(const std::string& folder, std::string message, std::string fix) {
  Problem problem;
  problem.file = folder;
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

std::vector<FolderFile> demo_folder() {
  std::vector<FolderFile> files;
  for (const DemoFile& file : demo_files()) files.push_back({std::string(file.name), std::string(file.text)});
  return files;
}

/// What the answers describe. Throws    Error when the whole of it cannot be read
std::vector<FolderFile> started_folder(const GardenStart& start) {
  const std::string garden = garden_start_text(start);
  parse_garden(garden, "garden.toml");
  return {{"garden.toml", garden},
          {"journal.csv", empty_journal_text()},
          {"weather/README.txt", weather_guide_text(start.units)}};
}

fs::path free_folder(const std::string& shown_name) {
  fs::path wanted(shown_name);
  if (!wanted.has_filename()) wanted = wanted.parent_path();  // "garden/" is "garden"
  std::error_code code;
  if (wanted.empty()) refuse(shown_name, "the folder has no name", "name a folder that does not exist yet");
  if (fs::exists(fs::symlink_status(wanted, code))) {
    refuse(shown_name, "this exists already; nothing was changed", "choose a name that does not exist yet");
  }
  return wanted;
}

std::string demo_words(const fs::path& wanted) {
  return "Made " + wanted.string() + ", a complete invented garden. Now try:\n\n  noonleaf today " +
         wanted.string() + "\n\nThen put your own beds into " + (wanted / "garden.toml").string() +
         " and your weather into " + (wanted / "weather").string() +
         "/,\ntake the line demo_date out, and run: noonleaf check " + wanted.string() + "\n";
}

std::string started_words(const fs::path& wanted, const GardenStart& start) {
  std::string words = "Made " + wanted.string() + " with " + std::to_string(start.patches.size()) +
                      (start.patches.size() == 1 ? " bed" : " beds") + ". Next:\n";
  words += wrapped("1. weather: put your station's file into " + (wanted / "weather").string() +
                       "/ (its README.txt tells how to keep one by hand)",
                   2);
  words += wrapped("2. what happens: noonleaf log " + wanted.string() + " water a --minutes 20", 2);
  words += wrapped("3. after every change: noonleaf check " + wanted.string(), 2);
  const bool guessed =
      std::any_of(start.outlets.begin(), start.outlets.end(),
                  [](const GardenStart::Outlet& outlet) { return outlet.can_depths.empty(); });
  if (guessed) {
    words += wrapped(
        "Not measured yet: a sprinkler's rate. Minutes will rest on a guess until cans stood in the bed "
        "(garden.toml shows where to write them).",
        0);
  }
  return words;
}

}  // namespace

int run(const NewArguments& arguments) {
  const fs::path wanted = free_folder(arguments.folder);
  if (arguments.demo) {
    write_whole_folder(arguments.folder, wanted, demo_folder());
    print(demo_words(wanted));
    return done;
  }
  GardenStart start;
  if (arguments.by_options) {
    try {
      start = garden_of_options(arguments);
    } catch (const Error& refused) {  // the options are the command line, not a file
      std::fputs(describe(refused.problems()).c_str(), stderr);
      return wrong_usage;
    }
  } else {
    start = ask_for_garden();
  }
  write_whole_folder(arguments.folder, wanted, started_folder(start));
  print(started_words(wanted, start));
  return done;
}

}  // namespace noonleaf::cli
