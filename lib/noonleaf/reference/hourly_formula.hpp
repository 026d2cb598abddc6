#pragma once

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <numbers>

#include "noonleaf/atmosphere/radiation_formula.hpp"
#include "noonleaf/atmosphere/sun_formula.hpp"
#include "noonleaf/atmosphere/vapour_formula.hpp"
#include "noonleaf/constants.hpp"
#include "noonleaf/reference/penman_monteith_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace formula {

/// Coefficients of the hourly equations. FAO-56 eq. 53, 45, 46; ASCE-EWRI 2005 table 1 and eq. 65, 66.
struct HourlyCoefficients {
  double cn;
  double cd_day, cd_night;  ///< FAO-56 knows one
  double g_day, g_night;    ///< G as a share of Rn
};
inline constexpr HourlyCoefficients fao56_hourly{37.0, 0.34, 0.34, 0.1, 0.5};
inline constexpr HourlyCoefficients asce_short_hourly{37.0, 0.24, 0.96, 0.1, 0.5};
inline constexpr HourlyCoefficients asce_tall_hourly{66.0, 0.25, 1.7, 0.04, 0.2};

/// When a period lies for the sun over a place: the solar day of its middle and how far into it, and the hour
/// of that middle on a clock that keeps UTC. The day is that of local mean solar time, so that no zone is
/// needed. A place of missing longitude is given the day of Greenwich; its sun is missing all the same.
struct SolarMoment {
  std::chrono::sys_days day;
  std::chrono::milliseconds into_day;
  double clock_h;
};
inline SolarMoment solar_moment(std::chrono::sys_seconds begin, std::chrono::seconds length,
                                double longitude_deg) {
  using namespace std::chrono;
  const auto middle = begin + milliseconds{length} / 2;
  const double ahead_ms =
      std::isnan(longitude_deg) ? 0.0 : longitude_deg * 240'000.0;  // 4 minutes per degree
  const auto local = middle + milliseconds{static_cast<std::int64_t>(ahead_ms)};
  const sys_days day = floor<days>(local);
  const double since_midnight_ms = static_cast<double>((middle - floor<days>(middle)).count());
  return {day, local - day, since_midnight_ms / 3'600'000.0};
}

/// The sun over a period, and what it can tell of the clouds.
struct HourSky {
  SunPath path;
  double correction_h, time_angle_rad, sin_altitude;
  double ra_mj_m2_h;
  bool is_day;         ///< sun up at the middle
  bool has_own_ratio;  ///< Rs/Rso of the period itself is used
  bool keeps_ratio;    ///< and handed on to the periods that have none
};

/// FAO-56: the whole period in daylight. Its ratio is handed on up to two hours before sunset, (ws - 0.52);
/// on days shorter than four hours, up to noon.
inline void see_clouds_fao56(HourSky& sky, double half_width) {
  const double w = sky.time_angle_rad, ws = sky.path.sunset_angle_rad;
  sky.has_own_ratio = ws >= std::numbers::pi || std::abs(w) + half_width <= ws;
  sky.keeps_ratio = sky.has_own_ratio && w <= std::max(ws - 0.52, 0.0);
}

/// ASCE-EWRI 2005 eq. 46: sun at 0.3 rad or higher; the period of solar noon on days when it never is.
inline void see_clouds_asce(HourSky& sky, double half_width) {
  const double enough = std::sin(0.3), noon = sin_sun_altitude(sky.path, 0.0);
  const bool lone_noon = noon < enough && noon > 0.0 && std::abs(sky.time_angle_rad) <= half_width;
  sky.has_own_ratio = sky.sin_altitude >= enough || lone_noon;
  sky.keeps_ratio = sky.has_own_ratio;
}

inline void see_clouds(HourSky& sky, double half_width, Equation equation) {
  if (equation == Equation::asce) {
    see_clouds_asce(sky, half_width);
  } else {
    see_clouds_fao56(sky, half_width);
  }
}

inline HourSky hour_sky(const SunPath& path, double correction_h, double clock_h, double longitude_deg,
                        double length_h, Equation equation) {
  const double place_west_deg = -longitude_deg;  // FAO-56 counts longitude to the west
  HourSky sky{};
  sky.path = path;
  sky.correction_h = correction_h;
  sky.time_angle_rad = std::remainder(solar_time_angle_rad(clock_h, 0.0, place_west_deg, correction_h),
                                      2.0 * std::numbers::pi);
  sky.sin_altitude = sin_sun_altitude(path, sky.time_angle_rad);
  sky.ra_mj_m2_h = extraterrestrial_radiation_mj_m2_h(path, sky.time_angle_rad, length_h);
  sky.is_day = std::abs(sky.time_angle_rad) < path.sunset_angle_rad;
  see_clouds(sky, std::numbers::pi * length_h / 24.0, equation);
  return sky;
}

/// The inputs of one period.
struct HourRow {
  double t_c, ea_kpa, rs_mj_m2_h, u2_m_s;
};

/// What is worked out for one period.
struct HourTerms {
  double es_kpa, delta_kpa_c, rns_mj_m2_h, rnl_mj_m2_h, rn_mj_m2_h, g_mj_m2_h;
  PenmanMonteithTerms terms;
};

/// Rs/Rso of a period as its equation limits it. The stand-in is never used: a period without sun has no own
/// ratio.
template <Equation equation>
[[gnu::always_inline]] inline double hourly_relative_sun(double rs, double rso) {
  return equation == Equation::asce ? relative_sun_asce(rs, rso)
                                    : relative_sun(rs, rso, polar_night_cloud_ratio);
}

/// One period from its inputs to the terms of the reference equation. day_g is G/Rn by the sun, for FAO-56;
/// ASCE-EWRI tells day from night by the sign of Rn.
template <class Math, Equation equation>
[[gnu::always_inline]] inline HourTerms hourly_terms(const HourRow& row, double gamma, double relative_sun,
                                                     double day_g, HourlyCoefficients c) {
  constexpr bool asce = equation == Equation::asce;
  HourTerms out;
  out.es_kpa = saturation_vapour_pressure_kpa<Math>(row.t_c);
  out.delta_kpa_c = asce ? saturation_slope_asce_kpa_c<Math>(row.t_c) : saturation_slope_kpa_c<Math>(row.t_c);
  out.rns_mj_m2_h = net_solar(row.rs_mj_m2_h, reference_albedo);
  const double sigma = asce ? stefan_boltzmann_asce_mj_k4_m2_h : stefan_boltzmann_mj_k4_m2_h;
  out.rnl_mj_m2_h = sigma * fourth_power(row.t_c + kelvin_offset) * net_emissivity<Math>(row.ea_kpa) *
                    cloudiness(relative_sun);          // FAO-56 eq. 39 per hour
  out.rn_mj_m2_h = out.rns_mj_m2_h - out.rnl_mj_m2_h;  // FAO-56 eq. 40
  const bool night = out.rn_mj_m2_h < 0.0;
  const double g_share = asce ? (night ? c.g_night : c.g_day) : day_g;
  const double cd = night ? c.cd_night : c.cd_day;
  out.g_mj_m2_h = g_share * out.rn_mj_m2_h;
  out.terms = penman_monteith(out.delta_kpa_c, gamma, out.rn_mj_m2_h, out.g_mj_m2_h, row.t_c, row.u2_m_s,
                              out.es_kpa, row.ea_kpa, {c.cn, cd});
  return out;
}

}  // namespace formula
}  // namespace v1
}  // namespace noonleaf
