#pragma once

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The points of a soil's moisture-tension relation: measured, or from texture.
struct RetentionPoints {
  double theta_33 = missing;    ///< [m³ m⁻³] at 33 kPa, field capacity
  double theta_1500 = missing;  ///< [m³ m⁻³] at 1500 kPa, wilting point
  double theta_s = missing;     ///< [m³ m⁻³] saturation; needed only above field capacity
  double air_entry_kpa = 0.0;  ///< psi e, tension at saturation (Saxton & Rawls eq. 4); 0 where unknown, ours
};

/// Moisture-tension relation through the points. Made by retention_curve.
struct RetentionCurve {
  RetentionPoints points{};  ///< the ones that it passes through
  double a = missing;        ///< A [kPa], eq. 14
  double b = missing;        ///< B [-], eq. 15
};

/// Coefficients of the moisture-tension relation.
///
/// Equation  B = (ln 1500 - ln 33) / (ln theta33 - ln theta1500), A = exp(ln 33 + B ln theta33)
/// Source    Saxton & Rawls (2006), Soil Sci. Soc. Am. J. 70:1569-1578, eq. 14, 15
/// Input     theta_33, theta_1500 [m³ m⁻³], 0 < theta_1500 < theta_33 < 1; theta_s above theta_33, to 1, or
///           missing; air_entry_kpa [kPa] 0 to below 33
/// Missing   theta_33 or theta_1500 missing: A and B are NaN
/// Throws    Error, naming the field, when outside the range or out of order
/// Note      Field capacity measured in a pot of coarse mix is held at 5 to 10 kPa rather than 33; the curve
///           then reads too dry by that difference near field capacity, which is small beside a leaf's -1
///           MPa.
RetentionCurve retention_curve(const RetentionPoints& points);

/// Soil water tension (matric potential with the sign turned) at a water content.
///
/// Equation  theta <= theta33            psi = A theta^-B
///           theta33 < theta <= thetaS   psi = 33 - (theta - theta33)(33 - psi e) / (thetaS - theta33)
/// Source    Saxton & Rawls (2006), eq. 11, 12; stated for 1500 to 33 kPa and 33 kPa to air entry.
///           Drier than 1500 kPa the power law is carried on: ours, tested to 15 000 kPa
/// Input     theta [m³ m⁻³], above 0 to theta_s (to theta_33 where theta_s is missing: NaN above)
/// Result    [kPa], 0 and up
/// Missing   NaN if theta or the curve is missing
/// Throws    Error, field "theta", when 0 or below, or above saturation
double soil_tension_kpa(const RetentionCurve& curve, double theta);

/// Water content at a tension: soil_tension_kpa turned round.
///
/// Source    Saxton & Rawls (2006), eq. 11, 12 solved for theta
/// Input     tension_kpa [kPa], 0 to 100 000. Wetter than air entry the soil is taken as saturated (eq. 13)
/// Result    [m³ m⁻³]; NaN wetter than 33 kPa where theta_s is missing
/// Missing   NaN if the tension or the curve is missing
/// Throws    Error, field "tension_kpa", when outside the accepted range
double soil_water_at_tension_m3_m3(const RetentionCurve& curve, double tension_kpa);

}  // namespace v1
}  // namespace noonleaf
