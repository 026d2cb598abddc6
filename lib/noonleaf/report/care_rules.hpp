#pragma once

#include "noonleaf/crop/crop.hpp"
#include "noonleaf/crop/growth.hpp"

namespace noonleaf {
inline namespace v1 {

// When a caution is due: the same for a day's page and the week's sheet. Common practice, no source.

/// A hose in the sun scalds on a day with this high.
inline constexpr double hot_hose_c = 27.0;

/// Whether bees work the flowers of a crop in this stage.
inline bool has_flowers_for_bees(const Crop& crop, Stage stage) {
  const bool kind = crop.group == CropGroup::ornamental || crop.group == CropGroup::cucumber ||
                    crop.group == CropGroup::berry;
  return kind && (stage == Stage::mid_season || stage == Stage::no_stages);
}

}  // namespace v1
}  // namespace noonleaf
