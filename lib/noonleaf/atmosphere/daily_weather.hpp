#pragma once

#include <chrono>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Where a place lies. Longitude is positive to the east; FAO-56 counts it positive to the west.
struct Location {
  double latitude_deg = missing;   ///< positive to the north
  double longitude_deg = missing;  ///< positive to the east
  double elevation_m = missing;    ///< above sea level
};

/// One local day of weather at one place, measured or forecast, before anything is estimated.
/// Every field but the date may be missing.
struct DailyWeather {
  std::chrono::year_month_day date{};
  double t_max_c = missing, t_min_c = missing, t_mean_c = missing;
  double rh_max_pct = missing, rh_min_pct = missing, rh_mean_pct = missing;
  double t_dew_c = missing;
  double ea_kpa = missing;      ///< actual vapour pressure
  double wind_m_s = missing;    ///< day's mean, at the height of the anemometer
  double rs_mj_m2_d = missing;  ///< solar radiation on a level surface
  double sunshine_h = missing;
  double pressure_kpa = missing;
  double rain_mm = missing;
};

}  // namespace v1
}  // namespace noonleaf
