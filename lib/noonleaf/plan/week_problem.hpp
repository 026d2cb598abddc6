#pragma once

#include <array>
#include <compare>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "noonleaf/balance/daily_step.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/plan/day_slots.hpp"
#include "noonleaf/soil/soil_water.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

// The planner's problem by itself: numbers only, no garden file, no names, no zone. plan_week makes it from a
// garden; the tests make it from random numbers and solve it a second time by trying everything.

/// What a planting asks of a day.
enum class PlantingNeed {
  nothing,    ///< not in the ground, over, or bare soil
  root_zone,  ///< depletion Dr within RAW
  seed_zone   ///< sown and not up: depletion De of the top layer within REW
};

/// One planting over the days of the problem.
struct PlantingProblem {
  double area_m2 = missing;           ///< of the planting; above 0
  BalanceState dawn{};                ///< on the first morning
  std::vector<BalanceDay> days{};     ///< all days of the problem, without the plan's water and without rain
  std::vector<GrowthDay> growth{};    ///< the same days
  std::vector<PlantingNeed> needs{};  ///< on the same days
  SoilWater soil{};                   ///< of its bed
  BalanceSettings settings{};         ///< of its account
};

/// A run's openings: one, or two with a pause in which the water soaks in.
struct RunShape {
  /// One opening of the tap.
  struct Opening {
    int begin_min = 0;  ///< minutes after the run began
    int end_min = 0;    ///< minutes after the run began
  };
  int minutes = 0;                    ///< of running
  std::array<Opening, 2> openings{};  ///< the first n_openings of them
  int n_openings = 1;                 ///< 1 or 2

  /// From the first opening to the last closing.
  int span_min() const { return openings[static_cast<std::size_t>(n_openings - 1)].end_min; }
};

/// One bed.
struct BedProblem {
  std::size_t tap = 0;                       ///< beds with the same number share it
  double area_m2 = missing;                  ///< of the whole bed; above 0
  ApplicationRate rate{};                    ///< of its sprinkler
  RunLimits limits{};                        ///< shortest and longest run of its sprinkler
  std::vector<PlantingProblem> plantings{};  ///< all that take part in the plan
  std::vector<DaySlots> water_may_run{};     ///< on each day of the plan: rules, quiet times, wind, frost
  std::vector<std::array<int, slots_per_day>> discomfort{};  ///< on each day: heat, wind, wet leaves at night
  std::vector<RunShape> shapes{};  ///< by minutes of running; minutes 0: no run is so long
};

/// Which half of the day a run falls into: the account takes water before the day's demand or after it.
enum class DayPart { before_demand, evening };

/// From here on water wets the next day's surface (water_account.hpp).
inline constexpr std::size_t evening_slot = 18 * 60 / minutes_per_slot;

/// Between two runs at one tap: to move the hose.
inline constexpr int pause_between_runs_min = 5;

/// The whole problem. Days from `plan_days` on are looked at, not watered.
struct WeekProblem {
  std::size_t plan_days = 0;                     ///< that may be watered
  std::size_t all_days = 0;                      ///< those and the ones that are looked at behind them
  std::vector<std::vector<DaySlots>> on_site{};  ///< [person][day of the plan]
  std::vector<BedProblem> beds{};                ///< all that are to be planned together
};

/// How a run relates to what the bed lacks.
enum class RunLevel { refill, half_refill };

/// A run that a bed may have on a day.
struct RunChoice {
  std::size_t day = 0;                    ///< of the plan, from 0
  DayPart part = DayPart::before_demand;  ///< of that day
  RunLevel level = RunLevel::refill;      ///< how much of the depletion
  std::size_t planting = 0;               ///< whose depletion it refills
  double net_mm = 0;                      ///< asked for; never above that depletion
  double depth_mm = 0;                    ///< mean depth that its minutes put into the bed
  int minutes = 0;                        ///< of running
  bool cut = false;  ///< shorter than asked for, by the longest run or the hours there are

  /// Equal in every member.
  friend bool operator==(const RunChoice&, const RunChoice&) = default;
};

/// What a plan costs, in whole units, so that sums are exact. Compared in this order: docs/planner.md.
struct PlanCost {
  std::int64_t seed_dryness = 0;  ///< ml: mm beyond REW of the top layer at a day's close x m2, seeds not up
  std::int64_t stress = 0;        ///< ml: transpiration lost to dryness
  std::int64_t runs = 0;          ///< a count
  std::int64_t water = 0;         ///< dl put into the beds

  /// Compared in the order of the members.
  friend auto operator<=>(const PlanCost&, const PlanCost&) = default;
  /// Adds, part by part.
  PlanCost& operator+=(const PlanCost& other);
};
/// Sum, part by part.
PlanCost operator+(PlanCost left, const PlanCost& right);

/// Losses smaller than this on a day count as none: nobody is sent for a drop (ours).
inline constexpr double counted_stress_mm = 0.1;
inline constexpr double counted_seed_dryness_mm = 0.5;  ///< the same for a seedbed, beyond REW (ours)

/// Depletion below which no tap is opened (ours; the same as `today`).
inline constexpr double smallest_net_mm = 1.0;

/// The states of a bed's plantings at a dawn.
using BedState = std::vector<BalanceState>;
/// The states on the first dawn.
BedState first_state(const BedProblem& bed);

/// A day of a bed: its end state, and what the plants lost on it.
struct BedStep {
  BedState end{};   ///< at the day's close, which is the next dawn
  PlanCost cost{};  ///< seed dryness and stress; runs and water of the choice too
};

/// Carries a bed through a day by daily_step, with a run or without.
BedStep step_bed(const BedProblem& bed, const BedState& dawn, std::size_t day, const RunChoice* run);

/// Which lengths of run the hours of each part of each day leave for a bed that has the tap to itself.
struct FittingRuns {
  /// One part of a day.
  struct Part {
    std::vector<int> longest_min{};  ///< [m]: the longest run that fits and is not longer than m; 0 = none
    std::vector<DaySlots> starts{};  ///< [m]: where a run of m minutes may begin
    bool shorter_fits_too = true;    ///< a shorter run may begin wherever a longer one may
  };
  std::vector<std::array<Part, 2>> days{};  ///< [day][part]
};
/// The lengths of run that fit: see FittingRuns.
FittingRuns fitting_runs(const WeekProblem& problem, std::size_t bed);

/// The runs that a bed may have in one part of a day: for the refill of each planting's depletion, and for
/// half of the largest, the minutes of run_plan; where the hours do not leave so many, the longest run that
/// they leave. The net depth never exceeds the depletion.
///
/// Input     state  dawn for a run before the demand; the day's close without water for one in the evening
std::vector<RunChoice> run_choices(const BedProblem& bed, const FittingRuns& fitting, const BedState& state,
                                   std::size_t day, DayPart part);

/// The slots in which a run of that shape may begin: water may run in all its slots, pauses included,
/// somebody is on site to open, and somebody to close, every opening (five minutes each).
DaySlots start_slots(const WeekProblem& problem, std::size_t bed, std::size_t day, DayPart part,
                     const RunShape& shape);

/// A person who can open and one who can close, the same where that can be.
struct Attendants {
  std::size_t opener = 0;  ///< index into WeekProblem::on_site
  std::size_t closer = 0;  ///< index into WeekProblem::on_site
};
/// Who can open and close a run of that shape from that slot on; nothing where nobody can.
std::optional<Attendants> attendants(const WeekProblem& problem, std::size_t day, const RunShape& shape,
                                     std::size_t start_slot);

/// One bed's runs in the order of their days, and what they cost.
struct BedSchedule {
  std::vector<RunChoice> runs{};  ///< in the order of their days
  PlanCost cost{};                ///< of the bed over all days
};

/// What a bed's runs cost over all days, by the balance day by day: the judge of every plan.
PlanCost cost_of(const BedProblem& bed, std::span<const RunChoice> runs);

/// A run with its start.
struct PlacedChoice {
  std::size_t bed = 0;         ///< index into WeekProblem::beds
  std::size_t start_slot = 0;  ///< of the day, slots of minutes_per_slot from midnight
  RunChoice run{};             ///< which
};

/// Runs of one day with their starts, at least discomfort; nothing when they cannot all take place.
///
/// Rule      One run at a tap at a time, five minutes between two. Taps do not disturb each other.
/// Method    For each tap dynamic programming over the sets of runs done, slot by slot: exact.
/// Input     fitting  of every bed of the problem
std::optional<std::vector<PlacedChoice>> arrange_day(const WeekProblem& problem,
                                                     std::span<const FittingRuns> fitting, std::size_t day,
                                                     std::span<const PlacedChoice> runs);

/// Whether they can all take place. Quicker: earliest end of every set of runs.
bool day_is_feasible(const WeekProblem& problem, std::span<const FittingRuns> fitting, std::size_t day,
                     std::span<const PlacedChoice> runs);

}  // namespace v1
}  // namespace noonleaf
