#pragma once

#include <chrono>
#include <span>
#include <string_view>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/reference/missing_data.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Which publication's reference equation.
enum class Equation {
  fao56,  ///< FAO Irrigation and Drainage Paper 56 (Allen et al. 1998)
  asce    ///< ASCE-EWRI (2005) standardized reference equation
};

/// Which reference surface. FAO-56 knows the short one only.
enum class Surface {
  short_crop,  ///< clipped cool-season grass, 0.12 m
  tall_crop    ///< full-cover alfalfa, 0.50 m (ASCE-EWRI)
};

/// Everything that daily reference evapotranspiration depends on.
struct DailyInputs {
  std::chrono::year_month_day date{};  ///< decides the sun; {} = missing
  double latitude_deg = missing;       ///< positive to the north
  double elevation_m = missing;        ///< above sea level
  double t_max_c = missing;            ///< highest of the day
  double t_min_c = missing;            ///< lowest of the day, not above t_max_c
  double ea_kpa = missing;             ///< actual vapour pressure, mean of the day
  double rs_mj_m2_d = missing;         ///< solar radiation
  double u2_m_s = missing;             ///< at 2 m
  double pressure_kpa = missing;       ///< FAO-56 eq. 7 from the elevation where missing
  double g_mj_m2_d = 0.0;              ///< soil heat flux; 0 for a day or ten days (FAO-56 eq. 42)
};

/// Daily reference evapotranspiration.
///
/// Equation  fao56  ET0 = [0.408 delta (Rn - G) + gamma 900/(T + 273) u2 (es - ea)]
///                        / [delta + gamma (1 + 0.34 u2)]
///           asce   ETsz = [0.408 delta (Rn - G) + gamma Cn/(T + 273) u2 (es - ea)]
///                         / [delta + gamma (1 + Cd u2)], Cn 900, Cd 0.34 short; Cn 1600, Cd 0.38 tall
/// Source    FAO-56 (Allen et al. 1998), ch. 2, eq. 6; ASCE-EWRI 2005, eq. 1 and table 1. T is (Tmax +
///           Tmin)/2, Rn by FAO-56 eq. 21, 37 to 40. ASCE-EWRI differs in sigma (4.901e-9), in delta (2503
///           for 4098 x 0.6108) and in keeping the cloudiness factor within 0.05 to 1
/// Input     latitude_deg -90 to 90; elevation_m -500 to 9000; t_max_c, t_min_c -60 to 60; ea_kpa 0 to 20;
///           rs_mj_m2_d 0 to 60; u2_m_s 0 to 60; pressure_kpa 30 to 110; g_mj_m2_d -30 to 30
/// Result    [mm d⁻¹]. As printed, so below 0 where dew forms or the air is humid and dark; not cut off at 0
/// Missing   NaN if any but the pressure is missing; a date of {} counts as missing
/// Throws    Error, naming the field, for a value outside its range, a date that does not exist, Tmin above
///           Tmax, or a tall surface with Equation::fao56
/// Example   daily_et0_mm_d({.date = 2023y / July / 6, .latitude_deg = 50.8, .elevation_m = 100, .t_max_c =
///           21.5, .t_min_c = 12.3, .ea_kpa = 1.409, .rs_mj_m2_d = 22.07, .u2_m_s = 2.078}) = 3.88 (FAO-56,
///           ex. 18)
double daily_et0_mm_d(const DailyInputs& inputs, Equation equation = Equation::fao56,
                      Surface surface = Surface::short_crop);

/// Every intermediate of one day, in the order in which they are worked out.
struct DailyEt0Detail {
  double t_mean_c = missing;             ///< (Tmax + Tmin) / 2, eq. 9
  double pressure_kpa = missing;         ///< as given, else eq. 7
  double gamma_kpa_c = missing;          ///< psychrometric constant, eq. 8
  double delta_kpa_c = missing;          ///< slope of the vapour pressure curve, eq. 13
  double e_t_max_kpa = missing;          ///< e°(Tmax), eq. 11
  double e_t_min_kpa = missing;          ///< e°(Tmin), eq. 11
  double es_kpa = missing;               ///< mean of both, eq. 12
  double ea_kpa = missing;               ///< as given
  double vpd_kpa = missing;              ///< es - ea
  double day_of_year = missing;          ///< J
  double inverse_distance = missing;     ///< dr, eq. 23
  double declination_rad = missing;      ///< eq. 24
  double sunset_angle_rad = missing;     ///< ws, eq. 25
  double daylight_h = missing;           ///< N, eq. 34
  double ra_mj_m2_d = missing;           ///< eq. 21
  double rs_mj_m2_d = missing;           ///< as given
  double rso_mj_m2_d = missing;          ///< of a clear sky, eq. 37
  double relative_sun = missing;         ///< Rs/Rso within its limits
  double rns_mj_m2_d = missing;          ///< eq. 38
  double rnl_mj_m2_d = missing;          ///< eq. 39
  double rn_mj_m2_d = missing;           ///< eq. 40
  double g_mj_m2_d = missing;            ///< as given
  double u2_m_s = missing;               ///< as given
  double radiation_term_mm_d = missing;  ///< the part that radiation drives
  double wind_term_mm_d = missing;       ///< the part that wind and dry air drive
  double et0_mm_d = missing;             ///< the sum of both
};

/// One row of the table that names the members of a detail struct for printing.
struct DailyEt0Column {
  std::string_view name;          ///< what it is, in words
  std::string_view symbol;        ///< as FAO-56 writes it
  std::string_view equation;      ///< "FAO-56 eq. 11"
  std::string_view unit;          ///< "kPa"; empty for pure numbers
  std::string_view header;        ///< for a CSV header, unit as suffix: "es_kpa"
  double DailyEt0Detail::*value;  ///< which member it is
  std::string_view
      formula{};  ///< the working in FAO-56's symbols; empty = an input, or not FAO-56's equation
};

/// All members of DailyEt0Detail in the order of the working, each with its equation. The equation numbers
/// are those of the publication asked for.
std::span<const DailyEt0Column> daily_et0_columns(Equation equation = Equation::fao56);

/// The same as daily_et0_mm_d, with all intermediates. Input, Missing, Throws as there.
DailyEt0Detail daily_et0(const DailyInputs& inputs, Equation equation = Equation::fao56,
                         Surface surface = Surface::short_crop);

/// For a day completed by the missing-data ladder. ET0 is NaN when the day is not complete.
DailyEt0Detail daily_et0(const DailyEstimate& day, const Location& location,
                         Equation equation = Equation::fao56, Surface surface = Surface::short_crop);
/// ET0 alone of such a day.
double daily_et0_mm_d(const DailyEstimate& day, const Location& location, Equation equation = Equation::fao56,
                      Surface surface = Surface::short_crop);

}  // namespace v1
}  // namespace noonleaf
