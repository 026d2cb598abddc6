#pragma once

#include <cstdint>

namespace noonleaf {
inline namespace v1 {

/// What the draws of an ensemble are for: the second part of their address. A number that is in use keeps its
/// meaning, or the same seed gives other gardens.
enum class DrawFor : std::uint32_t {
  trace = 1,
  t_max = 2,
  t_min = 3,
  ea = 4,
  rs = 5,
  u2 = 6,
  rain_kept = 7,
  rain_amount = 8,
  available_water = 20,
  wilting_point = 21,
  rate = 22,
  evenness = 23,
  rain_catch = 24,
  crop_use = 25,
  start = 26
};

constexpr std::uint32_t address(DrawFor what) { return static_cast<std::uint32_t>(what); }

}  // namespace v1
}  // namespace noonleaf
