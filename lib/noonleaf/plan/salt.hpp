#pragma once

#include <string>
#include <vector>

#include "noonleaf/crop/crop.hpp"
#include "noonleaf/garden/garden.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What salt does to a planting.
struct SaltOfPlanting {
  double ece_ds_m = missing;  ///< of the root zone: measured, or 1.5 ECw
  bool ece_is_guess = false;  ///< from the water alone
  double stress = 1;          ///< factor on Ks, FAO-56 eq. 90
  double leaching_frac = 0;   ///< LR: share of the water that has to pass the roots
  bool too_salty = false;     ///< no leaching keeps the root zone below the crop's threshold
  double yield_frac = 1;      ///< what salt leaves of the yield, eq. 89
  double ky_taken = missing;  ///< Ky used where the table has none
};

/// Salt in the root zone of a planting, by Bed::soil_salinity_ds_m and Tap::salinity_ds_m.
///
/// Method    FAO-56 eq. 89, 90; LR by Ayers & Westcot (1985), eq. 9, for the crop's threshold. Without a
///           measured ECe, ECe = 1.5 ECw, which holds where 15 to 20 % of the water passes the roots (Ayers &
///           Westcot 1985; from memory). Where the table has no Ky, 1 is taken (ours). LR of a half or more
///           is called too salty and not asked for (ours).
/// Result    nothing of salt where neither is given, or where the crop's tolerance is not in the table
SaltOfPlanting salt_of_planting(const Garden& garden, const Bed& bed, const Crop& crop);

}  // namespace v1
}  // namespace noonleaf
