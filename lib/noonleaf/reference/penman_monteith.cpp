#include "noonleaf/reference/penman_monteith.hpp"

#include <array>
#include <cmath>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/atmosphere/sun_formula.hpp"
#include "noonleaf/reference/estimate_inputs.hpp"
#include "noonleaf/reference/penman_monteith_formula.hpp"
#include "noonleaf/reference/surface.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

void require_accepted(const DailyInputs& in) {
  require_within("latitude_deg", in.latitude_deg, accepted::latitude_deg, "°");
  require_within("elevation_m", in.elevation_m, accepted::elevation_m, "m");
  require_within("t_max_c", in.t_max_c, accepted::temperature_c, "°C");
  require_within("t_min_c", in.t_min_c, accepted::temperature_c, "°C");
  require_ordered("t_max_c", in.t_max_c, "t_min_c", in.t_min_c, "°C");
  require_within("ea_kpa", in.ea_kpa, accepted::vapour_pressure_kpa, "kPa");
  require_within("rs_mj_m2_d", in.rs_mj_m2_d, accepted::radiation_mj_m2_d, "MJ/m2/d");
  require_within("u2_m_s", in.u2_m_s, accepted::wind_m_s, "m/s");
  require_within("pressure_kpa", in.pressure_kpa, accepted::pressure_kpa, "kPa");
  require_within("g_mj_m2_d", in.g_mj_m2_d, accepted::soil_heat_mj_m2_d, "MJ/m2/d");
}

/// The sun's part of the working.
void fill_sky(DailyEt0Detail& detail, double latitude_deg, double elevation_m) {
  const formula::SunPath path = formula::sun_path(formula::radians(latitude_deg), detail.day_of_year);
  detail.inverse_distance = path.inverse_distance;
  detail.declination_rad = path.declination_rad;
  detail.sunset_angle_rad = path.sunset_angle_rad;
  detail.daylight_h = formula::daylight_h(path.sunset_angle_rad);
  detail.ra_mj_m2_d = formula::extraterrestrial_radiation_mj_m2_d(path);
  detail.rso_mj_m2_d = formula::clear_sky(detail.ra_mj_m2_d, elevation_m);
}

template <Equation equation>
void fill_terms(DailyEt0Detail& detail, const DailyInputs& in, formula::SurfaceCoefficients surface) {
  const formula::DailyTerms day = formula::daily_terms<ScalarMath, equation>(
      {in.t_max_c, in.t_min_c, in.ea_kpa, in.rs_mj_m2_d, in.u2_m_s, in.g_mj_m2_d},
      {detail.gamma_kpa_c, detail.ra_mj_m2_d, detail.rso_mj_m2_d}, surface);
  detail.t_mean_c = day.t_mean_c;
  detail.delta_kpa_c = day.delta_kpa_c;
  detail.e_t_max_kpa = day.e_t_max_kpa;
  detail.e_t_min_kpa = day.e_t_min_kpa;
  detail.es_kpa = day.es_kpa;
  detail.vpd_kpa = day.es_kpa - in.ea_kpa;
  detail.relative_sun = day.relative_sun;
  detail.rns_mj_m2_d = day.rns_mj_m2_d;
  detail.rnl_mj_m2_d = day.rnl_mj_m2_d;
  detail.rn_mj_m2_d = day.rn_mj_m2_d;
  detail.radiation_term_mm_d = day.terms.radiation / day.terms.denominator;
  detail.wind_term_mm_d = day.terms.wind / day.terms.denominator;
  detail.et0_mm_d = formula::depth(day.terms);
}

using Detail = DailyEt0Detail;
constexpr std::size_t column_count = 26;

constexpr std::array<DailyEt0Column, column_count> fao56_columns{{
    {"mean temperature", "T", "FAO-56 eq. 9", "°C", "t_mean_c", &Detail::t_mean_c, "(Tmax + Tmin) / 2"},
    {"atmospheric pressure", "P", "measured, or FAO-56 eq. 7", "kPa", "pressure_kpa", &Detail::pressure_kpa,
     "101.3 ((293 - 0.0065 z) / 293)^5.26"},
    {"psychrometric constant", "gamma", "FAO-56 eq. 8", "kPa/°C", "gamma_kpa_c", &Detail::gamma_kpa_c,
     "0.000665 P"},
    {"slope of the vapour pressure curve", "delta", "FAO-56 eq. 13", "kPa/°C", "delta_kpa_c",
     &Detail::delta_kpa_c, "4098 (0.6108 exp(17.27 T / (T + 237.3))) / (T + 237.3)^2"},
    {"saturation vapour pressure at Tmax", "e°(Tmax)", "FAO-56 eq. 11", "kPa", "e_t_max_kpa",
     &Detail::e_t_max_kpa, "0.6108 exp(17.27 Tmax / (Tmax + 237.3))"},
    {"saturation vapour pressure at Tmin", "e°(Tmin)", "FAO-56 eq. 11", "kPa", "e_t_min_kpa",
     &Detail::e_t_min_kpa, "0.6108 exp(17.27 Tmin / (Tmin + 237.3))"},
    {"mean saturation vapour pressure", "es", "FAO-56 eq. 12", "kPa", "es_kpa", &Detail::es_kpa,
     "(e°(Tmax) + e°(Tmin)) / 2"},
    {"actual vapour pressure", "ea", "measured, or FAO-56 eq. 14 to 19, 48", "kPa", "ea_kpa",
     &Detail::ea_kpa},
    {"vapour pressure deficit", "es - ea", "FAO-56 eq. 6", "kPa", "vpd_kpa", &Detail::vpd_kpa, "es - ea"},
    {"day of the year", "J", "FAO-56 table 2.5", "", "day_of_year", &Detail::day_of_year},
    {"inverse relative distance to the sun", "dr", "FAO-56 eq. 23", "", "inverse_distance",
     &Detail::inverse_distance, "1 + 0.033 cos(2 pi / 365 J)"},
    {"solar declination", "declination", "FAO-56 eq. 24", "rad", "declination_rad", &Detail::declination_rad,
     "0.409 sin(2 pi / 365 J - 1.39)"},
    {"sunset hour angle", "ws", "FAO-56 eq. 25", "rad", "sunset_angle_rad", &Detail::sunset_angle_rad,
     "arccos(-tan(latitude) tan(declination))"},
    {"daylight hours", "N", "FAO-56 eq. 34", "h", "daylight_h", &Detail::daylight_h, "24 / pi ws"},
    {"extraterrestrial radiation", "Ra", "FAO-56 eq. 21", "MJ/m2/d", "ra_mj_m2_d", &Detail::ra_mj_m2_d,
     "24 60 / pi 0.0820 dr (ws sin(latitude) sin(declination) + cos(latitude) cos(declination) sin(ws))"},
    {"solar radiation", "Rs", "measured, or FAO-56 eq. 35, 50", "MJ/m2/d", "rs_mj_m2_d", &Detail::rs_mj_m2_d},
    {"clear-sky radiation", "Rso", "FAO-56 eq. 37", "MJ/m2/d", "rso_mj_m2_d", &Detail::rso_mj_m2_d,
     "(0.75 + 0.00002 z) Ra"},
    {"relative solar radiation", "Rs/Rso", "FAO-56 eq. 39", "", "relative_sun", &Detail::relative_sun,
     "min(1, Rs / Rso)"},
    {"net solar radiation", "Rns", "FAO-56 eq. 38", "MJ/m2/d", "rns_mj_m2_d", &Detail::rns_mj_m2_d,
     "(1 - 0.23) Rs"},
    {"net longwave radiation", "Rnl", "FAO-56 eq. 39", "MJ/m2/d", "rnl_mj_m2_d", &Detail::rnl_mj_m2_d,
     "0.000000004903 (((Tmax + 273.16)^4 + (Tmin + 273.16)^4) / 2) (0.34 - 0.14 sqrt(ea)) (1.35 Rs/Rso - "
     "0.35)"},
    {"net radiation", "Rn", "FAO-56 eq. 40", "MJ/m2/d", "rn_mj_m2_d", &Detail::rn_mj_m2_d, "Rns - Rnl"},
    {"soil heat flux", "G", "FAO-56 eq. 42 to 44", "MJ/m2/d", "g_mj_m2_d", &Detail::g_mj_m2_d},
    {"wind speed at 2 m", "u2", "measured, or FAO-56 eq. 47", "m/s", "u2_m_s", &Detail::u2_m_s},
    {"radiation term", "radiation term", "FAO-56 eq. 6", "mm/d", "radiation_term_mm_d",
     &Detail::radiation_term_mm_d, "0.408 delta (Rn - G) / (delta + gamma (1 + 0.34 u2))"},
    {"wind term", "wind term", "FAO-56 eq. 6", "mm/d", "wind_term_mm_d", &Detail::wind_term_mm_d,
     "gamma 900 / (T + 273) u2 (es - ea) / (delta + gamma (1 + 0.34 u2))"},
    {"reference evapotranspiration", "ET0", "FAO-56 eq. 6", "mm/d", "et0_mm_d", &Detail::et0_mm_d,
     "radiation term + wind term"},
}};

/// The same with ASCE-EWRI's equation numbers (from memory), in the order of the rows above.
constexpr std::array<DailyEt0Column, column_count> asce_columns = [] {
  constexpr std::array<std::string_view, column_count> equations{"ASCE-EWRI eq. 2",
                                                                 "measured, or ASCE-EWRI eq. 3",
                                                                 "ASCE-EWRI eq. 4",
                                                                 "ASCE-EWRI eq. 5",
                                                                 "ASCE-EWRI eq. 7",
                                                                 "ASCE-EWRI eq. 7",
                                                                 "ASCE-EWRI eq. 6",
                                                                 "measured, or ASCE-EWRI eq. 8 to 14",
                                                                 "ASCE-EWRI eq. 1",
                                                                 "ASCE-EWRI eq. 25",
                                                                 "ASCE-EWRI eq. 23",
                                                                 "ASCE-EWRI eq. 24",
                                                                 "ASCE-EWRI eq. 27",
                                                                 "FAO-56 eq. 34",
                                                                 "ASCE-EWRI eq. 21",
                                                                 "measured, or FAO-56 eq. 35, 50",
                                                                 "ASCE-EWRI eq. 19",
                                                                 "ASCE-EWRI eq. 18",
                                                                 "ASCE-EWRI eq. 16",
                                                                 "ASCE-EWRI eq. 17",
                                                                 "ASCE-EWRI eq. 15",
                                                                 "ASCE-EWRI eq. 30",
                                                                 "measured, or ASCE-EWRI eq. 33",
                                                                 "ASCE-EWRI eq. 1",
                                                                 "ASCE-EWRI eq. 1",
                                                                 "ASCE-EWRI eq. 1"};
  std::array<DailyEt0Column, column_count> columns = fao56_columns;
  for (std::size_t i = 0; i < column_count; ++i) {
    columns[i].equation = equations[i];
    columns[i].formula = {};
  }
  columns.back().symbol = "ETsz";
  return columns;
}();

}  // namespace

std::span<const DailyEt0Column> daily_et0_columns(Equation equation) {
  return equation == Equation::asce ? asce_columns : fao56_columns;
}

DailyEt0Detail daily_et0(const DailyInputs& in, Equation equation, Surface surface) {
  const formula::SurfaceCoefficients coefficients = daily_coefficients(equation, surface);
  require_accepted(in);
  DailyEt0Detail detail;
  if (in.date == std::chrono::year_month_day{}) return detail;
  detail.day_of_year = day_of_year(in.date);
  detail.pressure_kpa =
      is_missing(in.pressure_kpa) ? atmospheric_pressure_kpa(in.elevation_m) : in.pressure_kpa;
  detail.gamma_kpa_c = psychrometric_constant_kpa_c(detail.pressure_kpa);
  detail.ea_kpa = in.ea_kpa;
  detail.rs_mj_m2_d = in.rs_mj_m2_d;
  detail.u2_m_s = in.u2_m_s;
  detail.g_mj_m2_d = in.g_mj_m2_d;
  fill_sky(detail, in.latitude_deg, in.elevation_m);
  if (equation == Equation::asce) {
    fill_terms<Equation::asce>(detail, in, coefficients);
  } else {
    fill_terms<Equation::fao56>(detail, in, coefficients);
  }
  return detail;
}

double daily_et0_mm_d(const DailyInputs& inputs, Equation equation, Surface surface) {
  return daily_et0(inputs, equation, surface).et0_mm_d;
}

DailyEt0Detail daily_et0(const DailyEstimate& day, const Location& location, Equation equation,
                         Surface surface) {
  return daily_et0(inputs_of(day, location), equation, surface);
}

double daily_et0_mm_d(const DailyEstimate& day, const Location& location, Equation equation,
                      Surface surface) {
  return daily_et0(day, location, equation, surface).et0_mm_d;
}

}  // namespace v1
}  // namespace noonleaf
