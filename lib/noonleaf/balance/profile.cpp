#include "noonleaf/balance/profile.hpp"

#include <algorithm>

namespace noonleaf {
inline namespace v1 {
namespace {

/// What lies below the wilting point when the top layer is as dry as evaporation makes it, per metre of it.
double below_wilting_mm_m(const SoilWater& soil) { return 1000 * 0.5 * soil.wilting_point_m3_m3; }

}  // namespace

LayerLimits root_zone_limits(const SoilWater& soil, double root_depth_m) {
  const double taw = taw_mm(soil, root_depth_m);
  return {taw, taw + below_wilting_mm_m(soil) * std::min(soil.evaporation_depth_m, root_depth_m)};
}

LayerLimits lower_layer_limits(const SoilWater& soil, double root_depth_m, double profile_depth_m) {
  const double taw = taw_mm(soil, profile_depth_m - root_depth_m);
  return {taw, taw + below_wilting_mm_m(soil) * std::max(0.0, soil.evaporation_depth_m - root_depth_m)};
}

double move_root_boundary(BalanceState& state, const SoilWater& soil, double root_depth_m) {
  const double from = state.root_depth_m;
  if (from == root_depth_m) return 0;
  const step_formula::Soil plain = plain_soil(soil);
  const double moved =
      root_depth_m > from
          ? step_formula::gain_by_growth(plain, state.lower_mm, from, root_depth_m, state.profile_depth_m)
          : -step_formula::loss_by_pulling(plain, state.dr_mm, from, root_depth_m);
  state.dr_mm += moved;
  state.lower_mm -= moved;
  state.root_depth_m = root_depth_m;
  return moved;
}

step_formula::Soil plain_soil(const SoilWater& soil) {
  const double tew = tew_mm(soil);
  return {soil.rew_mm,
          tew,
          taw_mm(soil, 1),
          below_wilting_mm_m(soil),
          soil.evaporation_depth_m,
          1 / (tew - soil.rew_mm)};
}

}  // namespace v1
}  // namespace noonleaf
