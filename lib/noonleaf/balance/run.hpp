#pragma once

#include <optional>
#include <span>
#include <vector>

#include "noonleaf/balance/daily_step.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How wet the ground is at the start, the same at every depth.
///
/// Input     depleted_frac  0 = field capacity, 1 = wilting point
/// Result    Dr, lower layer in that proportion of their TAW; De the same proportion of the top layer's,
///           never above TEW
/// Throws    Error, field "depleted_frac", outside 0 to 1; "profile_depth_m" shallower than roots or Ze
BalanceState initial_state(const SoilWater& soil, double root_depth_m, double profile_depth_m,
                           double depleted_frac);

/// The ground after something was dug in: a state kept for one soil, told for another.
///
/// Method    The water in the ground stays what it is; depletions are counted from the new field capacity.
///           What the new soil cannot hold is gone: it drained. What was dug in is taken to have brought no
///           water. De keeps its share of TEW, since digging mixes the top layer. Ours.
/// Result    the new state; drained_mm is the water that no longer fits
struct AmendedState {
  BalanceState state{};         ///< told for the new soil
  double drained_mm = missing;  ///< water that the new soil could not hold
};
/// The state in the other soil: see AmendedState.
AmendedState state_in_other_soil(const BalanceState& state, const SoilWater& before, const SoilWater& after);

/// An observation that sets the account right, at the beginning of a day.
struct Correction {
  std::chrono::year_month_day date{};  ///< the day at whose beginning it holds
  double dr_mm =
      missing;  ///< root-zone depletion found; missing = leave. After a gap it begins the account anew.
  double de_mm = missing;  ///< top layer found; missing = leave, but never deeper than an observed Dr of 0
};

/// Days of one planting.
struct BalanceRun {
  std::vector<BalanceDetail> days;  ///< one for each day given, in order
  double rain_mm = 0;               ///< total on the bed
  double runoff_mm = 0;             ///< total
  double irrigation_mm = 0;         ///< total infiltrated
  double transpiration_mm = 0;      ///< total
  double evaporation_mm = 0;        ///< total
  double drainage_mm = 0;           ///< total out of the profile
  double correction_mm = 0;         ///< total change of Dr by observations
  double stress_mm = 0;             ///< sum of (1 - Ks) Kcb ET0: transpiration lost to dryness
};

/// The balance over consecutive days.
///
/// Input     days and growth, one of each per day; a crop that is pulled and the next one sown are simply
///           the growth of two plantings one after the other
/// Note      Water in the profile is kept a second time from the flows alone, over the whole run; the two
///           must agree every day to 1e-9 mm.
/// Throws    Error: as daily_step; field "growth" when the counts differ; "date" when days do not follow
///           each other
BalanceRun run_balance(const BalanceState& start, std::span<const BalanceDay> days,
                       std::span<const GrowthDay> growth, const SoilWater& soil,
                       const BalanceSettings& settings, std::span<const Correction> corrections = {});

/// Net depth that brings the root zone back to field capacity: Dr, but never below 0. FAO-56 eq. 85.
double net_refill_mm(const BalanceState& state);

/// The first day at whose close Dr exceeds RAW; empty when none does. Days that are missing do not count.
std::optional<std::size_t> first_day_beyond_raw(std::span<const BalanceDetail> days);

/// Root-zone depletion within a day.
///
/// Input     demand_share  share of the day's ET that has passed, 0 at dawn to 1 at dusk
/// Result    Dr after the morning's water and that share of the day's ET, before the evening's water [mm]
double depletion_within_day_mm(const BalanceDetail& day, double demand_share);

}  // namespace v1
}  // namespace noonleaf
