#pragma once

#include <cstddef>
#include <vector>

#include "noonleaf/balance/ensemble.hpp"
#include "noonleaf/balance/ensemble_kernel.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {

/// The weather of a block of members, day after day: copied once, read by every planting. Missing and
/// impossible numbers are replaced here, since none may reach the day's kernels, and their days kept.
class BlockWeather {
 public:
  explicit BlockWeather(std::size_t days);

  /// Lanes beyond `count` repeat the first.
  void load(const EnsembleSky& sky, std::size_t first, std::size_t count);

  WeatherRow row(std::size_t day) const {
    const double* et0 = &numbers_[day * row_size];
    return {et0, et0 + block_members, et0 + 2 * block_members};
  }

  /// The first day whose ET0 or rain is missing or impossible, counted from 0; the number of days where all
  /// are there.
  std::size_t missing_from(std::size_t lane) const { return static_cast<std::size_t>(missing_from_[lane]); }

 private:
  /// The odd eight keep successive rows out of the same cache sets.
  static constexpr std::size_t n_series = 4, row_size = n_series * block_members + 8;
  std::size_t days_;
  std::vector<double> numbers_;
  Lane missing_from_{};
};

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
