#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "noonleaf/balance/run.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// State from measured moisture.
///
/// Equation  Dr = 1000 (FC - theta) Zr, and so for the layer below and the top layer; not below 0 (FAO-56 eq.
///           87)
/// Source    FAO-56 (Allen et al. 1998), ch. 8, eq. 87
/// Input     volumetric water contents [m3/m3]; top and lower missing: as the root zone
/// Throws    Error, field "root_zone_m3_m3", below half the wilting point or above saturation (0.6 where
///           unknown)
struct MeasuredMoisture {
  double root_zone_m3_m3 = missing;  ///< mean of the root zone
  double top_layer_m3_m3 = missing;  ///< mean of the evaporation depth
  double lower_m3_m3 = missing;      ///< mean from the roots down to the bottom of the account
};
/// Equation, input, result: see MeasuredMoisture.
BalanceState state_from_moisture(const SoilWater& soil, double root_depth_m, double profile_depth_m,
                                 const MeasuredMoisture& moisture);

/// One step of the feel of soil in the hand.
struct FeelLevel {
  std::string_view id{};            ///< "moist"
  double available_low = missing;   ///< least share of the available water still there
  double available_high = missing;  ///< greatest share of it
  std::string_view text_en{};       ///< what the hand finds in a loam
  std::string_view text_es{};       ///< the same in Spanish
};

/// Five steps from wilting point to field capacity.
///
/// Source    USDA-NRCS, Estimating soil moisture by feel and appearance (1998): the ranges as printed, the
///           wording ours, from memory. A practised hand is good to about 5 % of the available water, says
///           the source.
std::span<const FeelLevel> feel_table();

/// Depleted share in the middle of a step, for initial_state and corrections.
/// Throws    Error, field "feel", naming the nearest step
double depleted_frac_by_feel(std::string_view id);

/// The state after a run over the weather on hand, started from the middle: where nobody has looked at the
/// soil.
///
/// Method    run_balance over the days given; the end state is wanted
/// Note      say with start_matters how much the guess at its beginning still matters
BalanceState spin_up(const SoilWater& soil, double profile_depth_m, std::span<const BalanceDay> days,
                     std::span<const GrowthDay> growth, const BalanceSettings& settings);

/// How much the first day's state still matters.
struct StartMatters {
  double dr_apart_mm = missing;             ///< Dr of the last day from a dry start less that from a wet one
  std::optional<std::size_t> forgotten_on;  ///< first day from which both stay within 1 mm; empty = not yet
};

/// Method    two runs, from field capacity and from the wilting point, compared (ours)
StartMatters start_matters(const SoilWater& soil, double profile_depth_m, std::span<const BalanceDay> days,
                           std::span<const GrowthDay> growth, const BalanceSettings& settings);

}  // namespace v1
}  // namespace noonleaf
