#pragma once

#include <chrono>
#include <cstddef>
#include <vector>

#include "noonleaf/balance/run.hpp"
#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace v1 {

/// The soil water of one planting up to a morning, and what would follow.
struct PlantingAccount {
  std::size_t planting = 0;  ///< index into Bed::plantings
  SoilWater soil{};
  BalanceRun past{};         ///< from the first day of the sky to the day before the morning
  BalanceState dawn{};       ///< as the morning finds it
  BalanceRun dry_ahead{};    ///< from the morning on, with what was already watered that day and no rain to come
  BalanceRun likely_ahead{}; ///< the same with the rain of the forecast
};

/// Which rain an account counts.
enum class RainCounted { measured_only, with_forecast };

/// The water that a day brought to a bed by hand or sky.
struct BedWater {
  double rain_mm = 0, irrigation_mm = 0;  ///< before the day's demand
  double evening_irrigation_mm = 0;       ///< after it
};

/// What the journal and the weather say fell on a bed on one day.
///
/// Rule      A gauge beats the station. A gauge read before 10:00 tells of the day before (common practice,
///           no source). A run that started at 18:00 or later wets the next day's surface. Minutes become the
///           mean depth in the bed (infiltrated_depth_mm). Missing rain counts as none, and the sky says so.
BedWater water_on(const Garden& garden, std::size_t bed, const Journal& journal, const SkyDay& day,
                  RainCounted counted);

/// The account of every planting that is in the ground on the morning of `date`.
///
/// Method    The account starts at field capacity on the first day of the sky (an assumption that `today`
///           prints): the longer the weather, the less it matters. Each planting keeps its own root zone.
/// Input     date   within the sky, or the day after its last
/// Throws    Error, field "date", when the sky does not reach it or has a gap that cannot be bridged
std::vector<PlantingAccount> accounts_of_bed(const Garden& garden, std::size_t bed, const Journal& journal,
                                             const Sky& sky, std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
