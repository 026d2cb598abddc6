#include "noonleaf/balance/ground_state.hpp"

namespace noonleaf {
inline namespace v1 {

std::string_view label(GroundState state) {
  switch (state) {
    case GroundState::open:
      return "open";
    case GroundState::snow:
      return "under snow";
    case GroundState::frozen:
      return "frozen";
  }
  return "";
}

GroundState ground_state(GroundState day_before, double t_max_c, double t_min_c, double precipitation_mm) {
  if (is_missing(t_max_c) || is_missing(t_min_c)) return day_before;
  const bool snow_falls = precipitation_mm > 0 && (t_max_c + t_min_c) / 2 <= 1;
  const bool snow_stays = day_before == GroundState::snow && !(t_min_c > 0);
  if (snow_falls || snow_stays) return GroundState::snow;
  return t_max_c <= 0 ? GroundState::frozen : GroundState::open;
}

}  // namespace v1
}  // namespace noonleaf
