#pragma once

#include <string_view>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/reference/missing_data.hpp"

namespace noonleaf {
inline namespace v1 {

// The rungs of the missing-data ladder that a day and an hour share.

struct WindRung {
  double u2_m_s;
  WindFrom from;
};
/// Throws    Error, field "wind_m_s" or "height_m", when outside the accepted range
WindRung wind_rung(double wind_m_s, const LadderOptions& options);

struct PressureRung {
  double pressure_kpa;
  PressureFrom from;
};
/// Throws    Error, field "pressure_kpa" or "elevation_m", when outside the accepted range
PressureRung pressure_rung(double pressure_kpa, const Location& location);

/// Relative humidity as a hygrometer gives it: 100 to 105 % is saturated air.
/// Throws    Error, field = `field`, when outside 0 to 105
double checked_humidity(std::string_view field, double rh_pct);

/// Throws    Error, field = `field`, when that part of a location is missing
void require_location_field(std::string_view field, double value);

}  // namespace v1
}  // namespace noonleaf
