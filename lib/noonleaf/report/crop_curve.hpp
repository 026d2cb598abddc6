#pragma once

#include <string>
#include <string_view>

#include "noonleaf/crop/crop.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The stage lengths that a curve is drawn for: those of the region, else the first of the crop's rows.
///
/// Result    null where the crop has no stages
/// Throws    Error, field "region", naming the nearest, when no row of the crop is of that region
const StageLengths* curve_stages(const Crop& crop, std::string_view region);

/// Kc and Kcb over a season as a drawing of letters, 78 columns wide: `o` is Kc, `#` Kcb, both as printed
/// (FAO-56 eq. 66 between the stages; no adjustment to a climate). Empty where the crop has no stages.
std::string crop_curve_text(const Crop& crop, const StageLengths* stages);

/// The same as a picture (SVG 1.1), readable without colour: Kc dashed, Kcb solid.
/// Throws    Error, field "crop", where the crop has no stages
std::string crop_curve_svg(const Crop& crop, const StageLengths* stages);

}  // namespace v1
}  // namespace noonleaf
