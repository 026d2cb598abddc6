#include "noonleaf/soil/runoff.hpp"

#include <algorithm>

#include "noonleaf/guard.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace v1 {

double runoff_mm(double rain_mm, double curve_number) {
  require_within("rain_mm", rain_mm, 0, 2000, "mm");
  require_within("curve_number", curve_number, 1, 100, "");
  if (is_missing(rain_mm) || is_missing(curve_number)) return missing;
  const double s = 25400 / curve_number - 254;  // TR-55 eq. 2-4, in mm
  if (!(rain_mm > 0.2 * s)) return 0;
  return (rain_mm - 0.2 * s) * (rain_mm - 0.2 * s) / (rain_mm + 0.8 * s);  // TR-55 eq. 2-3
}

double curve_number_for_wetness(double curve_number_average, double de_mm, double rew_mm, double tew_mm) {
  require_within("curve_number", curve_number_average, 1, 100, "");
  const double cn_dry = curve_number_average / (2.281 - 0.01281 * curve_number_average);
  const double cn_wet = curve_number_average / (0.427 + 0.00573 * curve_number_average);
  const double wet_to = 0.5 * rew_mm;
  const double dry_from = 0.7 * rew_mm + 0.3 * tew_mm;
  const double dryness = std::clamp((de_mm - wet_to) / (dry_from - wet_to), 0.0, 1.0);
  return cn_wet + dryness * (cn_dry - cn_wet);
}

}  // namespace v1
}  // namespace noonleaf
