// Compiled with -O3 -fno-math-errno -fno-trapping-math, the least with which these loops become vector code.
#include "noonleaf/atmosphere/vapour_kernel.hpp"

#include <cstdint>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/atmosphere/vapour_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
bool saturation_vapour_pressure(const double* __restrict t_c, std::size_t count, double* __restrict e_kpa) {
  std::uint64_t outside = 0;
  for (std::size_t i = 0; i < count; ++i) {
    e_kpa[i] = formula::saturation_vapour_pressure_kpa<BatchMath>(t_c[i]);
    outside |= accepted::outside_bits(t_c[i], accepted::temperature_c);
  }
  return accepted::sign_of(outside);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
bool saturation_slope(const double* __restrict t_c, std::size_t count, double* __restrict delta_kpa_c) {
  std::uint64_t outside = 0;
  for (std::size_t i = 0; i < count; ++i) {
    delta_kpa_c[i] = formula::saturation_slope_kpa_c<BatchMath>(t_c[i]);
    outside |= accepted::outside_bits(t_c[i], accepted::temperature_c);
  }
  return accepted::sign_of(outside);
}

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
