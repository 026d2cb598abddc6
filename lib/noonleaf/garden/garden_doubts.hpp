#pragma once

#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Something in garden.toml that can be read and cannot be right, or that leaves nothing to plan with.
struct GardenDoubt {
  std::string message{};     ///< what cannot be right
  std::string fix{};         ///< one thing to do next
  bool about_water = false;  ///< a number that the minutes are worked out from
};

/// What `check` says of a garden that can be read.
///
/// Rule      Nobody to open and to close: no run is ever printed. A tap that gives less than the cans in a
///           bed caught: rate by cans x area of the bed is the least that must flow (5 % for the readings,
///           ours).
std::vector<GardenDoubt> garden_doubts(const Garden& garden);

}  // namespace v1
}  // namespace noonleaf
