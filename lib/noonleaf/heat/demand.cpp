#include "noonleaf/heat/demand.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/constants.hpp"
#include "noonleaf/guard.hpp"

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

// Cloudiness function fcd of the whole day, ASCE-EWRI 2005 eq. 45 with its limits; 0.05 to 1.
double cloudiness(const WeatherHours& hours, const DaySite& site) {
  double rs = 0;
  for (const WeatherHour& hour : hours) rs += hour.rs_mj_m2_h;
  const double ra = sum(extraterrestrial_by_hour_mj_m2_h(site));
  const double rso = clear_sky_radiation(SimpleClearSky{.ra = ra, .elevation_m = site.location.elevation_m});
  return std::clamp(1.35 * std::clamp(rs / rso, 0.3, 1.0) - 0.35, 0.05, 1.0);
}

// ASCE-EWRI 2005 eq. 1, short reference, one hour; not below 0.
double short_reference_mm_h(const WeatherHour& hour, double fcd, double gamma) {
  const bool lit = hour.rs_mj_m2_h > 0;
  const double kelvin = hour.t_c + kelvin_offset;
  const double rnl = stefan_boltzmann_asce_mj_k4_m2_h * fcd * (0.34 - 0.14 * std::sqrt(hour.ea_kpa)) *
                     kelvin * kelvin * kelvin * kelvin;  // eq. 44
  const double rn = (1 - reference_albedo) * hour.rs_mj_m2_h - rnl;
  const double g = (lit ? 0.1 : 0.5) * rn;  // eq. 65a, b
  const double cd = lit ? 0.24 : 0.96;      // table 1
  const double delta = saturation_slope_kpa_c(hour.t_c);
  const double vpd = saturation_vapour_pressure_kpa(hour.t_c) - hour.ea_kpa;
  const double et = (mm_per_mj_m2 * delta * (rn - g) + gamma * 37 / (hour.t_c + 273) * hour.u2_m_s * vpd) /
                    (delta + gamma * (1 + cd * hour.u2_m_s));
  return std::max(et, 0.0);
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
  for (std::size_t i = 0; i < 24; ++i) share[i] = short_reference_mm_h(hours[i], fcd, gamma);
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
