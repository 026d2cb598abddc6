#pragma once

#include "noonleaf/balance/daily_step.hpp"
#include "noonleaf/balance/step_formula.hpp"

namespace noonleaf {
inline namespace v1 {

/// Depletions that a layer can reach: by transpiration down to the wilting point, and by evaporation to half
/// of that within the top layer.
struct LayerLimits {
  double transpiration_mm = missing;  ///< 1000 (FC - WP) thickness
  double evaporation_mm = missing;    ///< that plus 1000 (0.5 WP) times its share of the top layer
};
LayerLimits root_zone_limits(const SoilWater& soil, double root_depth_m);
LayerLimits lower_layer_limits(const SoilWater& soil, double root_depth_m, double profile_depth_m);

/// Moves the boundary between root zone and lower layer, up or down; no water is lost or made.
///
/// Method    A layer is taken as equally dry throughout, except that what lies below the wilting point lies in
///           the top layer, where evaporation left it. Ours.
/// Result    the depletion that the root zone gained (+) with new soil or gave back (-) [mm]
double move_root_boundary(BalanceState& state, const SoilWater& soil, double root_depth_m);

/// A soil as the formulas take it.
step_formula::Soil plain_soil(const SoilWater& soil);

}  // namespace v1
}  // namespace noonleaf
