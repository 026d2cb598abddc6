#pragma once

#include <span>
#include <string_view>

#include "noonleaf/crop/crop.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// When leaves of a crop group lose their turgor and hang.
struct TurgorLoss {
  CropGroup group = CropGroup::small_vegetable;  ///< all crops of it
  double mpa = missing;                          ///< [MPa], negative
  double sunlit_factor =
      1;  ///< demand of the leaves in full sun over the canopy's mean, where leaves are broad
  std::string_view source;  ///< every row is a surrogate: a group is not a species, let alone a variety
};

/// The table. The resistance is calibrated with the turgor loss (hydraulics.hpp), so that an error in it
/// moves the hours of droop little and the end, dry-soil wilt, more: docs/heat.md has the numbers. The sunlit
/// factor is ours: broad soft leaves hang at noon before their canopy falls behind, by how much nobody
/// printed.
std::span<const TurgorLoss> turgor_loss_table();

/// The row of a group; `bare_soil` has none.
/// Throws    Error, field "crop", for bare_soil
const TurgorLoss& turgor_loss(CropGroup group);

}  // namespace v1
}  // namespace noonleaf
