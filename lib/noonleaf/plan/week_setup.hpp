#pragma once

#include <chrono>
#include <optional>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/water_account.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/plan/week_limits.hpp"
#include "noonleaf/plan/week_problem.hpp"

namespace noonleaf {
inline namespace v1 {

/// The first day of a plan: the runs of `today`, so that the sheet and the screen say the same.
struct FirstDay {
  Today today{};
  UnloggedRuns unlogged{};  ///< beds with such runs are planned as if these had been done, as `today` asks
  std::vector<std::optional<RunChoice>> runs{};  ///< [bed]
};

/// The planner's problem of a garden, and what it was made from.
struct WeekSetup {
  FirstDay first_day{};
  WeekProblem problem{};
  std::vector<std::vector<PlantingAccount>> accounts{};        ///< [bed], those in the ground
  std::vector<std::vector<std::vector<LimitSlots>>> limits{};  ///< [bed][day of the plan]
  std::chrono::sys_days first{};
};

/// Throws    Error as plan_week
WeekSetup set_up_week(const Garden& garden, const Journal& journal, const Sky& sky,
                      const WeekQuestion& question);

/// What a planting asks of each day of its account.
std::vector<PlantingNeed> needs_ahead(const BedPlanting& planting, const PlantingAccount& account);

/// One bed's part of it.
BedProblem bed_problem(const Garden& garden, std::size_t bed, const std::vector<PlantingAccount>& accounts);

}  // namespace v1
}  // namespace noonleaf
