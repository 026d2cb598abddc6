#include <array>

#include "noonleaf/reference/hourly.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Detail = HourlyEt0Detail;
constexpr std::size_t column_count = 26;

constexpr std::array<HourlyEt0Column, column_count> fao56_columns{{
    {"mean temperature", "T", "measured", "°C", "t_c", &Detail::t_c},
    {"atmospheric pressure", "P", "measured, or FAO-56 eq. 7", "kPa", "pressure_kpa", &Detail::pressure_kpa},
    {"psychrometric constant", "gamma", "FAO-56 eq. 8", "kPa/°C", "gamma_kpa_c", &Detail::gamma_kpa_c},
    {"slope of the vapour pressure curve", "delta", "FAO-56 eq. 13", "kPa/°C", "delta_kpa_c",
     &Detail::delta_kpa_c},
    {"saturation vapour pressure", "e°(T)", "FAO-56 eq. 11", "kPa", "es_kpa", &Detail::es_kpa},
    {"actual vapour pressure", "ea", "measured, or FAO-56 eq. 14, 54", "kPa", "ea_kpa", &Detail::ea_kpa},
    {"vapour pressure deficit", "e°(T) - ea", "FAO-56 eq. 53", "kPa", "vpd_kpa", &Detail::vpd_kpa},
    {"day of the year", "J", "FAO-56 table 2.5", "", "day_of_year", &Detail::day_of_year},
    {"inverse relative distance to the sun", "dr", "FAO-56 eq. 23", "", "inverse_distance",
     &Detail::inverse_distance},
    {"solar declination", "declination", "FAO-56 eq. 24", "rad", "declination_rad", &Detail::declination_rad},
    {"seasonal correction of solar time", "Sc", "FAO-56 eq. 32", "h", "seasonal_correction_h",
     &Detail::seasonal_correction_h},
    {"solar time angle", "w", "FAO-56 eq. 31", "rad", "time_angle_rad", &Detail::time_angle_rad},
    {"sunset hour angle", "ws", "FAO-56 eq. 25", "rad", "sunset_angle_rad", &Detail::sunset_angle_rad},
    {"altitude of the sun", "beta", "FAO-56 annex 3", "rad", "sun_altitude_rad", &Detail::sun_altitude_rad},
    {"extraterrestrial radiation", "Ra", "FAO-56 eq. 28", "MJ/m2/h", "ra_mj_m2_h", &Detail::ra_mj_m2_h},
    {"solar radiation", "Rs", "measured, or FAO-56 eq. 35", "MJ/m2/h", "rs_mj_m2_h", &Detail::rs_mj_m2_h},
    {"clear-sky radiation", "Rso", "FAO-56 eq. 37", "MJ/m2/h", "rso_mj_m2_h", &Detail::rso_mj_m2_h},
    {"relative solar radiation", "Rs/Rso", "FAO-56 eq. 39, 53", "", "relative_sun", &Detail::relative_sun},
    {"net solar radiation", "Rns", "FAO-56 eq. 38", "MJ/m2/h", "rns_mj_m2_h", &Detail::rns_mj_m2_h},
    {"net longwave radiation", "Rnl", "FAO-56 eq. 39", "MJ/m2/h", "rnl_mj_m2_h", &Detail::rnl_mj_m2_h},
    {"net radiation", "Rn", "FAO-56 eq. 40", "MJ/m2/h", "rn_mj_m2_h", &Detail::rn_mj_m2_h},
    {"soil heat flux", "G", "FAO-56 eq. 45, 46", "MJ/m2/h", "g_mj_m2_h", &Detail::g_mj_m2_h},
    {"wind speed at 2 m", "u2", "measured, or FAO-56 eq. 47", "m/s", "u2_m_s", &Detail::u2_m_s},
    {"radiation term", "radiation term", "FAO-56 eq. 53", "mm/h", "radiation_term_mm_h",
     &Detail::radiation_term_mm_h},
    {"wind term", "wind term", "FAO-56 eq. 53", "mm/h", "wind_term_mm_h", &Detail::wind_term_mm_h},
    {"reference evapotranspiration", "ET0", "FAO-56 eq. 53", "mm/h", "et0_mm_h", &Detail::et0_mm_h},
}};

/// The same with ASCE-EWRI's equation numbers (from memory), in the order of the rows above.
constexpr std::array<HourlyEt0Column, column_count> asce_columns = [] {
  constexpr std::array<std::string_view, column_count> equations{"measured",
                                                                 "measured, or ASCE-EWRI eq. 34",
                                                                 "ASCE-EWRI eq. 35",
                                                                 "ASCE-EWRI eq. 36",
                                                                 "ASCE-EWRI eq. 37",
                                                                 "measured, or ASCE-EWRI eq. 38 to 41",
                                                                 "ASCE-EWRI eq. 1",
                                                                 "ASCE-EWRI eq. 52",
                                                                 "ASCE-EWRI eq. 50",
                                                                 "ASCE-EWRI eq. 51",
                                                                 "ASCE-EWRI eq. 57",
                                                                 "ASCE-EWRI eq. 55",
                                                                 "ASCE-EWRI eq. 59",
                                                                 "ASCE-EWRI eq. 62",
                                                                 "ASCE-EWRI eq. 48",
                                                                 "measured, or FAO-56 eq. 35",
                                                                 "ASCE-EWRI eq. 47",
                                                                 "ASCE-EWRI eq. 45, 46",
                                                                 "ASCE-EWRI eq. 43",
                                                                 "ASCE-EWRI eq. 44",
                                                                 "ASCE-EWRI eq. 42",
                                                                 "ASCE-EWRI eq. 65, 66",
                                                                 "measured, or ASCE-EWRI eq. 67",
                                                                 "ASCE-EWRI eq. 1",
                                                                 "ASCE-EWRI eq. 1",
                                                                 "ASCE-EWRI eq. 1"};
  std::array<HourlyEt0Column, column_count> columns = fao56_columns;
  for (std::size_t i = 0; i < column_count; ++i) columns[i].equation = equations[i];
  columns.back().symbol = "ETsz";
  return columns;
}();

}  // namespace

std::span<const HourlyEt0Column> hourly_et0_columns(Equation equation) {
  return equation == Equation::asce ? asce_columns : fao56_columns;
}

}  // namespace v1
}  // namespace noonleaf
