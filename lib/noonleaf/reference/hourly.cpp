#include "noonleaf/reference/hourly.hpp"

#include <cmath>
#include <cstdint>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/reference/hourly_formula.hpp"
#include "noonleaf/reference/surface.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

void require_accepted(const HourlyInputs& in, const Location& location) {
  require_within("latitude_deg", location.latitude_deg, accepted::latitude_deg, "°");
  require_within("longitude_deg", location.longitude_deg, accepted::longitude_deg, "°");
  require_within("elevation_m", location.elevation_m, accepted::elevation_m, "m");
  require_within("length", static_cast<double>(in.length.count()), accepted::period_s, "s");
  require_within("t_c", in.t_c, accepted::temperature_c, "°C");
  require_within("ea_kpa", in.ea_kpa, accepted::vapour_pressure_kpa, "kPa");
  require_within("rs_mj_m2_h", in.rs_mj_m2_h, accepted::radiation_mj_m2_h, "MJ/m2/h");
  require_within("u2_m_s", in.u2_m_s, accepted::wind_m_s, "m/s");
  require_within("pressure_kpa", in.pressure_kpa, accepted::pressure_kpa, "kPa");
  require_within("earlier_relative_sun", in.earlier_relative_sun, 0, 1, "");
}

/// Without its place an hour is neither day nor night.
bool is_placed(const Location& location) {
  return is_known(location.latitude_deg) && is_known(location.longitude_deg) &&
         is_known(location.elevation_m);
}

double hours_of(std::chrono::seconds length) { return static_cast<double>(length.count()) / 3600.0; }

formula::HourSky sky_of(const HourlyInputs& in, const Location& location, Equation equation) {
  const formula::SolarMoment moment = formula::solar_moment(in.begin, in.length, location.longitude_deg);
  const double j = day_of_year(std::chrono::year_month_day{moment.day});
  return formula::hour_sky(formula::sun_path(formula::radians(location.latitude_deg), j),
                           formula::seasonal_correction_h(j), moment.clock_h, location.longitude_deg,
                           hours_of(in.length), equation);
}

/// The period's own Rs/Rso within its limits.
double own_relative_sun(const HourlyInputs& in, double rso, Equation equation) {
  return equation == Equation::asce ? formula::hourly_relative_sun<Equation::asce>(in.rs_mj_m2_h, rso)
                                    : formula::hourly_relative_sun<Equation::fao56>(in.rs_mj_m2_h, rso);
}

double relative_sun_of(const HourlyInputs& in, const formula::HourSky& sky, double rso, Equation equation) {
  if (sky.has_own_ratio) return own_relative_sun(in, rso, equation);
  return equation == Equation::asce ? formula::relative_sun_asce(in.earlier_relative_sun, 1.0)
                                    : in.earlier_relative_sun;
}

void fill_sky(HourlyEt0Detail& detail, const HourlyInputs& in, const Location& location,
              const formula::HourSky& sky, Equation equation) {
  const formula::SolarMoment moment = formula::solar_moment(in.begin, in.length, location.longitude_deg);
  detail.day_of_year = day_of_year(std::chrono::year_month_day{moment.day});
  detail.inverse_distance = sky.path.inverse_distance;
  detail.declination_rad = sky.path.declination_rad;
  detail.seasonal_correction_h = sky.correction_h;
  detail.time_angle_rad = sky.time_angle_rad;
  detail.sunset_angle_rad = sky.path.sunset_angle_rad;
  detail.sun_altitude_rad = std::asin(sky.sin_altitude);
  detail.ra_mj_m2_h = sky.ra_mj_m2_h;
  detail.rso_mj_m2_h = formula::clear_sky(sky.ra_mj_m2_h, location.elevation_m);
  detail.relative_sun = relative_sun_of(in, sky, detail.rso_mj_m2_h, equation);
}

template <Equation equation>
void fill_terms(HourlyEt0Detail& detail, const HourlyInputs& in, const formula::HourSky& sky,
                const formula::HourlyCoefficients& c) {
  const formula::HourTerms hour = formula::hourly_terms<ScalarMath, equation>(
      {in.t_c, in.ea_kpa, in.rs_mj_m2_h, in.u2_m_s}, detail.gamma_kpa_c, detail.relative_sun,
      sky.is_day ? c.g_day : c.g_night, c);
  detail.es_kpa = hour.es_kpa;
  detail.vpd_kpa = hour.es_kpa - in.ea_kpa;
  detail.delta_kpa_c = hour.delta_kpa_c;
  detail.rns_mj_m2_h = hour.rns_mj_m2_h;
  detail.rnl_mj_m2_h = hour.rnl_mj_m2_h;
  detail.rn_mj_m2_h = hour.rn_mj_m2_h;
  detail.g_mj_m2_h = hour.g_mj_m2_h;
  detail.radiation_term_mm_h = hour.terms.radiation / hour.terms.denominator;
  detail.wind_term_mm_h = hour.terms.wind / hour.terms.denominator;
  detail.et0_mm_h = formula::depth(hour.terms);
}

HourlyEt0Detail work_out(const HourlyInputs& in, const Location& location, const formula::HourSky& sky,
                         Equation equation, const formula::HourlyCoefficients& coefficients) {
  HourlyEt0Detail detail;
  detail.t_c = in.t_c;
  detail.pressure_kpa =
      is_missing(in.pressure_kpa) ? atmospheric_pressure_kpa(location.elevation_m) : in.pressure_kpa;
  detail.gamma_kpa_c = psychrometric_constant_kpa_c(detail.pressure_kpa);
  detail.ea_kpa = in.ea_kpa;
  detail.rs_mj_m2_h = in.rs_mj_m2_h;
  detail.u2_m_s = in.u2_m_s;
  fill_sky(detail, in, location, sky, equation);
  if (equation == Equation::asce) {
    fill_terms<Equation::asce>(detail, in, sky, coefficients);
  } else {
    fill_terms<Equation::fao56>(detail, in, sky, coefficients);
  }
  return detail;
}

}  // namespace

HourlyEt0Detail hourly_et0(const HourlyInputs& in, const Location& location, Equation equation,
                           Surface surface) {
  const formula::HourlyCoefficients coefficients = hourly_coefficients(equation, surface);
  require_accepted(in, location);
  if (!is_placed(location)) return {};
  return work_out(in, location, sky_of(in, location, equation), equation, coefficients);
}

double hourly_et0_mm_h(const HourlyInputs& inputs, const Location& location, Equation equation,
                       Surface surface) {
  return hourly_et0(inputs, location, equation, surface).et0_mm_h;
}

double first_night_relative_sun(Dryness dryness) { return dryness == Dryness::arid ? 0.75 : 0.5; }

HourlySeries::HourlySeries(const Location& location, Equation equation, Surface surface, Dryness dryness)
    : location_(location),
      equation_(equation),
      surface_(surface),
      relative_sun_(first_night_relative_sun(dryness)) {
  hourly_coefficients(equation, surface);  // refuses what is not defined here rather than at the first hour
}

HourlyEt0Detail HourlySeries::next(HourlyInputs in) {
  in.earlier_relative_sun = relative_sun_;
  require_accepted(in, location_);
  if (!is_placed(location_)) return {};
  const formula::HourSky sky = sky_of(in, location_, equation_);
  const HourlyEt0Detail detail =
      work_out(in, location_, sky, equation_, hourly_coefficients(equation_, surface_));
  if (sky.keeps_ratio && is_known(detail.relative_sun)) relative_sun_ = detail.relative_sun;
  return detail;
}

}  // namespace v1
}  // namespace noonleaf
