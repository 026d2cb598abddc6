#pragma once

#include <string>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How much water a soil holds, and how fast it takes it: what the balance and the intake need.
struct SoilWater {
  double field_capacity_m3_m3 = missing;  ///< held against gravity
  double wilting_point_m3_m3 = missing;   ///< below it no plant draws water
  double saturation_m3_m3 = missing;      ///< missing where the source gives none (FAO-56 Table 19)
  double conductivity_mm_h = missing;     ///< saturated; missing likewise
  double rew_mm = missing;                ///< readily evaporable water, FAO-56 eq. 74
  double evaporation_depth_m = 0.10;      ///< Ze, depth of the layer that evaporation dries: 0.10 to 0.15 m
  std::string source{};                   ///< where the numbers come from, for the screen
};

/// Total available water of a root zone.
///
/// Equation  TAW = 1000 (theta FC - theta WP) Zr
/// Source    FAO-56 (Allen et al. 1998), ch. 8, eq. 82
double taw_mm(const SoilWater& soil, double root_depth_m);

/// Total evaporable water of the top layer: evaporation dries it to half the wilting point.
///
/// Equation  TEW = 1000 (theta FC - 0.5 theta WP) Ze
/// Source    FAO-56, ch. 7, eq. 73
double tew_mm(const SoilWater& soil);

/// Measured values, checked: FC above WP, saturation not below FC.
///
/// Missing   saturation and conductivity may be missing; REW missing is estimated (ours): 5 mm where less than
///           0.09 m³ m⁻³ is available, 7 mm below 0.12, else 9 mm, which are round middles of FAO-56 Table 19
///           for sand, for loamy sand with sandy loam, and for the rest; never more than 0.6 TEW
/// Throws    Error, fields "field_capacity_m3_m3", "wilting_point_m3_m3", "saturation_m3_m3", …
SoilWater measured_soil(SoilWater values);

/// Refuse a soil that the balance cannot run on.
/// Throws    Error naming the field: FC, WP, REW or Ze missing or out of order, REW above TEW
void require_complete(const SoilWater& soil);

}  // namespace v1
}  // namespace noonleaf
