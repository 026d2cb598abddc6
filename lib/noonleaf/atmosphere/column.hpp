#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A column of values in the caller's memory: value i is data[i * stride]. No data at all means that every
/// value is missing, unless the function says otherwise.
struct ConstColumn {
  const double* data = nullptr;  ///< value 0; null = every value is missing
  std::ptrdiff_t stride = 1;     ///< distance between neighbours, in values; 0 repeats one value
};

/// A column that a batch door fills.
struct MutableColumn {
  double* data = nullptr;     ///< where value 0 goes; the caller's, large enough for all
  std::ptrdiff_t stride = 1;  ///< distance between neighbours, in values; not 0
};

/// Rows of a batch whose input lies outside the accepted range, ascending; their result is NaN. A row with a
/// missing input is NaN too and is not listed: missing is not wrong.
using BadRows = std::vector<std::size_t>;

/// Guard of the Eigen doors: a column must have as many rows as the first one.
/// Throws    Error, field = `field`
void require_length(std::string_view field, std::size_t length, std::size_t expected);

}  // namespace v1
}  // namespace noonleaf
