#pragma once

#include <optional>
#include <vector>

#include "noonleaf/plan/today.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How a run has to be split so that no water runs off the bed.
///
/// Method    cycle_plan at the rate that reaches the ground. Soil: the table row of the bed's texture, its
///           conductivity lowered where rain and spray beat on bare ground (bare_intake_share, by the
///           canopy's cover); or the bed's measured intake in its place. Initial moisture: the mean of the
///           root zone now, below the field capacity that the soil of the day has. Storage by slope; a framed
///           bed holds `framed_storage_mm`; a slope that nobody stated is 0. Two cycles at most; where the
///           soil would need a pause of more than `longest_pause_min`, one.
/// Input     bed  with a driver; minutes  of running
/// Result    empty for drip, soaker hose and hand watering, and for measured soil, which has no texture:
///           then nothing is said about run-off
std::optional<CyclePlan> bed_cycles(const Garden& garden, const BedToday& bed, double minutes);

/// Nobody waits longer by a tap. Ours.
inline constexpr double longest_pause_min = 120.0;

/// What stands within the frame of a level bed before it runs over. Ours: an inch below the rim.
inline constexpr double framed_storage_mm = 25.0;

/// A run in whole minutes, as it is opened and closed: after a pause it goes on at a clock time in fives (its
/// begin is one), and the openings add up to `minutes`.
/// Input     cycles  of the run, or nothing: one opening; minutes  whole
std::vector<RunOpening> openings_of_run(const std::optional<CyclePlan>& cycles, double minutes);

/// Running time of a plan, pauses left out.
double running_min(const CyclePlan& plan);

}  // namespace v1
}  // namespace noonleaf
