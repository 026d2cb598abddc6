#include "noonleaf/plan/bed_sky.hpp"

#include "noonleaf/reference/penman_monteith.hpp"

namespace noonleaf {
inline namespace v1 {

Sky sky_over_bed(const Site& site, const Bed& bed, const Sky& sky) {
  Sky result = sky;
  if (bed.sun_frac == 1) return result;
  double sunny_mm = 0, shaded_mm = 0;  // over the days that have their own weather
  for (SkyDay& day : result.days) {
    if (day.et0_from != Et0From::weather) continue;
    sunny_mm += day.et0_mm_d;
    day.estimate.rs_mj_m2_d *= bed.sun_frac;
    day.et0_mm_d = daily_et0_mm_d(day.estimate, site.location);
    shaded_mm += day.et0_mm_d;
  }
  for (SkyDay& day : result.days) {
    if (day.et0_from == Et0From::neighbours) day.et0_mm_d *= shaded_mm / sunny_mm;
  }
  return result;
}

}  // namespace v1
}  // namespace noonleaf
