#pragma once

#include <chrono>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What the temperature-only equation needs.
struct TemperatureOnly {
  std::chrono::year_month_day date{};  ///< decides Ra; {} = missing
  double latitude_deg = missing;       ///< positive to the north
  double t_max_c = missing;            ///< highest of the day
  double t_min_c = missing;            ///< lowest of the day
  double t_mean_c = missing;           ///< (Tmax + Tmin) / 2 where missing
};

/// Reference evapotranspiration from temperature alone.
///
/// Equation  ET0 = 0.0023 (Tmean + 17.8) (Tmax - Tmin)^0.5 Ra, Ra in mm d⁻¹ (0.408 x MJ m⁻² d⁻¹)
/// Source    FAO-56 (Allen et al. 1998), ch. 3, eq. 52 (Hargreaves and Samani 1985)
/// Input     latitude_deg -90 to 90; temperatures [°C] -60 to 60, t_max_c not below t_min_c
/// Result    [mm d⁻¹]; as printed, so below 0 where Tmean is under -17.8 °C
/// Missing   NaN if the date, the latitude, t_max_c or t_min_c is missing
/// Throws    Error, naming the field, when outside the accepted range
/// Note      FAO-56 advises eq. 6 with estimated inputs instead (complete_daily). Single days are poor; use
///           means of five days or more. It tends to be low in wind above 3 m/s and high in humid air.
double temperature_only_et0_mm_d(const TemperatureOnly& inputs);

}  // namespace v1
}  // namespace noonleaf
