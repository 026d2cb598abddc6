#pragma once

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

inline constexpr double solar_mj_m2_min = 0.0820;                     ///< Solar constant Gsc. FAO-56 eq. 21.
inline constexpr double stefan_boltzmann_mj_k4_m2_d = 4.903e-9;       ///< FAO-56 eq. 39, as printed.
inline constexpr double stefan_boltzmann_asce_mj_k4_m2_d = 4.901e-9;  ///< ASCE-EWRI 2005 eq. 17, as printed.
inline constexpr double stefan_boltzmann_mj_k4_m2_h = 2.043e-10;  ///< FAO-56 eq. 39 per hour (4.903e-9 / 24).
inline constexpr double stefan_boltzmann_asce_mj_k4_m2_h = 2.042e-10;  ///< ASCE-EWRI 2005 eq. 44, as printed.
inline constexpr double kelvin_offset = 273.16;   ///< 0 °C in K, as FAO-56 eq. 39 and ASCE-EWRI print it.
inline constexpr double reference_albedo = 0.23;  ///< Grass and alfalfa reference surfaces. FAO-56 eq. 38.
inline constexpr double mm_per_mj_m2 = 0.408;     ///< 1 / 2.45 MJ kg⁻¹, rounded as printed. FAO-56 eq. 20.

}  // namespace v1
}  // namespace noonleaf
