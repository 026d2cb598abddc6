#pragma once

#include <cstddef>

#include "noonleaf/reference/penman_monteith_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {

/// The columns of one block, side by side, and what holds for all its rows.
struct DailyBlock {
  const double *t_max_c, *t_min_c, *ea_kpa, *rs_mj_m2_d, *u2_m_s;
  const double* ra_mj_m2_d;
  const double *pressure_kpa, *g_mj_m2_d;  ///< both or neither; null: gamma_kpa_c and no heat into the soil
  double gamma_kpa_c, elevation_m;
  formula::SurfaceCoefficients surface;
};

/// Whether a row has a value outside its accepted range. A missing one is not outside.
bool daily_row_is_bad(const DailyBlock& in, std::size_t i);

/// One block of days to reference evapotranspiration [mm d⁻¹], whatever the values.
/// Result    whether a row may be bad: then the caller looks for it
bool daily_et0(Equation equation, const DailyBlock& in, std::size_t count, double* et0_mm_d);

/// The same to net radiation [MJ m⁻² d⁻¹]; wind, pressure and soil heat flux play no part.
bool daily_net_radiation(Equation equation, const DailyBlock& in, std::size_t count, double* rn_mj_m2_d);

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
