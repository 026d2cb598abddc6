#include "noonleaf/balance/seed_zone.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/balance/balance_formula.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double kc_max_bare = 1.20;  // FAO-56 eq. 72 without plants
constexpr double least_depth_m = 0.02;
constexpr double daylight_h = 12;

}  // namespace

SeedZone seed_zone(const SoilWater& soil, double sowing_depth_m) {
  require_complete(soil);
  require_within("sowing_depth_m", sowing_depth_m, 0, 0.15, "m");
  SeedZone zone;
  zone.depth_m = std::max(least_depth_m, 2 * sowing_depth_m);
  zone.tew_mm = tew_mm(soil) * zone.depth_m / soil.evaporation_depth_m;
  zone.rew_mm = soil.rew_mm * zone.depth_m / soil.evaporation_depth_m;
  zone.damp_mm = 0.5 * taw_mm(soil, zone.depth_m);
  return zone;
}

double seed_zone_depletion_mm(const SeedZone& zone, double de_mm, double water_mm, double et0_mm) {
  require_within("water_mm", water_mm, 0, 500, "mm");
  require_within("et0_mm", et0_mm, 0, 20, "mm");
  if (is_missing(de_mm) || is_missing(water_mm) || is_missing(et0_mm) || is_missing(zone.tew_mm))
    return missing;
  const double wet = std::max(0.0, de_mm - water_mm);
  const double demand = kc_max_bare * et0_mm;
  const double first = std::min(demand, std::max(0.0, zone.rew_mm - wet));  // at the rate that energy allows
  const double from = wet + first;
  if (first == demand) return from;
  // The falling stage in closed form: a layer this thin dries through it within hours, so a day's step is too
  // long.
  const double span = zone.tew_mm - zone.rew_mm;
  return zone.tew_mm - (zone.tew_mm - from) * std::exp(-(demand - first) / span);
}

SeedZoneWatering seed_zone_watering(const SeedZone& zone, double et0_mm_d) {
  require_within("et0_mm_d", et0_mm_d, 0.1, 20, "mm/d");
  SeedZoneWatering plan;
  plan.depth_mm = zone.damp_mm;
  const double demand = kc_max_bare * et0_mm_d;
  // ET0-days from full to the edge of damp: the energy-limited part, then the falling part.
  double needed = std::min(zone.damp_mm, zone.rew_mm);
  if (zone.damp_mm > zone.rew_mm) {
    const double span = zone.tew_mm - zone.rew_mm;
    needed += span * std::log(span / (zone.tew_mm - zone.damp_mm));
  }
  plan.per_day = demand / needed;
  plan.hours_between = daylight_h / plan.per_day;
  return plan;
}

}  // namespace v1
}  // namespace noonleaf
