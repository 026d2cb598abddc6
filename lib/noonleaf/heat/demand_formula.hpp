#pragma once

#include "noonleaf/atmosphere/radiation_formula.hpp"
#include "noonleaf/atmosphere/vapour_formula.hpp"
#include "noonleaf/constants.hpp"
#include "noonleaf/heat/diurnal.hpp"

namespace noonleaf {
inline namespace v1 {
namespace formula {

/// Cloudiness function fcd of the whole day, ASCE-EWRI 2005 eq. 45 with the limits 0.3 to 1 of Rs/Rso, which
/// keep it within its own of 0.05 to 1. NaN stays NaN.
[[gnu::always_inline]] inline double cloudiness_of_day(double rs, double rso) {
  const double ratio = rs / rso;
  const double low = ratio < 0.3 ? 0.3 : ratio;
  return cloudiness(low > 1.0 ? 1.0 : low);
}

/// ASCE-EWRI 2005 eq. 1, short reference, one hour; not below 0. es is e°(t) of the hour.
template <class Math>
[[gnu::always_inline]] inline double short_reference_mm_h(const WeatherHour& hour, double es, double fcd,
                                                          double gamma) {
  const bool lit = hour.rs_mj_m2_h > 0;
  const double kelvin = hour.t_c + kelvin_offset;
  const double rnl = stefan_boltzmann_asce_mj_k4_m2_h * fcd * net_emissivity<Math>(hour.ea_kpa) * kelvin *
                     kelvin * kelvin * kelvin;  // eq. 44
  const double rn = (1 - reference_albedo) * hour.rs_mj_m2_h - rnl;
  const double g = (lit ? 0.1 : 0.5) * rn;  // eq. 65a, b
  const double cd = lit ? 0.24 : 0.96;      // table 1
  const double delta = saturation_slope_kpa_c(es, hour.t_c);
  const double vpd = es - hour.ea_kpa;
  const double et = (mm_per_mj_m2 * delta * (rn - g) + gamma * 37 / (hour.t_c + 273) * hour.u2_m_s * vpd) /
                    (delta + gamma * (1 + cd * hour.u2_m_s));
  return et < 0 ? 0 : et;  // NaN stays NaN
}

}  // namespace formula
}  // namespace v1
}  // namespace noonleaf
