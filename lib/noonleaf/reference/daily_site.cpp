#include "noonleaf/reference/daily_site.hpp"

#include <cmath>
#include <numbers>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/sun_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// FAO-56 eq. 25 and 21 from the parts at hand, the polar cases as in sun_formula.hpp. sin(arccos x) is
/// sqrt((1 - x)(1 + x)).
double extraterrestrial_radiation_mj_m2_d(const SunYear::Day& day, double sine, double cosine,
                                          double tangent) {
  const double x = -tangent * day.tan_declination;
  const double within = x > 1.0 ? 1.0 : (x < -1.0 ? -1.0 : x);  // NaN stays NaN
  const double sin_ws = std::sqrt((1.0 - within) * (1.0 + within));
  return formula::extraterrestrial_radiation_mj_m2_d(day.inverse_distance, std::acos(within), sin_ws,
                                                     sine * day.sin_declination,
                                                     cosine * day.cos_declination);
}

}  // namespace

SunYear sun_year() {
  SunYear year;
  for (int j = 1; j <= 366; ++j) {
    const double declination = formula::solar_declination_rad(j);
    year.days[static_cast<std::size_t>(j - 1)] = {formula::inverse_relative_distance(j),
                                                  std::sin(declination), std::cos(declination),
                                                  std::tan(declination)};
  }
  return year;
}

void require_location(const Location& location) {
  require_within("latitude_deg", location.latitude_deg, accepted::latitude_deg, "°");
  require_within("elevation_m", location.elevation_m, accepted::elevation_m, "m");
}

DailySite daily_site(const Location& location, const SunYear& sun) {
  require_location(location);
  DailySite site;
  site.elevation_m = location.elevation_m;
  site.pressure_kpa = atmospheric_pressure_kpa(location.elevation_m);
  const double latitude = formula::radians(location.latitude_deg);
  const double sine = std::sin(latitude), cosine = std::cos(latitude), tangent = std::tan(latitude);
  for (std::size_t i = 0; i < sun.days.size(); ++i) {
    site.ra_mj_m2_d[i] = extraterrestrial_radiation_mj_m2_d(sun.days[i], sine, cosine, tangent);
  }
  return site;
}

}  // namespace v1
}  // namespace noonleaf
