#pragma once

#include <cmath>

namespace noonleaf {
inline namespace v1 {

/// The equations of coefficients.hpp and nothing else; guards and limits on input live at the doors.
namespace crop_formula {

/// FAO-56 eq. 62, 65, 70, 72: the term they share. 0 for bare ground.
[[gnu::always_inline]] inline double climate_term(double u2, double rh_min, double h) {
  return (0.04 * (u2 - 2) - 0.004 * (rh_min - 45)) * std::pow(h / 3, 0.3);
}

/// FAO-56 eq. 72.
[[gnu::always_inline]] inline double kc_max(double kcb, double term) {
  const double open = 1.2 + term;
  const double over_crop = kcb + 0.05;
  return open > over_crop ? open : over_crop;
}

/// FAO-56 eq. 76, with its limits for numerical stability: Kcb - Kc min not below 0.01, fc not above 0.99.
/// A plant that does not transpire (Kcb = 0, bare ground) covers nothing.
[[gnu::always_inline]] inline double cover(double kcb, double kc_max, double h, double kc_min) {
  if (kcb == 0) return 0;
  const double above = kcb - kc_min > 0.01 ? kcb - kc_min : 0.01;
  const double fc = std::pow(above / (kc_max - kc_min), 1 + 0.5 * h);
  return fc < 0.99 ? fc : 0.99;
}

}  // namespace crop_formula
}  // namespace v1
}  // namespace noonleaf
