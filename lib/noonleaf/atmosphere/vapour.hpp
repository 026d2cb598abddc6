#pragma once

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Saturation vapour pressure e°(T) of air above water.
///
/// Equation  e°(T) = 0.6108 exp(17.27 T / (T + 237.3))
/// Source    FAO-56 (Allen et al. 1998), ch. 3, eq. 11
/// Input     t_c  air temperature [°C], accepted -60 to 60 (our guard, not the source's)
/// Result    [kPa]
/// Missing   NaN in, NaN out
/// Throws    Error, field "t_c", when outside the accepted range
/// Note      Average e°(t_max) and e°(t_min) for a daily mean; e° of the mean temperature is too low. Above
///           ice the true value is lower (by 9 % at -10 °C); FAO-56 uses the curve over water throughout.
double saturation_vapour_pressure_kpa(double t_c);  // n values at once: vapour_batch.hpp

/// Slope of the saturation vapour pressure curve.
///
/// Equation  delta = 4098 [0.6108 exp(17.27 T / (T + 237.3))] / (T + 237.3)^2
/// Source    FAO-56, ch. 3, eq. 13. ASCE-EWRI 2005 eq. 5 prints 2503 for 4098 x 0.6108 = 2503.06: 0.002 %
///           less
/// Input     t_c  air temperature [°C], accepted -60 to 60 (our guard)
/// Result    [kPa °C⁻¹]
/// Missing   NaN in, NaN out
/// Throws    Error, field "t_c", when outside the accepted range; a batch gives NaN and the row instead
/// Note      Taken at the mean temperature, unlike e°.
double saturation_slope_kpa_c(double t_c);  // n values at once: vapour_batch.hpp

/// The day's extremes of air temperature.
struct TemperatureRange {
  double t_max_c = missing;  ///< highest of the day
  double t_min_c = missing;  ///< lowest of the day
};

/// Mean saturation vapour pressure of a day, ten days or a month.
///
/// Equation  es = (e°(Tmax) + e°(Tmin)) / 2
/// Source    FAO-56, ch. 3, eq. 12
/// Input     t_max_c, t_min_c [°C], accepted -60 to 60
/// Result    [kPa]
/// Missing   NaN if either is missing
/// Throws    Error, field "t_max_c" or "t_min_c", when outside the accepted range
double mean_saturation_vapour_pressure_kpa(const TemperatureRange& day);

/// Actual vapour pressure from the dew point.
///
/// Equation  ea = e°(Tdew)
/// Source    FAO-56, ch. 3, eq. 14
/// Input     t_dew_c  [°C], accepted -60 to 60
/// Result    [kPa]
/// Missing   NaN in, NaN out
/// Throws    Error, field "t_dew_c", when outside the accepted range
double vapour_pressure_from_dew_point_kpa(double t_dew_c);

/// Dew point of air with a given vapour pressure: eq. 14 solved for Tdew.
///
/// Equation  Tdew = (116.91 + 237.3 ln ea) / (16.78 - ln ea)
/// Source    FAO-56, annex 3, eq. 3-11
/// Input     ea_kpa  [kPa], accepted 0.001 to 20
/// Result    [°C]
/// Missing   NaN in, NaN out
/// Throws    Error, field "ea_kpa", when outside the accepted range
/// Note      The printed constants are rounded: e°(Tdew) gives ea back to within 0.2 %.
double dew_point_c(double ea_kpa);

/// How the wet bulb of a psychrometer is aired.
enum class Ventilation {
  forced_5_m_s,   ///< Asmann type, air moved at about 5 m/s: 0.000662 °C⁻¹
  natural_1_m_s,  ///< naturally ventilated, about 1 m/s: 0.000800 °C⁻¹
  indoor_0_m_s    ///< non-ventilated, installed indoors: 0.001200 °C⁻¹
};

/// Readings of a psychrometer.
struct Psychrometer {
  double t_dry_c = missing;                             ///< dry bulb
  double t_wet_c = missing;                             ///< wet bulb, not above the dry one
  double pressure_kpa = missing;                        ///< of the air around it
  Ventilation ventilation = Ventilation::forced_5_m_s;  ///< decides the coefficient
};

/// Actual vapour pressure from wet and dry bulb.
///
/// Equation  ea = e°(Twet) - a_psy P (Tdry - Twet)
/// Source    FAO-56, ch. 3, eq. 15 and 16, a_psy as listed there
/// Input     t_dry_c, t_wet_c [°C] -60 to 60, t_wet_c not above t_dry_c; pressure_kpa [kPa] 30 to 110
/// Result    [kPa]
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range or when the bulbs are so far apart that
///           the result would be below 0
double vapour_pressure_from_psychrometer_kpa(const Psychrometer& reading);

/// Relative humidity and temperature extremes of a day.
struct DailyHumidity {
  double t_max_c = missing;      ///< highest of the day
  double t_min_c = missing;      ///< lowest of the day
  double rh_max_pct = missing;   ///< 0 to 100
  double rh_min_pct = missing;   ///< 0 to 100
  double rh_mean_pct = missing;  ///< 0 to 100; each function says which of the three it needs
};

/// Actual vapour pressure from the day's highest and lowest relative humidity.
///
/// Equation  ea = (e°(Tmin) RHmax/100 + e°(Tmax) RHmin/100) / 2
/// Source    FAO-56, ch. 3, eq. 17
/// Input     t_max_c, t_min_c [°C] -60 to 60; rh_max_pct, rh_min_pct [%] 0 to 100
/// Result    [kPa]
/// Missing   NaN if any of the four is missing
/// Throws    Error, naming the field, when outside the accepted range
double vapour_pressure_from_rh_max_min_kpa(const DailyHumidity& day);

/// Actual vapour pressure from the day's highest relative humidity alone.
///
/// Equation  ea = e°(Tmin) RHmax/100
/// Source    FAO-56, ch. 3, eq. 18
/// Input, Result, Missing, Throws  as eq. 17, with t_min_c and rh_max_pct only
/// Note      FAO-56 prefers it to eq. 17 where RHmin may be in error.
double vapour_pressure_from_rh_max_kpa(const DailyHumidity& day);

/// Actual vapour pressure from the day's mean relative humidity.
///
/// Equation  ea = RHmean/100 (e°(Tmax) + e°(Tmin)) / 2
/// Source    FAO-56, ch. 3, eq. 19
/// Input, Result, Missing, Throws  as eq. 17, with t_max_c, t_min_c and rh_mean_pct
/// Note      Less good than eq. 17 or 18.
double vapour_pressure_from_rh_mean_kpa(const DailyHumidity& day);

/// Actual vapour pressure of an hour or any single moment.
///
/// Equation  ea = e°(T) RH/100
/// Source    FAO-56, ch. 4, eq. 54 (eq. 10 solved for ea)
/// Input     t_c [°C] -60 to 60; rh_pct [%] 0 to 100
/// Result    [kPa]
/// Missing   NaN if either is missing
/// Throws    Error, naming the field, when outside the accepted range
struct AirMoisture {
  double t_c = missing;     ///< air temperature of that moment
  double rh_pct = missing;  ///< relative humidity of that moment, 0 to 100
};
/// Equation, input, result: see AirMoisture.
double vapour_pressure_from_rh_kpa(const AirMoisture& air);

/// Whether the ground and air around the weather station are dry, for the dew point estimated from Tmin.
enum class Dryness {
  humid,  ///< Tdew near Tmin
  arid    ///< Tdew below Tmin by an offset of 2 to 3 °C
};

/// Dew point estimated from the lowest temperature of the day.
///
/// Equation  Tdew = Tmin (humid); Tdew = Tmin - offset (arid)
/// Source    FAO-56, ch. 3, eq. 48 and the text with it ("2-3 °C might be subtracted from Tmin in arid
///           regions"); annex 6 has the procedure in full
/// Input     t_min_c [°C] -60 to 60; arid_offset_c [°C] 0 to 10
/// Result    [°C]
/// Missing   NaN in, NaN out
/// Throws    Error, naming the field, when outside the accepted range
struct DewPointGuess {
  double t_min_c = missing;          ///< lowest of the day
  Dryness dryness = Dryness::humid;  ///< whether the offset is taken off
  double arid_offset_c = 2.5;        ///< the middle of FAO-56's 2 to 3 °C
};
/// Equation, input, result: see DewPointGuess.
double dew_point_from_t_min_c(const DewPointGuess& day);

}  // namespace v1
}  // namespace noonleaf
