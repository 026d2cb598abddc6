#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace v1 {

/// The value below which a share of the known ones lies, 0 to 1: the nearest of them, none between two.
/// Result    missing where none is known
inline double quantile(std::vector<double> values, double share) {
  values.erase(std::remove_if(values.begin(), values.end(), is_missing), values.end());
  if (values.empty()) return missing;
  const auto at = std::lround(share * static_cast<double>(values.size() - 1));
  std::nth_element(values.begin(), values.begin() + at, values.end());
  return values[static_cast<std::size_t>(at)];
}

}  // namespace v1
}  // namespace noonleaf
