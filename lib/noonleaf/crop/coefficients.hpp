#pragma once

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Kc of dry, nearly bare soil: the foot of the ground-cover curve, and Kcb ini of annuals. FAO-56, text to
/// eq. 76 (0.15 to 0.20) and Table 17.
inline constexpr double kc_min_bare = 0.15;

/// Wind and dryness of the air over a stage; the defaults are the climate for which Tables 12 and 17 hold.
struct CropClimate {
  double u2_m_s = 2;       ///< mean wind speed at 2 m
  double rh_min_pct = 45;  ///< mean daily minimum relative humidity
};

/// What the climate term was computed with.
///
/// The source states its term for u2 1 to 6 m/s and RHmin 20 to 80 %. A mean outside is taken at the nearer
/// limit, as the source's own spreadsheet does (annex 8, from memory), and the field says which value that
/// was.
struct ClimateTerm {
  double u2_m_s = missing;      ///< as used, within the source's 1 to 6
  double rh_min_pct = missing;  ///< as used, within the source's 20 to 80
  double kc = missing;          ///< the addition to Kc
};

/// The climate term shared by FAO-56 eq. 62, 65, 70 and 72.
///
/// Equation  [0.04 (u2 - 2) - 0.004 (RHmin - 45)] (h / 3)^0.3
/// Source    FAO-56 (Allen et al. 1998), ch. 6, eq. 62; ch. 7, eq. 70 and 72
/// Input     height_m  plant height [m], accepted 0 to 20 (ours); the source states 0.1 to 10
/// Result    the addition, dimensionless; 0 for bare ground (h = 0)
/// Missing   NaN in, NaN out
/// Throws    Error, field "u2_m_s" (0 to 60), "rh_min_pct" (0 to 100) or "height_m"
ClimateTerm climate_term(const CropClimate& climate, double height_m);

/// Crop coefficient of the mid or late season, adjusted to the climate.
///
/// Equation  Kc = Kc(Tab) + climate term, for Kc(Tab) of 0.45 or more; else Kc = Kc(Tab)
/// Source    FAO-56, ch. 6, eq. 62 (mid) and 65 (end); ch. 7, eq. 70 for Kcb
/// Note      Eq. 62 has no lower limit on Kc mid; no printed Kc mid lies below 0.45 except of 20 % citrus,
///           where it equals 0.45, so one rule serves all three equations.
double adjusted_kc(double kc_table, const CropClimate& climate, double height_m);

/// Upper limit on evaporation and transpiration from a cropped surface.
///
/// Equation  Kc max = max{1.2 + climate term, Kcb + 0.05}
/// Source    FAO-56, ch. 7, eq. 72
double kc_max(double kcb, const CropClimate& climate, double height_m);

/// Fraction of the ground covered by leaves, as the coefficients imply it.
///
/// Equation  fc = ((Kcb - Kc min) / (Kc max - Kc min))^(1 + 0.5 h)
/// Source    FAO-56, ch. 7, eq. 76; Kcb - Kc min at least 0.01, fc at most 0.99 (its numerical limits)
/// Result    0 to 0.99
double cover_frac(double kcb, double kc_max, double height_m, double kc_min = kc_min_bare);

/// Kc or Kcb on a day of the season.
///
/// Equation  Kc i = Kc prev + [(i - sum L prev) / L stage] (Kc next - Kc prev)
/// Source    FAO-56, ch. 6, eq. 66
/// Input     day  day of the season, 1 on the first; ini, dev, mid, late  stage lengths [d], from 0
/// Result    Kc ini up to the end of the initial stage; Kc end from the end of the season on
/// Throws    Error, field "day", below 1; "stages" where a length is negative
struct KcCurve {
  double ini = missing;  ///< of the initial stage
  double mid = missing;  ///< of the mid-season
  double end = missing;  ///< on the last day
  double l_ini_d = 0;    ///< length of the initial stage
  double l_dev_d = 0;    ///< of the development
  double l_mid_d = 0;    ///< of the mid-season
  double l_late_d = 0;   ///< of the late season
};
/// Equation, input, result: see KcCurve.
double kc_on_day(const KcCurve& curve, double day);

}  // namespace v1
}  // namespace noonleaf
