#pragma once

#include "noonleaf/atmosphere/radiation_formula.hpp"
#include "noonleaf/atmosphere/vapour_formula.hpp"
#include "noonleaf/constants.hpp"
#include "noonleaf/reference/penman_monteith.hpp"

namespace noonleaf {
inline namespace v1 {
namespace formula {

/// Numerator and denominator coefficients of the reference surface: ASCE-EWRI 2005 table 1; 900 and 0.34 are
/// those of FAO-56 eq. 6 too.
struct SurfaceCoefficients {
  double cn, cd;
};
inline constexpr SurfaceCoefficients short_daily{900.0, 0.34};
inline constexpr SurfaceCoefficients tall_daily{1600.0, 0.38};

/// FAO-56 eq. 6, ASCE-EWRI 2005 eq. 1: the two terms of the numerator and the denominator.
struct PenmanMonteithTerms {
  double radiation, wind, denominator;
};
[[gnu::always_inline]] inline PenmanMonteithTerms penman_monteith(double delta, double gamma, double rn,
                                                                  double g, double t_mean, double u2,
                                                                  double es, double ea,
                                                                  SurfaceCoefficients surface) {
  return {mm_per_mj_m2 * delta * (rn - g), gamma * (surface.cn / (t_mean + 273.0)) * u2 * (es - ea),
          delta + gamma * (1.0 + surface.cd * u2)};
}

/// The inputs of one day.
struct DailyRow {
  double t_max_c, t_min_c, ea_kpa, rs_mj_m2_d, u2_m_s, g_mj_m2_d;
};

/// What depends on the site, and on the site and the day of the year.
struct DailySky {
  double gamma_kpa_c, ra_mj_m2_d, rso_mj_m2_d;
};

/// What is worked out for one day. What a caller does not use costs nothing: the compiler drops it.
struct DailyTerms {
  double t_mean_c, delta_kpa_c, e_t_max_kpa, e_t_min_kpa, es_kpa, relative_sun, rns_mj_m2_d, rnl_mj_m2_d,
      rn_mj_m2_d;
  PenmanMonteithTerms terms;
};

/// Rs/Rso and the cloudiness factor within ASCE-EWRI's limits (2005, with eq. 18): 0.3 to 1 and 0.05 to 1.
/// Both are printed; the first already keeps the second above 0.055.
[[gnu::always_inline]] inline double relative_sun_asce(double rs, double rso) {
  const double ratio = relative_sun(rs, rso, polar_night_cloud_ratio);
  return ratio < 0.3 ? 0.3 : ratio;
}

/// One day from its inputs to the terms of the reference equation.
template <class Math, Equation equation>
[[gnu::always_inline]] inline DailyTerms daily_terms(const DailyRow& day, const DailySky& sky,
                                                     SurfaceCoefficients surface) {
  constexpr bool asce = equation == Equation::asce;
  DailyTerms out;
  out.t_mean_c = (day.t_max_c + day.t_min_c) / 2.0;  // FAO-56 eq. 9
  out.delta_kpa_c =
      asce ? saturation_slope_asce_kpa_c<Math>(out.t_mean_c) : saturation_slope_kpa_c<Math>(out.t_mean_c);
  out.e_t_max_kpa = saturation_vapour_pressure_kpa<Math>(day.t_max_c);
  out.e_t_min_kpa = saturation_vapour_pressure_kpa<Math>(day.t_min_c);
  out.es_kpa = (out.e_t_max_kpa + out.e_t_min_kpa) / 2.0;  // FAO-56 eq. 12
  out.relative_sun = asce ? relative_sun_asce(day.rs_mj_m2_d, sky.rso_mj_m2_d)
                          : relative_sun(day.rs_mj_m2_d, sky.rso_mj_m2_d, polar_night_cloud_ratio);
  out.rns_mj_m2_d = net_solar(day.rs_mj_m2_d, reference_albedo);
  const double sigma = asce ? stefan_boltzmann_asce_mj_k4_m2_d : stefan_boltzmann_mj_k4_m2_d;
  out.rnl_mj_m2_d = mean_emission(sigma, day.t_max_c, day.t_min_c) * net_emissivity<Math>(day.ea_kpa) *
                    cloudiness(out.relative_sun);      // FAO-56 eq. 39
  out.rn_mj_m2_d = out.rns_mj_m2_d - out.rnl_mj_m2_d;  // FAO-56 eq. 40
  out.terms = penman_monteith(out.delta_kpa_c, sky.gamma_kpa_c, out.rn_mj_m2_d, day.g_mj_m2_d, out.t_mean_c,
                              day.u2_m_s, out.es_kpa, day.ea_kpa, surface);
  return out;
}

[[gnu::always_inline]] inline double depth(const PenmanMonteithTerms& terms) {
  return (terms.radiation + terms.wind) / terms.denominator;
}

}  // namespace formula
}  // namespace v1
}  // namespace noonleaf
