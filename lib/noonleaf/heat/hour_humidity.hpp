#pragma once

#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/heat/diurnal.hpp"

namespace noonleaf {
inline namespace v1 {

/// Relative humidity of an hour [%]. Rounding may leave a saturated hour a hair above 100: it is 100.
inline double relative_humidity_pct(const WeatherHour& hour) {
  const double rh_pct = 100 * hour.ea_kpa / saturation_vapour_pressure_kpa(hour.t_c);
  return rh_pct > 100 ? 100 : rh_pct;  // NaN passes
}

}  // namespace v1
}  // namespace noonleaf
