#include "noonleaf/crop/kc_ini.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double light_mm = 10, heavy_mm = 40;  // FAO-56 Figures 29 and 30

double light(double et0, double interval) {
  const double rew = std::min(std::max(2.5, 6 / std::sqrt(et0)), 7.0);
  return kc_ini_of_drying(et0, interval, rew, 10);
}

double heavy(double et0, double interval, KcIniSoil soil) {
  const double tew =
      soil == KcIniSoil::coarse ? std::min(15.0, 7 * std::sqrt(et0)) : std::min(28.0, 13 * std::sqrt(et0));
  const double rew = std::min(soil == KcIniSoil::coarse ? 6.0 : 9.0, tew - 0.01);
  return kc_ini_of_drying(et0, interval, rew, tew);
}

}  // namespace

double kc_ini_of_drying(double et0_mm_d, double interval_d, double rew_mm, double tew_mm) {
  require_within("et0_mm_d", et0_mm_d, 0.1, 20, "mm/d");
  require_within("interval_d", interval_d, 0.1, 60, "days");
  require_within("rew_mm", rew_mm, 0, tew_mm - 0.001, "mm");
  if (is_missing(et0_mm_d) || is_missing(interval_d) || is_missing(rew_mm) || is_missing(tew_mm))
    return missing;
  const double eso = 1.15 * et0_mm_d;
  const double t1 = rew_mm / eso;
  if (interval_d <= t1) return 1.15;
  const double falling = std::exp(-(interval_d - t1) * eso * (1 + rew_mm / (tew_mm - rew_mm)) / tew_mm);
  return (tew_mm - (tew_mm - rew_mm) * falling) / (interval_d * et0_mm_d);
}

double kc_ini_of_wetting(const WettingPattern& pattern) {
  require_within("infiltrated_mm", pattern.infiltrated_mm, 0, 500, "mm");
  require_within("wetted_frac", pattern.wetted_frac, 0.01, 1, "");
  if (is_missing(pattern.et0_mm_d) || is_missing(pattern.interval_d) || is_missing(pattern.infiltrated_mm) ||
      is_missing(pattern.wetted_frac))
    return missing;
  const double depth = pattern.infiltrated_mm / pattern.wetted_frac;  // eq. 61
  const double share = std::clamp((depth - light_mm) / (heavy_mm - light_mm), 0.0, 1.0);
  const double at_light = light(pattern.et0_mm_d, pattern.interval_d);
  const double at_heavy = heavy(pattern.et0_mm_d, pattern.interval_d, pattern.soil);
  return pattern.wetted_frac * (at_light + share * (at_heavy - at_light));  // eq. 59, 60
}

}  // namespace v1
}  // namespace noonleaf
