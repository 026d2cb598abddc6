#pragma once

#include <span>
#include <string_view>

#include "noonleaf/crop/crop.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// All crops, by group, each with its source and confidence. Rows live as long as the program.
std::span<const Crop> crop_table();

/// The row of a crop.
///
/// Input     id    "tomato"; capitals and the separators space, `-`, `_` are taken as equal
/// Throws    Error, field "crop", naming the nearest crop ("did you mean tomato?")
/// Note      The result refers to the table: never copy a garden's own crop over it.
const Crop& find_crop(std::string_view id);

/// The ground before sowing and after pulling.
const Crop& bare_soil();

}  // namespace v1
}  // namespace noonleaf
