#include "noonleaf/report/week_changes.hpp"

#include <algorithm>

#include <nlohmann/json.hpp>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::json;

Error refusal(std::string_view shown_name, std::string field, std::string message) {
  Problem problem;
  problem.file = shown_name;
  problem.field = std::move(field);
  problem.message = std::move(message);
  problem.fix = "give the file that `noonleaf week DIR --format json --out FILE` wrote for the earlier plan";
  return Error(std::move(problem));
}

bool same_run(const PlannedRun& a, const PlannedRun& b) {
  return a.date == b.date && a.bed == b.bed && a.run_of_day == b.run_of_day;
}

const PlannedRun* find_run(const std::vector<PlannedRun>& runs, const PlannedRun& wanted) {
  const auto found =
      std::find_if(runs.begin(), runs.end(), [&](const PlannedRun& each) { return same_run(each, wanted); });
  return found == runs.end() ? nullptr : &*found;
}

PlannedRun run_of_json(const Json& json) {
  const auto date = parse_iso_date(json.at("date").get<std::string>());
  const auto begin = parse_clock_text(json.at("open_at").get<std::string>());
  const auto end = parse_clock_text(json.at("close_at").get<std::string>());
  if (!date || !begin || !end) throw Json::other_error::create(500, "a date or a time of day", &json);
  return {.date = *date,
          .bed = json.at("bed").get<std::string>(),
          .closer = json.at("closes").get<std::string>(),
          .run_of_day = json.at("run_of_day").get<int>(),
          .begin = *begin,
          .end = *end,
          .minutes = json.at("minutes").get<double>(),
          .openings = static_cast<int>(json.at("cycles").size())};
}

/// A run may be moved, shortened and handed over at once: each of the three must be read.
void add_differences(std::vector<WeekChange>& changes, const PlannedRun& run, const PlannedRun& old) {
  if (old.begin != run.begin) changes.push_back({WeekChangeKind::time, run, old});
  if (old.minutes != run.minutes) changes.push_back({WeekChangeKind::minutes, run, old});
  if (old.closer != run.closer) changes.push_back({WeekChangeKind::closer, run, old});
}

const PlannedRun& shown(const WeekChange& change) {
  return change.kind == WeekChangeKind::dropped ? change.before : change.now;
}

}  // namespace

std::vector<PlannedRun> planned_runs(const Garden& garden, const WeekPlan& plan) {
  std::vector<PlannedRun> runs;
  for (const WeekRun& run : plan.runs) {
    PlannedRun planned{.date = run.date,
                       .bed = garden.beds[run.bed].id,
                       .closer = garden.caretakers[run.closer].id,
                       .begin = run.cycles.front().begin,
                       .end = run.cycles.back().end,
                       .minutes = run.minutes,
                       .openings = static_cast<int>(run.cycles.size())};
    while (find_run(runs, planned) != nullptr) ++planned.run_of_day;
    runs.push_back(std::move(planned));
  }
  return runs;
}

std::vector<PlannedRun> read_planned_runs(std::string_view json, std::string_view shown_name) {
  std::vector<PlannedRun> runs;
  try {
    const Json answer = Json::parse(json);
    if (answer.at("shape") != "noonleaf.week" || answer.at("version") != 1)
      throw refusal(shown_name, "shape", "this is not a plan of version 1 (\"noonleaf.week\")");
    for (const Json& run : answer.at("runs")) runs.push_back(run_of_json(run));
  } catch (const Json::exception& refused) {
    throw refusal(shown_name, {}, std::string("this is not a whole plan: ") + refused.what());
  }
  return runs;
}

std::vector<PlannedRun> dropped_openings(const std::vector<PlannedRun>& before,
                                         const std::vector<PlannedRun>& now,
                                         std::chrono::year_month_day first) {
  std::vector<PlannedRun> dropped;
  for (PlannedRun old : before) {
    const PlannedRun* const run = find_run(now, old);
    if (old.date < first || (run != nullptr && run->openings >= old.openings)) continue;
    if (run != nullptr) old.first_dropped = run->openings + 1;
    dropped.push_back(old);
  }
  return dropped;
}

std::vector<WeekChange> changes_between(const std::vector<PlannedRun>& before,
                                        const std::vector<PlannedRun>& now,
                                        std::chrono::year_month_day first) {
  std::vector<WeekChange> changes;
  for (const PlannedRun& run : now) {
    const PlannedRun* const old = find_run(before, run);
    if (old == nullptr) {
      changes.push_back({WeekChangeKind::added, run, {}});
    } else {
      add_differences(changes, run, *old);
    }
  }
  for (const PlannedRun& old : before) {
    if (old.date >= first && find_run(now, old) == nullptr)
      changes.push_back({WeekChangeKind::dropped, {}, old});
  }
  std::stable_sort(changes.begin(), changes.end(), [](const WeekChange& a, const WeekChange& b) {
    return std::pair(shown(a).date, shown(a).begin) < std::pair(shown(b).date, shown(b).begin);
  });
  return changes;
}

}  // namespace v1
}  // namespace noonleaf
