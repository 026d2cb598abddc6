#pragma once

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Runoff of a day's rain by curve number.
///
/// Equation  Q = (P - 0.2 S)^2 / (P + 0.8 S) for P > 0.2 S, else 0;  S = 25400 / CN - 254
/// Source    USDA-NRCS TR-55 (1986), eq. 2-1 to 2-4, in mm
/// Input     rain_mm  0 to 2000; curve_number  1 to 100 (our guards)
/// Result    [mm]
/// Missing   NaN in, NaN out
/// Throws    Error, naming the field, when outside the accepted range
double runoff_mm(double rain_mm, double curve_number);

/// Curve number for the wetness of the surface, continuous.
///
/// Equation  dry (ARC I): CN II / (2.281 - 0.01281 CN II); wet (ARC III): CN II / (0.427 + 0.00573 CN II);
///           wet for De up to 0.5 REW, dry from De = 0.7 REW + 0.3 TEW on, linear between
/// Source    Hawkins et al. (1985) for I and III; Allen et al. (2007) for De; both from memory
/// Input     curve_number_average  CN II, 1 to 100; de_mm, rew_mm, tew_mm [mm], REW below TEW
/// Missing   NaN in, NaN out
/// Throws    Error, field "curve_number", when outside the accepted range
double curve_number_for_wetness(double curve_number_average, double de_mm, double rew_mm, double tew_mm);

}  // namespace v1
}  // namespace noonleaf
