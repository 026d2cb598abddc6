#include "noonleaf/plan/soil_check.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "noonleaf/soil/retention.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

// Middle of each class as a share of TAW that is used up; the last is field capacity itself.
constexpr std::array<double, 5> feel_depleted_frac{0.875, 0.625, 0.375, 0.125, 0.0};
constexpr double field_capacity_sd_frac = 0.10;
constexpr double probe_sd_m3_m3 = 0.04, tension_sd_m3_m3 = 0.05;
constexpr double unchecked_sd_frac = 0.20, growth_sd_frac_d = 0.02;

double water_at_tension_m3_m3(const SoilWater& soil, double tension_kpa) {
  const RetentionCurve curve = retention_curve({.theta_33 = soil.field_capacity_m3_m3,
                                                .theta_1500 = soil.wilting_point_m3_m3,
                                                .theta_s = soil.saturation_m3_m3});
  const double theta = soil_water_at_tension_m3_m3(curve, tension_kpa);
  // Wetter than 33 kPa where no saturation is known: at field capacity or above, all that counts here.
  return is_missing(theta) ? soil.field_capacity_m3_m3 : theta;
}

}  // namespace

FoundDepletion depletion_found(const JournalEntry& entry, const SoilWater& soil, double root_depth_m) {
  const double taw = taw_mm(soil, root_depth_m);
  const auto at_water = [&](double theta_m3_m3, double sd_m3_m3) {
    const double dr_mm = 1000 * (soil.field_capacity_m3_m3 - theta_m3_m3) * root_depth_m;
    return FoundDepletion{.dr_mm = std::clamp(dr_mm, 0.0, taw), .sd_mm = 1000 * sd_m3_m3 * root_depth_m};
  };
  if (entry.event == JournalEvent::feel && entry.feel) {
    const double sd_frac = *entry.feel == SoilFeel::field_capacity ? field_capacity_sd_frac : feel_sd_frac;
    return {.dr_mm = feel_depleted_frac[static_cast<std::size_t>(*entry.feel)] * taw, .sd_mm = sd_frac * taw};
  }
  if (entry.event == JournalEvent::probe && is_known(entry.water_pct))
    return at_water(entry.water_pct / 100, probe_sd_m3_m3);
  if (entry.event == JournalEvent::probe && is_known(entry.tension_kpa)) {
    return at_water(water_at_tension_m3_m3(soil, entry.tension_kpa), tension_sd_m3_m3);
  }
  return {};
}

double account_sd_mm(double taw_mm, double sd_after_check_mm, double days_since_check) {
  const double highest_mm = unchecked_sd_frac * taw_mm;
  if (is_missing(sd_after_check_mm)) return highest_mm;
  return std::min(highest_mm, sd_after_check_mm + growth_sd_frac_d * taw_mm * days_since_check);
}

FoundDepletion weighted(const FoundDepletion& before, const FoundDepletion& found) {
  const double account = before.sd_mm * before.sd_mm, check = found.sd_mm * found.sd_mm;
  const double weight = account / (account + check);
  return {.dr_mm = before.dr_mm + weight * (found.dr_mm - before.dr_mm),
          .sd_mm = before.sd_mm * std::sqrt(1 - weight)};
}

double demand_passed_frac(std::optional<std::chrono::minutes> time_of_day) {
  constexpr double dawn_h = 6, dusk_h = 20;
  if (!time_of_day) return 0;
  const double hour = std::chrono::duration<double, std::ratio<3600>>(*time_of_day).count();
  const double share = std::clamp((hour - dawn_h) / (dusk_h - dawn_h), 0.0, 1.0);
  return (1 - std::cos(std::numbers::pi * share)) / 2;
}

}  // namespace v1
}  // namespace noonleaf
