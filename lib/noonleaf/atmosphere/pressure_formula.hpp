#pragma once

namespace noonleaf {
inline namespace v1 {
namespace formula {

[[gnu::always_inline]] inline double psychrometric_constant_kpa_c(double pressure_kpa) {
  return 0.665e-3 * pressure_kpa;  // FAO-56 eq. 8
}

}  // namespace formula
}  // namespace v1
}  // namespace noonleaf
