#pragma once

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Mean atmospheric pressure at an elevation.
///
/// Equation  P = 101.3 ((293 - 0.0065 z) / 293)^5.26
/// Source    FAO-56 (Allen et al. 1998), ch. 3, eq. 7; ASCE-EWRI 2005, eq. 3
/// Input     elevation_m  above sea level [m], accepted -500 to 9000 (our guard)
/// Result    [kPa]
/// Missing   NaN in, NaN out
/// Throws    Error, field "elevation_m", when outside the accepted range
/// Note      A barometer "reduced to sea level" must not be used in its place.
double atmospheric_pressure_kpa(double elevation_m);

/// Psychrometric constant.
///
/// Equation  gamma = 0.665e-3 P
/// Source    FAO-56, ch. 3, eq. 8; ASCE-EWRI 2005, eq. 4
/// Input     pressure_kpa  [kPa], accepted 30 to 110 (our guard)
/// Result    [kPa °C⁻¹]
/// Missing   NaN in, NaN out
/// Throws    Error, field "pressure_kpa", when outside the accepted range
/// Note      FAO-56 Table 2.2 is made with 0.665e-3 and agrees; 0.00163 P / 2.45 gives the same to 0.05 %.
double psychrometric_constant_kpa_c(double pressure_kpa);

/// Latent heat of vaporization.
///
/// Equation  lambda = 2.501 - (2.361e-3) T
/// Source    FAO-56, annex 3, eq. 3-1
/// Input     t_c  air temperature [°C], accepted -60 to 60 (our guard)
/// Result    [MJ kg⁻¹]
/// Missing   NaN in, NaN out
/// Throws    Error, field "t_c", when outside the accepted range
/// Note      The reference equations use the fixed 2.45 MJ kg⁻¹ (0.408 = 1 / 2.45), not this.
double latent_heat_mj_kg(double t_c);

/// Depth of water that an amount of energy evaporates at 2.45 MJ kg⁻¹.
///
/// Equation  mm = 0.408 x MJ m⁻²
/// Source    FAO-56, ch. 3, eq. 20
/// Missing   NaN in, NaN out
double evaporation_equivalent_mm(double energy_mj_m2);

}  // namespace v1
}  // namespace noonleaf
