#pragma once

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// When the sprinkler runs.
enum class SprayTime { day, night };

/// The air it runs in.
struct SprayAir {
  double wind_m_s = missing;  ///< 2 m above the ground
  double rh_pct = missing;    ///< used by day only
};

/// Share of the spray lost in the air to wind drift and evaporation.
///
/// Equation  day 20.3 + 0.214 U^2 - 0.00229 RH^2, night 3.7 + 1.31 U, in percent
/// Source    Playán et al. 2005, Agric. Water Manage. 76, solid sets; from memory
/// Range     measured on farm sprinklers in the dry Ebro valley; accepted: wind 0 to 12 m/s, RH 0 to 100 %
/// Result    fraction; 0 where the day's line falls below 0 (calm air above 94 % RH)
/// Missing   NaN in, NaN out (humidity by day only)
/// Throws    Error, field "wind_m_s" or "rh_pct", when outside the accepted range
/// Note      A leaning, not a measurement, for a hose-end sprinkler: the University of Florida (AE048) gives
///           1.5 % evaporation as a mean of the day and 3 % on a summer afternoon, drift not counted.
double spray_loss_frac(SprayTime time, const SprayAir& air);

/// Wind at which overhead watering should stop: uniformity is severely impaired above it.
/// Source    Yacoubi, Zayani, Slatni & Playán 2012, Engineering 4(10)
inline constexpr double spray_stop_wind_m_s = 4.0;

}  // namespace v1
}  // namespace noonleaf
