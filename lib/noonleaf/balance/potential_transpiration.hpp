#pragma once

#include <algorithm>

#include "noonleaf/balance/daily_step.hpp"

namespace noonleaf {
inline namespace v1 {

/// What the plants of a day would transpire with all the water they want: Kcb ET0; under the single
/// coefficient, and under a plant factor, ETc.
inline double potential_transpiration_mm(const BalanceDetail& day) {
  return is_known(day.kcb) ? day.kcb * day.et0_mm_d : day.etc_mm_d;
}

/// What of it they lost to dryness.
inline double lost_transpiration_mm(const BalanceDetail& day) {
  return std::max(0.0, potential_transpiration_mm(day) - day.transpiration_mm);
}

}  // namespace v1
}  // namespace noonleaf
