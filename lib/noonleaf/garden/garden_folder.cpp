#include "noonleaf/garden/garden_folder.hpp"

#include <algorithm>
#include <optional>
#include <system_error>
#include <utility>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/calendar_file.hpp"
#include "noonleaf/garden/garden_file.hpp"
#include "noonleaf/garden/text_file.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t largest_calendar_bytes = 4UL * 1024 * 1024;

/// Keeps the problems of one file and lets the next be read.
class ProblemList {
 public:
  template <class Read>
  auto gather(const Read& read) -> std::optional<decltype(read())> {
    try {
      return read();
    } catch (const Error& refused) {
      problems_.insert(problems_.end(), refused.problems().begin(), refused.problems().end());
      return std::nullopt;
    }
  }
  void add(Problem problem) { problems_.push_back(std::move(problem)); }
  bool empty() const { return problems_.empty(); }
  void throw_all() { throw Error(std::move(problems_)); }

 private:
  std::vector<Problem> problems_;
};

Problem problem_with(std::string file, std::string message, std::string fix) {
  Problem problem;
  problem.file = std::move(file);
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  return problem;
}

std::string beside(const std::string& folder, std::string_view name) {
  return folder.empty() || folder.back() == '/' ? folder + std::string(name)
                                                : folder + "/" + std::string(name);
}

void require_folder(const fs::path& folder, const std::string& shown_name) {
  std::error_code code;
  if (fs::is_directory(folder, code)) return;
  const std::string message = fs::exists(folder, code) ? "this is not a folder" : "there is no such folder";
  throw Error(problem_with(shown_name, message, "name a garden folder; `noonleaf new DIR --demo` makes one"));
}

std::vector<fs::path> weather_paths(const fs::path& folder) {
  std::vector<fs::path> paths;
  std::error_code code;
  for (const auto& entry : fs::directory_iterator(folder, code)) {
    const fs::path extension = entry.path().extension();
    const bool hidden = entry.path().filename().string().starts_with(".");
    if (!hidden && (extension == ".csv" || extension == ".json")) paths.push_back(entry.path());
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

WeatherOptions weather_options(const Garden& garden, Strictness strictness) {
  WeatherOptions options = garden.weather;
  options.zone = garden.site.zone;
  options.site = garden.site.location;
  options.strictness = strictness;
  return options;
}

void read_weather(GardenFolder& result, const fs::path& folder, const std::string& shown_name,
                  Strictness strictness, WeatherNeed need, ProblemList& problems) {
  const std::string shown_folder = beside(shown_name, "weather");
  const auto paths = weather_paths(folder / "weather");
  if (paths.empty()) {
    if (need == WeatherNeed::none_yet_allowed) return;
    problems.add(
        problem_with(shown_folder, "there is no weather file",
                     "put at least one CSV there, with date, tmin_c and tmax_c; docs/weather.md tells more"));
    return;
  }
  const WeatherOptions options = weather_options(result.garden, strictness);
  for (const fs::path& path : paths) {
    auto file = problems.gather(
        [&] { return read_daily_weather(path, beside(shown_folder, path.filename().string()), options); });
    if (file) result.weather_files.push_back(std::move(*file));
  }
}

/// A path that stays within the garden folder.
bool is_inside(std::string_view name) {
  const fs::path path(name);
  return !path.is_absolute() &&
         std::none_of(path.begin(), path.end(), [](const fs::path& p) { return p == ".."; });
}

/// Timetable and holidays, over the days of the weather and two months on.
void read_calendars(Garden& garden, const DailySeries& weather, const fs::path& folder,
                    const std::string& shown_name, ProblemList& problems) {
  if (weather.days.empty()) return;
  constexpr int days_beyond = 62;
  const CalendarRange range{std::chrono::sys_days(weather.days.front().date),
                            std::chrono::sys_days(weather.days.back().date) + std::chrono::days(days_beyond),
                            garden.site.zone};
  const auto read = [&](const std::string& name, auto parse, auto& into) {
    const std::string shown = beside(shown_name, name);
    if (!is_inside(name)) {
      problems.add(
          problem_with(shown, "a calendar outside the garden folder is not read", "copy the file into it"));
      return;
    }
    auto found = problems.gather(
        [&] { return parse(read_text_file(folder / name, shown, largest_calendar_bytes), shown, range); });
    if (found) into.insert(into.end(), found->begin(), found->end());
  };
  for (const std::string& name : garden.rules.quiet_calendars)
    read(name, parse_calendar_hours, garden.rules.quiet_dates);
  for (const std::string& name : garden.rules.holiday_calendars)
    read(name, parse_calendar_days, garden.rules.holidays);
}

}  // namespace

GardenFolder read_garden_folder(const fs::path& folder, const std::string& shown_name,
                                Strictness strictness, WeatherNeed need) {
  require_folder(folder, shown_name);
  ProblemList problems;
  GardenFolder result;
  auto garden =
      problems.gather([&] { return read_garden(folder / "garden.toml", beside(shown_name, "garden.toml")); });
  const std::string shown_journal = beside(shown_name, "journal.csv");
  auto journal = problems.gather(
      [&] { return read_journal(folder / "journal.csv", shown_journal, garden ? &*garden : nullptr); });
  if (garden && journal) {
    result.journal = std::move(*journal);
    auto changed = problems.gather([&] { return with_journal(*garden, result.journal, shown_journal); });
    if (changed) result.garden = std::move(*changed);
  }
  read_weather(result, folder, shown_name, strictness, need, problems);
  if (!problems.empty()) problems.throw_all();
  result.weather = merge_daily_weather(result.weather_files);
  read_calendars(result.garden, result.weather, folder, shown_name, problems);
  if (!problems.empty()) problems.throw_all();
  return result;
}

}  // namespace v1
}  // namespace noonleaf
