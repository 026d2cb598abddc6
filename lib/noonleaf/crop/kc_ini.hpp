#pragma once

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Soils as FAO-56 Figures 29 and 30 divide them.
enum class KcIniSoil { coarse, medium_fine };

/// How a young crop's ground is wetted.
struct WettingPattern {
  double et0_mm_d = missing;                ///< mean over the initial stage
  double interval_d = missing;              ///< mean days between wettings, rain and irrigation
  double infiltrated_mm = missing;          ///< mean depth of one wetting over the whole ground
  double wetted_frac = 1;                   ///< fw, FAO-56 Table 20
  KcIniSoil soil = KcIniSoil::medium_fine;  ///< how fast its surface dries
};

/// Kc ini of ground wetted every so often, evaporating water TEW of which REW at the energy-limited rate.
///
/// Equation  t1 = REW / Eso, Eso = 1.15 ET0; tw <= t1: Kc ini = 1.15;
///           else Kc ini = [TEW - (TEW - REW) exp(-(tw - t1) Eso (1 + REW / (TEW - REW)) / TEW)] / (tw ET0)
/// Source    FAO-56 (Allen et al. 1998), annex 7, from memory
/// Throws    Error, fields "et0_mm_d" (above 0 to 20), "interval_d" (0.1 to 60), "rew_mm" (0 to below TEW)
double kc_ini_of_drying(double et0_mm_d, double interval_d, double rew_mm, double tew_mm);

/// Kc of the initial stage from how often and how deep the ground is wetted, for the single coefficient.
///
/// Equation  light wettings (10 mm or less): TEW 10, REW min(max(2.5, 6 / sqrt ET0), 7);
///           heavy (40 mm or more), coarse: TEW min(15, 7 sqrt ET0), REW min(6, TEW - 0.01);
///           heavy, medium and fine: TEW min(28, 13 sqrt ET0), REW min(9, TEW - 0.01);
///           between: Kc light + (I - 10) / (40 - 10) (Kc heavy - Kc light), eq. 59;
///           wetted in part: fw Kc ini with I / fw, eq. 60 and 61
/// Source    FAO-56, ch. 6, eq. 59-61, Figures 29 and 30; annex 7; from memory
/// Missing   NaN in, NaN out
/// Note      The figures were drawn from these equations; read off a figure the value is good to about 0.05.
double kc_ini_of_wetting(const WettingPattern& pattern);

}  // namespace v1
}  // namespace noonleaf
