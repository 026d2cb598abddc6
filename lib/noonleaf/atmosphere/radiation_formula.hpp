#pragma once

#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/constants.hpp"

namespace noonleaf {
inline namespace v1 {
namespace formula {

/// Rs/Rso with its upper limit (FAO-56 eq. 39). Where the sun stays down both are 0 and the stand-in is
/// given. Written so that a missing value stays missing.
[[gnu::always_inline]] inline double relative_sun(double rs, double rso, double without_sun) {
  const double measured = rs / rso;  // before the choices, so that a loop over it stays free of branches
  const double limited = measured > 1.0 ? 1.0 : measured;
  return rso == 0.0 ? without_sun : limited;
}

/// Cloudiness factor. FAO-56 eq. 39, last bracket.
[[gnu::always_inline]] inline double cloudiness(double relative_sun) { return 1.35 * relative_sun - 0.35; }

/// Net emissivity of the surface under humid air. FAO-56 eq. 39, middle bracket.
template <class Math>
[[gnu::always_inline]] inline double net_emissivity(double ea_kpa) {
  return 0.34 - 0.14 * Math::sqrt(ea_kpa);
}

[[gnu::always_inline]] inline double fourth_power(double x) { return (x * x) * (x * x); }

/// Black-body emission at the mean of the fourth powers of the day's extremes. FAO-56 eq. 39, first bracket.
[[gnu::always_inline]] inline double mean_emission(double sigma, double t_max_c, double t_min_c) {
  return sigma * ((fourth_power(t_max_c + kelvin_offset) + fourth_power(t_min_c + kelvin_offset)) / 2.0);
}

/// Clear-sky radiation from the elevation. FAO-56 eq. 37.
[[gnu::always_inline]] inline double clear_sky(double ra, double elevation_m) {
  return (0.75 + 2e-5 * elevation_m) * ra;
}

/// Net solar radiation. FAO-56 eq. 38.
[[gnu::always_inline]] inline double net_solar(double rs, double albedo) { return (1.0 - albedo) * rs; }

}  // namespace formula
}  // namespace v1
}  // namespace noonleaf
