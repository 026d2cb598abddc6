#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How text is laid out for a terminal.
struct TextColumn {
  std::size_t indent = 0;   ///< spaces before every line
  std::size_t hanging = 0;  ///< more spaces before every line but the first
  std::size_t width = 80;   ///< characters in a line, the indent included
};

/// Breaks text at spaces into lines, each ended by a newline. A word wider than the column stands alone.
std::string wrapped_text(std::string_view text, const TextColumn& column);

}  // namespace v1
}  // namespace noonleaf
