#include <cstdio>
#include <string>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_doubts.hpp"
#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/report/check_json.hpp"

#include "commands.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

constexpr int input_refused = 1;

/// "line 12, column 5, tmin_f: ", as far as it is known: a gap between rows has no column.
std::string place_text(const Problem& problem) {
  std::string place;
  const auto add = [&place](const std::string& part) { place += (place.empty() ? "" : ", ") + part; };
  if (problem.line > 0) add(fmt::format("line {}", problem.line));
  if (problem.column > 0) add(fmt::format("column {}", problem.column));
  if (!problem.field.empty()) add(problem.field);
  return place.empty() ? place : place + ": ";
}

std::string findings_text(std::string_view title, const std::vector<Finding>& findings) {
  if (findings.empty()) return {};
  std::string text = fmt::format("  {}:\n", title);
  for (const Finding& finding : findings) {
    const Problem& problem = finding.problem;
    text += wrapped(fmt::format("{}{} [{}]", place_text(problem), problem.message, finding.check), 4);
    text += wrapped("fix: " + problem.fix, 6);
  }
  return text;
}

std::string counted(std::size_t count, std::string_view one, std::string_view more) {
  return fmt::format("{} {}", count, count == 1 ? one : more);
}

std::string file_text(const WeatherFile& file) {
  std::string text = fmt::format("{}: {}, {}", file.name,
                                 file.kind == WeatherKind::forecast ? "forecast" : "measured", file.format);
  if (file.days.empty()) {
    text += ", no days\n";
  } else {
    text += fmt::format(", {}, {} to {}\n", counted(file.days.size(), "day", "days"),
                        iso_date(file.days.front().date), iso_date(file.days.back().date));
  }
  for (const std::string& note : file.notes) text += wrapped("note: " + note, 2);
  return text + findings_text("set aside, taken as missing", file.set_aside) +
         findings_text("doubtful, used all the same", file.doubts);
}

std::string folder_text(const GardenFolder& folder) {
  std::string text = fmt::format("{}: {}, {}, {}; {}\n", folder.garden.site.name,
                                 counted(folder.garden.beds.size(), "bed", "beds"),
                                 counted(folder.garden.sprinklers.size(), "sprinkler", "sprinklers"),
                                 counted(folder.garden.caretakers.size(), "caretaker", "caretakers"),
                                 counted(folder.journal.size(), "journal entry", "journal entries"));
  for (const WeatherFile& file : folder.weather_files) text += file_text(file);
  if (folder.weather_files.empty()) {
    text += wrapped(
        "no weather yet: today and week need a CSV in weather/ with date, tmin and tmax "
        "(docs/weather.md)",
        0);
  }
  for (const GardenDoubt& doubt : garden_doubts(folder.garden)) {
    text += wrapped("doubtful: " + doubt.message, 0) + wrapped("fix: " + doubt.fix, 2);
  }
  return text + findings_text("two files disagree", folder.weather.conflicts) + "Everything can be read.\n";
}

/// Every problem, not only the first twenty: this command is for mending them.
int report_problems(const std::vector<Problem>& problems, OutputFormat format) {
  if (format == OutputFormat::json) {
    print(check_json(problems));
    return input_refused;
  }
  for (const Problem& problem : problems) std::fputs(describe(problem).c_str(), stderr);
  std::fprintf(stderr, "%zu %s\n", problems.size(), problems.size() == 1 ? "problem" : "problems");
  return input_refused;
}

}  // namespace

int run(const CheckArguments& arguments) {
  try {
    const GardenFolder folder = read_garden_folder(
        arguments.folder, arguments.folder, arguments.strict ? Strictness::strict : Strictness::lenient,
        WeatherNeed::none_yet_allowed);
    print(arguments.format == OutputFormat::json ? check_json(folder) : folder_text(folder));
  } catch (const Error& refused) {
    return report_problems(refused.problems(), arguments.format);
  }
  return 0;
}

}  // namespace noonleaf::cli
