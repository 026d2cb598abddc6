#pragma once

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What covers the ground.
enum class MulchKind { none, organic, plastic };

/// What a mulch leaves of soil evaporation, for BalanceSettings::evaporation_factor.
///
/// Equation  organic: 1 - 0.05 per 10 % of the ground covered; plastic: 1 - covered share
/// Source    organic: FAO-56 (Allen et al. 1998), ch. 10, from memory (half the cover, a quarter less
///           evaporation). Plastic: the film lets no vapour through; what is left evaporates from slits and
///           paths. FAO-56 Table 25 and its text name 50 to 80 % less evaporation for beds under film.
/// Input     covered_frac  share of the ground covered, 0 to 1
/// Note      FAO-56 says that transpiration under film rises by 10 to 30 %; Kcb is left as the table has it
///           here.
double mulch_evaporation_factor(MulchKind kind, double covered_frac);

}  // namespace v1
}  // namespace noonleaf
