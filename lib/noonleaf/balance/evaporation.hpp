#pragma once

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Position of drip lines.
enum class EmitterPlace { open, under_canopy };

/// Evaporation reduction coefficient.
///
/// Equation  Kr = 1 for De <= REW, else (TEW - De) / (TEW - REW), not below 0
/// Source    FAO-56 (Allen et al. 1998), ch. 7, eq. 74
/// Input     de_mm, rew_mm, tew_mm [mm], REW below TEW
/// Missing   NaN in, NaN out
/// Throws    Error, field "tew_mm", when REW is not below TEW
double evaporation_reduction(double de_mm, double rew_mm, double tew_mm);

/// Fraction of the ground that is exposed and wetted.
///
/// Equation  few = min(1 - fc, fw); drip under the canopy: min(1 - fc, (1 - 0.67 fc) fw)
/// Source    FAO-56, ch. 7, eq. 75 and the text below it (two thirds, printed as 0.67)
/// Input     fc 0 to 0.99, fw above 0 to 1
/// Result    0.01 or more, since fc is at most 0.99
double exposed_wetted_frac(double fc, double fw, EmitterPlace place);

/// Soil evaporation coefficient.
///
/// Equation  Ke = Kr (Kc max - Kcb) <= few Kc max
/// Source    FAO-56, ch. 7, eq. 71
double evaporation_coefficient(double kr, double kc_max, double kcb, double few);

}  // namespace v1
}  // namespace noonleaf
