#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/crop/crop.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The crop table, by group, a line each, 80 columns wide.
std::string crop_table_text();

/// The facts of one crop as sentences: who it is, coefficients, height, roots, salt, seeds, source, doubts.
std::vector<std::string> crop_words(const Crop& crop);

/// Its stage lengths as a table, 80 columns wide. Empty where it has none.
std::string crop_stages_text(const Crop& crop);

/// For programs: the whole table, shape "noonleaf.crops" version 1, or one crop, shape "noonleaf.crop"
/// version 1 (docs/json.md).
std::string crops_json();
/// One crop, likewise.
std::string crop_json(const Crop& crop);

}  // namespace v1
}  // namespace noonleaf
