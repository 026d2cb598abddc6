#pragma once

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Mean air temperatures of a month and its neighbours.
struct MonthlyTemperatures {
  double previous_c = missing;  ///< mean of the month before
  double this_c = missing;      ///< mean of the month itself
  double next_c = missing;      ///< mean of the month after
};

/// Soil heat flux of a month, between its two neighbours.
///
/// Equation  G = 0.07 (T next - T previous)
/// Source    FAO-56 (Allen et al. 1998), ch. 3, eq. 43
/// Input     previous_c, next_c [°C] -60 to 60
/// Result    [MJ m⁻² d⁻¹], positive into the soil
/// Missing   NaN if either is missing
/// Throws    Error, naming the field, when outside the accepted range
double soil_heat_of_month_mj_m2_d(const MonthlyTemperatures& months);

/// Soil heat flux of a month whose successor is not known.
///
/// Equation  G = 0.14 (T this - T previous)
/// Source    FAO-56, ch. 3, eq. 44
/// Input     previous_c, this_c [°C] -60 to 60
/// Result, Missing, Throws  as eq. 43
double soil_heat_of_last_month_mj_m2_d(const MonthlyTemperatures& months);

/// General soil heat flux from the change of air temperature.
///
/// Equation  G = cs (T now - T before) / dt dz
/// Source    FAO-56, ch. 3, eq. 41; cs = 2.1 MJ m⁻³ °C⁻¹ for moist soil
/// Input     previous_c, this_c [°C] -60 to 60; days  dt [d] 0.01 to 366; depth_m  dz [m] 0.01 to 5;
///           heat_capacity_mj_m3_c 0.1 to 5
/// Result    [MJ m⁻² d⁻¹], positive into the soil
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range
/// Note      For a day or ten days G is small and FAO-56 (eq. 42) sets it to 0.
struct SoilWarming {
  double previous_c = missing;         ///< mean air temperature of the period before
  double this_c = missing;             ///< mean air temperature of the period
  double days = missing;               ///< length of the period
  double depth_m = missing;            ///< effective depth: 0.10 to 0.20 m for a day, above 2 m monthly
  double heat_capacity_mj_m3_c = 2.1;  ///< cs, of the soil; the source's value
};
/// Equation, input, result: see SoilWarming.
double soil_heat_mj_m2_d(const SoilWarming& soil);

}  // namespace v1
}  // namespace noonleaf
