#pragma once

#include "noonleaf/heat/wilt_kernel.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {

/// Which members of a block are known, 1 or 0. The kernels of the hours work with numbers only: a member with
/// a missing or impossible one carries a stand-in's, and its result is missing.
using Sound = HeatLane;

/// Finds the members whose numbers are outside the ranges of the scalar doors, or missing, and gives them a
/// stand-in's.
void set_aside(DayBlock& day, double rso_mj_m2_d, Sound& sound);
void set_aside(PlantingBlock& planting, Sound& sound);

/// Takes the results of the members away that were set aside: NaN, and the verdict unknown.
void take_away(const Sound& day, const Sound& planting, PlantingBlock& block);

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
