#pragma once

namespace noonleaf {
inline namespace v1 {

/// The equations of runoff.hpp and nothing else; no argument may be NaN here.
namespace runoff_formula {

/// Hawkins et al. (1985), ARC I: the curve number of dry ground by that of average wetness.
[[gnu::always_inline]] inline double curve_number_dry(double average) {
  return average / (2.281 - 0.01281 * average);
}

/// Hawkins et al. (1985), ARC III: of wet ground.
[[gnu::always_inline]] inline double curve_number_wet(double average) {
  return average / (0.427 + 0.00573 * average);
}

/// How dry the surface is between both: Allen et al. (2007). Not yet held within 0 to 1.
[[gnu::always_inline]] inline double dryness(double de, double rew, double tew) {
  const double wet_to = 0.5 * rew;
  return (de - wet_to) / (0.7 * rew + 0.3 * tew - wet_to);
}

/// TR-55 eq. 2-4, in mm.
[[gnu::always_inline]] inline double retention_mm(double curve_number) { return 25400 / curve_number - 254; }

/// TR-55 eq. 2-3; 0 where all rain is held, on sealed ground without rain too.
[[gnu::always_inline]] inline double runoff_mm(double rain, double retention) {
  const double beyond = rain - 0.2 * retention;
  const double runoff = beyond * beyond / (rain + 0.8 * retention);
  return beyond > 0 ? runoff : 0;
}

}  // namespace runoff_formula
}  // namespace v1
}  // namespace noonleaf
