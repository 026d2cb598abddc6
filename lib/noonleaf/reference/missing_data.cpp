#include "noonleaf/reference/missing_data.hpp"

#include <algorithm>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/reference/ladder_rungs.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

void fill_temperature(DailyEstimate& day, const DailyWeather& weather) {
  require_within("t_max_c", weather.t_max_c, accepted::temperature_c, "°C");
  require_within("t_min_c", weather.t_min_c, accepted::temperature_c, "°C");
  require_ordered("t_max_c", weather.t_max_c, "t_min_c", weather.t_min_c, "°C");
  day.t_max_c = weather.t_max_c;
  day.t_min_c = weather.t_min_c;
  const bool both = is_known(day.t_max_c) && is_known(day.t_min_c);
  day.temperature = both ? TemperatureFrom::measured : TemperatureFrom::none;
}

/// Rungs that need only what was measured.
void fill_measured_humidity(DailyEstimate& day, const DailyWeather& weather) {
  require_within("ea_kpa", weather.ea_kpa, accepted::vapour_pressure_kpa, "kPa");
  if (is_known(weather.ea_kpa)) {
    day.ea_kpa = weather.ea_kpa;
    day.humidity = HumidityFrom::measured;
  } else if (is_known(weather.t_dew_c)) {
    day.ea_kpa = vapour_pressure_from_dew_point_kpa(weather.t_dew_c);
    day.humidity = HumidityFrom::dew_point;
  }
}

/// Rungs that need the day's temperatures too.
void fill_relative_humidity(DailyEstimate& day, const DailyWeather& weather) {
  const DailyHumidity air{day.t_max_c, day.t_min_c, checked_humidity("rh_max_pct", weather.rh_max_pct),
                          checked_humidity("rh_min_pct", weather.rh_min_pct),
                          checked_humidity("rh_mean_pct", weather.rh_mean_pct)};
  require_ordered("rh_max_pct", air.rh_max_pct, "rh_min_pct", air.rh_min_pct, "%");
  if (is_known(day.ea_kpa) || day.temperature == TemperatureFrom::none) return;
  if (is_known(air.rh_max_pct) && is_known(air.rh_min_pct)) {
    day.ea_kpa = vapour_pressure_from_rh_max_min_kpa(air);
    day.humidity = HumidityFrom::rh_max_min;
  } else if (is_known(air.rh_max_pct)) {
    day.ea_kpa = vapour_pressure_from_rh_max_kpa(air);
    day.humidity = HumidityFrom::rh_max;
  } else if (is_known(air.rh_mean_pct)) {
    day.ea_kpa = vapour_pressure_from_rh_mean_kpa(air);
    day.humidity = HumidityFrom::rh_mean;
  }
}

void fill_humidity(DailyEstimate& day, const DailyWeather& weather, const LadderOptions& options) {
  fill_measured_humidity(day, weather);
  fill_relative_humidity(day, weather);
  if (is_known(day.ea_kpa) || is_missing(day.t_min_c)) return;
  const double t_dew = dew_point_from_t_min_c({day.t_min_c, options.dryness, options.arid_offset_c});
  day.ea_kpa = vapour_pressure_from_dew_point_kpa(t_dew);
  day.humidity = HumidityFrom::t_min;
}

void fill_lowest_humidity(DailyEstimate& day, const DailyWeather& weather) {
  if (is_known(weather.rh_min_pct)) {
    day.rh_min_pct = checked_humidity("rh_min_pct", weather.rh_min_pct);
    day.rh_min = RhMinFrom::measured;
  } else if (is_known(day.ea_kpa) && is_known(day.t_max_c)) {
    const double rh = 100.0 * day.ea_kpa / saturation_vapour_pressure_kpa(day.t_max_c);  // FAO-56 eq. 63, 64
    day.rh_min_pct = std::min(100.0, rh);
    day.rh_min = RhMinFrom::vapour_pressure;
  }
}

/// Radiation from the temperature range, held at the clear sky: no day is brighter, however wide its range.
double radiation_from_range(const DailyEstimate& day, double ra, const Location& location, Setting setting) {
  const double rs = radiation_from_temperature_mj_m2_d({day.t_max_c, day.t_min_c, ra, setting});
  const double rso = clear_sky_radiation(SimpleClearSky{ra, location.elevation_m});
  return rs > rso ? rso : rs;
}

void fill_radiation(DailyEstimate& day, const DailyWeather& weather, const Location& location,
                    const LadderOptions& options) {
  const SunDay sun{location.latitude_deg, day_of_year(day.date)};
  require_within("rs_mj_m2_d", weather.rs_mj_m2_d, accepted::radiation_mj_m2_d, "MJ/m2/d");
  require_within("sunshine_h", weather.sunshine_h, 0, 24, "h");
  if (is_known(weather.rs_mj_m2_d)) {
    day.rs_mj_m2_d = weather.rs_mj_m2_d;
    day.radiation = RadiationFrom::measured;
    return;
  }
  const double ra = extraterrestrial_radiation_mj_m2_d(sun);
  if (is_known(weather.sunshine_h)) {
    day.rs_mj_m2_d = radiation_from_sunshine_mj_m2_d({.sunshine_h = weather.sunshine_h,
                                                      .daylight_h = daylight_h(sun),
                                                      .ra_mj_m2_d = ra,
                                                      .angstrom_a = options.angstrom_a,
                                                      .angstrom_b = options.angstrom_b});
    day.radiation = RadiationFrom::sunshine;
  } else if (day.temperature == TemperatureFrom::measured) {
    day.rs_mj_m2_d = radiation_from_range(day, ra, location, options.setting);
    day.radiation = RadiationFrom::temperature_range;
  }
}

}  // namespace

bool DailyEstimate::is_complete() const {
  return temperature != TemperatureFrom::none && radiation != RadiationFrom::none &&
         humidity != HumidityFrom::none && wind != WindFrom::none && pressure != PressureFrom::none;
}

DailyEstimate complete_daily(const DailyWeather& weather, const Location& location,
                             const LadderOptions& options) {
  require_location_field("latitude_deg", location.latitude_deg);
  require_location_field("elevation_m", location.elevation_m);
  DailyEstimate day;
  if (weather.date == std::chrono::year_month_day{}) return day;
  day.date = weather.date;
  fill_temperature(day, weather);
  const PressureRung pressure = pressure_rung(weather.pressure_kpa, location);
  day.pressure_kpa = pressure.pressure_kpa;
  day.pressure = pressure.from;
  const WindRung wind = wind_rung(weather.wind_m_s, options);
  day.u2_m_s = wind.u2_m_s;
  day.wind = wind.from;
  fill_humidity(day, weather, options);
  fill_lowest_humidity(day, weather);
  fill_radiation(day, weather, location, options);
  return day;
}

}  // namespace v1
}  // namespace noonleaf
