#pragma once

#include <algorithm>
#include <cmath>
#include <limits>

namespace noonleaf {
inline namespace v1 {

// The Green-Ampt relations on plain doubles, a = psi dtheta [mm], k = K [mm/h], depths in mm, times in hours.
// A cycle needs them for two wetting fronts; nowhere else does the equation exist.

/// F - a ln(1 + F/a), the left side of eq. 4.3.6; equals k t for soil ponded from the start.
inline double ponded_time_term(double a, double infiltrated) {
  return a > 0.0 ? infiltrated - a * std::log1p(infiltrated / a) : infiltrated;
}

/// The F whose ponded_time_term is `term`, by Newton's method from above: the term is convex and rising.
inline double depth_for_time_term(double a, double term) {
  if (a <= 0.0 || term <= 0.0) return std::max(term, 0.0);
  // ln(1+x) <= x (6+x)/(6+4x) makes this start an upper bound of the root.
  const double y = term / a;
  double depth = a * (2.0 / 3.0 * y + std::sqrt(4.0 / 9.0 * y * y + 2.0 * y));
  for (int step = 0; step < 50; ++step) {
    const double next = depth - (ponded_time_term(a, depth) - term) * (a + depth) / depth;
    if (!(next < depth)) break;  // converged to the last digit
    depth = next;
  }
  return depth;
}

/// Depth at which a steady rate above k begins to pond, a k / (i - k); infinite otherwise.
inline double ponding_depth(double a, double k, double rate) {
  return rate > k ? a * k / (rate - k) : std::numeric_limits<double>::infinity();
}

/// Depth after `hours` of ponding that began at `infiltrated`, eq. 4.4.5.
inline double depth_after_ponding(double a, double k, double infiltrated, double hours) {
  return depth_for_time_term(a, ponded_time_term(a, infiltrated) + k * hours);
}

}  // namespace v1
}  // namespace noonleaf
