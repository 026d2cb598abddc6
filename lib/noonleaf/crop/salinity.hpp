#pragma once

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How a crop bears salt. FAO-56 Tables 23 and 24.
struct SaltTolerance {
  double ece_threshold_ds_m = missing;   ///< ECe from which yield falls
  double yield_loss_pct_m_ds = missing;  ///< b, per dS/m above it
  double ky = missing;                   ///< yield response to water
};

/// Share of the yield that salt leaves.
///
/// Equation  Ya / Ym = 1 - (ECe - ECe threshold) b / 100, not below 0; 1 below the threshold
/// Source    FAO-56 (Allen et al. 1998), ch. 8, eq. 89
/// Missing   NaN in, NaN out
double salt_yield_frac(double ece_ds_m, const SaltTolerance& crop);

/// Factor on Ks for salt in the root zone; where water is short too, both multiply (eq. 92).
///
/// Equation  Ks = 1 - b / (100 Ky) (ECe - ECe threshold), not below 0; 1 below the threshold
/// Source    FAO-56, ch. 8, eq. 90 and 92
/// Valid     the source: yield losses below about 50 %
/// Missing   NaN in, NaN out (Table 24 has no Ky for many vegetables: 1 is a common choice, and the caller's)
double salt_stress_coefficient(double ece_ds_m, const SaltTolerance& crop);

/// Share of the irrigation that has to pass the roots so that salt does not gather.
///
/// Equation  LR = ECw / (5 ECe - ECw)
/// Source    Ayers & Westcot (1985), FAO Irrigation and Drainage Paper 29 rev. 1, eq. 9 (Rhoades 1974); from
///           memory
/// Input     ecw_ds_m  salinity of the water, 0 to 20; ece_ds_m  salinity tolerated in the root zone, above
///           ECw / 5
/// Throws    Error, field "ecw_ds_m", where no leaching keeps the root zone at that salinity (LR of 1 or
///           more)
double leaching_requirement(double ecw_ds_m, double ece_ds_m);

}  // namespace v1
}  // namespace noonleaf
