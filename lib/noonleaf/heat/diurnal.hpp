#pragma once

#include <array>
#include <chrono>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A day at a place, by the wall clock.
struct DaySite {
  std::chrono::year_month_day date{};  ///< by the wall clock of the place
  Location location{};                 ///< all three numbers are needed
  double utc_offset_h =
      missing;  ///< wall clock minus UTC, daylight saving included: -5 for Central summer time
};

/// Weather of one hour: means over it, except the radiation, which is its sum.
struct WeatherHour {
  double t_c = missing;         ///< mean air temperature
  double ea_kpa = missing;      ///< actual vapour pressure
  double rs_mj_m2_h = missing;  ///< solar radiation on a level surface
  double u2_m_s = missing;      ///< at 2 m
};

/// The 24 hours of a day; hour i runs from i:00 to i+1:00 by the wall clock. On days when the clock changes
/// the offset of the larger part of the day is kept through all 24.
using WeatherHours = std::array<WeatherHour, 24>;

/// What is known of a day that has no hours.
struct DailyShape {
  DaySite site{};                   ///< day and place
  double t_max_c = missing;         ///< highest of the day
  double t_min_c = missing;         ///< lowest of the day
  double ea_kpa = missing;          ///< mean actual vapour pressure
  double rs_mj_m2_d = missing;      ///< total
  double u2_m_s = missing;          ///< mean at 2 m
  double t_max_before_c = missing;  ///< yesterday's, for the hours before dawn; missing = this day's
  double t_min_after_c = missing;   ///< tomorrow's, for the hours after sunset; missing = this day's
};

/// A day spread over its hours.
struct DiurnalDay {
  WeatherHours hours{};              ///< by the wall clock
  double sunrise_h = missing;        ///< by the wall clock
  double solar_noon_h = missing;     ///< by the wall clock
  double sunset_h = missing;         ///< by the wall clock
  double ea_held_kpa = missing;      ///< vapour pressure held in every hour that is not saturated
  double ea_residual_kpa = missing;  ///< day's mean less mean of the hours: 0 unless all hours saturate
};

/// Up to this latitude, north and south, a day is worked out by the hour: beyond it a day may have no night.
inline constexpr double highest_latitude_deg = 66;

/// Hours from a day.
///
/// Equation  temperature, day     T = Tmin + (Tmax - Tmin) sin(pi m / (Y + 2 a)), m hours after the minimum
///           temperature, night   T = [Tmin - Tset e^-b + (Tset - Tmin) e^(-b n / Z)] / (1 - e^-b),
///                                n hours after sunset, Z from sunset to the next minimum
///           radiation            Rs,h = Rs Ra,h / sum Ra,h
///           humidity             ea,h = min(e°(T,h), L), L such that the mean of the hours is the day's
///           wind                 u,h ~ 1 at night, 1 + pi/2 sin(pi m / Y) by day
/// Source    Temperature: Parton & Logan (1981), Agric. Meteorol. 23:205-216, a = 1.86 h, b = 2.20, minimum
///           c = -0.17 h after sunrise (their values for 1.5 m). As printed the night ends e^-b = 11 % of the
///           evening's fall above the minimum and jumps at dawn; the form above ends at the minimum.
///           Radiation: FAO-56 eq. 28 for the shape. Wind: day to night ratio 2 of Doorenbos & Pruitt (1977,
///           FAO-24; quoted in FAO-56 ch. 3, from memory); the half sine is ours
/// Kept      Highest hour = Tmax, lowest = Tmin (sampled hours are stretched, by 3 % of the range at most),
///           sum of radiation, mean of vapour pressure, mean of wind; each to 1e-12 of its size
/// Input     t_max_c, t_min_c -60 to 60 °C, in order; ea_kpa 0 to 10; rs_mj_m2_d 0 to 60; u2_m_s 0 to 60;
///           latitude to highest_latitude_deg; offset -12 to 14
/// Missing   A missing value leaves its own column NaN; humidity needs the temperatures, all need the site
/// Throws    Error, naming the field, when outside the accepted range
DiurnalDay hours_of_day(const DailyShape& day);

/// Extraterrestrial radiation in the hours of the wall clock: the sun's shape of the day.
///
/// Source    FAO-56, ch. 3, eq. 28
/// Result    [MJ m⁻² h⁻¹], 24 values
/// Missing   NaN in all hours if date, latitude, longitude or offset is missing
/// Throws    Error, naming the field, when outside the range of hours_of_day
std::array<double, 24> extraterrestrial_by_hour_mj_m2_h(const DaySite& site);

/// Measured hours where they exist, estimated ones elsewhere, value by value. The day's totals are then those
/// of the mixture.
WeatherHours prefer_measured(const WeatherHours& measured, const WeatherHours& estimated);

}  // namespace v1
}  // namespace noonleaf
