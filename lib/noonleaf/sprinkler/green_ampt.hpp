#pragma once

#include <span>
#include <string_view>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A soil as Green and Ampt see it. A measured intake may replace any number.
struct GreenAmptSoil {
  std::string_view texture{};                 ///< USDA texture class, "sandy loam"
  double porosity_m3_m3 = missing;            ///< all pores
  double effective_porosity_m3_m3 = missing;  ///< porosity less what never drains
  double suction_head_mm = missing;           ///< at the wetting front
  double conductivity_mm_h = missing;         ///< of the wetted soil
  double pore_size_index = missing;           ///< Brooks and Corey's lambda, for the pause between cycles
  std::string_view source{};                  ///< publication and table
};

/// The texture classes, coarse to fine.
/// Source    Rawls, Brakensiek & Miller 1983, J. Hydraul. Eng. 109(1), as in Chow, Maidment & Mays 1988,
///           Table 4.3.1; pore size index: Rawls, Brakensiek & Saxton 1982, Trans. ASAE 25(5), Table 2. Both
///           from memory. "silt" has no row there and carries the silt loam values.
/// Note      Field soils. A loosened raised bed takes water faster, a crusted seed bed slower.
std::span<const GreenAmptSoil> green_ampt_soils();

/// One row by name; capitals, `-` and `_` do not matter.
/// Throws    Error, field "texture", with the nearest class
const GreenAmptSoil& green_ampt_soil(std::string_view texture);

/// Effective saturation for a water content.
///
/// Equation  s_e = (theta - theta_r) / theta_e,  theta_r = porosity - effective porosity
/// Source    Chow, Maidment & Mays 1988, eq. 4.3.10
/// Input     theta_m3_m3 0 to 1
/// Result    0 to 1. Content below theta_r gives 0 and above porosity 1: the equation has no drier or wetter
///           soil.
/// Missing   NaN in, NaN out
/// Throws    Error, field "theta_m3_m3"
double effective_saturation_frac(const GreenAmptSoil& soil, double theta_m3_m3);

/// The soil of a bed at the start of a run.
struct IntakeState {
  GreenAmptSoil soil{};                      ///< by texture, or measured
  double initial_saturation_frac = missing;  ///< effective saturation s_e, 0 (dry) to below 1
};

/// Suction times moisture deficit, psi (1 - s_e) theta_e, mm.
/// Source    Chow, Maidment & Mays 1988, eq. 4.3.9
/// Throws    Error when the soil or the saturation is missing or outside 0 to 1
double suction_deficit_mm(const IntakeState& state);

/// Depth infiltrated into soil ponded from the start.
///
/// Equation  F - psi dtheta ln(1 + F / (psi dtheta)) = K t, solved for F
/// Source    Green & Ampt 1911; Chow, Maidment & Mays 1988, eq. 4.3.6
/// Input     hours 0 to 240
/// Result    [mm]
/// Throws    Error
double ponded_infiltration_mm(const IntakeState& state, double hours);

/// What the soil can take once `infiltrated_mm` are in.
///
/// Equation  f = K (1 + psi dtheta / F)
/// Source    Chow, Maidment & Mays 1988, eq. 4.3.7
/// Input     infiltrated_mm above 0
/// Result    [mm/h], infinite at 0
double intake_rate_mm_h(const IntakeState& state, double infiltrated_mm);

/// Time until water stands on the soil under a steady rate.
///
/// Equation  t_p = K psi dtheta / (i (i - K))
/// Source    Mein & Larson 1973, Water Resour. Res. 9(2); Chow, Maidment & Mays 1988, eq. 4.4.2
/// Input     rate_mm_h above 0 to 1000
/// Result    [min]; infinite when the rate does not exceed K
/// Throws    Error
double ponding_time_min(const IntakeState& state, double rate_mm_h);

/// Depth infiltrated under a steady rate: all of it before ponding, by the soil's capacity after.
///
/// Equation  F - F_p - psi dtheta ln((psi dtheta + F) / (psi dtheta + F_p)) = K (t - t_p)
/// Source    Mein & Larson 1973; Chow, Maidment & Mays 1988, eq. 4.4.5
/// Input     rate_mm_h above 0 to 1000; minutes 0 to 14 400
/// Result    [mm]
/// Throws    Error
double infiltrated_under_rate_mm(const IntakeState& state, double rate_mm_h, double minutes);

}  // namespace v1
}  // namespace noonleaf
