#pragma once

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A wind speed and the height at which it was measured.
struct WindReading {
  double wind_m_s = missing;  ///< at that height
  double height_m = 2.0;      ///< of the anemometer above the ground
};

/// Wind speed at 2 m over short grass from another height.
///
/// Equation  u2 = uz 4.87 / ln(67.8 z - 5.42)
/// Source    FAO-56 (Allen et al. 1998), ch. 3, eq. 47; ASCE-EWRI 2005, eq. 33
/// Input     wind_m_s  [m s⁻¹], accepted 0 to 60; height_m  [m], accepted 0.5 to 200 (our guards)
/// Result    [m s⁻¹]
/// Missing   NaN if either is missing
/// Throws    Error, naming the field, when outside the accepted range
/// Note      At 2 m the printed factor is 1.0002, not 1: the reading itself is returned there. Holds over
///           short grass; an anemometer over tall crops or roofs reads something else.
double wind_speed_at_2m_m_s(const WindReading& reading);

}  // namespace v1
}  // namespace noonleaf
