#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One planting of a bed whose plantings share a sprinkler, as it stands before the run.
struct BedShare {
  double share_frac = missing;  ///< of the bed's area
  double dr_mm = missing;       ///< depletion of its root zone, Dr
  double raw_mm = missing;      ///< RAW on that day
  double taw_mm = missing;      ///< TAW on that day
};

/// What one common depth does to one planting.
struct ShareOutcome {
  double dr_after_mm = missing;     ///< Dr when the depth has gone in; not below 0
  double percolation_mm = missing;  ///< below its roots, over its own area
  double short_mm = missing;        ///< still lacking to field capacity
};

/// The bed's answer.
struct MixedBedAnswer {
  std::size_t driver =
      0;  ///< the planting that sets the depth: the one nearest to, or farthest beyond, stress
  double depth_mm = missing;             ///< net depth that refills the driver
  double mean_percolation_mm = missing;  ///< over the bed
  std::vector<ShareOutcome> outcomes;    ///< in the order of the plantings
};

/// Which planting drives a mixed bed and what that costs the others.
///
/// Method    Each planting keeps its own root zone; the driver has the greatest Dr / RAW (ties: the greater
///           Dr, then the greater share: the order of the plantings does not matter). The depth brings the
///           driver to field capacity and never exceeds its depletion. Ours.
/// Missing   a planting with a missing state cannot drive and its outcome is missing; all missing: no answer
/// Throws    Error, field "share_frac", when shares are not above 0 or add up to more than 1
std::optional<MixedBedAnswer> water_mixed_bed(std::span<const BedShare> plantings);

/// The same for a depth decided elsewhere.
std::vector<ShareOutcome> outcomes_of_depth(std::span<const BedShare> plantings, double depth_mm);

}  // namespace v1
}  // namespace noonleaf
