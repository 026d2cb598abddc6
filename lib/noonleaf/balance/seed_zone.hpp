#pragma once

#include <vector>

#include "noonleaf/missing.hpp"
#include "noonleaf/soil/soil_water.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The thin layer that a seed lives in until it is up.
///
/// Method    FAO-56 ch. 7's top layer (eq. 73, 74, 77) with a depth of its own: twice the sowing depth, 20 mm
///           at least (ours: the source's layer is 100 to 150 mm, in which a seed at 10 mm may lie dry while
///           the layer as a whole is moist). REW keeps its share of TEW.
struct SeedZone {
  double depth_m = missing;  ///< thickness of the layer
  double tew_mm = missing;   ///< what evaporation can take from it
  double rew_mm = missing;   ///< what it can take at full rate
  double damp_mm =
      missing;  ///< depletion up to which the seed has water: half of what the layer holds available
};
/// The seed zone of a soil and a sowing depth: see SeedZone.
SeedZone seed_zone(const SoilWater& soil, double sowing_depth_m);

/// Depletion of the seed zone after an hour-by-hour or day-by-day piece of weather.
///
/// Equation  De + Kr Kc max ET0 - water, between 0 and TEW; Kc max = 1.20 for bare ground (eq. 72, h = 0)
/// Source    FAO-56 (Allen et al. 1998), ch. 7, eq. 71-77
/// Input     water_mm  comes first; et0_mm  of the piece
/// Missing   NaN in, NaN out
double seed_zone_depletion_mm(const SeedZone& zone, double de_mm, double water_mm, double et0_mm);

/// Light and frequent: how often and how much until emergence.
struct SeedZoneWatering {
  double depth_mm = missing;       ///< of one watering: from the edge of damp back to full
  double per_day = missing;        ///< waterings in a day of that ET0, without rain; a day may need none
  double hours_between = missing;  ///< of the ET0-weighted daylight, taken as 12 h
};

/// Method    the layer is let dry to `damp_mm` and refilled; evaporation as seed_zone_depletion_mm
/// Input     et0_mm_d above 0 to 20
SeedZoneWatering seed_zone_watering(const SeedZone& zone, double et0_mm_d);

}  // namespace v1
}  // namespace noonleaf
