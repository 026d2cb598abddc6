#pragma once

#include <cmath>
#include <string>

#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {

/// A number for a message, with so many decimals at most and no trailing zeros.
inline std::string rounded_text(double value, int decimals) {
  const double scale = std::pow(10.0, decimals);
  return number_text(std::round(value * scale) / scale);
}

}  // namespace v1
}  // namespace noonleaf
