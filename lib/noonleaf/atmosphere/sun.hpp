#pragma once

#include <chrono>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Number of the day in the year, FAO-56's J: 1 on 1 January, 365 or 366 on 31 December.
///
/// Source    FAO-56 (Allen et al. 1998), annex 2, table 2.5
/// Throws    Error, field "date", for a date that does not exist
int day_of_year(std::chrono::year_month_day date);

/// Inverse relative distance from earth to sun.
///
/// Equation  dr = 1 + 0.033 cos(2 pi J / 365)
/// Source    FAO-56, ch. 3, eq. 23
/// Input     day_of_year  J, 1 to 366. The printed 365 stays in leap years.
/// Result    [-]
/// Throws    Error, field "day_of_year", when outside 1 to 366
double inverse_relative_distance(int day_of_year);

/// Solar declination.
///
/// Equation  declination = 0.409 sin(2 pi J / 365 - 1.39)
/// Source    FAO-56, ch. 3, eq. 24
/// Input     day_of_year  J, 1 to 366
/// Result    [rad], positive when the sun is north of the equator
/// Throws    Error, field "day_of_year", when outside 1 to 366
double solar_declination_rad(int day_of_year);

/// A latitude on a day of the year: all that the sun's daily path depends on.
struct SunDay {
  double latitude_deg = missing;  ///< positive to the north
  int day_of_year = 1;            ///< J, 1 to 366
};

/// Sunset hour angle.
///
/// Equation  ws = arccos(-tan(latitude) tan(declination)); 0 where the sun stays down, pi where it stays up
/// Source    FAO-56, ch. 3, eq. 25. The two polar limits are ours: there the printed arccos has no value
/// Input     latitude_deg  [°] -90 to 90; day_of_year 1 to 366
/// Result    [rad] 0 to pi
/// Missing   NaN if the latitude is missing
/// Throws    Error, naming the field, when outside the accepted range
double sunset_hour_angle_rad(const SunDay& day);

/// Daylight hours, the longest possible sunshine N.
///
/// Equation  N = 24 ws / pi
/// Source    FAO-56, ch. 3, eq. 34
/// Input, Missing, Throws  as sunset_hour_angle_rad
/// Result    [h] 0 to 24
double daylight_h(const SunDay& day);

/// Extraterrestrial radiation of a day on a level surface.
///
/// Equation  Ra = 24 (60) / pi Gsc dr [ws sin(latitude) sin(declination) + cos(latitude) cos(declination)
///           sin(ws)]
/// Source    FAO-56, ch. 3, eq. 21
/// Input, Missing, Throws  as sunset_hour_angle_rad
/// Result    [MJ m⁻² d⁻¹]; exactly 0 in the polar night
double extraterrestrial_radiation_mj_m2_d(const SunDay& day);

/// Seasonal correction of solar time.
///
/// Equation  Sc = 0.1645 sin(2b) - 0.1255 cos(b) - 0.025 sin(b), b = 2 pi (J - 81) / 364
/// Source    FAO-56, ch. 3, eq. 32, 33
/// Input     day_of_year  J, 1 to 366
/// Result    [h]
/// Throws    Error, field "day_of_year", when outside 1 to 366
double seasonal_correction_h(int day_of_year);

/// When a period of an hour or less has its middle, by a clock that keeps the mean time of a meridian.
struct SolarClock {
  double clock_h = missing;        ///< standard time at the middle of the period, 0 to 24
  double zone_meridian_deg = 0.0;  ///< of that clock, positive to the east: 15 per hour ahead of UTC
  double longitude_deg = missing;  ///< of the place, positive to the east
  int day_of_year = 1;             ///< J, 1 to 366
};

/// Solar time angle at the middle of a period.
///
/// Equation  w = pi/12 [(t + 0.06667 (Lz - Lm) + Sc) - 12], Lz and Lm in degrees west of Greenwich
/// Source    FAO-56, ch. 3, eq. 31
/// Input     clock_h  [h] 0 to 24; zone_meridian_deg, longitude_deg [°] -180 to 180, positive to the EAST:
///           the sign is turned once, in here
/// Result    [rad], 0 at solar noon, brought into -pi to pi
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range
/// Note      1/15 is used for the printed 0.06667; a clock that keeps UTC would be 2 seconds wrong otherwise.
///           Daylight saving time must be taken off first.
double solar_time_angle_rad(const SolarClock& clock);

/// The sun's height above the horizon.
///
/// Equation  sin(beta) = sin(latitude) sin(declination) + cos(latitude) cos(declination) cos(w)
/// Source    FAO-56, annex 3, eq. 3-15 (number from memory); ASCE-EWRI 2005, eq. 62 (number from memory)
/// Input     latitude_deg [°] -90 to 90; day_of_year 1 to 366; time_angle_rad [rad]
/// Result    [rad], below 0 when the sun is down
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range
struct SunMoment {
  double latitude_deg = missing;    ///< positive to the north
  int day_of_year = 1;              ///< J, 1 to 366
  double time_angle_rad = missing;  ///< at the middle of the period
};
/// Equation, input, result: see SunMoment.
double sun_altitude_rad(const SunMoment& moment);

/// Extraterrestrial radiation of an hour or shorter, as a rate per hour.
///
/// Equation  Ra = 12 (60) / pi Gsc dr [(w2 - w1) sin(latitude) sin(declination)
///                + cos(latitude) cos(declination) (sin(w2) - sin(w1))], w1,2 = w -+ pi t1 / 24
/// Source    FAO-56, ch. 3, eq. 28, 29, 30. A period that the sunrise or sunset cuts counts from or to it, as
///           ASCE-EWRI 2005 (eq. 56) says; one that holds both counts between them
/// Input     moment as sun_altitude_rad; length_h  t1 [h] 0.01 to 24
/// Result    [MJ m⁻² h⁻¹]: eq. 28 divided by the period's length; exactly 0 when the sun is down
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range
double extraterrestrial_radiation_mj_m2_h(const SunMoment& moment, double length_h);

}  // namespace v1
}  // namespace noonleaf
