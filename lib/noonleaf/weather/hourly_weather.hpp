#pragma once

#include <chrono>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/quantity.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The weather of one period, an hour as a rule, before anything is estimated but the interpolated values
/// named in `interpolated`. Every value may be missing.
struct HourlyWeather {
  std::chrono::sys_seconds begin{};   ///< UTC
  std::chrono::seconds length{3600};  ///< 3600 for hours
  double t_c = missing;               ///< mean air temperature
  double rh_pct = missing;            ///< mean relative humidity
  double t_dew_c = missing;           ///< dew point
  double ea_kpa = missing;            ///< actual vapour pressure
  double wind_m_s = missing;          ///< mean, at the height of the anemometer
  double rs_mj_m2_h = missing;        ///< solar radiation on a level surface, per hour whatever the length
  double sunshine_h = missing;        ///< within the period
  double pressure_kpa = missing;      ///< at the station
  double rain_mm = missing;           ///< fallen within the period
  WeatherQuantities interpolated{};   ///< values that were filled between their neighbours
};

}  // namespace v1
}  // namespace noonleaf
