#pragma once

#include <cstddef>

#include "noonleaf/reference/hourly_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {

/// The columns of one block, side by side, and what holds for all its rows.
struct HourlyBlock {
  const double *t_c, *ea_kpa, *rs_mj_m2_h, *u2_m_s;
  const double* pressure_kpa;  ///< null: gamma_kpa_c
  const double* ra_mj_m2_h;
  double gamma_kpa_c, elevation_m;
  formula::HourlyCoefficients surface;
};

/// Rs/Rso of each period as if it had one of its own.
/// Result    whether a row may be bad: then the caller looks for it
bool hourly_relative_sun(Equation equation, const HourlyBlock& in, std::size_t count, double* relative_sun);

/// Whether a row has a value outside its accepted range. A missing one is not outside.
bool hourly_row_is_bad(const HourlyBlock& in, std::size_t i);

/// One block of periods to reference evapotranspiration [mm h⁻¹], whatever the values. relative_sun is what
/// each period is to use; day_g is G/Rn by the sun (FAO-56 alone uses it).
void hourly_et0(Equation equation, const HourlyBlock& in, const double* relative_sun, const double* day_g,
                std::size_t count, double* et0_mm_h);

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
