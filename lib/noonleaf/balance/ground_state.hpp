#pragma once

#include <string_view>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Whether the ground takes and gives water.
enum class GroundState {
  open,
  snow,   ///< snow falls or lies: what fell is not in the ground yet, and how much of it will be is not known
  frozen  ///< it does not thaw during the day
};

/// "open", "under snow", "frozen", for people.
std::string_view label(GroundState state);

/// The ground on a day, from the air.
///
/// Rule      frozen: Tmax at or below 0 °C. snow: precipitation with a mean of Tmax and Tmin at or below 1 °C,
///           and from then on until Tmin is above 0 °C without new snow. Otherwise open. Ours: it stops the
///           account where its equations do not hold, and is no model of snow.
/// Missing   a missing temperature keeps the state of the day before
GroundState ground_state(GroundState day_before, double t_max_c, double t_min_c, double precipitation_mm);

}  // namespace v1
}  // namespace noonleaf
