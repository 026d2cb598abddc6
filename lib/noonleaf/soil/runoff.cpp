#include "noonleaf/soil/runoff.hpp"

#include <algorithm>

#include "noonleaf/guard.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/soil/runoff_formula.hpp"

namespace noonleaf {
inline namespace v1 {

double runoff_mm(double rain_mm, double curve_number) {
  require_within("rain_mm", rain_mm, 0, 2000, "mm");
  require_within("curve_number", curve_number, 1, 100, "");
  if (is_missing(rain_mm) || is_missing(curve_number)) return missing;
  return runoff_formula::runoff_mm(rain_mm, runoff_formula::retention_mm(curve_number));
}

double curve_number_for_wetness(double curve_number_average, double de_mm, double rew_mm, double tew_mm) {
  require_within("curve_number", curve_number_average, 1, 100, "");
  const double cn_dry = runoff_formula::curve_number_dry(curve_number_average);
  const double cn_wet = runoff_formula::curve_number_wet(curve_number_average);
  const double dryness = std::clamp(runoff_formula::dryness(de_mm, rew_mm, tew_mm), 0.0, 1.0);
  return cn_wet + dryness * (cn_dry - cn_wet);
}

}  // namespace v1
}  // namespace noonleaf
