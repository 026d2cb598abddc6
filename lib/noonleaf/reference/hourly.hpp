#pragma once

#include <chrono>
#include <span>
#include <string_view>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/reference/penman_monteith.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One period of an hour or less, with all that the hourly equations need.
struct HourlyInputs {
  std::chrono::sys_seconds begin{};   ///< UTC
  std::chrono::seconds length{3600};  ///< 60 to 3600
  double t_c = missing;               ///< mean of the period
  double ea_kpa = missing;            ///< actual vapour pressure
  double rs_mj_m2_h = missing;        ///< per hour, whatever the length
  double u2_m_s = missing;            ///< at 2 m
  double pressure_kpa = missing;      ///< FAO-56 eq. 7 from the elevation where missing
  /// Rs/Rso of an earlier period, for one whose own sun is too low to tell: the night above all. HourlySeries
  /// keeps it from hour to hour; FAO-56 (ch. 4, with eq. 53) gives 0.4 to 0.6 in humid, 0.7 to 0.8 in arid
  /// climates
  double earlier_relative_sun = missing;
};

/// Reference evapotranspiration of an hour or shorter.
///
/// Equation  fao56  ET0 = [0.408 delta (Rn - G) + gamma 37/(T + 273) u2 (e°(T) - ea)]
///                        / [delta + gamma (1 + 0.34 u2)], G = 0.1 Rn by day, 0.5 Rn by night
///           asce   ETsz = [0.408 delta (Rn - G) + gamma Cn/(T + 273) u2 (e°(T) - ea)]
///                         / [delta + gamma (1 + Cd u2)]
///                  short: Cn 37, Cd 0.24 and G 0.1 Rn by day, Cd 0.96 and G 0.5 Rn by night
///                  tall: Cn 66, Cd 0.25 and G 0.04 Rn by day, Cd 1.7 and G 0.2 Rn by night
/// Source    FAO-56 (Allen et al. 1998), ch. 4, eq. 53, 45, 46; ASCE-EWRI 2005, eq. 1, table 1, eq. 65, 66.
///           Day is where the sun is up at the middle of the period (fao56), where Rn is not negative (asce).
///           Ra by eq. 28, Rso by eq. 37, Rnl by eq. 39 per hour: sigma 2.043e-10 (fao56), 2.042e-10 (asce)
/// Cloud     Rs/Rso is the period's own where the sun can tell, else earlier_relative_sun.
///           fao56  own where the sun is up for the whole period
///           asce   own where the sun stands 0.3 rad or higher at the middle (eq. 46), within 0.3 to 1. Where
///                  it does not rise so high all day, the period of solar noon counts (ours; the publication
///                  leaves it to the user)
/// Input     location whole: longitude too, positive to the east; t_c -60 to 60; ea_kpa 0 to 20; rs_mj_m2_h 0
///           to 6; u2_m_s 0 to 60; pressure_kpa 30 to 110; earlier_relative_sun 0 to 1
/// Result    [mm h⁻¹], per hour whatever the length. As printed, so a little below 0 in many nights
/// Missing   NaN if any but the pressure is missing; earlier_relative_sun only where it is used
/// Throws    Error, naming the field, for a value outside its range or a tall surface with Equation::fao56
double hourly_et0_mm_h(const HourlyInputs& inputs, const Location& location,
                       Equation equation = Equation::fao56, Surface surface = Surface::short_crop);

/// Every intermediate of one period, in the order in which they are worked out.
struct HourlyEt0Detail {
  double t_c = missing;                    ///< mean air temperature, as given
  double pressure_kpa = missing;           ///< as given, else eq. 7
  double gamma_kpa_c = missing;            ///< psychrometric constant, eq. 8
  double delta_kpa_c = missing;            ///< slope of the vapour pressure curve, eq. 13
  double es_kpa = missing;                 ///< at air temperature, eq. 11
  double ea_kpa = missing;                 ///< as given
  double vpd_kpa = missing;                ///< es - ea
  double day_of_year = missing;            ///< J, of the middle of the period by local mean solar time
  double inverse_distance = missing;       ///< dr, eq. 23
  double declination_rad = missing;        ///< eq. 24
  double seasonal_correction_h = missing;  ///< Sc, eq. 32
  double time_angle_rad = missing;         ///< w, at the middle of the period, eq. 31
  double sunset_angle_rad = missing;       ///< ws, eq. 25
  double sun_altitude_rad = missing;       ///< at the middle of the period
  double ra_mj_m2_h = missing;             ///< eq. 28
  double rs_mj_m2_h = missing;             ///< as given
  double rso_mj_m2_h = missing;            ///< of a clear sky, eq. 37
  double relative_sun = missing;           ///< Rs/Rso as used, own or earlier, within its limits
  double rns_mj_m2_h = missing;            ///< eq. 38
  double rnl_mj_m2_h = missing;            ///< eq. 39, by the hour
  double rn_mj_m2_h = missing;             ///< eq. 40
  double g_mj_m2_h = missing;              ///< soil heat flux, eq. 45, 46
  double u2_m_s = missing;                 ///< as given
  double radiation_term_mm_h = missing;    ///< the part that radiation drives
  double wind_term_mm_h = missing;         ///< the part that wind and dry air drive
  double et0_mm_h = missing;               ///< the sum of both
};

/// One row of the table that names the members of HourlyEt0Detail for printing.
struct HourlyEt0Column {
  std::string_view name;           ///< what it is, in words
  std::string_view symbol;         ///< as FAO-56 writes it
  std::string_view equation;       ///< "FAO-56 eq. 28"
  std::string_view unit;           ///< "MJ/m2/h"; empty for pure numbers
  std::string_view header;         ///< for a CSV header, unit as suffix
  double HourlyEt0Detail::*value;  ///< which member it is
};

/// All members of HourlyEt0Detail in the order of the working, with the equation numbers of the publication
/// asked for.
std::span<const HourlyEt0Column> hourly_et0_columns(Equation equation = Equation::fao56);

/// The same as hourly_et0_mm_h, with all intermediates. Input, Missing, Throws as there.
HourlyEt0Detail hourly_et0(const HourlyInputs& inputs, const Location& location,
                           Equation equation = Equation::fao56, Surface surface = Surface::short_crop);

/// Rs/Rso for the hours of a record before its first evening: the middle of what FAO-56 (ch. 4, with eq. 53)
/// gives for nights, 0.4 to 0.6 in humid and 0.7 to 0.8 in arid climates.
double first_night_relative_sun(Dryness dryness);

/// Hours one after the other: carries Rs/Rso from the afternoon through the night, as both publications ask.
///
/// fao56  the night takes the ratio of the period two to three hours before sunset, (ws - 0.79) < w <=
///        (ws - 0.52); where its radiation is missing, that of the last period before it that has some
/// asce   periods of low sun take the ratio of the last period with the sun at 0.3 rad or higher
class HourlySeries {
 public:
  /// A series that begins without any earlier hour.
  explicit HourlySeries(const Location& location, Equation equation = Equation::fao56,
                        Surface surface = Surface::short_crop, Dryness dryness = Dryness::humid);

  /// The next period, in order of time; periods may be left out. inputs.earlier_relative_sun is not used.
  /// Missing, Throws  as hourly_et0
  HourlyEt0Detail next(HourlyInputs inputs);

 private:
  Location location_;
  Equation equation_;
  Surface surface_;
  double relative_sun_;
};

/// One period of weather as recorded, before anything is estimated. Every value may be missing.
struct HourRecord {
  std::chrono::sys_seconds begin{};   ///< UTC
  std::chrono::seconds length{3600};  ///< 60 to 3600
  double t_c = missing;               ///< mean air temperature
  double rh_pct = missing;            ///< mean relative humidity
  double t_dew_c = missing;           ///< dew point
  double ea_kpa = missing;            ///< actual vapour pressure
  double wind_m_s = missing;          ///< at the height of the anemometer
  double rs_mj_m2_h = missing;        ///< per hour whatever the length
  double sunshine_h = missing;        ///< within the period
  double pressure_kpa = missing;      ///< at the station
};

/// A period whose gaps are filled as far as FAO-56 can, and where each value came from.
struct HourEstimate {
  HourlyInputs inputs{};                          ///< what hourly_et0 takes
  RadiationFrom radiation = RadiationFrom::none;  ///< where Rs came from
  HumidityFrom humidity =
      HumidityFrom::none;          ///< a relative humidity counts as measured: it is of this very hour
  WindFrom wind = WindFrom::none;  ///< where u2 came from
  PressureFrom pressure = PressureFrom::none;  ///< where P came from
};

/// Fill the gaps of an hour: the rungs of complete_daily that hold for hours.
///
/// Method    radiation    measured; sunshine (eq. 35 with n/N within the period)
///           humidity     vapour pressure; dew point (eq. 14); relative humidity (eq. 54)
///           wind         measured at 2 m; at another height (eq. 47); 2 m/s. Below 0.5 m/s it is raised to that
///           pressure     measured; elevation (eq. 7)
/// Source    FAO-56, ch. 3 and 4. No published rung gives an hour its radiation or humidity from temperature
///           alone: those stay missing; fill the day instead (complete_daily)
/// Throws    Error, naming the field, for a value outside its range or a location without latitude, longitude
///           or elevation
HourEstimate complete_hour(const HourRecord& record, const Location& location,
                           const LadderOptions& options = {});

}  // namespace v1
}  // namespace noonleaf
