#include "noonleaf/heat/wbgt.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/constants.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/heat/hour_humidity.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

// Liljegren et al. (2008): constants of the paper, from memory. Pressures in hPa, temperatures in K, as
// there.
constexpr double stefan_boltzmann_w = 5.6696e-8;
constexpr double cp_air = 1003.5, gas_constant = 8314.34;
constexpr double mass_air = 28.97, mass_water = 18.015;
constexpr double r_air = gas_constant / mass_air;
constexpr double prandtl = cp_air / (cp_air + 1.25 * r_air);
constexpr double globe_emissivity = 0.95, globe_albedo = 0.05, globe_diameter_m = 0.0508;
constexpr double wick_emissivity = 0.95, wick_albedo = 0.4, wick_diameter_m = 0.007, wick_length_m = 0.0254;
constexpr double ground_emissivity = 0.999, ground_albedo = 0.45;
constexpr double lowest_wind_m_s = 0.13, solar_constant_w_m2 = 1367.0;
constexpr double lowest_cos_zenith = 0.00873;  // 89.5°
constexpr double zero_celsius_k = 273.15;
constexpr double hottest_wick_k = 350.0;  // ours: water boils at 354 K under 50 kPa, the least accepted

double saturation_hpa(double t_k) {  // Buck (1981), over water, with the enhancement of moist air
  return 1.004 * 6.1121 * std::exp(17.502 * (t_k - 273.15) / (t_k - 32.18));
}

double viscosity(double t_k) {  // kg m⁻¹ s⁻¹, kinetic theory
  const double omega = (t_k / 97.0 - 2.9) / 0.4 * -0.034 + 1.048;
  return 2.6693e-6 * std::sqrt(mass_air * t_k) / (3.617 * 3.617 * omega);
}

double conductivity_w(double t_k) { return (cp_air + 1.25 * r_air) * viscosity(t_k); }

double diffusivity_m2_s(double t_k, double p_hpa) {  // of water vapour in air
  const double critical_p = std::cbrt(36.4 * 218.0);
  const double critical_t = std::pow(132.0 * 647.3, 5.0 / 12.0);
  const double masses = std::sqrt(1 / mass_air + 1 / mass_water);
  return 3.640e-4 * std::pow(t_k / std::sqrt(132.0 * 647.3), 2.334) * critical_p * critical_t * masses /
         (p_hpa / 1013.25) * 1e-4;
}

double latent_heat_j_kg(double t_k) { return (313.15 - t_k) / 30.0 * -71100.0 + 2.4073e6; }

double sky_emissivity(double e_hpa) { return 0.575 * std::pow(e_hpa, 0.143); }

struct Surroundings {
  double t_k, e_hpa, p_hpa, wind_m_s;
  double solar_w_m2, cos_zenith, direct_frac;
};

// Share of the direct beam, from how bright the hour is against the sky without air.
Surroundings surroundings_of(const OutdoorAir& air) {
  Surroundings s{.t_k = air.t_c + zero_celsius_k,
                 .e_hpa = 0,
                 .p_hpa = air.pressure_kpa * 10,
                 .wind_m_s = std::max(air.u2_m_s, lowest_wind_m_s),
                 .solar_w_m2 = air.rs_w_m2,
                 .cos_zenith = air.cos_zenith,
                 .direct_frac = 0};
  s.e_hpa = air.rh_pct / 100 * saturation_hpa(s.t_k);
  const double top_w_m2 =
      solar_constant_w_m2 * std::max(air.cos_zenith, 0.0) / (air.sun_distance_au * air.sun_distance_au);
  if (air.cos_zenith < lowest_cos_zenith || top_w_m2 <= 0) return s;
  const double bright = std::min(air.rs_w_m2 / top_w_m2, 0.85);
  s.solar_w_m2 = bright * top_w_m2;
  if (bright > 0) s.direct_frac = std::clamp(std::exp(3 - 1.34 * bright - 1.65 / bright), 0.0, 0.9);
  return s;
}

double reynolds(const Surroundings& s, double film_k, double diameter_m) {
  const double density = s.p_hpa * 100 / (r_air * film_k);
  return s.wind_m_s * density * diameter_m / viscosity(film_k);
}

double longwave_w_m2(const Surroundings& s) {
  return 0.5 * (sky_emissivity(s.e_hpa) + ground_emissivity) * std::pow(s.t_k, 4);
}

// Heat that the globe still gains at a temperature, over sigma and its emissivity [K⁴]; falls as it warms.
double globe_gain(const Surroundings& s, double globe_k) {
  const double film_k = 0.5 * (globe_k + s.t_k);
  const double nusselt = 2 + 0.6 * std::sqrt(reynolds(s, film_k, globe_diameter_m)) * std::cbrt(prandtl);
  const double h = nusselt * conductivity_w(film_k) / globe_diameter_m;
  const double beam = s.direct_frac > 0 ? (1 / (2 * s.cos_zenith) - 1) * s.direct_frac : 0;
  return longwave_w_m2(s) - h / (stefan_boltzmann_w * globe_emissivity) * (globe_k - s.t_k) +
         s.solar_w_m2 / (2 * stefan_boltzmann_w * globe_emissivity) * (1 - globe_albedo) *
             (1 + beam + ground_albedo) -
         std::pow(globe_k, 4);
}

// Heat that the wick still gains at a temperature, as a temperature difference [K]; falls as it warms.
double wick_gain(const Surroundings& s, double wick_k) {
  const double film_k = 0.5 * (wick_k + s.t_k);
  const double h = 0.281 * std::pow(reynolds(s, film_k, wick_diameter_m), 0.6) * std::pow(prandtl, 0.44) *
                   conductivity_w(film_k) / wick_diameter_m;
  const double density = s.p_hpa * 100 / (r_air * film_k);
  const double schmidt = viscosity(film_k) / (density * diffusivity_m2_s(film_k, s.p_hpa));
  const double ew = saturation_hpa(wick_k);
  const double evaporation = latent_heat_j_kg(film_k) / (cp_air * mass_air / mass_water) *
                             std::pow(prandtl / schmidt, 0.56) * (ew - s.e_hpa) / (s.p_hpa - ew);
  const double side = 0.25 * wick_diameter_m / wick_length_m;
  const double tan_zenith = s.direct_frac > 0 ? std::sqrt(1 - s.cos_zenith * s.cos_zenith) / s.cos_zenith : 0;
  const double solar = (1 - wick_albedo) * s.solar_w_m2 *
                       ((1 - s.direct_frac) * (1 + side) +
                        s.direct_frac * (tan_zenith / std::numbers::pi + side) + ground_albedo);
  const double longwave = stefan_boltzmann_w * wick_emissivity * (longwave_w_m2(s) - std::pow(wick_k, 4));
  return s.t_k - evaporation + (longwave + solar) / h - wick_k;
}

// The one temperature at which nothing is gained any more. Both balances fall steadily with temperature.
template <class Gain>
double balanced_k(const Gain& gain, double low_k, double high_k) {
  if (gain(low_k) < 0 || gain(high_k) > 0) {
    Problem problem;
    problem.field = "rs_w_m2";
    problem.message = "the heat balance of the bulb has no end between " +
                      number_text(low_k - zero_celsius_k) + " and " + number_text(high_k - zero_celsius_k) +
                      " °C";
    problem.fix = "check that sun, wind and air belong to one hour";
    throw Error(std::move(problem));
  }
  for (int step = 0; step < 60; ++step) {
    const double middle = (low_k + high_k) / 2;
    (gain(middle) > 0 ? low_k : high_k) = middle;
  }
  return low_k;
}

void require_ranges(const OutdoorAir& air) {
  require_within("t_c", air.t_c, -20, 55, "°C");
  require_within("rh_pct", air.rh_pct, 0, 100, "%");
  require_within("pressure_kpa", air.pressure_kpa, 50, 110, "kPa");
  require_within("u2_m_s", air.u2_m_s, 0, 30, "m/s");
  require_within("rs_w_m2", air.rs_w_m2, 0, 1400, "W/m²");
  require_within("cos_zenith", air.cos_zenith, -1, 1, "");
  require_within("sun_distance_au", air.sun_distance_au, 0.9, 1.1, "AU");
}

}  // namespace

OutdoorWbgt outdoor_wbgt(const OutdoorAir& air) {
  require_ranges(air);
  const double sum = air.t_c + air.rh_pct + air.pressure_kpa + air.u2_m_s + air.rs_w_m2 + air.cos_zenith +
                     air.sun_distance_au;
  if (is_missing(sum)) return {};
  const Surroundings s = surroundings_of(air);
  OutdoorWbgt out;
  out.globe_c =
      balanced_k([&](double t_k) { return globe_gain(s, t_k); }, s.t_k - 40, s.t_k + 80) - zero_celsius_k;
  out.natural_wet_bulb_c = balanced_k([&](double t_k) { return wick_gain(s, t_k); }, s.t_k - 50,
                                      std::min(s.t_k + 80, hottest_wick_k)) -
                           zero_celsius_k;
  out.wbgt_c =
      wbgt_of_bulbs_c({.natural_wet_bulb_c = out.natural_wet_bulb_c, .globe_c = out.globe_c, .t_c = air.t_c});
  return out;
}

double clear_sky_cos_zenith(double rs_w_m2) {
  constexpr double clear_sky_share = 0.75;
  require_within("rs_w_m2", rs_w_m2, 0, 1400, "W/m2");
  if (is_missing(rs_w_m2)) return missing;
  return std::min(1.0, rs_w_m2 / (clear_sky_share * solar_constant_w_m2));
}

std::array<OutdoorWbgt, 24> outdoor_wbgt_by_hour(const WeatherHours& hours, const DaySite& site) {
  const std::array<double, 24> ra = extraterrestrial_by_hour_mj_m2_h(site);
  std::array<OutdoorWbgt, 24> out;
  if (is_missing(ra[0]) || is_missing(site.location.elevation_m)) return out;
  const double dr = inverse_relative_distance(day_of_year(site.date));
  for (std::size_t i = 0; i < out.size(); ++i) {
    out[i] = outdoor_wbgt({.t_c = hours[i].t_c,
                           .rh_pct = relative_humidity_pct(hours[i]),
                           .pressure_kpa = atmospheric_pressure_kpa(site.location.elevation_m),
                           .u2_m_s = hours[i].u2_m_s,
                           .rs_w_m2 = hours[i].rs_mj_m2_h * 1e6 / 3600,
                           .cos_zenith = ra[i] / (60 * solar_mj_m2_min * dr),
                           .sun_distance_au = 1 / std::sqrt(dr)});
  }
  return out;
}

double alert_limit_wbgt_c(double metabolic_w) {
  require_within("metabolic_w", metabolic_w, 100, 600, "W");
  return 59.9 - 14.1 * std::log10(metabolic_w);
}

double exposure_limit_wbgt_c(double metabolic_w) {
  require_within("metabolic_w", metabolic_w, 100, 600, "W");
  return 56.7 - 11.5 * std::log10(metabolic_w);
}

double wbgt_of_bulbs_c(const Bulbs& bulbs) {
  return 0.7 * bulbs.natural_wet_bulb_c + 0.2 * bulbs.globe_c + 0.1 * bulbs.t_c;
}

double psychrometric_wet_bulb_c(double t_c, double rh_pct) {
  require_within("t_c", t_c, -20, 50, "°C");
  require_within("rh_pct", rh_pct, 5, 99, "%");
  return t_c * std::atan(0.151977 * std::sqrt(rh_pct + 8.313659)) + std::atan(t_c + rh_pct) -
         std::atan(rh_pct - 1.676331) + 0.00391838 * std::pow(rh_pct, 1.5) * std::atan(0.023101 * rh_pct) -
         4.686035;
}

}  // namespace v1
}  // namespace noonleaf
