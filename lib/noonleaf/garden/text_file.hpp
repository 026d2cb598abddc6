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

/// Whether the name is free: no file, no folder, and no link either, wherever it leads.
bool is_nothing_there(const std::filesystem::path& file);

}  // namespace v1
}  // namespace noonleaf
