#pragma once

#include <algorithm>
#include <cstddef>
#include <string_view>

/// Whether a text says something.
inline bool holds(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

/// Characters, not bytes, of the widest line of a text in UTF-8.
inline std::size_t widest_line(std::string_view text) {
  std::size_t widest = 0, width = 0;
  for (const char byte : text) {
    if (byte == '\n') width = 0;
    if (byte != '\n' && (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U) ++width;
    widest = std::max(widest, width);
  }
  return widest;
}
