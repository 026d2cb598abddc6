#include "noonleaf/heat/hydraulics.hpp"

#include <cmath>
#include <numbers>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double table_22_etc_mm_d = 5.0;  // FAO-56 Table 22
constexpr double field_capacity_mpa = -0.033;
constexpr double sine_day_h = 12.0;

double peak_of_sine_day_mm_h(double etc_mm_d) { return etc_mm_d * std::numbers::pi / (2 * sine_day_h); }

// Share of a sine day that is lost when its flow is held at `cap` of its peak.
double loss_of_capped_sine(double cap) {
  const double onset = std::asin(cap);
  return std::cos(onset) - cap * (std::numbers::pi / 2 - onset);
}

// Cap, as a share of the peak, at which a sine day loses `loss_frac`. The loss falls steadily from 1 to 0.
double cap_of_loss(double loss_frac) {
  double low = 0, high = 1;
  for (int step = 0; step < 60; ++step) {
    const double middle = (low + high) / 2;
    (loss_of_capped_sine(middle) > loss_frac ? low : high) = middle;
  }
  return high;
}

double driest_depletion_frac(const RetentionPoints& soil) {
  return soil.theta_33 / (soil.theta_33 - soil.theta_1500);
}

double theta_at(const RetentionCurve& soil, double depletion_frac) {
  require_within("depletion_frac", depletion_frac, 0, driest_depletion_frac(soil.points), "of TAW");
  return soil.points.theta_33 - depletion_frac * (soil.points.theta_33 - soil.points.theta_1500);
}

double soil_potential_mpa(const RetentionCurve& soil, double theta) {
  return -soil_tension_kpa(soil, theta) / 1000;
}

double resistance_mpa_h_mm(const WaterPath& path, double soil_mpa) {
  return path.plant_mpa_h_mm + path.soil_mpa_h_mm * soil_mpa / field_capacity_mpa;
}

[[noreturn]] void refuse_crop(const WaterPathCrop& crop) {
  Problem problem;
  problem.field = "turgor_loss_mpa";
  problem.text = number_text(crop.turgor_loss_mpa);
  problem.message = problem.text + " MPa does not go with p = " + number_text(crop.p_frac) +
                    ": the soil is as dry at that depletion";
  problem.fix = "take a turgor loss further below the soil, or a smaller p";
  throw Error(std::move(problem));
}

}  // namespace

RetentionPoints calibration_soil() { return {.theta_33 = 0.31, .theta_1500 = 0.11, .theta_s = 0.48}; }

WaterPath water_path(const WaterPathCrop& crop) {
  require_within("p_frac", crop.p_frac, 0.1, 0.8, "of TAW");
  require_within("turgor_loss_mpa", crop.turgor_loss_mpa, -4, -0.5, "MPa");
  if (is_missing(crop.p_frac) || is_missing(crop.turgor_loss_mpa)) return {};

  static const double flow_mm_h =
      cap_of_loss(calibration_loss_frac) * peak_of_sine_day_mm_h(table_22_etc_mm_d);
  const RetentionCurve soil = retention_curve(calibration_soil());
  const double soil_mpa = soil_potential_mpa(soil, theta_at(soil, crop.p_frac));
  const double drop_mpa = soil_mpa - crop.turgor_loss_mpa;
  if (drop_mpa <= 0) refuse_crop(crop);
  const double whole = drop_mpa / flow_mm_h;
  return {.turgor_loss_mpa = crop.turgor_loss_mpa,
          .plant_mpa_h_mm = (1 - calibration_soil_share) * whole,
          .soil_mpa_h_mm = calibration_soil_share * whole * field_capacity_mpa / soil_mpa};
}

double supply_mm_h(const WaterPath& path, const RetentionCurve& soil, double depletion_frac) {
  const double theta = theta_at(soil, depletion_frac);
  if (theta <= 0) return 0;
  const double soil_mpa = soil_potential_mpa(soil, theta);
  const double drop_mpa = soil_mpa - path.turgor_loss_mpa;
  return drop_mpa <= 0 ? 0 : drop_mpa / resistance_mpa_h_mm(path, soil_mpa);
}

double leaf_potential_mpa(const WaterPath& path, const RetentionCurve& soil, double depletion_frac,
                          double flow_mm_h) {
  require_within("flow_mm_h", flow_mm_h, 0, 5, "mm/h");
  const double soil_mpa = soil_potential_mpa(soil, theta_at(soil, depletion_frac));
  return soil_mpa - flow_mm_h * resistance_mpa_h_mm(path, soil_mpa);
}

double depletion_frac_at_shortage(const WaterPath& path, const RetentionCurve& soil, const SineDay& day) {
  require_within("etc_mm_d", day.etc_mm_d, 0, 20, "mm/d");
  require_within("loss_frac", day.loss_frac, 0, 0.9, "of the day");
  const double needed_mm_h = cap_of_loss(day.loss_frac) * peak_of_sine_day_mm_h(day.etc_mm_d);
  if (is_missing(needed_mm_h) || is_missing(supply_mm_h(path, soil, 0))) return missing;
  if (supply_mm_h(path, soil, 0) < needed_mm_h) return 0;
  double low = 0, high = 0.999 * driest_depletion_frac(soil.points);
  for (int step = 0; step < 60; ++step) {
    const double middle = (low + high) / 2;
    (supply_mm_h(path, soil, middle) >= needed_mm_h ? low : high) = middle;
  }
  return low;
}

}  // namespace v1
}  // namespace noonleaf
