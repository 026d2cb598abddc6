#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/plan/day_slots.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One opening of a run, after its begin.
struct RunOpening {
  std::chrono::minutes begin{0};  ///< minutes after the run's begin
  std::chrono::minutes end{0};    ///< likewise
};

/// A run that somebody wants today, before it has a time.
struct WantedRun {
  std::size_t sprinkler = 0;           ///< index into Garden::sprinklers
  std::chrono::minutes length{0};      ///< from opening to last closing, pauses included
  std::chrono::minutes shortest{0};    ///< a run may be cut to this rather than not be; 0 = not at all
  DaySlots calm = DaySlots{}.set();    ///< where wind lets it run on the day asked for
  std::vector<RunOpening> openings{};  ///< with a pause in between: somebody is there for each; empty = one
};

/// When a run starts and stops, who opens it and who closes it. Both are on site at that minute.
struct RunSlot {
  std::chrono::minutes begin{0};  ///< wall clock of the site
  std::chrono::minutes end{0};    ///< wall clock of the site
  std::size_t opener = 0;         ///< index into Garden::caretakers
  std::size_t closer = 0;         ///< index into Garden::caretakers
};

/// Why a run has no slot.
enum class RunObstacle {
  nobody_on_site,
  allowed_hours,
  quiet_hours,
  tap_taken,
  no_time_left,
  frost,
  restriction,   ///< a rule of the city, the supplier or the district
  wind,          ///< too windy for an overhead run in the hours that are left
  tap_flow,      ///< the sprinkler draws more than the tap gives
  clock_change,  ///< the clocks change in the hours that are left
  reclaimed      ///< reclaimed water over food, or nobody said when children are there
};

/// A run with its slot, or with what stands in its way.
struct PlacedRun {
  std::optional<RunSlot> slot{};                       ///< nothing where it has no place in the day
  RunObstacle obstacle = RunObstacle::nobody_on_site;  ///< meaningful without a slot
};

/// Gives each run of one day a time: allowed hours, no quiet hours, a person on site to open it and one to
/// close it (the same person where that can be), one run at a tap at a time with five minutes between two to
/// move the hose; a sprinkler that needs more than its tap gives with others open runs alone. Early runs come
/// first, since morning is cool and calm.
///
/// Input     requests in order of urgency; earliest: no run starts before this minute of the day
/// Result    one placed run a request, in the same order. A run that fits nowhere in full is cut, in steps of
///           five minutes, down to its `shortest`
/// Note      Greedy: an urgent run never waits for a less urgent one.
std::vector<PlacedRun> place_runs(const Garden& garden, std::chrono::year_month_day date,
                                  std::chrono::minutes earliest, std::span<const WantedRun> requests);

/// The first day after `date`, within a week, on which that run, cut if need be, could have a slot.
std::optional<std::chrono::year_month_day> next_chance(const Garden& garden, std::chrono::year_month_day date,
                                                       const WantedRun& request);

}  // namespace v1
}  // namespace noonleaf
