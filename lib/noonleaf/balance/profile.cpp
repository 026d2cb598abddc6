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
  const double to = root_depth_m;
  const double top = soil.evaporation_depth_m;
  if (from == to) return 0;
  double moved = 0;
  if (to > from) {
    const double available = taw_mm(soil, state.profile_depth_m - from);
    const double dry = std::max(0.0, state.lower_mm - available);
    const double dry_share = from < top ? (std::min(to, top) - from) / (top - from) : 1;
    moved =
        std::min(state.lower_mm, available) * (to - from) / (state.profile_depth_m - from) + dry * dry_share;
  } else {
    const double available = taw_mm(soil, from);
    const double dry = std::max(0.0, state.dr_mm - available);
    const double dry_depth = std::min(top, from);
    const double dry_share = (dry_depth - std::min(dry_depth, to)) / dry_depth;
    moved = -(std::min(state.dr_mm, available) * (from - to) / from + dry * dry_share);
  }
  state.dr_mm += moved;
  state.lower_mm -= moved;
  state.root_depth_m = to;
  return moved;
}

}  // namespace v1
}  // namespace noonleaf
