#pragma once

#include "noonleaf/soil/soil_water.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A soil by its particles. Percent by weight.
struct SoilParticles {
  double sand_pct = missing;  ///< of the fine earth (below 2 mm)
  double clay_pct = missing;  ///< of the fine earth
  double organic_pct = 2.5;   ///< organic matter
  double gravel_pct = 0;      ///< above 2 mm, of the whole soil
  double density_factor = 1;  ///< bulk density over normal: 0.9 loosened to 1.3 compacted
  double salinity_ds_m = 0;   ///< electrical conductivity of the saturation extract
};

/// Everything the method yields. Water contents of the whole soil, gravel included.
struct SaxtonRawls {
  double theta_1500 = missing;              ///< eq. 1, wilting point, of the fine earth
  double theta_33 = missing;                ///< eq. 2, 9, field capacity, of the fine earth
  double theta_s = missing;                 ///< eq. 5, 8, saturation, of the fine earth
  double air_entry_kpa = missing;           ///< eq. 4, psi e
  double a = missing;                       ///< eq. 14, 15: tension = a theta^-b
  double b = missing;                       ///< eq. 14, 15
  double lambda = missing;                  ///< eq. 18
  double conductivity_mm_h = missing;       ///< eq. 16, of the fine earth
  double density_g_cm3 = missing;           ///< eq. 6, 7, of the fine earth
  double gravel_volume_frac = missing;      ///< eq. 19, Rv
  double bulk_density_g_cm3 = missing;      ///< eq. 20
  double bulk_available_m3_m3 = missing;    ///< eq. 21, PAW of the whole soil
  double bulk_conductivity_mm_h = missing;  ///< eq. 22
  double osmotic_kpa = missing;             ///< eq. 23, at saturation
};

/// Water characteristics from texture and organic matter.
///
/// Source    Saxton & Rawls (2006), Soil Sci. Soc. Am. J. 70:1569-1578, eq. 1-24, coefficients as printed
/// Valid     the source: organic matter up to 8 %, clay up to 60 %, density factor 0.9 to 1.3
/// Throws    Error, field "organic_pct" or "clay_pct" beyond those limits, with the way out: measured values
///           or the weigh-a-pot method; "sand_pct" where sand + clay exceed 100; "gravel_pct" (0 to 90)
SaxtonRawls saxton_rawls(const SoilParticles& particles);

/// The same as a soil for the balance: FC, WP and saturation times (1 - Rv), bulk conductivity, REW by
/// texture (rew_by_texture_mm), but never more than 0.6 TEW (ours).
SoilWater soil_of(const SoilParticles& particles);

/// Osmotic tension of the soil solution at a water content.
///
/// Equation  psi O theta = (theta S / theta) 36 EC
/// Source    Saxton & Rawls 2006, eq. 24
double osmotic_tension_kpa(double theta, double theta_s, double salinity_ds_m);

/// Readily evaporable water by texture.
///
/// Equation  20 - 0.15 sand, for sand above 80 %; 11 - 0.06 clay, for clay above 50 %; else 8 + 0.08 clay
/// Source    Ritchie et al. (1989), repeated in Allen et al. (2005); from memory
/// Input     sand_pct, clay_pct  of the fine earth by weight [%], 0 to 100
/// Result    [mm]
/// Missing   NaN in, NaN out where the branch needs it
/// Throws    Error, naming the field, when outside the accepted range
double rew_by_texture_mm(double sand_pct, double clay_pct);

}  // namespace v1
}  // namespace noonleaf
