#pragma once

namespace noonleaf {
inline namespace v1 {

/// The equations of vapour.hpp, each written once; Math is ScalarMath or BatchMath (elementary.hpp).
namespace formula {

template <class Math>
[[gnu::always_inline]] inline double saturation_vapour_pressure_kpa(double t) {
  return 0.6108 * Math::exp(17.27 * t / (t + 237.3));  // FAO-56 eq. 11, coefficients as printed
}

/// FAO-56 eq. 13 where e°(t) is known already.
[[gnu::always_inline]] inline double saturation_slope_kpa_c(double es_of_t, double t) {
  return 4098.0 * es_of_t / ((t + 237.3) * (t + 237.3));
}

template <class Math>
[[gnu::always_inline]] inline double saturation_slope_kpa_c(double t) {
  return saturation_slope_kpa_c(saturation_vapour_pressure_kpa<Math>(t), t);
}

template <class Math>
[[gnu::always_inline]] inline double saturation_slope_asce_kpa_c(double t) {
  return 2503.0 * Math::exp(17.27 * t / (t + 237.3)) / ((t + 237.3) * (t + 237.3));  // ASCE-EWRI 2005 eq. 5
}

}  // namespace formula
}  // namespace v1
}  // namespace noonleaf
