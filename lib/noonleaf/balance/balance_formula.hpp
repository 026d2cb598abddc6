#pragma once

namespace noonleaf {
inline namespace v1 {

/// The equations of evaporation.hpp and root_zone.hpp and nothing else. Written with comparisons that compile
/// to min and max; no argument may be NaN here.
namespace balance_formula {

[[gnu::always_inline]] inline double least(double a, double b) { return a < b ? a : b; }
[[gnu::always_inline]] inline double most(double a, double b) { return a > b ? a : b; }

/// FAO-56 eq. 74, with 1 / (TEW - REW), which stays the same for a soil.
[[gnu::always_inline]] inline double kr(double de, double tew, double per_drying) {
  return most(0, least(1, (tew - de) * per_drying));
}

/// FAO-56 eq. 75.
[[gnu::always_inline]] inline double few(double fc, double fw) { return least(1 - fc, fw); }

/// FAO-56 text below eq. 75, drip beneath the canopy.
[[gnu::always_inline]] inline double few_under_canopy(double fc, double fw) {
  return least(1 - fc, (1 - 0.67 * fc) * fw);
}

/// FAO-56 eq. 71.
[[gnu::always_inline]] inline double ke(double kr, double kc_max, double kcb, double few) {
  return least(kr * (kc_max - kcb), few * kc_max);
}

/// FAO-56 Table 22, footnote 2.
[[gnu::always_inline]] inline double p_adjusted(double p_table, double etc) {
  return most(0.1, least(0.8, p_table + 0.04 * (5 - etc)));
}

/// FAO-56 eq. 84.
[[gnu::always_inline]] inline double ks(double dr, double taw, double raw) {
  return dr <= raw ? 1 : most(0, (taw - dr) / (taw - raw));
}

}  // namespace balance_formula
}  // namespace v1
}  // namespace noonleaf
