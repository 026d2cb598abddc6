#pragma once

#include <cstddef>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/reference/penman_monteith_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {

/// The columns of one block, side by side.
struct DailyBlock {
  const double *t_max_c, *t_min_c, *ea_kpa, *rs_mj_m2_d, *u2_m_s, *pressure_kpa, *g_mj_m2_d;
  const double* ra_mj_m2_d;
  double elevation_m;
  formula::SurfaceCoefficients surface;
};

/// Whether a row has a value outside its accepted range. A missing one is not outside.
[[gnu::always_inline]] inline bool daily_row_is_bad(const DailyBlock& in, std::size_t i) {
  using namespace accepted;
  const auto outside = [](double value, Range range) { return (value < range.low) | (value > range.high); };
  return outside(in.t_max_c[i], temperature_c) | outside(in.t_min_c[i], temperature_c) |
         (in.t_max_c[i] < in.t_min_c[i]) | outside(in.ea_kpa[i], vapour_pressure_kpa) |
         outside(in.rs_mj_m2_d[i], radiation_mj_m2_d) | outside(in.u2_m_s[i], wind_m_s) |
         outside(in.pressure_kpa[i], pressure_kpa) | outside(in.g_mj_m2_d[i], soil_heat_mj_m2_d);
}

/// One block of days to reference evapotranspiration [mm d⁻¹]; NaN, and outside = 1, for bad rows.
void daily_et0_fao56(const DailyBlock& in, std::size_t count, double* et0_mm_d, double* outside);
void daily_et0_asce(const DailyBlock& in, std::size_t count, double* et0_mm_d, double* outside);

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
