#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/heat/wilt.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/plan/estimates.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/unlogged_runs.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What week is wanted.
struct WeekQuestion {
  std::chrono::year_month_day first{};  ///< first day of the plan
  std::chrono::minutes from{0};         ///< on the first day no run starts earlier
  int days = 7;                         ///< 1 to 14
  std::size_t most_steps = 1'000;       ///< of the search over shared taps; beyond it the bound is stated
};

/// One opening and closing of a run.
struct WeekCycle {
  std::chrono::minutes begin{0};  ///< after midnight, wall clock of the site
  std::chrono::minutes end{0};    ///< after midnight, wall clock of the site
};

/// What happens if nobody closes the tap at the end of a run.
///
/// Rule      Whoever was to close it goes home without doing so: the water runs on until somebody else is on
///           site, or the same person comes again, at most a week. Where nobody comes, `finder` is empty and
///           the numbers are for the week.
struct UnclosedRun {
  std::chrono::year_month_day until_date{};  ///< when somebody is next on site
  std::chrono::minutes until{0};             ///< after midnight of that day
  std::optional<std::size_t> finder{};       ///< who that is; nothing = nobody within a week
  double extra_hours = missing;              ///< it runs on after the time to close
  double extra_l = missing;  ///< and what that takes from the tap; without a flow what falls into the bed
  double extra_depth_mm = missing;  ///< on the bed, on top of the run
  double percolation_mm =
      missing;  ///< of run and extra together, what the root zone could not hold: drains below it or runs off
};

/// Why a run is as long as it is.
enum class RunSize {
  refill,  ///< fills the root zone (or the top layer of a seedbed)
  part,    ///< half of that: it is enough until the next visit, without any rain, and leaves room for it
  cut_to_limits  ///< what longest run, hours or presence leave of it
};

/// One run of the week.
struct WeekRun {
  int number = 0;                       ///< 1, 2, ... in the order of date and time: as printed
  std::chrono::year_month_day date{};   ///< on which it begins and ends
  std::size_t bed = 0;                  ///< index into Garden::beds
  std::size_t sprinkler = 0;            ///< index into Garden::sprinklers
  std::size_t tap = 0;                  ///< index into Garden::taps
  std::size_t opener = 0;               ///< index into Garden::caretakers; on site at that minute
  std::size_t closer = 0;               ///< index into Garden::caretakers; on site at that minute
  std::optional<std::size_t> backup{};  ///< another person, on site when it has to be closed,
                                        ///< else the next to come that day; nothing = nobody
  std::vector<WeekCycle> cycles{};      ///< one, or two with a pause for the water to soak in
  double minutes = missing;             ///< of running, all cycles together
  double net_depth_mm = missing;        ///< asked for: never above the depletion
  double depth_mm = missing;            ///< what these minutes put into the bed on average
  double volume_l = missing;       ///< from the tap; without a flow of the sprinkler what falls into the bed
  double skip_rain_mm = missing;   ///< rain in the gauge since the bed's last run from which this one is not
                                   ///< needed; missing = no rain reaches the bed
  double intake_left_out_min = 0;  ///< wanted, but it would run off even in two cycles
  RunSize size = RunSize::refill;  ///< why it is as long as it is
  std::size_t planting = 0;        ///< of the bed: whose need sets the depth
  bool evening_on_leaves = false;  ///< overhead in the evening on a crop whose leaves suffer
  double depletion_before_mm = missing;  ///< of that planting
  double depletion_after_mm = missing;   ///< of that planting
  UnclosedRun unclosed{};                ///< if nobody closes it
  RunPlan plan{};                        ///< rate, losses and multiplier behind the minutes
};

/// What can stand in the way of water.
enum class WeekLimit {
  nobody_on_site,      ///< nobody to open, or nobody to close
  allowed_hours,       ///< rules.allowed_hours
  quiet_hours,         ///< quiet hours or the school timetable
  restriction,         ///< a restriction; `restriction` says which
  tap_taken,           ///< other beds need the same tap in the hours there are
  longest_run,         ///< the run that the bed needs is longer than sprinkler or rules allow
  tap_flow,            ///< the sprinkler draws more than the tap gives
  wind,                ///< overhead, and too windy in every hour that is left
  frost,               ///< a low at or below rules.frost_lockout_c
  ground_closed,       ///< snow or frozen ground
  reclaimed_on_food,   ///< overhead run of reclaimed water on what is eaten
  reclaimed_children,  ///< overhead run of reclaimed water, and nobody said when children are there
  no_time_left,        ///< the first day is too far gone
  clock_change,        ///< the clocks change in the hours that are left
  already_dry          ///< beyond its limit before the first hour at which anybody could water
};

/// What would help, from the cheapest to the dearest kind.
enum class RelaxationKind {
  none,               ///< nothing that the plan knows of
  come_then,          ///< `caretaker` (or anybody) on site on `date` from `begin` to `end`
  allow_hours,        ///< water allowed on `date` from `begin` to `end`
  move_quiet_time,    ///< the garden free of children on `date` from `begin` to `end`
  allow_weekday,      ///< `restriction` allows the weekday of `date`
  water_by_hand,      ///< the bed watered by hand, which the restriction exempts, `litres` on `date`
  move_to_drip,       ///< a drip line, which the restriction exempts or the wind leaves alone
  longer_run,         ///< runs up to `minutes` at this sprinkler
  second_tap,         ///< the bed on a tap of its own
  smaller_sprinkler,  ///< one that draws what the tap gives
  drinking_water,     ///< a tap that is not reclaimed
  say_children_hours  ///< write quiet_hours, so that reclaimed water can be planned around them
};

/// The cheapest relaxation of a limit, as data; the words live in report.
struct Relaxation {
  RelaxationKind kind = RelaxationKind::none;  ///< says which of the members below mean something
  std::chrono::year_month_day date{};          ///< on which it helps
  std::chrono::minutes begin{0};               ///< after midnight, wall clock of the site
  std::chrono::minutes end{0};                 ///< after midnight, wall clock of the site
  std::optional<std::size_t> caretaker{};      ///< index into Garden::caretakers; nothing = anybody
  std::optional<std::size_t> restriction{};    ///< index into rules.restrictions
  double minutes = missing;                    ///< of a longer run
  double litres = missing;                     ///< to bring by hand
  double stress_left_mm = missing;             ///< stress of the bed over the plan, were it done; 0 = none
};

/// A bed that suffers in spite of the plan.
struct WeekMiss {
  std::size_t bed = 0;                  ///< index into Garden::beds
  std::size_t planting = 0;             ///< index into Bed::plantings
  std::chrono::year_month_day first{};  ///< first day on which it is beyond its limit
  std::chrono::year_month_day last{};   ///< last such day
  bool seedbed = false;                 ///< the top layer of a seedbed dries; else the root zone
  double stress_mm =
      missing;  ///< transpiration lost, or for a seedbed mm beyond the limit summed over the days
  WeekLimit limit = WeekLimit::nobody_on_site;  ///< the one to blame
  std::optional<std::size_t> restriction{};     ///< index into rules.restrictions where that is the limit
  Relaxation relaxation{};                      ///< the cheapest help
  std::optional<Relaxation> or_else{};          ///< another way: "allow Thursday, or water it by hand"
};

/// How a bed gets through one day with the plan.
enum class DayRisk {
  comfortable,  ///< within its limit
  droops,       ///< hangs at midday from the heat, over moist soil
  dry,          ///< beyond its limit: it loses growth
  wilts,        ///< does not stand again by the next dawn
  not_known     ///< no weather, or the ground is closed
};

/// One bed on one day: of its neediest planting.
struct BedDay {
  std::chrono::year_month_day date{};  ///< of the site
  std::size_t planting = 0;            ///< index into Bed::plantings
  bool seedbed = false;  ///< depletion, limit of the top layer: De, REW, TEW instead of Dr, RAW, TAW
  double depletion_dawn_mm = missing;       ///< with the plan, before the day's water
  double depletion_dawn_dry_mm = missing;   ///< without it and without rain
  double depletion_close_mm = missing;      ///< with the plan, at the day's close
  double depletion_close_dry_mm = missing;  ///< without it and without rain, at the day's close
  double raw_mm = missing;                  ///< limit of comfort
  double taw_mm = missing;                  ///< all that the roots can reach
  double rain_mm = missing;                 ///< forecast; the plan does not count on it
  // close = dawn - rain_counted - irrigation + et + drained, of the layer that the depletion is of
  double rain_counted_mm = 0;  ///< rain that has fallen already, in the bed
  double et_mm = missing;      ///< crop and soil, with the plan; for a seedbed what leaves the top layer
  double drained_mm = 0;       ///< water that the layer could not hold
  double irrigation_mm = 0;    ///< by the plan, in the bed
  double lost_mm = 0;          ///< transpiration lost to dryness on this day
  DayRisk risk = DayRisk::not_known;      ///< with the plan
  DayRisk risk_dry = DayRisk::not_known;  ///< without it
};

/// One bed over the plan.
struct WeekBed {
  std::size_t bed = 0;                          ///< index into Garden::beds
  bool nothing_grows = false;                   ///< no planting asks for anything
  std::vector<BedDay> days{};                   ///< of the plan, in their order
  std::optional<OpenQuestion> open_question{};  ///< runs that nobody wrote down: taken as done (today.hpp)
  std::optional<std::chrono::year_month_day> lasts_to{};  ///< last day within its limit without water;
                                                          ///< nothing = beyond it on the first day
};

/// Do not water if ...
struct SkipRules {
  double rain_mm = missing;    ///< in the gauge since the last run: so much spares every run of the plan
  double wind_m_s = missing;   ///< limit for overhead runs; missing = no overhead run in the plan
  double frost_c = missing;    ///< low at or below which no tap is opened
  bool forecast_rain = false;  ///< rain is forecast within the plan
};

/// How good the plan is.
struct PlanProof {
  bool optimal = false;             ///< proved: no plan with the same choices of depth does better
  double stress_l = missing;        ///< transpiration lost by the plan, litres over all beds
  double bound_stress_l = missing;  ///< no plan can lose less; equal when optimal
  int visits = 0;                   ///< runs in the plan
  int bound_visits = 0;             ///< no plan that loses as little has fewer
  double water_l = 0;               ///< in the beds
  std::size_t steps = 0;            ///< of the search
};

/// The plan.
struct WeekPlan {
  std::chrono::year_month_day first{};  ///< first day of the plan
  std::chrono::year_month_day last{};   ///< last day of the plan
  std::chrono::minutes from{0};         ///< on the first day no run starts earlier
  std::chrono::year_month_day
      looks_to{};                     ///< stress counts to this day's close: the next chance after `last`
  std::vector<WeekRun> runs{};        ///< in the order of date and time
  std::vector<WeekMiss> misses{};     ///< what the plan cannot do
  std::vector<WeekBed> beds{};        ///< as in the garden file
  std::vector<SkyDay> sky{};          ///< of the days of the plan that the files cover
  SkipRules skip{};                   ///< when a run is left out
  PlanProof proof{};                  ///< how good it is
  std::vector<Estimate> estimates{};  ///< what was taken for want of a measurement
  UnloggedRuns unlogged{};            ///< of the days before it, taken as done in beds with an open question
  std::optional<Likelihood> likelihood{};  ///< where the caller asked likelihood_of_week for it
};

/// The week's runs: which beds, when, how long, who opens and who closes; what is missed and which limit is
/// to blame.
///
/// Goals     in this order: least stress (seedbeds first), fewest runs, least water, cool and calm hours
///           (docs/planner.md)
/// Throws    Error, field "date", when the weather does not reach the first day; "days" outside 1 to 14; as
///           accounts_of_bed
WeekPlan plan_week(const Garden& garden, const Journal& journal, const Sky& sky,
                   const WeekQuestion& question);

/// How likely each bed is to leave its range and to wilt on the days of a plan whose runs are all done.
///
/// Method    likelihood_of with the runs' mean depths as planned water. Runs that nobody wrote down are taken
///           as done in the beds in which the plan takes them so (BedToday::open_question).
/// Note      A run that is skipped for rain is counted as done: on such a bed the share is a little too low.
/// Throws    as likelihood_of
Likelihood likelihood_of_week(const Garden& garden, const Journal& journal, const Sky& sky,
                              const WeekPlan& plan, const MemberOptions& options = {});

/// The letters of the beds for sketch and sheet: the file's own, else A, B, C ... that are still free.
std::vector<std::string> bed_letters(const Garden& garden);

}  // namespace v1
}  // namespace noonleaf
