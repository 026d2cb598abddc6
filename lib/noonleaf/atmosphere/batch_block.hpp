#pragma once

#include <algorithm>
#include <array>
#include <cstddef>

#include "noonleaf/atmosphere/column.hpp"

namespace noonleaf {
inline namespace v1 {

/// Rows that a batch works on at a time. Ten columns of it stay in the innermost cache with room to spare; between 48
/// and 128 rows make no difference, 256 cost a sixth more on arrays larger than the caches (measured).
inline constexpr std::size_t block_rows = 96;

using BlockBuffer = std::array<double, block_rows>;

/// Rows first to first + count of a column, side by side: the caller's own memory where it lies so already,
/// else a copy in `buffer`.
inline const double* side_by_side(const ConstColumn& column, std::size_t first, std::size_t count,
                                  BlockBuffer& buffer) {
  const double* start = column.data + static_cast<std::ptrdiff_t>(first) * column.stride;
  if (column.stride == 1) return start;
  for (std::size_t i = 0; i < count; ++i) buffer[i] = start[static_cast<std::ptrdiff_t>(i) * column.stride];
  return buffer.data();
}

/// A block's results to the caller's column. Kernels write to a block of their own, so that a caller may have
/// the results put in the place of an input.
inline void deliver(const MutableColumn& column, std::size_t first, std::size_t count,
                    const BlockBuffer& block) {
  double* start = column.data + static_cast<std::ptrdiff_t>(first) * column.stride;
  if (column.stride == 1) {
    std::copy_n(block.data(), count, start);
    return;
  }
  for (std::size_t i = 0; i < count; ++i) start[static_cast<std::ptrdiff_t>(i) * column.stride] = block[i];
}

}  // namespace v1
}  // namespace noonleaf
