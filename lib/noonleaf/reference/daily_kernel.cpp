// Compiled with -O3 -fno-math-errno -fno-trapping-math, the least with which these loops become vector code.
#include "noonleaf/reference/daily_kernel.hpp"

#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/atmosphere/pressure_formula.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {
namespace {

template <Equation equation>
[[gnu::always_inline]] inline void daily_et0(const DailyBlock block, std::size_t count,
                                             double* __restrict et0_mm_d, double* __restrict outside) {
  for (std::size_t i = 0; i < count; ++i) {
    const formula::DailyRow day{block.t_max_c[i],    block.t_min_c[i], block.ea_kpa[i],
                                block.rs_mj_m2_d[i], block.u2_m_s[i],  block.g_mj_m2_d[i]};
    const double ra = block.ra_mj_m2_d[i];
    const formula::DailySky sky{formula::psychrometric_constant_kpa_c(block.pressure_kpa[i]), ra,
                                formula::clear_sky(ra, block.elevation_m)};
    const double et0 =
        formula::depth(formula::daily_terms<BatchMath, equation>(day, sky, block.surface).terms);
    const bool bad = daily_row_is_bad(block, i);
    et0_mm_d[i] = bad ? missing : et0;
    outside[i] = bad ? 1.0 : 0.0;
  }
}

}  // namespace

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void daily_et0_fao56(const DailyBlock& in, std::size_t count, double* et0_mm_d, double* outside) {
  daily_et0<Equation::fao56>(in, count, et0_mm_d, outside);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void daily_et0_asce(const DailyBlock& in, std::size_t count, double* et0_mm_d, double* outside) {
  daily_et0<Equation::asce>(in, count, et0_mm_d, outside);
}

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
