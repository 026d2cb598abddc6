#include "noonleaf/atmosphere/vapour.hpp"

#include <cmath>
#include <utility>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/atmosphere/vapour_formula.hpp"
#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

double e0(double t_c) { return formula::saturation_vapour_pressure_kpa<ScalarMath>(t_c); }

void require_temperature(std::string_view field, double t_c) {
  require_within(field, t_c, accepted::temperature_c, "°C");
}

void require_humidity(std::string_view field, double rh_pct) {
  require_within(field, rh_pct, accepted::relative_humidity_pct, "%");
}

/// a_psy of FAO-56 eq. 16.
double psychrometer_coefficient_c(Ventilation ventilation) {
  switch (ventilation) {
    case Ventilation::forced_5_m_s:
      return 0.000662;
    case Ventilation::natural_1_m_s:
      return 0.000800;
    case Ventilation::indoor_0_m_s:
      return 0.001200;
  }
  return missing;
}

}  // namespace

double saturation_vapour_pressure_kpa(double t_c) {
  require_temperature("t_c", t_c);
  return e0(t_c);
}

double saturation_slope_kpa_c(double t_c) {
  require_temperature("t_c", t_c);
  return formula::saturation_slope_kpa_c<ScalarMath>(t_c);
}

double mean_saturation_vapour_pressure_kpa(const TemperatureRange& day) {
  require_temperature("t_max_c", day.t_max_c);
  require_temperature("t_min_c", day.t_min_c);
  return (e0(day.t_max_c) + e0(day.t_min_c)) / 2.0;  // FAO-56 eq. 12
}

double vapour_pressure_from_dew_point_kpa(double t_dew_c) {
  require_temperature("t_dew_c", t_dew_c);
  return e0(t_dew_c);  // FAO-56 eq. 14
}

double dew_point_c(double ea_kpa) {
  require_within("ea_kpa", ea_kpa, 0.001, 20, "kPa");
  const double ln_ea = std::log(ea_kpa);
  return (116.91 + 237.3 * ln_ea) / (16.78 - ln_ea);  // FAO-56 eq. 3-11
}

double vapour_pressure_from_psychrometer_kpa(const Psychrometer& reading) {
  require_temperature("t_dry_c", reading.t_dry_c);
  require_temperature("t_wet_c", reading.t_wet_c);
  require_ordered("t_dry_c", reading.t_dry_c, "t_wet_c", reading.t_wet_c, "°C");
  require_within("pressure_kpa", reading.pressure_kpa, accepted::pressure_kpa, "kPa");
  const double gamma_psy = psychrometer_coefficient_c(reading.ventilation) * reading.pressure_kpa;  // eq. 16
  const double ea = e0(reading.t_wet_c) - gamma_psy * (reading.t_dry_c - reading.t_wet_c);          // eq. 15
  if (ea < 0.0) {
    Problem problem;
    problem.field = "t_wet_c";
    problem.text = number_text(reading.t_wet_c);
    problem.message = problem.text + " °C is lower than a wet bulb can be at t_dry_c, " +
                      number_text(reading.t_dry_c) + " °C";
    problem.fix = "check both thermometers; the wet one may have been read in another unit";
    throw Error(std::move(problem));
  }
  return ea;
}

double vapour_pressure_from_rh_max_min_kpa(const DailyHumidity& day) {
  require_temperature("t_max_c", day.t_max_c);
  require_temperature("t_min_c", day.t_min_c);
  require_humidity("rh_max_pct", day.rh_max_pct);
  require_humidity("rh_min_pct", day.rh_min_pct);
  return (e0(day.t_min_c) * day.rh_max_pct / 100.0 + e0(day.t_max_c) * day.rh_min_pct / 100.0) /
         2.0;  // eq. 17
}

double vapour_pressure_from_rh_max_kpa(const DailyHumidity& day) {
  require_temperature("t_min_c", day.t_min_c);
  require_humidity("rh_max_pct", day.rh_max_pct);
  return e0(day.t_min_c) * day.rh_max_pct / 100.0;  // FAO-56 eq. 18
}

double vapour_pressure_from_rh_mean_kpa(const DailyHumidity& day) {
  require_humidity("rh_mean_pct", day.rh_mean_pct);
  return day.rh_mean_pct / 100.0 * mean_saturation_vapour_pressure_kpa({day.t_max_c, day.t_min_c});  // eq. 19
}

double vapour_pressure_from_rh_kpa(const AirMoisture& air) {
  require_temperature("t_c", air.t_c);
  require_humidity("rh_pct", air.rh_pct);
  return e0(air.t_c) * air.rh_pct / 100.0;  // FAO-56 eq. 54
}

double dew_point_from_t_min_c(const DewPointGuess& day) {
  require_temperature("t_min_c", day.t_min_c);
  require_within("arid_offset_c", day.arid_offset_c, 0, 10, "°C");
  return day.dryness == Dryness::arid ? day.t_min_c - day.arid_offset_c : day.t_min_c;  // FAO-56 eq. 48
}

}  // namespace v1
}  // namespace noonleaf
