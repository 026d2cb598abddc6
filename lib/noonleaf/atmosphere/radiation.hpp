#pragma once

#include "noonleaf/constants.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Solar radiation from the hours of bright sunshine.
///
/// Equation  Rs = (as + bs n/N) Ra
/// Source    FAO-56 (Allen et al. 1998), ch. 3, eq. 35; as = 0.25, bs = 0.50 where nothing local is known
/// Input     sunshine_h  n [h] 0 to 24; daylight_h  N [h] 0 to 24; ra_mj_m2_d [MJ m⁻² d⁻¹] 0 to 60;
///           angstrom_a, angstrom_b [-] 0 to 1. n up to sunshine_leeway_h above N is taken as N: eq. 34
///           counts from the sun's centre without refraction, so a cloudless day can record more than its N
/// Result    [MJ m⁻² d⁻¹]; 0 in the polar night
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range
struct Sunshine {
  double sunshine_h = missing;  ///< n, hours of bright sunshine
  double daylight_h = missing;  ///< N, daylight_h of that day
  double ra_mj_m2_d = missing;  ///< Ra, above the atmosphere
  double angstrom_a = 0.25;     ///< as, share of Ra on a day without sun
  double angstrom_b = 0.50;     ///< bs; as + bs is the share on a clear day
};
/// Hours by which sunshine may exceed the day length: so much is taken as the day length, more is refused.
inline constexpr double sunshine_leeway_h = 1.0;
/// Equation, input, result: see Sunshine.
double radiation_from_sunshine_mj_m2_d(const Sunshine& day);

/// Where a place lies for the adjustment of eq. 50.
enum class Setting {
  interior,  ///< land dominates: kRs = 0.16
  coast      ///< on or near the coast of a large land mass: kRs = 0.19
};

/// Solar radiation from the day's temperature range.
///
/// Equation  Rs = kRs sqrt(Tmax - Tmin) Ra
/// Source    FAO-56, ch. 3, eq. 50 (Hargreaves and Samani); kRs 0.16 interior, 0.19 coast
/// Input     t_max_c, t_min_c [°C] -60 to 60, t_max_c not below t_min_c; ra_mj_m2_d 0 to 60
/// Result    [MJ m⁻² d⁻¹]. As printed: on ranges above about 22 °C (16 °C on coasts) it passes the clear-sky
///           value; complete_daily stops it there
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range
/// Note      Not for small islands, where the sea sets the range (FAO-56 has eq. 51 for monthly values
///           there).
struct TemperatureSun {
  double t_max_c = missing;             ///< highest of the day
  double t_min_c = missing;             ///< lowest of the day, not above t_max_c
  double ra_mj_m2_d = missing;          ///< Ra, above the atmosphere
  Setting setting = Setting::interior;  ///< decides kRs
};
/// Equation, input, result: see TemperatureSun.
double radiation_from_temperature_mj_m2_d(const TemperatureSun& day);

/// Solar radiation of a small island, monthly.
///
/// Equation  Rs = 0.7 Ra - 4
/// Source    FAO-56, ch. 3, eq. 51 (b = 4 MJ m⁻² d⁻¹): islands at most 20 km wide, elevation 0 to 100 m
/// Input     ra_mj_m2_d  [MJ m⁻² d⁻¹] 0 to 60
/// Result    [MJ m⁻² d⁻¹], monthly means only; as printed, below 0 for Ra under 5.7
/// Missing   NaN in, NaN out
/// Throws    Error, field "ra_mj_m2_d", when outside the accepted range
double radiation_of_island_mj_m2_d(double ra_mj_m2_d);

/// Solar radiation imported from a nearby station with the same weather.
///
/// Equation  Rs = (Rs,reg / Ra,reg) Ra
/// Source    FAO-56, ch. 3, eq. 49
/// Input     station_rs_mj_m2_d 0 to 60, station_ra_mj_m2_d 0 to 60, ra_mj_m2_d 0 to 60 [MJ m⁻² d⁻¹]
/// Result    [MJ m⁻² d⁻¹]; NaN where the station's Ra is 0 and says nothing
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range
/// Note      For large north-south distances over several days; within 50 km Rs itself may be copied.
struct NearbySun {
  double station_rs_mj_m2_d = missing;  ///< measured at the station
  double station_ra_mj_m2_d = missing;  ///< Ra there
  double ra_mj_m2_d = missing;          ///< Ra here
};
/// Equation, input, result: see NearbySun.
double radiation_from_nearby_mj_m2_d(const NearbySun& day);

/// Clear-sky solar radiation from local Angstrom values.
///
/// Equation  Rso = (as + bs) Ra
/// Source    FAO-56, ch. 3, eq. 36
/// Input     angstrom_a, angstrom_b [-] 0 to 1; ra_mj_m2_d 0 to 60
/// Result    unit of Ra
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range
double clear_sky_from_angstrom_mj_m2_d(const Sunshine& day);

/// Clear-sky solar radiation from the elevation.
///
/// Equation  Rso = (0.75 + 2e-5 z) Ra
/// Source    FAO-56, ch. 3, eq. 37; ASCE-EWRI 2005, eq. 19
/// Input     elevation_m  z [m] -500 to 9000; ra  per day [MJ m⁻² d⁻¹] or per hour [MJ m⁻² h⁻¹], 0 to 60
/// Result    unit of Ra
/// Missing   NaN if either is missing
/// Throws    Error, naming the field, when outside the accepted range
/// Note      For stations near sea level to 6000 m under low turbidity.
struct SimpleClearSky {
  double ra = missing;           ///< Ra of the day or of the hour
  double elevation_m = missing;  ///< above sea level
};
/// Equation, input, result: see SimpleClearSky.
double clear_sky_radiation(const SimpleClearSky& sky);

/// Which publication's coefficients of the beam and diffuse clear-sky form.
enum class ClearSkyEdition {
  fao56,  ///< FAO-56 annex 3: KB water term 0.091 (W/sin)^0.25, KD = 0.35 - 0.33 KB
  asce    ///< ASCE-EWRI 2005 appendix D: KB water term 0.075 (W/sin)^0.4, KD = 0.35 - 0.36 KB
};

/// What the beam and diffuse form needs.
struct BeamClearSky {
  double ra = missing;                ///< [MJ m⁻²] per day or per hour
  double sin_sun_altitude = missing;  ///< of the hour, or sin_mean_sun_altitude of the day
  double pressure_kpa = missing;      ///< at the site
  double ea_kpa = missing;            ///< actual vapour pressure
  double turbidity = 1.0;             ///< Kt, 1 for clean air, 0.5 for extremely dusty or polluted air
  ClearSkyEdition edition = ClearSkyEdition::asce;  ///< which publication's coefficients
};

/// Clear-sky solar radiation from separate beam and diffuse transmissivities.
///
/// Equation  Rso = (KB + KD) Ra, W = 0.14 ea P + 2.1,
///           asce   KB = 0.98 exp[-0.00146 P / (Kt sin) - 0.075 (W / sin)^0.4],
///                  KD = 0.35 - 0.36 KB (KB >= 0.15), 0.18 + 0.82 KB (KB < 0.15)
///           fao56  KB = 0.98 exp[-0.00146 P / (Kt sin) - 0.091 (W / sin)^0.25],
///                  KD = 0.35 - 0.33 KB (KB >= 0.15), 0.18 + 0.82 KB (KB < 0.15)
/// Source    ASCE-EWRI 2005, appendix D; FAO-56, annex 3, eq. 3-15 to 3-20 (numbers from memory)
/// Input     ra 0 to 60; sin_sun_altitude -1 to 1; pressure_kpa 30 to 110; ea_kpa 0 to 20; turbidity 0.5 to 1
/// Result    unit of Ra; 0 where the sun is at or below the horizon
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range
double clear_sky_from_beam(const BeamClearSky& sky);

/// Mean sine of the sun's altitude over the daylight of a day, weighted by Ra.
///
/// Equation  sin(phi24) = sin[0.85 + 0.3 latitude sin(2 pi J / 365 - 1.39) - 0.42 latitude²], latitude in rad
/// Source    FAO-56, annex 3, eq. 3-14 (number from memory); ASCE-EWRI 2005, appendix D
/// Input     latitude_deg [°] -90 to 90; day_of_year 1 to 366
/// Result    [-]; 0 where the fit falls below the horizon
/// Missing   NaN if the latitude is missing
/// Throws    Error, naming the field, when outside the accepted range
/// Note      A fit for latitudes to about 60°.
double sin_mean_sun_altitude(double latitude_deg, int day_of_year);

/// Net solar radiation.
///
/// Equation  Rns = (1 - albedo) Rs
/// Source    FAO-56, ch. 3, eq. 38
/// Input     rs  per day or per hour [MJ m⁻²] 0 to 60; albedo [-] 0 to 1, 0.23 for the reference surface
/// Result    unit of Rs
/// Missing   NaN if either is missing
/// Throws    Error, naming the field, when outside the accepted range
double net_solar_radiation(double rs, double albedo = reference_albedo);

/// What the daily net longwave radiation needs.
struct DailyLongwave {
  double t_max_c = missing;      ///< highest of the day
  double t_min_c = missing;      ///< lowest of the day
  double ea_kpa = missing;       ///< actual vapour pressure
  double rs_mj_m2_d = missing;   ///< solar radiation
  double rso_mj_m2_d = missing;  ///< of a clear sky on the same day
};

/// Net longwave radiation of a day, outgoing.
///
/// Equation  Rnl = sigma (TmaxK⁴ + TminK⁴)/2 (0.34 - 0.14 sqrt(ea)) (1.35 Rs/Rso - 0.35), Rs/Rso <= 1
/// Source    FAO-56, ch. 3, eq. 39
/// Input     t_max_c, t_min_c [°C] -60 to 60; ea_kpa 0 to 20; rs_mj_m2_d, rso_mj_m2_d 0 to 60
/// Result    [MJ m⁻² d⁻¹]
/// Missing   NaN if any is missing
/// Throws    Error, naming the field, when outside the accepted range
/// Note      FAO-56 sets only the upper limit: on days darker than Rs/Rso = 0.26 the printed factor turns
///           negative. In the polar night (Rso = 0) Rs/Rso does not exist; polar_night_cloud_ratio stands in.
double net_longwave_radiation_mj_m2_d(const DailyLongwave& day);

/// Relative solar radiation Rs/Rso where there is no sun to measure it by: the middle of the 0.4 to 0.8 that
/// FAO-56 (ch. 4, text with eq. 53) gives for nights from humid to arid. Ours for whole polar nights.
inline constexpr double polar_night_cloud_ratio = 0.6;

/// Net radiation.
///
/// Equation  Rn = Rns - Rnl
/// Source    FAO-56, ch. 3, eq. 40
/// Missing   NaN if either is missing
inline double net_radiation(double rns, double rnl) { return rns - rnl; }

}  // namespace v1
}  // namespace noonleaf
