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
  std::chrono::year_month_day date{};  ///< the local calendar day
  double t_max_c = missing;            ///< highest air temperature
  double t_min_c = missing;            ///< lowest air temperature
  double t_mean_c = missing;           ///< mean as the file gives it, not made from the extremes
  double rh_max_pct = missing;         ///< highest relative humidity, 0 to 100
  double rh_min_pct = missing;         ///< lowest relative humidity
  double rh_mean_pct = missing;        ///< mean relative humidity
  double t_dew_c = missing;            ///< dew point, mean of the day
  double ea_kpa = missing;             ///< actual vapour pressure
  double wind_m_s = missing;           ///< day's mean, at the height of the anemometer
  double rs_mj_m2_d = missing;         ///< solar radiation on a level surface
  double sunshine_h = missing;         ///< hours of bright sunshine
  double pressure_kpa = missing;       ///< at the station, not reduced to sea level
  double rain_mm = missing;            ///< fallen within the day
};

}  // namespace v1
}  // namespace noonleaf
