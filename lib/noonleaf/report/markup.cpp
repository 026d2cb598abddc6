#include "noonleaf/report/markup.hpp"

#include <cmath>

#include "noonleaf/error.hpp"
#include "noonleaf/report/local_text.hpp"
#include "noonleaf/report/svg_text.hpp"

namespace noonleaf {
inline namespace v1 {

std::string markup_text(std::string_view text) { return escaped_text(plain_text(text)); }

std::string points(double value) {
  const double rounded = std::round(value * 10) / 10;
  return number_text(rounded == 0 ? 0.0 : rounded);
}

}  // namespace v1
}  // namespace noonleaf
