#include "noonleaf/atmosphere/sun.hpp"

#include <cmath>
#include <numbers>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/sun_formula.hpp"
#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

double checked_day(int day_of_year) {
  require_within("day_of_year", day_of_year, 1, 366, "");
  return day_of_year;
}

formula::SunPath checked_path(double latitude_deg, int day_of_year) {
  require_within("latitude_deg", latitude_deg, accepted::latitude_deg, "°");
  return formula::sun_path(formula::radians(latitude_deg), checked_day(day_of_year));
}

}  // namespace

int day_of_year(std::chrono::year_month_day date) {
  using namespace std::chrono;
  if (!date.ok()) {
    throw Error({.field = "date",
                 .message = "the date does not exist",
                 .fix = "give a day of the calendar, such as 2023-07-06"});
  }
  return static_cast<int>((sys_days{date} - sys_days{date.year() / January / 1}).count()) + 1;
}

double inverse_relative_distance(int day_of_year) {
  return formula::inverse_relative_distance(checked_day(day_of_year));
}

double solar_declination_rad(int day_of_year) {
  return formula::solar_declination_rad(checked_day(day_of_year));
}

double sunset_hour_angle_rad(const SunDay& day) {
  return checked_path(day.latitude_deg, day.day_of_year).sunset_angle_rad;
}

double daylight_h(const SunDay& day) { return formula::daylight_h(sunset_hour_angle_rad(day)); }

double extraterrestrial_radiation_mj_m2_d(const SunDay& day) {
  return formula::extraterrestrial_radiation_mj_m2_d(checked_path(day.latitude_deg, day.day_of_year));
}

double seasonal_correction_h(int day_of_year) {
  return formula::seasonal_correction_h(checked_day(day_of_year));
}

double solar_time_angle_rad(const SolarClock& clock) {
  require_within("clock_h", clock.clock_h, 0, 24, "h");
  require_within("zone_meridian_deg", clock.zone_meridian_deg, accepted::longitude_deg, "°");
  require_within("longitude_deg", clock.longitude_deg, accepted::longitude_deg, "°");
  const double zone_west_deg = -clock.zone_meridian_deg;  // FAO-56 counts longitude to the west
  const double place_west_deg = -clock.longitude_deg;
  const double angle = formula::solar_time_angle_rad(clock.clock_h, zone_west_deg, place_west_deg,
                                                     seasonal_correction_h(clock.day_of_year));
  return std::remainder(angle, 2.0 * std::numbers::pi);
}

double sun_altitude_rad(const SunMoment& moment) {
  const formula::SunPath path = checked_path(moment.latitude_deg, moment.day_of_year);
  return std::asin(formula::sin_sun_altitude(path, moment.time_angle_rad));
}

double extraterrestrial_radiation_mj_m2_h(const SunMoment& moment, double length_h) {
  require_within("length_h", length_h, 0.01, 24, "h");
  require_within("time_angle_rad", moment.time_angle_rad, -std::numbers::pi, std::numbers::pi, "rad");
  const formula::SunPath path = checked_path(moment.latitude_deg, moment.day_of_year);
  return formula::extraterrestrial_radiation_mj_m2_h(path, moment.time_angle_rad, length_h);
}

}  // namespace v1
}  // namespace noonleaf
