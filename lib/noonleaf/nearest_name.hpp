#pragma once

#include <span>
#include <string>
#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The valid name closest to what was typed, for "did you mean tomato?".
///
/// Method    Optimal string alignment distance (insert, delete, replace, swap neighbours), capitals and
///           the separators space, `-` and `_` taken as equal
/// Result    the nearest name within a third of its length (2 edits at least); empty when none is near;
///           the first of equals
std::string nearest_name(std::string_view typed, std::span<const std::string_view> names);
/// The same for names that are kept as strings.
std::string nearest_name(std::string_view typed, std::span<const std::string> names);

}  // namespace v1
}  // namespace noonleaf
