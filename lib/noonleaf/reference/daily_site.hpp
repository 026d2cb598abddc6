#pragma once

#include <array>
#include <chrono>

#include "noonleaf/atmosphere/daily_weather.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What the daily reference equations need of the sun on each day of the year, before any latitude is known.
/// Worked out once for any number of sites.
struct SunYear {
  /// What day J has of the sun.
  struct Day {
    double inverse_distance, sin_declination, cos_declination, tan_declination;
  };
  std::array<Day, 366> days;  ///< days[J - 1]
};

/// Source    FAO-56 (Allen et al. 1998), ch. 3, eq. 23, 24
SunYear sun_year();

/// A site with the extraterrestrial radiation of its every day of the year, worked out once for all years.
struct DailySite {
  double elevation_m;                  ///< as given
  double pressure_kpa;                 ///< of the elevation, FAO-56 eq. 7
  std::array<double, 366> ra_mj_m2_d;  ///< [J - 1]; FAO-56 eq. 21, exactly 0 in the polar night
};

/// Result    within 1e-12 MJ m⁻² d⁻¹ of extraterrestrial_radiation_mj_m2_d: sin(ws) is taken as sqrt(1 -
///           cos²(ws))
/// Missing   NaN throughout for a latitude, in the pressure for an elevation, that is missing
/// Throws    Error, field "latitude_deg" or "elevation_m", when outside the accepted range
DailySite daily_site(const Location& location, const SunYear& sun);
void require_location(const Location& location);  ///< the guard alone
/// The same for one site.
inline DailySite daily_site(const Location& location) { return daily_site(location, sun_year()); }

}  // namespace v1
}  // namespace noonleaf
