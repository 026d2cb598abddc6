// Compiled with -O3 -fno-math-errno -fno-trapping-math, the least with which these loops become vector code.
#include "noonleaf/reference/hourly_kernel.hpp"

#include <cstdint>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/atmosphere/pressure_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {
namespace {

[[gnu::always_inline]] inline std::uint64_t outside_bits(const HourlyBlock& in, std::size_t i) {
  using namespace accepted;
  return outside_bits(in.t_c[i], temperature_c) | outside_bits(in.ea_kpa[i], vapour_pressure_kpa) |
         outside_bits(in.rs_mj_m2_h[i], radiation_mj_m2_h) | outside_bits(in.u2_m_s[i], wind_m_s);
}

template <Equation equation>
[[gnu::always_inline]] inline bool relative_sun_loop(const HourlyBlock in, std::size_t count,
                                                     double* __restrict relative_sun) {
  std::uint64_t outside = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const double rso = formula::clear_sky(in.ra_mj_m2_h[i], in.elevation_m);
    relative_sun[i] = formula::hourly_relative_sun<equation>(in.rs_mj_m2_h[i], rso);
    outside |= outside_bits(in, i);
  }
  return accepted::sign_of(outside);
}

template <Equation equation>
[[gnu::always_inline]] inline void et0_loop(const HourlyBlock in, const double* __restrict relative_sun,
                                            const double* __restrict day_g, std::size_t count,
                                            double* __restrict et0_mm_h) {
  for (std::size_t i = 0; i < count; ++i) {
    const formula::HourTerms hour =
        formula::hourly_terms<BatchMath, equation>({in.t_c[i], in.ea_kpa[i], in.rs_mj_m2_h[i], in.u2_m_s[i]},
                                                   in.gamma_kpa_c, relative_sun[i], day_g[i], in.surface);
    et0_mm_h[i] = formula::depth(hour.terms);
  }
}

template <Equation equation>
[[gnu::always_inline]] inline void et0_with_pressure_loop(const HourlyBlock in,
                                                          const double* __restrict relative_sun,
                                                          const double* __restrict day_g, std::size_t count,
                                                          double* __restrict et0_mm_h) {
  for (std::size_t i = 0; i < count; ++i) {
    const double gamma = formula::psychrometric_constant_kpa_c(in.pressure_kpa[i]);
    const formula::HourTerms hour =
        formula::hourly_terms<BatchMath, equation>({in.t_c[i], in.ea_kpa[i], in.rs_mj_m2_h[i], in.u2_m_s[i]},
                                                   gamma, relative_sun[i], day_g[i], in.surface);
    et0_mm_h[i] = formula::depth(hour.terms);
  }
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
bool relative_sun_fao56(const HourlyBlock& in, std::size_t count, double* relative_sun) {
  return relative_sun_loop<Equation::fao56>(in, count, relative_sun);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
bool relative_sun_asce(const HourlyBlock& in, std::size_t count, double* relative_sun) {
  return relative_sun_loop<Equation::asce>(in, count, relative_sun);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void fao56(const HourlyBlock& in, const double* relative_sun, const double* day_g, std::size_t count, double* et0) {
  et0_loop<Equation::fao56>(in, relative_sun, day_g, count, et0);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void fao56_pressure(const HourlyBlock& in, const double* relative_sun, const double* day_g, std::size_t count,
                    double* et0) {
  et0_with_pressure_loop<Equation::fao56>(in, relative_sun, day_g, count, et0);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void asce(const HourlyBlock& in, const double* relative_sun, const double* day_g, std::size_t count, double* et0) {
  et0_loop<Equation::asce>(in, relative_sun, day_g, count, et0);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void asce_pressure(const HourlyBlock& in, const double* relative_sun, const double* day_g, std::size_t count,
                   double* et0) {
  et0_with_pressure_loop<Equation::asce>(in, relative_sun, day_g, count, et0);
}

bool suspect_pressure(const HourlyBlock& in, std::size_t count) {
  if (in.pressure_kpa == nullptr) return false;
  for (std::size_t i = 0; i < count; ++i) {
    if (accepted::is_outside(in.pressure_kpa[i], accepted::pressure_kpa)) return true;
  }
  return false;
}

}  // namespace

bool hourly_row_is_bad(const HourlyBlock& in, std::size_t i) {
  using namespace accepted;
  return is_outside(in.t_c[i], temperature_c) || is_outside(in.ea_kpa[i], vapour_pressure_kpa) ||
         is_outside(in.rs_mj_m2_h[i], radiation_mj_m2_h) || is_outside(in.u2_m_s[i], wind_m_s) ||
         (in.pressure_kpa != nullptr && is_outside(in.pressure_kpa[i], pressure_kpa));
}

bool hourly_relative_sun(Equation equation, const HourlyBlock& in, std::size_t count, double* relative_sun) {
  const bool suspect = equation == Equation::asce ? relative_sun_asce(in, count, relative_sun)
                                                  : relative_sun_fao56(in, count, relative_sun);
  return suspect || suspect_pressure(in, count);
}

void hourly_et0(Equation equation, const HourlyBlock& in, const double* relative_sun, const double* day_g,
                std::size_t count, double* et0_mm_h) {
  const bool by_row = in.pressure_kpa != nullptr;
  if (equation == Equation::asce) {
    (by_row ? asce_pressure : asce)(in, relative_sun, day_g, count, et0_mm_h);
  } else {
    (by_row ? fao56_pressure : fao56)(in, relative_sun, day_g, count, et0_mm_h);
  }
}

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
