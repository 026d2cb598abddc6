#pragma once

#include <array>

#include "noonleaf/heat/diurnal.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What the three bulbs outdoors depend on.
struct OutdoorAir {
  double t_c = missing;           ///< air temperature in the shade
  double rh_pct = missing;        ///< relative humidity, 0 to 100
  double pressure_kpa = missing;  ///< at the site
  double u2_m_s = missing;        ///< at 2 m
  double rs_w_m2 = missing;       ///< solar radiation on a level surface, mean of the hour
  double cos_zenith = missing;    ///< of the sun; 0 and below = down
  double sun_distance_au = 1.0;   ///< earth to sun; 1 / sqrt(inverse_relative_distance)
};

/// The three bulbs and their mixture.
struct OutdoorWbgt {
  double globe_c = missing;             ///< Tg, in a black globe in the sun
  double natural_wet_bulb_c = missing;  ///< Tnw, in the sun and the wind
  double wbgt_c = missing;              ///< mixture of both with the air
};

/// Outdoor wet-bulb globe temperature over a level, unshaded surface.
///
/// Equation  WBGT = 0.7 Tnw + 0.2 Tg + 0.1 Ta, Tnw and Tg by the heat balance of wick and globe
/// Source    Liljegren, Carhart, Lawday, Tschopp & Sharp (2008), J. Occup. Environ. Hyg. 5:645-655, equations
///           and constants from memory; weights ISO 7243. Globe 50.8 mm, ground albedo 0.45, ground at air
///           temperature, as there
/// Input     t_c -20 to 55; rh_pct 0 to 100; pressure_kpa 50 to 110; u2_m_s 0 to 30, taken as 0.13 below that
///           (the source's floor); rs_w_m2 0 to 1400; cos_zenith -1 to 1; sun_distance_au 0.9 to 1.1
/// Result    [°C]
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range, or when a balance finds no end
/// Note      An estimate from weather, not a reading. It is for open sun: under a tree the globe reads less.
OutdoorWbgt outdoor_wbgt(const OutdoorAir& air);

/// Cosine of the sun's zenith angle at which a clear sky brings that much radiation: for a reading without
/// its hour.
///
/// Equation  cos z = Rs / (0.75 S0), at most 1; S0 = 1367 W/m2
/// Source    FAO-56 eq. 37 at sea level, for an instant; S0 of eq. 21. That the sky is clear is an
///           assumption: under cloud the sun stands higher than this says
/// Input     rs_w_m2 0 to 1400
/// Missing   NaN in, NaN out
/// Throws    Error, field "rs_w_m2", when outside the accepted range
double clear_sky_cos_zenith(double rs_w_m2);

/// Outdoor wet-bulb globe temperature in the hours of a day.
///
/// Method    outdoor_wbgt with the hour's mean cosine of the zenith Ra / (60 Gsc dr), FAO-56 eq. 28, pressure
///           from the elevation, FAO-56 eq. 7
/// Result    24 hours by the wall clock
/// Missing   NaN in hours with a missing value; in all if the site is missing
/// Throws    Error as outdoor_wbgt and hours_of_day
std::array<OutdoorWbgt, 24> outdoor_wbgt_by_hour(const WeatherHours& hours, const DaySite& site);

/// Limit of the hourly mean WBGT for people not used to heat: NIOSH recommended alert limit.
///
/// Equation  RAL = 59.9 - 14.1 log10 M
/// Source    NIOSH (2016), publication 2016-106; equation from memory
/// Input     metabolic_w  M, heat that a person makes [W] 100 to 600: light work 180, moderate 300, heavy 415
///           (ISO 7243 classes 1 to 3)
/// Result    [°C]. For healthy adults at work; it says nothing about children
/// Missing   NaN in, NaN out
/// Throws    Error, field "metabolic_w", when outside the accepted range
double alert_limit_wbgt_c(double metabolic_w);

/// The same for people used to heat: NIOSH recommended exposure limit.
///
/// Equation  REL = 56.7 - 11.5 log10 M
/// Source, Input, Result, Missing, Throws  as alert_limit_wbgt_c
double exposure_limit_wbgt_c(double metabolic_w);

/// Mixture of three bulbs that were read.
///
/// Equation  outdoors 0.7 Tnw + 0.2 Tg + 0.1 Ta
/// Source    ISO 7243
/// Missing   NaN if any is missing
struct Bulbs {
  double natural_wet_bulb_c = missing;  ///< Tnw
  double globe_c = missing;             ///< Tg
  double t_c = missing;                 ///< Ta, dry bulb in the shade
};
/// Equation, input, result: see Bulbs.
double wbgt_of_bulbs_c(const Bulbs& bulbs);

/// Psychrometric wet bulb: aspirated and shaded. Never a stand-in for the natural wet bulb of the WBGT.
///
/// Equation  Tw = T atan[0.151977 (RH + 8.313659)^½] + atan(T + RH) - atan(RH - 1.676331)
///                + 0.00391838 RH^1.5 atan(0.023101 RH) - 4.686035
/// Source    Stull (2011), J. Appl. Meteor. Climatol. 50:2267-2269; error -1 to +0.65 °C, sea-level pressure
/// Input     t_c -20 to 50; rh_pct 5 to 99, the source's range
/// Missing   NaN if either is missing
/// Throws    Error, naming the field, when outside the accepted range
double psychrometric_wet_bulb_c(double t_c, double rh_pct);

}  // namespace v1
}  // namespace noonleaf
