#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The text with every byte that is not part of valid UTF-8 replaced by U+FFFD, so that messages can be
/// printed and written as JSON whatever the file holds.
std::string valid_utf8(std::string_view bytes);

/// Characters of UTF-8 text; a stray byte counts as one, as valid_utf8 shows it.
std::size_t character_count(std::string_view bytes);

/// Without spaces and tabs at both ends.
std::string_view trimmed(std::string_view text);

/// A to Z as a to z; everything else as it is.
std::string lower_case(std::string_view text);

/// The text between double quotes for a message, valid UTF-8, 40 characters of it at most.
std::string in_quotes(std::string_view text);

/// Whole number with separators for people: 1048576 is "1,048,576".
std::string grouped(std::size_t value);

}  // namespace v1
}  // namespace noonleaf
