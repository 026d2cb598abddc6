#pragma once

#include <numbers>

#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/heat/short_math.hpp"
#include "noonleaf/heat/wilt.hpp"

namespace noonleaf {
inline namespace v1 {

/// The equations of hydraulics.hpp, retention.hpp and wilt.hpp for loops over many members: no branch, powers
/// as exp of log.
namespace formula {

/// Saxton & Rawls (2006), eq. 14 and 15, as log2 psi = log2_a - b log2 theta.
struct RetentionLine {
  double log2_a, b;
};
[[gnu::always_inline]] inline RetentionLine retention_line(double field_capacity, double wilting_point) {
  constexpr double log2_33 = 5.044394119358453, log2_1500 = 10.550746785383243;
  const double log2_wet = BatchMath::log(field_capacity) * std::numbers::log2e;
  const double b = (log2_1500 - log2_33) / (log2_wet - BatchMath::log(wilting_point) * std::numbers::log2e);
  return {log2_33 + b * log2_wet, b};
}

/// The water path of a planting (hydraulics.hpp).
struct LeafWater {
  double turgor_loss_mpa, plant_mpa_h_mm, soil_mpa_h_mm;
};

/// log2 of the soil's tension [kPa] at a water content. Soil that holds less than a thousandth is taken as
/// that, and a tension above 2^1000 as that: it gives nothing either way.
[[gnu::always_inline]] inline double log2_tension_kpa(const RetentionLine& line, double theta) {
  const double held = theta < 1e-3 ? 1e-3 : theta;
  const double log2_kpa = line.log2_a - line.b * short_log2(held);
  return log2_kpa > 1000 ? 1000 : log2_kpa;
}

/// hydraulics.hpp, supply, from the tension; -1 where the soil is as dry as the leaves can stand: then they
/// lose all they have within the hour.
[[gnu::always_inline]] inline double supply_mm_h(const LeafWater& leaf, double tension_kpa) {
  constexpr double per_field_capacity_kpa = 1 / 33.0;
  const double drop_mpa = -0.001 * tension_kpa - leaf.turgor_loss_mpa;
  const double flow =
      drop_mpa / (leaf.plant_mpa_h_mm + leaf.soil_mpa_h_mm * per_field_capacity_kpa * tension_kpa);
  return drop_mpa <= 0 ? -1 : flow;
}

/// wilt.hpp, Method: what the leaves lack at the end of an hour. NaN stays NaN.
[[gnu::always_inline]] inline double leaf_deficit_mm(double before_mm, double demand_mm, double supply_mm) {
  const double open = before_mm + demand_mm - supply_mm;
  const double low = open < 0 ? 0 : open;
  return low > leaf_refill_mm ? leaf_refill_mm : low;
}

/// wilt.hpp, Method: depletion after an hour whose transpiration is Ks (FAO-56 eq. 84) times its demand,
/// solved within the hour. First log2 of the share of what was left above RAW that is still left, which is
/// exp(-(demand beyond RAW)/(TAW - RAW)), with per_span = log2 e / (TAW - RAW); then the depletion. What is
/// drier than TAW stays so.
[[gnu::always_inline]] inline double log2_share_left(double dr_mm, double demand_mm, double raw_mm,
                                                     double per_span_mm) {
  const double room = raw_mm - dr_mm > 0 ? raw_mm - dr_mm : 0;
  const double beyond = demand_mm > room ? (demand_mm - room) * per_span_mm : 0;
  return beyond > 1000 ? -1000 : -beyond;
}
[[gnu::always_inline]] inline double dried_mm(double dr_mm, double demand_mm, double taw_mm, double raw_mm,
                                              double left_frac) {
  const double left = taw_mm - (dr_mm > raw_mm ? dr_mm : raw_mm);
  const double stressed = taw_mm - left * left_frac;
  const double dried = demand_mm <= raw_mm - dr_mm ? dr_mm + demand_mm : stressed;
  return dried > dr_mm ? dried : dr_mm;
}

}  // namespace formula
}  // namespace v1
}  // namespace noonleaf
