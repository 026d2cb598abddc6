#pragma once

#include <chrono>
#include <cstddef>
#include <vector>

#include "noonleaf/balance/daily_step.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/reference/penman_monteith.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One planting's part of a day's calculation.
struct PlantingExplanation {
  std::size_t planting = 0;  ///< index into Bed::plantings
  GrowthDetail growth{};     ///< where its coefficients come from
  BalanceDetail day{};       ///< the day as it stands: with what was watered so far, without later water
};

/// A day's whole calculation for one bed: the detail structs of the computation itself, nothing worked out
/// anew.
struct DayExplanation {
  std::size_t bed = 0;   ///< index into Garden::beds
  SkyDay sky{};          ///< as the bed gets it, shaded
  Today today{};         ///< the answer that the calculation led to
  DailyEt0Detail et0{};  ///< missing throughout where the day has no temperature of its own
  std::vector<PlantingExplanation> plantings{};  ///< those that grow on that day
};

/// Throws    Error, field "date", as plan_today
DayExplanation explain_day(const Garden& garden, const Journal& journal, const Sky& sky, std::size_t bed,
                           std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
