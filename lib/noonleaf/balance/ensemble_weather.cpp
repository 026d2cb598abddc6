// Compiled with -O3 -fno-math-errno -fno-trapping-math; NaN is told apart here.
#include "noonleaf/balance/ensemble_weather.hpp"

#include <algorithm>
#include <cstdlib>

namespace noonleaf {
inline namespace v1 {
namespace kernel {
namespace {

using balance_formula::least;
using balance_formula::most;

double at(const MemberSeries& series, std::size_t day, std::size_t member) {
  return series.data[static_cast<std::ptrdiff_t>(day) * series.day_stride +
                     static_cast<std::ptrdiff_t>(member) * series.member_stride];
}

/// Eight members side by side: eight lines to read along, one to write.
void copy_by_member(const MemberSeries& series, std::size_t days, std::size_t first, std::size_t count,
                    double* to, std::size_t row_size) {
  constexpr std::size_t together = 8;
  std::size_t i = 0;
  for (; i + together <= count; i += together)
    for (std::size_t day = 0; day < days; ++day)
      for (std::size_t j = 0; j < together; ++j) to[day * row_size + i + j] = at(series, day, first + i + j);
  for (; i < count; ++i)
    for (std::size_t day = 0; day < days; ++day) to[day * row_size + i] = at(series, day, first + i);
}

/// One series of a block, along memory whichever way the caller keeps it.
void load_series(const MemberSeries& series, std::size_t days, std::size_t first, std::size_t count,
                 double* to, std::size_t row_size) {
  if (series.data == nullptr) {
    for (std::size_t day = 0; day < days; ++day) std::fill_n(to + day * row_size, block_members, missing);
    return;
  }
  if (std::abs(series.day_stride) < std::abs(series.member_stride))
    copy_by_member(series, days, first, count, to, row_size);
  else
    for (std::size_t day = 0; day < days; ++day)
      for (std::size_t i = 0; i < count; ++i) to[day * row_size + i] = at(series, day, first + i);
  for (std::size_t day = 0; day < days; ++day)
    std::fill(to + day * row_size + count, to + day * row_size + block_members, to[day * row_size]);
}

/// 0.04 (u2 - 2) - 0.004 (RHmin - 45) within the source's limits.
#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void climate_row(double* __restrict climate, const double* __restrict rh_min) {
  for (std::size_t i = 0; i < block_members; ++i) {
    const double u2 = climate[i], known = u2 + rh_min[i];
    const double wind = most(1, least(6, u2)), humidity = most(20, least(80, rh_min[i]));
    const double term = 0.04 * (wind - 2) - 0.004 * (humidity - 45);
    climate[i] = known == known ? term : climate_unknown;
  }
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void water_row(double* __restrict et0, double* __restrict rain, double day, double* __restrict missing_from) {
  for (std::size_t i = 0; i < block_members; ++i) {
    // A comparison with NaN is false: missing is not sound.
    const bool sound = (et0[i] >= 0) & (et0[i] <= 30) & (rain[i] >= 0) & (rain[i] <= 2000);
    const double since = least(missing_from[i], day);
    missing_from[i] = sound ? missing_from[i] : since;
    et0[i] = sound ? et0[i] : 0.0;
    rain[i] = sound ? rain[i] : 0.0;
  }
}

}  // namespace

BlockWeather::BlockWeather(std::size_t days) : days_(days), numbers_(days * row_size) {}

void BlockWeather::load(const EnsembleSky& sky, std::size_t first, std::size_t count) {
  double* const numbers = numbers_.data();
  load_series(sky.et0_mm_d, days_, first, count, numbers, row_size);
  load_series(sky.rain_mm, days_, first, count, numbers + block_members, row_size);
  load_series(sky.u2_m_s, days_, first, count, numbers + 2 * block_members, row_size);
  load_series(sky.rh_min_pct, days_, first, count, numbers + 3 * block_members, row_size);
  std::fill_n(missing_from_, block_members, static_cast<double>(days_));
  for (std::size_t day = 0; day < days_; ++day) {
    double* const et0 = numbers + day * row_size;
    water_row(et0, et0 + block_members, static_cast<double>(day), missing_from_);
    climate_row(et0 + 2 * block_members, et0 + 3 * block_members);
  }
}

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
