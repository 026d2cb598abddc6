#pragma once

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Fraction of TAW that a crop takes before it is stressed, for the day's demand.
///
/// Equation  p = p(Table 22) + 0.04 (5 - ETc), 0.1 <= p <= 0.8
/// Source    FAO-56 (Allen et al. 1998), ch. 8, text to eq. 83 and Table 22, footnote 2
/// Missing   NaN in, NaN out
double depletion_fraction(double p_table, double etc_mm_d);

/// Readily available water.
///
/// Equation  RAW = p TAW
/// Source    FAO-56, ch. 8, eq. 83
double raw_mm(double taw_mm, double p_frac);

/// Water stress coefficient.
///
/// Equation  Ks = 1 for Dr <= RAW, else (TAW - Dr) / (TAW - RAW), not below 0
/// Source    FAO-56, ch. 8, eq. 84
/// Missing   NaN in, NaN out
double stress_coefficient(double dr_mm, double taw_mm, double raw_mm);

}  // namespace v1
}  // namespace noonleaf
