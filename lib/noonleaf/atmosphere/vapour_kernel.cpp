// Compiled with -O3 -fno-math-errno -fno-trapping-math, the least with which these loops become vector code.
#include "noonleaf/atmosphere/vapour_kernel.hpp"

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/atmosphere/vapour_formula.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void saturation_vapour_pressure(const double* __restrict t_c, std::size_t count, double* __restrict e_kpa, double* __restrict outside) {
  for (std::size_t i = 0; i < count; ++i) {
    const bool bad = (t_c[i] < accepted::temperature_c.low) | (t_c[i] > accepted::temperature_c.high);
    const double e = formula::saturation_vapour_pressure_kpa<BatchMath>(t_c[i]);
    e_kpa[i] = bad ? missing : e;
    outside[i] = bad ? 1.0 : 0.0;
  }
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void saturation_slope(const double* __restrict t_c, std::size_t count, double* __restrict delta_kpa_c, double* __restrict outside) {
  for (std::size_t i = 0; i < count; ++i) {
    const bool bad = (t_c[i] < accepted::temperature_c.low) | (t_c[i] > accepted::temperature_c.high);
    const double delta = formula::saturation_slope_kpa_c<BatchMath>(t_c[i]);
    delta_kpa_c[i] = bad ? missing : delta;
    outside[i] = bad ? 1.0 : 0.0;
  }
}

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
