#pragma once

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What one `water` entry of the journal was.
struct Watering {
  double minutes = missing;         ///< written down; or the minutes that bring the same depth
  double mean_mm = missing;         ///< for the balance
  double low_quarter_mm = missing;  ///< in the driest quarter of the bed
  double from_tap_l = missing;      ///< missing where neither a meter nor the sprinkler's flow tells
};

/// Minutes, or litres of a meter or of cans, to the depth in the bed.
///
/// Method    Litres that were measured go before minutes: of a sprinkler whose flow is known they are
///           minutes, litres / flow; poured by hand, or where only the area is known, they are litres /
///           area. Minutes become depth by infiltrated_depth_mm.
/// Input     entry  a `water` entry of that bed
Watering watering_of(const Garden& garden, const Bed& bed, const JournalEntry& entry);

}  // namespace v1
}  // namespace noonleaf
