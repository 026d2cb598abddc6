#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>

#include "noonleaf/constants.hpp"

namespace noonleaf {
inline namespace v1 {
namespace formula {

inline double radians(double degrees) { return std::numbers::pi / 180.0 * degrees; }  // FAO-56 eq. 22

inline double inverse_relative_distance(double j) {
  return 1.0 + 0.033 * std::cos(2.0 * std::numbers::pi / 365.0 * j);  // FAO-56 eq. 23
}

inline double solar_declination_rad(double j) {
  return 0.409 * std::sin(2.0 * std::numbers::pi / 365.0 * j - 1.39);  // FAO-56 eq. 24
}

/// FAO-56 eq. 25, with the two polar cases for which the printed arccos has no value. A missing latitude
/// stays missing: it fails both comparisons.
inline double sunset_hour_angle_rad(double latitude_rad, double declination_rad) {
  const double cosine = -std::tan(latitude_rad) * std::tan(declination_rad);
  if (cosine >= 1.0) return 0.0;                // polar night
  if (cosine <= -1.0) return std::numbers::pi;  // polar day
  return std::acos(cosine);
}

/// All that the sun's daily path over one place comes to.
struct SunPath {
  double inverse_distance, declination_rad, sunset_angle_rad;
  double vertical, horizontal;  ///< sin sin and cos cos of latitude and declination
};

inline SunPath sun_path(double latitude_rad, double j) {
  SunPath path{};
  path.inverse_distance = inverse_relative_distance(j);
  path.declination_rad = solar_declination_rad(j);
  path.sunset_angle_rad = sunset_hour_angle_rad(latitude_rad, path.declination_rad);
  path.vertical = std::sin(latitude_rad) * std::sin(path.declination_rad);
  path.horizontal = std::cos(latitude_rad) * std::cos(path.declination_rad);
  return path;
}

/// FAO-56 eq. 21; vertical is sin sin, horizontal cos cos of latitude and declination. In the polar night (ws
/// = 0) the bracket is exactly 0.
inline double extraterrestrial_radiation_mj_m2_d(double dr, double ws, double sin_ws, double vertical,
                                                 double horizontal) {
  return 24.0 * 60.0 / std::numbers::pi * solar_mj_m2_min * dr * (ws * vertical + horizontal * sin_ws);
}

inline double extraterrestrial_radiation_mj_m2_d(const SunPath& path) {
  return extraterrestrial_radiation_mj_m2_d(path.inverse_distance, path.sunset_angle_rad,
                                            std::sin(path.sunset_angle_rad), path.vertical, path.horizontal);
}

inline double daylight_h(double sunset_angle_rad) {
  return 24.0 / std::numbers::pi * sunset_angle_rad;  // FAO-56 eq. 34
}

inline double seasonal_correction_h(double j) {
  const double b = 2.0 * std::numbers::pi * (j - 81.0) / 364.0;                    // FAO-56 eq. 33
  return 0.1645 * std::sin(2.0 * b) - 0.1255 * std::cos(b) - 0.025 * std::sin(b);  // FAO-56 eq. 32
}

/// FAO-56 eq. 31; both longitudes in degrees WEST of Greenwich, as the page has them. 1/15 for the printed
/// 0.06667.
inline double solar_time_angle_rad(double clock_h, double zone_west_deg, double place_west_deg,
                                   double correction_h) {
  return std::numbers::pi / 12.0 *
         ((clock_h + (zone_west_deg - place_west_deg) / 15.0 + correction_h) - 12.0);
}

inline double sin_sun_altitude(const SunPath& path, double time_angle_rad) {
  return path.vertical + path.horizontal * std::cos(time_angle_rad);
}

/// FAO-56 eq. 28 to 30 as a rate per hour. The period is cut at sunrise and sunset; since it may reach over
/// midnight, the daylight of the day before and the day after is looked at too.
inline double extraterrestrial_radiation_mj_m2_h(const SunPath& path, double time_angle_rad,
                                                 double length_h) {
  const double half = std::numbers::pi * length_h / 24.0;
  double bracket = 0.0 * time_angle_rad * path.sunset_angle_rad;  // 0, or missing
  for (const double noon : {-2.0 * std::numbers::pi, 0.0, 2.0 * std::numbers::pi}) {
    const double w1 = std::max(time_angle_rad - half, noon - path.sunset_angle_rad);
    const double w2 = std::min(time_angle_rad + half, noon + path.sunset_angle_rad);
    if (w2 > w1) bracket += (w2 - w1) * path.vertical + path.horizontal * (std::sin(w2) - std::sin(w1));
  }
  const double energy =
      12.0 * 60.0 / std::numbers::pi * solar_mj_m2_min * path.inverse_distance * bracket;  // of the period
  return energy / length_h;
}

}  // namespace formula
}  // namespace v1
}  // namespace noonleaf
