// Compiled with -O3 -fno-math-errno -fno-trapping-math, the least with which these loops become vector code.
#include "noonleaf/reference/daily_kernel.hpp"

#include <bit>
#include <cstdint>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/atmosphere/pressure_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {
namespace {

/// Whether pressure and soil heat flux come row by row or hold for the block.
enum class Extra { of_block, by_row };

template <Extra extra>
[[gnu::always_inline]] inline std::uint64_t outside_bits(const DailyBlock& in, std::size_t i) {
  using namespace accepted;
  std::uint64_t bits =
      outside_bits(in.t_max_c[i], temperature_c) | outside_bits(in.t_min_c[i], temperature_c) |
      std::bit_cast<std::uint64_t>(in.t_max_c[i] - in.t_min_c[i]) |
      outside_bits(in.ea_kpa[i], vapour_pressure_kpa) | outside_bits(in.rs_mj_m2_d[i], radiation_mj_m2_d) |
      outside_bits(in.u2_m_s[i], wind_m_s);
  if constexpr (extra == Extra::by_row) {
    bits |= outside_bits(in.pressure_kpa[i], pressure_kpa) | outside_bits(in.g_mj_m2_d[i], soil_heat_mj_m2_d);
  }
  return bits;
}

template <Equation equation, Extra extra>
[[gnu::always_inline]] inline bool loop(const DailyBlock in, std::size_t count, double* __restrict et0_mm_d) {
  std::uint64_t outside = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const double g = extra == Extra::by_row ? in.g_mj_m2_d[i] : 0.0;
    const double gamma =
        extra == Extra::by_row ? formula::psychrometric_constant_kpa_c(in.pressure_kpa[i]) : in.gamma_kpa_c;
    const double ra = in.ra_mj_m2_d[i];
    const formula::DailyTerms day = formula::daily_terms<BatchMath, equation>(
        {in.t_max_c[i], in.t_min_c[i], in.ea_kpa[i], in.rs_mj_m2_d[i], in.u2_m_s[i], g},
        {gamma, ra, formula::clear_sky(ra, in.elevation_m)}, in.surface);
    et0_mm_d[i] = formula::depth(day.terms);
    outside |= outside_bits<extra>(in, i);
  }
  return accepted::sign_of(outside);
}

template <Equation equation>
[[gnu::always_inline]] inline bool net_radiation_loop(const DailyBlock in, std::size_t count,
                                                      double* __restrict rn_mj_m2_d) {
  std::uint64_t outside = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const double ra = in.ra_mj_m2_d[i];
    formula::DailyRow row{};  // net radiation asks for neither wind nor soil heat
    row.t_max_c = in.t_max_c[i];
    row.t_min_c = in.t_min_c[i];
    row.ea_kpa = in.ea_kpa[i];
    row.rs_mj_m2_d = in.rs_mj_m2_d[i];
    const formula::DailyTerms day = formula::daily_terms<BatchMath, equation>(
        row, {in.gamma_kpa_c, ra, formula::clear_sky(ra, in.elevation_m)}, in.surface);
    rn_mj_m2_d[i] = day.rn_mj_m2_d;
    outside |= outside_bits<Extra::of_block>(in, i);
  }
  return accepted::sign_of(outside);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
bool net_radiation_fao56(const DailyBlock& in, std::size_t count, double* rn_mj_m2_d) {
  return net_radiation_loop<Equation::fao56>(in, count, rn_mj_m2_d);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
bool net_radiation_asce(const DailyBlock& in, std::size_t count, double* rn_mj_m2_d) {
  return net_radiation_loop<Equation::asce>(in, count, rn_mj_m2_d);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
bool fao56(const DailyBlock& in, std::size_t count, double* et0_mm_d) {
  return loop<Equation::fao56, Extra::of_block>(in, count, et0_mm_d);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
bool fao56_extra(const DailyBlock& in, std::size_t count, double* et0_mm_d) {
  return loop<Equation::fao56, Extra::by_row>(in, count, et0_mm_d);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
bool asce(const DailyBlock& in, std::size_t count, double* et0_mm_d) {
  return loop<Equation::asce, Extra::of_block>(in, count, et0_mm_d);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
bool asce_extra(const DailyBlock& in, std::size_t count, double* et0_mm_d) {
  return loop<Equation::asce, Extra::by_row>(in, count, et0_mm_d);
}

}  // namespace

bool daily_row_is_bad(const DailyBlock& in, std::size_t i) {
  using namespace accepted;
  return is_outside(in.t_max_c[i], temperature_c) || is_outside(in.t_min_c[i], temperature_c) ||
         in.t_max_c[i] < in.t_min_c[i] || is_outside(in.ea_kpa[i], vapour_pressure_kpa) ||
         is_outside(in.rs_mj_m2_d[i], radiation_mj_m2_d) || is_outside(in.u2_m_s[i], wind_m_s) ||
         (in.pressure_kpa != nullptr && is_outside(in.pressure_kpa[i], pressure_kpa)) ||
         (in.g_mj_m2_d != nullptr && is_outside(in.g_mj_m2_d[i], soil_heat_mj_m2_d));
}

bool daily_et0(Equation equation, const DailyBlock& in, std::size_t count, double* et0_mm_d) {
  const bool by_row = in.pressure_kpa != nullptr;
  if (equation == Equation::asce) {
    return by_row ? asce_extra(in, count, et0_mm_d) : asce(in, count, et0_mm_d);
  }
  return by_row ? fao56_extra(in, count, et0_mm_d) : fao56(in, count, et0_mm_d);
}

bool daily_net_radiation(Equation equation, const DailyBlock& in, std::size_t count, double* rn_mj_m2_d) {
  return (equation == Equation::asce ? net_radiation_asce : net_radiation_fao56)(in, count, rn_mj_m2_d);
}

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
