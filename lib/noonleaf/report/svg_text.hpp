#pragma once

#include <string>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

/// Text as it may stand in an SVG or HTML page.
inline std::string escaped_text(std::string_view text) {
  std::string result;
  for (const char letter : text) {
    switch (letter) {
      case '&':
        result += "&amp;";
        break;
      case '<':
        result += "&lt;";
        break;
      case '>':
        result += "&gt;";
        break;
      case '"':
        result += "&quot;";
        break;
      default:
        result += letter;
        break;
    }
  }
  return result;
}

}  // namespace v1
}  // namespace noonleaf
