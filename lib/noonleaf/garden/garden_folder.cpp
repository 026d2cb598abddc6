#include "noonleaf/garden/garden_folder.hpp"

#include <algorithm>
#include <numeric>
#include <optional>
#include <system_error>
#include <utility>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/calendar_file.hpp"
#include "noonleaf/garden/folder_boundary.hpp"
#include "noonleaf/garden/garden_file.hpp"
#include "noonleaf/garden/text_file.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t largest_calendar_bytes = 4UL * 1024 * 1024;
constexpr std::size_t most_calendars = 20;
// An account keeps about a kilobyte for each day and planting: two gigabytes. Two lines of weather, 400 years apart,
// make 146,000 days.
constexpr std::size_t most_planting_days = 2'000'000;

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

/// A pipe would be waited for, and a device may never end; the weather reader takes both where a person names them.
void require_no_device(const fs::path& file, const std::string& shown_name) {
  std::error_code code;
  const fs::file_status status = fs::status(file, code);
  if (code || fs::is_regular_file(status) || fs::is_directory(status)) return;  // the reader says what it is
  throw Error(
      problem_with(shown_name, "this is not a plain file", "put a weather file there, as CSV or JSON"));
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
  const auto within = problems.gather([&] {
    require_inside(folder, folder / "weather", shown_folder);
    return true;
  });
  if (!within) return;
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
    const std::string shown = beside(shown_folder, path.filename().string());
    auto file = problems.gather([&] {
      require_inside(folder, path, shown);
      require_no_device(path, shown);
      return read_daily_weather(path, shown, options);
    });
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
    auto found = problems.gather([&] {
      require_inside(folder, folder / name, shown);
      return parse(read_text_file(folder / name, shown, largest_calendar_bytes), shown, range);
    });
    if (found) into.insert(into.end(), found->begin(), found->end());
  };
  for (const std::string& name : garden.rules.quiet_calendars)
    read(name, parse_calendar_hours, garden.rules.quiet_dates);
  for (const std::string& name : garden.rules.holiday_calendars)
    read(name, parse_calendar_days, garden.rules.holidays);
}

void require_calendars_to_read(const Garden& garden, const std::string& shown_name, ProblemList& problems) {
  const std::size_t count = garden.rules.quiet_calendars.size() + garden.rules.holiday_calendars.size();
  if (count <= most_calendars) return;
  problems.add(
      problem_with(beside(shown_name, "garden.toml"),
                   "more than " + std::to_string(most_calendars) + " calendars are named under [rules]",
                   "put their events into one calendar"));
}

/// Every planting has an account of every day since the first of the weather.
void require_days_to_reckon(const Garden& garden, const DailySeries& weather, const std::string& shown_name,
                            ProblemList& problems) {
  if (weather.days.empty()) return;
  const auto days =
      (std::chrono::sys_days(weather.days.back().date) - std::chrono::sys_days(weather.days.front().date))
          .count() +
      1;
  const std::size_t plantings =
      std::accumulate(garden.beds.begin(), garden.beds.end(), std::size_t{0},
                      [](std::size_t sum, const Bed& bed) { return sum + bed.plantings.size(); });
  if (static_cast<std::size_t>(days) * plantings <= most_planting_days) return;
  problems.add(problem_with(beside(shown_name, "weather"),
                            "the weather covers " + grouped(static_cast<std::size_t>(days)) +
                                " days, too many for " + grouped(plantings) + " plantings",
                            "leave the last thirty years there, and take out plantings of past years"));
}

}  // namespace

GardenFolder read_garden_folder(const fs::path& folder, const std::string& shown_name, Strictness strictness,
                                WeatherNeed need) {
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
  require_calendars_to_read(result.garden, shown_name, problems);
  require_days_to_reckon(result.garden, result.weather, shown_name, problems);
  if (!problems.empty()) problems.throw_all();
  read_calendars(result.garden, result.weather, folder, shown_name, problems);
  if (!problems.empty()) problems.throw_all();
  return result;
}

}  // namespace v1
}  // namespace noonleaf
