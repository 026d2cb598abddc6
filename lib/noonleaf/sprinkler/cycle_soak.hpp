#pragma once

#include <string_view>
#include <vector>

#include "noonleaf/missing.hpp"
#include "noonleaf/sprinkler/green_ampt.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Water that may stand in the hollows of a slope before it runs off.
///
/// Table     0.26/0.22/0.18/0.15 in for clay loam, 0.30/0.25/0.21/0.17 loam, 0.33/0.29/0.24/0.20 sandy loam,
///           0.40/0.35/0.30/0.25 sand, on slopes to 3, 6, 12 and above 12 %
/// Source    allowable surface accumulation in the performance-test protocol for irrigation controllers (US
///           EPA / ASABE), from memory. Classes it does not have take their neighbour: loamy sand as sand;
///           silt, silt loam and sandy clay loam as loam; all finer ones as clay loam (for clay that is
///           hopeful)
/// Input     texture as green_ampt_soil; slope_pct 0 to 100
/// Throws    Error, field "texture" or "slope_pct"
double surface_storage_mm(std::string_view texture, double slope_pct);

/// How much of a covered soil's intake the same soil takes when it lies bare and drops beat on it.
///
/// Table     sand 1; loamy sand and sandy loam 0.57; loam, silt loam, silt and sandy clay loam 0.5; finer 0.75
/// Source    ratio of bare to covered ground in the USDA suggested maximum sprinkler rates, slopes to 5 % (NEH
///           sect. 15, ch. 11), from memory: 2.0/2.0, 1.0/1.75, 0.5/1.0, 0.15/0.2 in/h
/// Input     texture as green_ampt_soil
/// Throws    Error, field "texture"
double bare_intake_share(std::string_view texture);

/// A run to be split, and who opens it.
struct CycleRequest {
  IntakeState intake{};                 ///< the soil at the start
  double rate_mm_h = missing;           ///< that reaches the ground (stated rate x delivered_frac)
  double minutes = missing;             ///< of running, all cycles together
  double surface_storage_mm = missing;  ///< as surface_storage_mm; large in a framed level bed
  int most_cycles = 2;                  ///< a person who opens by hand is asked for two at most
};

/// Why a run is split as it is.
enum class CycleReason {
  one_run,          ///< the soil takes it in one go
  split,            ///< it would run off otherwise
  too_many_cycles,  ///< more than `most_cycles` would be needed: cut, the rest is `left_out_min`
};

/// One opening of a run.
struct Cycle {
  double minutes = missing;          ///< the tap is open
  double ponds_after_min = missing;  ///< infinite when it does not pond
  double standing_mm = missing;      ///< on the surface when the tap closes
  double infiltrated_mm = missing;   ///< since the first cycle began, the standing water soaked in
};

/// A run in cycles with soak pauses.
struct CyclePlan {
  std::vector<Cycle> cycles{};                ///< one, or several with a pause before each but the first
  double soak_min = missing;                  ///< each pause; 0 for a single cycle
  double left_out_min = 0.0;                  ///< running time that does not fit without runoff
  CycleReason reason = CycleReason::one_run;  ///< why it is split, or not
};

/// What the pause between cycles does to the wetted soil: named, since it decides the next cycle.
/// "rectangular wetted layer draining under gravity alone"
std::string_view pause_rule_text();

/// Effective saturation of the wetted layer after a pause.
///
/// Equation  dS/dt = -(S - s_e) K S^(3 + 2/lambda) / F, from S = 1
/// Source    Redistribution of a rectangular profile as in Smith, Corradini & Melone 1993, Water Resour. Res.
///           29(1), without its capillary term (ours: slower drying, so the next cycle is judged cautiously);
///           conductivity by Brooks & Corey 1964
/// Input     infiltrated_mm above 0: depth carried from the cycles before; pause_min 0 to 14 400
/// Result    from 1 down towards the initial saturation
/// Throws    Error
double saturation_after_pause_frac(const IntakeState& state, double infiltrated_mm, double pause_min);

/// Splits a run so that no more stands on the soil than the slope holds.
///
/// Method    Each cycle ends before the standing water exceeds the storage: rate x time less Green and Ampt's
///           infiltration. The pause lets the standing water soak in and lasts until then, 15 minutes at
///           least, in fives (ours). Depth infiltrated so far is carried as a wetted layer; once the surface
///           is bare the rest of the pause dries that layer by saturation_after_pause_frac; the next cycle
///           wets it anew until its front meets the old one, from where both are one front over the whole
///           depth. Fewest cycles that fit, equal in whole minutes, the longer ones first.
/// Note      Two doubts pull against each other: the pause rule and the table's conductivities lean to many
///           cycles on loosened garden soil, and the rate is the bed's mean while wet spots get more. One
///           look at the bed while the water runs settles it.
/// Input     rate_mm_h above 0 to 1000; minutes 0 to 1440; surface_storage_mm 0 to 1000; most_cycles 1 to 20
/// Throws    Error, every fault at once
CyclePlan cycle_plan(const CycleRequest& request);

}  // namespace v1
}  // namespace noonleaf
