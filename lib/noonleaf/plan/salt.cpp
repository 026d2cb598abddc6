#include "noonleaf/plan/salt.hpp"

#include "noonleaf/crop/salinity.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double ece_over_ecw = 1.5;  // Ayers & Westcot (1985), at a leaching of 15 to 20 %; from memory
constexpr double most_leaching_frac = 0.5;  // ours: beyond, most of the water would only wash
constexpr double usual_ky = 1.0;

}  // namespace

SaltOfPlanting salt_of_planting(const Garden& garden, const Bed& bed, const Crop& crop) {
  SaltOfPlanting salt;
  const double ecw =
      garden.taps.empty() ? missing : garden.taps[garden.sprinklers[bed.sprinkler].tap].salinity_ds_m;
  salt.ece_ds_m = bed.soil_salinity_ds_m;
  if (is_missing(salt.ece_ds_m) && is_known(ecw)) {
    salt.ece_ds_m = ece_over_ecw * ecw;
    salt.ece_is_guess = true;
  }
  if (is_missing(salt.ece_ds_m) || is_missing(crop.ece_threshold_ds_m)) return salt;
  SaltTolerance tolerance{crop.ece_threshold_ds_m, crop.yield_loss_pct_m_ds, crop.ky};
  if (is_missing(tolerance.ky)) tolerance.ky = salt.ky_taken = usual_ky;
  salt.stress = salt_stress_coefficient(salt.ece_ds_m, tolerance);
  salt.yield_frac = salt_yield_frac(salt.ece_ds_m, tolerance);
  if (is_missing(ecw) || ecw == 0) return salt;
  const double room = 5 * tolerance.ece_threshold_ds_m - ecw;
  salt.too_salty = !(ecw < most_leaching_frac * room);
  if (!salt.too_salty) salt.leaching_frac = leaching_requirement(ecw, tolerance.ece_threshold_ds_m);
  return salt;
}

}  // namespace v1
}  // namespace noonleaf
