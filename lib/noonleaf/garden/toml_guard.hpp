#pragma once

#include <string>

#include "noonleaf/garden/toml_table.hpp"

namespace noonleaf {
inline namespace v1 {

/// The most that a line and a key of garden.toml may hold.
///
/// Note      The TOML parser frees its tables one inside the other, so that a table 100,000 deep overflows the
///           stack. It bounds the nesting of values itself, but not the parts of a dotted key, each of which
///           is a table within the one before; and an array may hold such a key on each of its lines.
inline constexpr std::size_t longest_toml_line_bytes = 2000;
inline constexpr std::size_t most_key_parts = 16;

/// Looks through the text before it is parsed.
/// Throws    Error, with the line: a line that is too long, a key of too many parts, text over several lines
void require_plain_toml(TomlDocument& document);

}  // namespace v1
}  // namespace noonleaf
