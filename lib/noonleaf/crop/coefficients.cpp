#include "noonleaf/crop/coefficients.hpp"

#include <algorithm>

#include "noonleaf/crop/coefficients_formula.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

void require_climate(const CropClimate& climate, double height_m) {
  require_within("u2_m_s", climate.u2_m_s, 0, 60, "m/s");
  require_within("rh_min_pct", climate.rh_min_pct, 0, 100, "%");
  require_within("height_m", height_m, 0, 20, "m");
}

void require_curve(const KcCurve& curve) {
  for (const double length : {curve.l_ini_d, curve.l_dev_d, curve.l_mid_d, curve.l_late_d})
    require_within("stages", length, 0, 1000, "days");
}

}  // namespace

ClimateTerm climate_term(const CropClimate& climate, double height_m) {
  require_climate(climate, height_m);
  ClimateTerm term;
  // The source's limits, documented at the declaration; std::clamp lets NaN through.
  term.u2_m_s = std::clamp(climate.u2_m_s, 1.0, 6.0);
  term.rh_min_pct = std::clamp(climate.rh_min_pct, 20.0, 80.0);
  term.kc = crop_formula::climate_term(term.u2_m_s, term.rh_min_pct, height_m);
  return term;
}

double adjusted_kc(double kc_table, const CropClimate& climate, double height_m) {
  const double term = climate_term(climate, height_m).kc;
  return kc_table < 0.45 ? kc_table : kc_table + term;
}

double kc_max(double kcb, const CropClimate& climate, double height_m) {
  const double term = climate_term(climate, height_m).kc;
  if (is_missing(kcb) || is_missing(term)) return missing;
  return crop_formula::kc_max(kcb, term);
}

double cover_frac(double kcb, double kc_max_day, double height_m, double kc_min) {
  if (is_missing(kcb) || is_missing(kc_max_day) || is_missing(height_m)) return missing;
  return crop_formula::cover(kcb, kc_max_day, height_m, kc_min);
}

double kc_on_day(const KcCurve& curve, double day) {
  require_within("day", day, 1, 100000, "");
  require_curve(curve);
  const double dev_from = curve.l_ini_d;
  const double mid_from = dev_from + curve.l_dev_d;
  const double late_from = mid_from + curve.l_mid_d;
  const double over_from = late_from + curve.l_late_d;
  if (day <= dev_from) return curve.ini;
  if (day <= mid_from) return curve.ini + (day - dev_from) / curve.l_dev_d * (curve.mid - curve.ini);
  if (day <= late_from) return curve.mid;
  if (day <= over_from) return curve.mid + (day - late_from) / curve.l_late_d * (curve.end - curve.mid);
  return curve.end;
}

}  // namespace v1
}  // namespace noonleaf
