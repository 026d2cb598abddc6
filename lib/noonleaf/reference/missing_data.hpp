#pragma once

#include <chrono>
#include <string>
#include <string_view>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How the day's extremes of temperature came about. Nothing published replaces them.
enum class TemperatureFrom { measured, none };

/// How solar radiation came about.
enum class RadiationFrom { measured, sunshine, temperature_range, none };

/// How the vapour pressure of the air came about.
enum class HumidityFrom { measured, dew_point, rh_max_min, rh_max, rh_mean, t_min, none };

/// How the lowest relative humidity of the day came about (FAO-56 eq. 62 and 70 want it).
enum class RhMinFrom { measured, vapour_pressure, none };

/// How wind speed at 2 m came about.
enum class WindFrom { measured, other_height, calm_limit, usual_wind, none };

/// How atmospheric pressure came about.
enum class PressureFrom { measured, elevation, none };

/// What is taken for the wind where there is none on record: the mean of over 2000 stations. FAO-56, ch. 3.
inline constexpr double usual_u2_m_s = 2.0;

/// The least u2 that should go into eq. 6: in calm air rising warmth does what the wind does not. FAO-56, ch.
/// 3, wind speed: "u2 should be limited to about u2 >= 0.5 m/s".
inline constexpr double least_u2_m_s = 0.5;

/// What the ladder does with wind below least_u2_m_s.
enum class CalmAir {
  raised,  ///< to least_u2_m_s, and said
  as_read  ///< as it was read
};

/// What the missing-data ladder needs to know about the site and its instruments.
struct LadderOptions {
  double wind_height_m = 2.0;           ///< height of the anemometer
  Dryness dryness = Dryness::humid;     ///< for the dew point from Tmin
  double arid_offset_c = 2.5;           ///< taken off Tmin where dryness is arid; FAO-56: 2 to 3 °C
  Setting setting = Setting::interior;  ///< for radiation from the temperature range
  double angstrom_a = 0.25;             ///< as, FAO-56 eq. 35: 0.25 where nothing local is known
  double angstrom_b = 0.50;             ///< bs, likewise 0.50
  CalmAir calm_air = CalmAir::raised;   ///< what is done with a wind below least_u2_m_s
};

/// A day whose gaps are filled, ready for the reference equations, and where each value came from.
struct DailyEstimate {
  std::chrono::year_month_day date{};  ///< of the day given
  double t_max_c = missing;            ///< highest; never estimated
  double t_min_c = missing;            ///< lowest; never estimated
  double ea_kpa = missing;             ///< actual vapour pressure
  double rs_mj_m2_d = missing;         ///< solar radiation
  double u2_m_s = missing;             ///< wind at 2 m
  double pressure_kpa = missing;       ///< at the site
  double rh_min_pct = missing;         ///< for the climate adjustment of Kc, not for ET0

  TemperatureFrom temperature = TemperatureFrom::none;  ///< where Tmax and Tmin came from
  RadiationFrom radiation = RadiationFrom::none;        ///< where Rs came from
  HumidityFrom humidity = HumidityFrom::none;           ///< where ea came from
  RhMinFrom rh_min = RhMinFrom::none;                   ///< where RHmin came from
  WindFrom wind = WindFrom::none;                       ///< where u2 came from
  PressureFrom pressure = PressureFrom::none;           ///< where P came from

  /// Whether every input of the reference equation is there. False when a temperature or the date is missing:
  /// then ET0 is NaN.
  bool is_complete() const;

  /// Whether radiation, humidity and wind were measured as FAO-56 asks for them: solar radiation itself;
  /// vapour pressure, dew point, or RHmax with RHmin; wind at any stated height. Pressure does not count:
  /// FAO-56 itself takes it from the elevation.
  bool is_measured() const;
};

/// Fill the gaps of a day by the ladder of FAO-56.
///
/// Method    Each rung is tried in this order, the first that has its inputs is taken:
///           radiation    measured; sunshine (eq. 35); temperature range (eq. 50), not above the clear sky
///                        (eq. 37)
///           humidity     vapour pressure; dew point (eq. 14); RHmax and RHmin (eq. 17); RHmax (eq. 18);
///                        RHmean (eq. 19); Tmin, less an offset where the site is arid (eq. 48)
///           wind         measured at 2 m; at another height (eq. 47); 2 m/s. Below 0.5 m/s it is raised to that
///           pressure     measured; elevation (eq. 7)
///           lowest RH    measured; 100 ea / e°(Tmax), which is eq. 63, and eq. 64 where ea comes from Tmin
/// Source    FAO-56 (Allen et al. 1998), ch. 3, "Estimating missing climatic data"; annex 6
/// Input     weather in the ranges of the building blocks; RH to 105 %: 100 to 105 is read as saturated air
/// Missing   t_max_c or t_min_c missing: the result is not complete and ET0 is NaN. t_mean_c is not used:
///           FAO-56 eq. 9 defines the day's mean as (Tmax + Tmin) / 2
/// Throws    Error, naming the field, for a value outside its accepted range, for t_min_c above t_max_c or
///           rh_min_pct above rh_max_pct, for more sunshine than the day is long, for a date that does not
///           exist, for a location without latitude or elevation
DailyEstimate complete_daily(const DailyWeather& weather, const Location& location,
                             const LadderOptions& options = {});

/// A short plain phrase for one origin: "sun estimated from the day's temperature range". Measured ones too.
std::string_view phrase(TemperatureFrom from);
/// The same for another origin.
std::string_view phrase(RadiationFrom from);
/// The same for another origin.
std::string_view phrase(HumidityFrom from);
/// The same for another origin.
std::string_view phrase(RhMinFrom from);
/// The same for another origin.
std::string_view phrase(WindFrom from);
/// The same for another origin.
std::string_view phrase(PressureFrom from);

/// The same for programs: "temperature_range", "dew_point". One word per enumerator, never to change.
std::string_view code(TemperatureFrom from);
/// The same for another origin.
std::string_view code(RadiationFrom from);
/// The same for another origin.
std::string_view code(HumidityFrom from);
/// The same for another origin.
std::string_view code(RhMinFrom from);
/// The same for another origin.
std::string_view code(WindFrom from);
/// The same for another origin.
std::string_view code(PressureFrom from);

/// What was estimated on a day, for a sentence: the phrases of all that is not measured (is_measured), joined
/// by "; ". Empty when all was measured.
/// Example  "sun estimated from the day's temperature range; wind taken as 2 m/s"
std::string estimated_phrases(const DailyEstimate& day);

/// What was estimated on a day, for a CSV cell: "rs=temperature_range u2=usual_wind". Empty when all was
/// measured.
std::string estimated_codes(const DailyEstimate& day);

}  // namespace v1
}  // namespace noonleaf
