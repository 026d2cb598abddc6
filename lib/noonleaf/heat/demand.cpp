#include "noonleaf/heat/demand.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/heat/demand_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

void require_ranges(const WeatherHours& hours) {
  for (const WeatherHour& hour : hours) {
    require_within("t_c", hour.t_c, -60, 60, "°C");
    require_within("ea_kpa", hour.ea_kpa, 0, 10, "kPa");
    require_within("rs_mj_m2_h", hour.rs_mj_m2_h, 0, 10, "MJ/m²/h");
    require_within("u2_m_s", hour.u2_m_s, 0, 60, "m/s");
  }
}

bool complete(const WeatherHours& hours) {
  return std::none_of(hours.begin(), hours.end(), [](const WeatherHour& hour) {
    return is_missing(hour.t_c) || is_missing(hour.ea_kpa) || is_missing(hour.rs_mj_m2_h) ||
           is_missing(hour.u2_m_s);
  });
}

double sum(const std::array<double, 24>& values) {
  double total = 0;
  for (const double value : values) total += value;
  return total;
}

double cloudiness(const WeatherHours& hours, const DaySite& site) {
  double rs = 0;
  for (const WeatherHour& hour : hours) rs += hour.rs_mj_m2_h;
  const double ra = sum(extraterrestrial_by_hour_mj_m2_h(site));
  const double rso = clear_sky_radiation(SimpleClearSky{.ra = ra, .elevation_m = site.location.elevation_m});
  return formula::cloudiness_of_day(rs, rso);
}

void scale_to_one(std::array<double, 24>& share) {
  const double total = sum(share);
  for (double& hour : share) hour /= total;
  // What rounding leaves goes to the largest hour.
  *std::max_element(share.begin(), share.end()) += 1 - sum(share);
}

}  // namespace

std::array<double, 24> transpiration_share(const WeatherHours& hours, const DaySite& site) {
  require_ranges(hours);
  std::array<double, 24> share;
  share.fill(missing);
  if (!complete(hours)) return share;
  const double fcd = cloudiness(hours, site);
  const double gamma = psychrometric_constant_kpa_c(atmospheric_pressure_kpa(site.location.elevation_m));
  if (is_missing(fcd) || is_missing(gamma)) return share;
  for (std::size_t i = 0; i < 24; ++i)
    share[i] = formula::short_reference_mm_h<ScalarMath>(
        hours[i], saturation_vapour_pressure_kpa(hours[i].t_c), fcd, gamma);
  if (sum(share) <= 0)
    for (std::size_t i = 0; i < 24; ++i) share[i] = hours[i].rs_mj_m2_h;
  if (sum(share) <= 0) share.fill(1);
  scale_to_one(share);
  return share;
}

std::array<double, 24> hourly_transpiration_mm_h(const WeatherHours& hours, const DaySite& site,
                                                 double total_mm_d) {
  require_within("total_mm_d", total_mm_d, 0, 30, "mm/d");
  std::array<double, 24> demand = transpiration_share(hours, site);
  for (double& hour : demand) hour *= total_mm_d;
  return demand;
}

}  // namespace v1
}  // namespace noonleaf
