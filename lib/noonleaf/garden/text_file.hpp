#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The whole of a small text file, without a byte-order mark.
/// Throws    Error when it is missing, not a plain file, unreadable, over `largest_bytes`, UTF-16, or holds
///           NUL bytes
std::string read_text_file(const std::filesystem::path& file, std::string_view shown_name,
                           std::size_t largest_bytes);

}  // namespace v1
}  // namespace noonleaf
