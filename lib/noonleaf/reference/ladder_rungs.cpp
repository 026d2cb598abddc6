#include "noonleaf/reference/ladder_rungs.hpp"

#include <string>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/wind.hpp"
#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {

WindRung wind_rung(double wind_m_s, const LadderOptions& options) {
  if (is_missing(wind_m_s)) return {usual_u2_m_s, WindFrom::usual_wind};
  const double u2 = wind_speed_at_2m_m_s({wind_m_s, options.wind_height_m});
  if (u2 < least_u2_m_s && options.calm_air == CalmAir::raised) return {least_u2_m_s, WindFrom::calm_limit};
  return {u2, options.wind_height_m == 2.0 ? WindFrom::measured : WindFrom::other_height};
}

PressureRung pressure_rung(double pressure_kpa, const Location& location) {
  require_within("pressure_kpa", pressure_kpa, accepted::pressure_kpa, "kPa");
  if (is_known(pressure_kpa)) return {pressure_kpa, PressureFrom::measured};
  return {atmospheric_pressure_kpa(location.elevation_m), PressureFrom::elevation};
}

double checked_humidity(std::string_view field, double rh_pct) {
  require_within(field, rh_pct, 0, 105, "%");
  return rh_pct > 100.0 ? 100.0 : rh_pct;
}

void require_location_field(std::string_view field, double value) {
  if (is_known(value)) return;
  throw Error({.field = std::string(field),
               .message = "is missing; the sun's path and the air pressure depend on it",
               .fix = "give the location of the weather"});
}

}  // namespace v1
}  // namespace noonleaf
