#pragma once

#include <span>
#include <string_view>

#include "noonleaf/crop/crop.hpp"

namespace noonleaf {
inline namespace v1 {

/// Leaf water potential at which leaves of a crop group lose their turgor and hang.
struct TurgorLoss {
  CropGroup group = CropGroup::small_vegetable;
  double mpa = missing;     ///< [MPa], negative
  std::string_view source;  ///< every row is a surrogate: a group is not a species, let alone a variety
};

/// The table. What the answer depends on it is small: the resistance is calibrated with it (hydraulics.hpp),
/// so that 0.3 MPa move the depletion at which leaves begin to hang by less than 0.01 TAW at 5 mm/d.
std::span<const TurgorLoss> turgor_loss_table();

/// The row of a group; `bare_soil` has none.
/// Throws    Error, field "crop", for bare_soil
const TurgorLoss& turgor_loss(CropGroup group);

}  // namespace v1
}  // namespace noonleaf
