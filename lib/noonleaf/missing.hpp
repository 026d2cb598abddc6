#pragma once

#include <cmath>
#include <limits>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The one mark of a missing value: a quiet NaN. Never -999, never 0.
inline constexpr double missing = std::numeric_limits<double>::quiet_NaN();

/// True where a value is missing.
inline bool is_missing(double value) { return std::isnan(value); }

/// True where a value is present.
inline bool is_known(double value) { return !std::isnan(value); }

}  // namespace v1
}  // namespace noonleaf
