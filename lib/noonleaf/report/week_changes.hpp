#pragma once

#include <chrono>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/plan/week.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One run as a plan names it, in the garden's own ids. Bed, date and `run_of_day` make it the same run in a
/// plan that is made again.
struct PlannedRun {
  std::chrono::year_month_day date{};  ///< on which it begins and ends
  std::string bed{};                   ///< its id
  std::string closer{};                ///< id of the caretaker
  int run_of_day = 1;                  ///< of that bed on that date
  std::chrono::minutes begin{0};       ///< after midnight, wall clock of the site
  std::chrono::minutes end{0};         ///< of the last opening
  double minutes = 0;                  ///< of running
  int openings = 1;                    ///< 2 with a pause for the water to soak in
  int first_dropped = 1;               ///< of a run that is off or has fewer openings: the first that is off
};

/// How a run differs from the earlier plan.
enum class WeekChangeKind { added, dropped, time, minutes, closer };

/// One difference from an earlier plan.
struct WeekChange {
  WeekChangeKind kind = WeekChangeKind::added;  ///< how it differs
  PlannedRun now{};                             ///< in this plan; empty where it was dropped
  PlannedRun before{};                          ///< in the earlier plan; empty where it was added
};

/// The runs of a plan.
std::vector<PlannedRun> planned_runs(const Garden& garden, const WeekPlan& plan);

/// The runs of an earlier answer of `week --format json`.
/// Throws    Error when the text is no such answer, or a run in it lacks something
std::vector<PlannedRun> read_planned_runs(std::string_view json, std::string_view shown_name);

/// Openings of the earlier plan that are off: whole runs, and second halves of runs that go in one now.
std::vector<PlannedRun> dropped_openings(const std::vector<PlannedRun>& before,
                                         const std::vector<PlannedRun>& now,
                                         std::chrono::year_month_day first);

/// What a custodian would not find on the earlier sheet, in the order of date and time; a run that differs in
/// several things is there once for each. Runs of the earlier plan before `first` are over and count for nothing.
std::vector<WeekChange> changes_between(const std::vector<PlannedRun>& before,
                                        const std::vector<PlannedRun>& now,
                                        std::chrono::year_month_day first);

}  // namespace v1
}  // namespace noonleaf
