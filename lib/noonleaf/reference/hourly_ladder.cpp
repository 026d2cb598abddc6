#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/reference/hourly.hpp"
#include "noonleaf/reference/hourly_formula.hpp"
#include "noonleaf/reference/ladder_rungs.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

void fill_humidity(HourEstimate& hour, const HourRecord& record) {
  require_within("ea_kpa", record.ea_kpa, accepted::vapour_pressure_kpa, "kPa");
  const double rh_pct = checked_humidity("rh_pct", record.rh_pct);
  if (is_known(record.ea_kpa)) {
    hour.inputs.ea_kpa = record.ea_kpa;
    hour.humidity = HumidityFrom::measured;
  } else if (is_known(record.t_dew_c)) {
    hour.inputs.ea_kpa = vapour_pressure_from_dew_point_kpa(record.t_dew_c);
    hour.humidity = HumidityFrom::dew_point;
  } else if (is_known(rh_pct) && is_known(record.t_c)) {
    hour.inputs.ea_kpa = vapour_pressure_from_rh_kpa({record.t_c, rh_pct});
    hour.humidity = HumidityFrom::measured;
  }
}

/// Extraterrestrial radiation of the period, per hour.
double ra_of(const HourRecord& record, const Location& location) {
  const formula::SolarMoment moment =
      formula::solar_moment(record.begin, record.length, location.longitude_deg);
  const int j = day_of_year(std::chrono::year_month_day{moment.day});
  const double w = solar_time_angle_rad(
      {.clock_h = moment.clock_h, .longitude_deg = location.longitude_deg, .day_of_year = j});
  return extraterrestrial_radiation_mj_m2_h({location.latitude_deg, j, w},
                                            static_cast<double>(record.length.count()) / 3600.0);
}

void fill_radiation(HourEstimate& hour, const HourRecord& record, const Location& location,
                    const LadderOptions& options) {
  const double length_h = static_cast<double>(record.length.count()) / 3600.0;
  require_within("rs_mj_m2_h", record.rs_mj_m2_h, accepted::radiation_mj_m2_h, "MJ/m2/h");
  require_within("sunshine_h", record.sunshine_h, 0, length_h, "h");
  if (is_known(record.rs_mj_m2_h)) {
    hour.inputs.rs_mj_m2_h = record.rs_mj_m2_h;
    hour.radiation = RadiationFrom::measured;
  } else if (is_known(record.sunshine_h)) {
    hour.inputs.rs_mj_m2_h =
        (options.angstrom_a + options.angstrom_b * record.sunshine_h / length_h) * ra_of(record, location);
    hour.radiation = RadiationFrom::sunshine;
  }
}

}  // namespace

HourEstimate complete_hour(const HourRecord& record, const Location& location, const LadderOptions& options) {
  require_location_field("latitude_deg", location.latitude_deg);
  require_location_field("longitude_deg", location.longitude_deg);
  require_location_field("elevation_m", location.elevation_m);
  require_within("length", static_cast<double>(record.length.count()), accepted::period_s, "s");
  require_within("t_c", record.t_c, accepted::temperature_c, "°C");
  HourEstimate hour;
  hour.inputs.begin = record.begin;
  hour.inputs.length = record.length;
  hour.inputs.t_c = record.t_c;
  const PressureRung pressure = pressure_rung(record.pressure_kpa, location);
  hour.inputs.pressure_kpa = pressure.pressure_kpa;
  hour.pressure = pressure.from;
  const WindRung wind = wind_rung(record.wind_m_s, options);
  hour.inputs.u2_m_s = wind.u2_m_s;
  hour.wind = wind.from;
  fill_humidity(hour, record);
  fill_radiation(hour, record, location, options);
  return hour;
}

}  // namespace v1
}  // namespace noonleaf
