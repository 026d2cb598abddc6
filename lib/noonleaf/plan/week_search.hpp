#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "noonleaf/plan/week_problem.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Runs that a bed may not have, because those of other beds at the same tap leave no room for them.
struct ForbiddenRuns {
  std::vector<std::array<std::vector<int>, 2>> minutes{};  ///< [day][part]: lengths; empty = none forbidden

  /// Whether the run is among them.
  bool contains(const RunChoice& run) const;
};

/// What a bed would like to avoid among plans that are otherwise as good: days on which nobody waters yet,
/// and full taps.
using DayDislike = std::vector<std::array<std::int64_t, 2>>;  ///< [day][part]

/// The best runs of one bed by itself.
struct BedOptimum {
  BedSchedule schedule{};  ///< the best that was found
  PlanCost bound{};        ///< no schedule costs less; the schedule's cost unless labels were dropped
};

/// Dynamic programming over the days: all states that can come about, equal ones (to a millionth of a mm)
/// kept once, those that cost more than a plan already found left.
/// Note      More than `most_labels` states on one day: the costliest are dropped, and the bound says so.
BedOptimum best_bed_schedule(const WeekProblem& problem, std::size_t bed, const FittingRuns& fitting,
                             const ForbiddenRuns& forbidden, const DayDislike& dislike);

/// The states kept for one day of one bed.
inline constexpr std::size_t most_labels = 40'000;

/// The best plan for all beds.
struct WeekSolution {
  std::vector<BedSchedule> beds{};  ///< as in the problem
  PlanCost cost{};                  ///< of the plan
  PlanCost bound{};                 ///< no plan costs less
  std::size_t steps = 0;            ///< beds solved
  /// Whether no plan can cost less.
  bool is_optimal() const { return cost == bound; }
};

/// Branch and bound over what the beds share.
///
/// Method    Each bed by itself gives a lower bound. Where runs do not fit on a tap on a day, one of a
///           smallest set that does not fit has to be shorter or away: one branch for each. The first plan
///           fills the taps bed by bed, the neediest first. Stops after `most_steps` beds solved.
WeekSolution solve_week(const WeekProblem& problem, std::size_t most_steps);

}  // namespace v1
}  // namespace noonleaf
