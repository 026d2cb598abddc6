#include "noonleaf/atmosphere/radiation.hpp"

#include <cmath>
#include <numbers>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/atmosphere/radiation_formula.hpp"
#include "noonleaf/atmosphere/sun_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

void require_radiation(std::string_view field, double value) {
  require_within(field, value, accepted::radiation_mj_m2_d, "MJ/m2");
}

void require_angstrom(const Sunshine& day) {
  require_within("angstrom_a", day.angstrom_a, 0, 1, "");
  require_within("angstrom_b", day.angstrom_b, 0, 1, "");
}

/// Beam transmissivity; `edition` holds the two numbers by which the publications differ.
double beam_transmissivity(const BeamClearSky& sky) {
  const double water_mm = 0.14 * sky.ea_kpa * sky.pressure_kpa + 2.1;  // precipitable water W
  const double air = -0.00146 * sky.pressure_kpa / (sky.turbidity * sky.sin_sun_altitude);
  const double depth = water_mm / sky.sin_sun_altitude;
  const double vapour =
      sky.edition == ClearSkyEdition::asce ? 0.075 * std::pow(depth, 0.4) : 0.091 * std::pow(depth, 0.25);
  return 0.98 * std::exp(air - vapour);
}

double diffuse_transmissivity(double kb, ClearSkyEdition edition) {
  if (kb < 0.15) return 0.18 + 0.82 * kb;
  return 0.35 - (edition == ClearSkyEdition::asce ? 0.36 : 0.33) * kb;
}

}  // namespace

double radiation_from_sunshine_mj_m2_d(const Sunshine& day) {
  require_within("sunshine_h", day.sunshine_h, 0, std::fmin(24, day.daylight_h + sunshine_leeway_h), "h");
  require_within("daylight_h", day.daylight_h, 0, 24, "h");
  require_radiation("ra_mj_m2_d", day.ra_mj_m2_d);
  require_angstrom(day);
  if (day.daylight_h == 0.0) return 0.0 * day.sunshine_h * day.ra_mj_m2_d;  // polar night: 0, or missing
  const double share = day.sunshine_h > day.daylight_h ? 1.0 : day.sunshine_h / day.daylight_h;
  return (day.angstrom_a + day.angstrom_b * share) * day.ra_mj_m2_d;  // FAO-56 eq. 35
}

double radiation_from_temperature_mj_m2_d(const TemperatureSun& day) {
  require_within("t_max_c", day.t_max_c, accepted::temperature_c, "°C");
  require_within("t_min_c", day.t_min_c, accepted::temperature_c, "°C");
  require_ordered("t_max_c", day.t_max_c, "t_min_c", day.t_min_c, "°C");
  require_radiation("ra_mj_m2_d", day.ra_mj_m2_d);
  const double k_rs = day.setting == Setting::coast ? 0.19 : 0.16;
  return k_rs * std::sqrt(day.t_max_c - day.t_min_c) * day.ra_mj_m2_d;  // FAO-56 eq. 50
}

double radiation_of_island_mj_m2_d(double ra_mj_m2_d) {
  require_radiation("ra_mj_m2_d", ra_mj_m2_d);
  return 0.7 * ra_mj_m2_d - 4.0;  // FAO-56 eq. 51
}

double radiation_from_nearby_mj_m2_d(const NearbySun& day) {
  require_radiation("station_rs_mj_m2_d", day.station_rs_mj_m2_d);
  require_radiation("station_ra_mj_m2_d", day.station_ra_mj_m2_d);
  require_radiation("ra_mj_m2_d", day.ra_mj_m2_d);
  if (day.station_ra_mj_m2_d == 0.0) return missing;
  return day.station_rs_mj_m2_d / day.station_ra_mj_m2_d * day.ra_mj_m2_d;  // FAO-56 eq. 49
}

double clear_sky_from_angstrom_mj_m2_d(const Sunshine& day) {
  require_radiation("ra_mj_m2_d", day.ra_mj_m2_d);
  require_angstrom(day);
  return (day.angstrom_a + day.angstrom_b) * day.ra_mj_m2_d;  // FAO-56 eq. 36
}

double clear_sky_radiation(const SimpleClearSky& sky) {
  require_radiation("ra", sky.ra);
  require_within("elevation_m", sky.elevation_m, accepted::elevation_m, "m");
  return formula::clear_sky(sky.ra, sky.elevation_m);
}

double clear_sky_from_beam(const BeamClearSky& sky) {
  require_radiation("ra", sky.ra);
  require_within("sin_sun_altitude", sky.sin_sun_altitude, -1, 1, "");
  require_within("pressure_kpa", sky.pressure_kpa, accepted::pressure_kpa, "kPa");
  require_within("ea_kpa", sky.ea_kpa, accepted::vapour_pressure_kpa, "kPa");
  require_within("turbidity", sky.turbidity, 0.5, 1, "");
  if (sky.sin_sun_altitude <= 0.0) return 0.0 * sky.ra * sky.pressure_kpa * sky.ea_kpa * sky.turbidity;
  const double kb = beam_transmissivity(sky);
  return (kb + diffuse_transmissivity(kb, sky.edition)) * sky.ra;
}

double sin_mean_sun_altitude(double latitude_deg, int day_of_year) {
  require_within("latitude_deg", latitude_deg, accepted::latitude_deg, "°");
  require_within("day_of_year", day_of_year, 1, 366, "");
  const double latitude = formula::radians(latitude_deg);
  const double sine =
      std::sin(0.85 + 0.3 * latitude * std::sin(2.0 * std::numbers::pi / 365.0 * day_of_year - 1.39) -
               0.42 * latitude * latitude);
  return sine < 0.0 ? 0.0 : sine;
}

double net_solar_radiation(double rs, double albedo) {
  require_radiation("rs", rs);
  require_within("albedo", albedo, 0, 1, "");
  return formula::net_solar(rs, albedo);
}

double net_longwave_radiation_mj_m2_d(const DailyLongwave& day) {
  require_within("t_max_c", day.t_max_c, accepted::temperature_c, "°C");
  require_within("t_min_c", day.t_min_c, accepted::temperature_c, "°C");
  require_within("ea_kpa", day.ea_kpa, accepted::vapour_pressure_kpa, "kPa");
  require_radiation("rs_mj_m2_d", day.rs_mj_m2_d);
  require_radiation("rso_mj_m2_d", day.rso_mj_m2_d);
  const double ratio = formula::relative_sun(day.rs_mj_m2_d, day.rso_mj_m2_d, polar_night_cloud_ratio);
  return formula::mean_emission(stefan_boltzmann_mj_k4_m2_d, day.t_max_c, day.t_min_c) *
         formula::net_emissivity<ScalarMath>(day.ea_kpa) * formula::cloudiness(ratio);  // FAO-56 eq. 39
}

}  // namespace v1
}  // namespace noonleaf
