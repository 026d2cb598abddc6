#include "noonleaf/report/markup.hpp"

#include <cmath>

#include "noonleaf/error.hpp"
#include "noonleaf/report/local_text.hpp"

namespace noonleaf {
inline namespace v1 {

std::string escaped_text(std::string_view text) {
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
      case '\'':
        result += "&#39;";
        break;
      default:
        result += letter;
    }
  }
  return result;
}

std::string markup_text(std::string_view text) { return escaped_text(plain_text(text)); }

std::string points(double value) {
  const double rounded = std::round(value * 10) / 10;
  return number_text(rounded == 0 ? 0.0 : rounded);
}

}  // namespace v1
}  // namespace noonleaf
