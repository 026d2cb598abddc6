#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "noonleaf/garden/garden.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Reads `garden.toml`: the site, caretakers, taps, sprinklers, beds with their plantings, and the rules.
///
/// Input     text  the whole file; shown_name  how the user typed it, for the messages
/// Result    a garden whose references are resolved, whose crops and soils exist, in SI units
/// Throws    Error with every problem of the file: line, character column, key, the text found, one fix
/// Note      docs/garden.md lists the keys. US and metric units are both accepted, by the suffix of the key.
Garden parse_garden(std::string_view text, std::string_view shown_name);

/// Reads the file of that name in a garden folder.
/// Throws    Error as parse_garden; and when it is no plain UTF-8 file, over 1 MiB, or a link elsewhere
Garden read_garden(const std::filesystem::path& file, std::string_view shown_name);

}  // namespace v1
}  // namespace noonleaf
