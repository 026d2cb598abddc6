#pragma once

#include <optional>

#include "noonleaf/plan/today.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How a run has to be split so that no water runs off the bed.
///
/// Method    cycle_plan at the rate that reaches the ground. Soil: the table row of the bed's texture, its
///           conductivity lowered where rain and spray beat on bare ground (bare_intake_share, by the
///           canopy's cover); or the bed's measured intake in its place. Initial moisture: the mean of the
///           root zone now. Storage by slope; a framed bed holds `framed_storage_mm`; a slope that nobody
///           stated is 0. Two cycles at most; where the soil would need a pause of more than
///           `longest_pause_min`, one.
/// Input     bed  with a driver; minutes  of running
/// Result    empty for drip, soaker hose and hand watering, and for measured soil, which has no texture:
///           then nothing is said about run-off
std::optional<CyclePlan> bed_cycles(const Garden& garden, const BedToday& bed, double minutes);

/// Nobody waits longer by a tap. Ours.
inline constexpr double longest_pause_min = 120.0;

/// What stands within the frame of a level bed before it runs over. Ours: an inch below the rim.
inline constexpr double framed_storage_mm = 25.0;

/// From opening to the last closing, pauses included.
double length_with_pauses_min(const CyclePlan& plan);

/// Running time of a plan, pauses left out.
double running_min(const CyclePlan& plan);

}  // namespace v1
}  // namespace noonleaf
