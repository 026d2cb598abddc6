#pragma once

#include <vector>

#include "heat/hot_day.hpp"

/// The drying-out experiment: a tomato bed rooted 0.35 m in the calibration soil (TAW 70 mm), 5 mm down on
/// the first morning; fourteen hot days of 8 mm potential transpiration without water, then 25 mm before dawn
/// and two more such days.
inline constexpr int dry_days = 14, wet_days = 2;
inline constexpr double relief_mm = 25, hot_total_mm = 8;

inline std::vector<noonleaf::WiltDay> drying_out_days() {
  noonleaf::WiltPlanting planting = tomato(5);
  planting.taw_mm = 70;
  planting.raw_mm = (0.40 + 0.04 * (5 - hot_total_mm)) * planting.taw_mm;  // FAO-56 Table 22, footnote 2
  planting.root_depth_m = 0.35;
  std::vector<noonleaf::WiltDay> days;
  for (int day = 0; day < dry_days + wet_days; ++day) {
    if (day == dry_days) planting.dr_mm -= relief_mm;
    days.push_back(through_day(planting, hot_day(), hot_total_mm));
    planting.dr_mm = days.back().depletion_mm;
    planting.leaf_deficit_mm = days.back().leaf_deficit_mm;
  }
  return days;
}
