#include "noonleaf/report/wrapped_text.hpp"

#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {

std::string wrapped_text(std::string_view text, const TextColumn& column) {
  const std::size_t later = column.indent + column.hanging;
  std::string result(column.indent, ' ');
  std::size_t margin = column.indent, filled = margin;
  while (!text.empty()) {
    const std::size_t space = text.find(' ');
    const std::string_view word = text.substr(0, space);
    const std::size_t length = character_count(word);
    if (filled > margin && filled + 1 + length > column.width) {
      result += "\n" + std::string(later, ' ');
      filled = margin = later;
    }
    if (filled > margin) {
      result += ' ';
      ++filled;
    }
    result += word;
    filled += length;
    text.remove_prefix(space == std::string_view::npos ? text.size() : space + 1);
  }
  return result + "\n";
}

}  // namespace v1
}  // namespace noonleaf
