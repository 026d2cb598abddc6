#pragma once

/// US customary and metric side units, exact.
///
/// For the edges only: readers turn what a person wrote into SI with the unit in the name, writers turn it
/// back. Nothing between the edges knows these units.
///
/// Source    NIST Special Publication 811 (2008), appendix B.8; the inch is 25.4 mm, the pound
///           0.45359237 kg and the US gallon 231 cubic inches by definition
/// Missing   NaN in, NaN out, everywhere

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

// ---- factors, exact unless said --------------------------------------------------------------------------
inline constexpr double mm_per_inch = 25.4;                    ///< exact, by definition (1959)
inline constexpr double m_per_foot = 0.3048;                   ///< exact: 12 in
inline constexpr double m_per_mile = 1609.344;                 ///< exact: 5280 ft
inline constexpr double m_per_nautical_mile = 1852.0;          ///< exact, by definition
inline constexpr double m2_per_square_foot = 0.09290304;       ///< exact: the square of the foot
inline constexpr double m2_per_acre = 4046.8564224;            ///< international acre, 43 560 square feet
inline constexpr double litres_per_gallon = 3.785411784;       ///< US liquid gallon
inline constexpr double litres_per_cubic_foot = 28.316846592;  ///< 1728 cubic inches
inline constexpr double litres_per_ccf = 2831.6846592;  ///< CCF of a water bill: one hundred cubic feet
inline constexpr double kpa_per_psi =
    6.894757293168361;  ///< 0.45359237 kg x 9.80665 / (25.4 mm)^2, 16 digits
inline constexpr double kpa_per_inch_mercury =
    3.386389;  ///< conventional (mercury at 0 °C); 7 digits as printed

// ---- length, depth ---------------------------------------------------------------------------------------
/// Inches to mm.
constexpr double mm_from_inches(double inches) { return inches * mm_per_inch; }
/// mm to inches.
constexpr double inches_from_mm(double mm) { return mm / mm_per_inch; }
/// Feet to m.
constexpr double m_from_feet(double feet) { return feet * m_per_foot; }
/// m to feet.
constexpr double feet_from_m(double m) { return m / m_per_foot; }

// ---- area ------------------------------------------------------------------------------------------------
/// Square feet to m².
constexpr double m2_from_square_feet(double square_feet) { return square_feet * m2_per_square_foot; }
/// m² to square feet.
constexpr double square_feet_from_m2(double m2) { return m2 / m2_per_square_foot; }
/// Acres to m².
constexpr double m2_from_acres(double acres) { return acres * m2_per_acre; }
/// m² to acres.
constexpr double acres_from_m2(double m2) { return m2 / m2_per_acre; }

// ---- volume, and with "per minute" on both sides flow ----------------------------------------------------
/// Gallons to litres.
constexpr double litres_from_gallons(double gallons) { return gallons * litres_per_gallon; }
/// Litres to gallons.
constexpr double gallons_from_litres(double litres) { return litres / litres_per_gallon; }
/// Cubic feet to litres.
constexpr double litres_from_cubic_feet(double cubic_feet) { return cubic_feet * litres_per_cubic_foot; }
/// Litres to cubic feet.
constexpr double cubic_feet_from_litres(double litres) { return litres / litres_per_cubic_foot; }
/// CCF to litres.
constexpr double litres_from_ccf(double ccf) { return ccf * litres_per_ccf; }
/// Litres to CCF.
constexpr double ccf_from_litres(double litres) { return litres / litres_per_ccf; }
/// m³ to litres.
constexpr double litres_from_m3(double m3) { return m3 * 1000.0; }
/// Litres to m³.
constexpr double m3_from_litres(double litres) { return litres / 1000.0; }

// ---- speed -----------------------------------------------------------------------------------------------
/// mph to m/s.
constexpr double m_s_from_mph(double mph) { return mph * m_per_mile / 3600.0; }
/// m/s to mph.
constexpr double mph_from_m_s(double m_s) { return m_s * 3600.0 / m_per_mile; }
/// km/h to m/s.
constexpr double m_s_from_km_h(double km_h) { return km_h / 3.6; }
/// m/s to km/h.
constexpr double km_h_from_m_s(double m_s) { return m_s * 3.6; }
/// Knots to m/s.
constexpr double m_s_from_knots(double knots) { return knots * m_per_nautical_mile / 3600.0; }
/// m/s to knots.
constexpr double knots_from_m_s(double m_s) { return m_s * 3600.0 / m_per_nautical_mile; }

// ---- temperature -----------------------------------------------------------------------------------------
/// °F to °C.
constexpr double celsius_from_fahrenheit(double fahrenheit) { return (fahrenheit - 32.0) * 5.0 / 9.0; }
/// °C to °F.
constexpr double fahrenheit_from_celsius(double celsius) { return celsius * 9.0 / 5.0 + 32.0; }

// ---- pressure --------------------------------------------------------------------------------------------
/// psi to kPa.
constexpr double kpa_from_psi(double psi) { return psi * kpa_per_psi; }
/// kPa to psi.
constexpr double psi_from_kpa(double kpa) { return kpa / kpa_per_psi; }
/// Inches of mercury to kPa.
constexpr double kpa_from_inches_mercury(double inches) { return inches * kpa_per_inch_mercury; }
/// kPa to inches of mercury.
constexpr double inches_mercury_from_kpa(double kpa) { return kpa / kpa_per_inch_mercury; }
/// hPa to kPa.
constexpr double kpa_from_hpa(double hpa) { return hpa / 10.0; }
/// kPa to hPa.
constexpr double hpa_from_kpa(double kpa) { return kpa * 10.0; }

// ---- radiation: a mean over the whole day, W/m2, and the day's sum, MJ/m2 --------------------------------
/// W m⁻² to MJ m⁻² d⁻¹.
constexpr double mj_m2_d_from_w_m2(double w_m2) { return w_m2 * 0.0864; }  // 86 400 s
/// MJ m⁻² d⁻¹ to W m⁻².
constexpr double w_m2_from_mj_m2_d(double mj_m2_d) { return mj_m2_d / 0.0864; }

}  // namespace v1
}  // namespace noonleaf
