#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/balance/mixed_bed.hpp"
#include "noonleaf/crop/crop.hpp"
#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/heat/crop_heat.hpp"
#include "noonleaf/heat/people.hpp"
#include "noonleaf/heat/wilt.hpp"
#include "noonleaf/plan/estimates.hpp"
#include "noonleaf/plan/likelihood.hpp"
#include "noonleaf/plan/run_slots.hpp"
#include "noonleaf/plan/salt.hpp"
#include "noonleaf/plan/seedbed.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/soil_check.hpp"
#include "noonleaf/plan/unlogged_runs.hpp"
#include "noonleaf/plan/water_account.hpp"
#include "noonleaf/sprinkler/cycle_soak.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What to do with a bed today.
enum class BedAction {
  open,         ///< open its tap: there is a run with a time, an opener and a closer
  leave_alone,  ///< it needs no water today
  blocked       ///< it needs water, and something stands in the way
};

/// Why.
enum class BedReason {
  seed_zone_dry,        ///< seeds or seedlings: the top layer would dry out
  beyond_limit,         ///< depletion is beyond RAW already
  limit_before_chance,  ///< depletion would pass RAW before the next time that somebody can water
  rest_of_run,          ///< it would last by now; a part of this morning's run is still to come
  lasts,                ///< it lasts to the next chance, even without rain
  look_first,     ///< it may need a run or be full: unlogged runs lie between; a look into the soil decides
  ground_closed,  ///< snow or frozen ground: the account stands still
  nothing_grows   ///< bare ground: no plant asks for water
};

/// One planting this morning.
struct PlantingToday {
  std::size_t planting = 0;             ///< index into Bed::plantings
  const Crop* crop = nullptr;           ///< row of the crop table
  double share_frac = 1;                ///< of the bed's area
  Stage stage = Stage::not_started;     ///< on this day
  bool in_seed_zone = false;            ///< sown and not up yet: the top few centimetres decide
  std::optional<Seedbed> seedbed{};     ///< then
  double light_min = missing;           ///< then: minutes of one light watering
  SaltOfPlanting salt{};                ///< what salt does to it
  double start_doubt_mm = 0;            ///< how much drier it would be, had the account started from dry soil
  double dr_mm = missing;               ///< depletion of the root zone now
  double raw_mm = missing;              ///< readily available water, for today's demand
  double taw_mm = missing;              ///< of its root zone on this day
  double top_layer_mm = missing;        ///< De, depletion of the top layer now
  double top_layer_limit_mm = missing;  ///< REW: beyond it the surface dries
  double root_depth_m = missing;        ///< on this day
  double field_capacity_m3_m3 = missing;  ///< of the soil that the bed has today
  double cover_frac = 0;                  ///< share of the ground under its leaves
  double etc_mm_d = missing;              ///< what it will use today, without stress
  double dr_close_mm = missing;           ///< depletion at the day's close, without watering
  std::vector<SoilCheck> soil_checks{};   ///< looks into the soil that set the account right, oldest first
  double net_need_mm = 0;                 ///< what it wants from a run today; 0 = nothing
  std::optional<std::chrono::year_month_day>
      limit_day{};                      ///< first day that ends beyond the limit, without water
  WiltDay wilt{};                       ///< its course through the day
  WiltDay low_quarter_wilt{};           ///< the same where the sprinkler brings least
  double low_quarter_dr_mm = missing;   ///< depletion there now
  std::vector<CropHeatFinding> heat{};  ///< published limits that the days ahead pass
};

/// What runs leave open that were asked for and that nobody wrote down, neither as done nor as not done.
struct OpenQuestion {
  std::vector<UnloggedRun> runs{};     ///< oldest first
  double dr_if_done_mm = missing;      ///< of the planting that decides
  double dr_if_not_done_mm = missing;  ///< likewise
  std::size_t planting = 0;            ///< index into `plantings`
  RunPlan run_if_not_done{};           ///< minutes 0 or missing = none
};

/// One bed this morning.
struct BedToday {
  std::size_t bed = 0;                        ///< index into Garden::beds
  BedAction action = BedAction::leave_alone;  ///< what to do with it
  BedReason reason = BedReason::lasts;        ///< why
  std::optional<std::size_t> driver{};        ///< index into `plantings`: the one whose need sets the depth
  std::optional<std::size_t> urgent{};        ///< index into `plantings`: the one that cannot wait, and why
  std::vector<PlantingToday> plantings{};     ///< those that grow on this day
  RunPlan run{};                              ///< meaningful unless left alone
  std::optional<CyclePlan> cycles{};          ///< of that run, where its run-off can be told (bed_cycles)
  std::vector<RunOpening> openings{};  ///< of that run: one, or two with a pause for the water to soak in
  std::optional<RunSlot> slot{};       ///< for action open
  RunObstacle obstacle = RunObstacle::nobody_on_site;  ///< for action blocked
  std::optional<std::chrono::year_month_day>
      next_chance{};                    ///< first later day on which somebody could water
  std::optional<RunSlot> later_slot{};  ///< for a bed that hangs and has no run: when it could still have one
  double minutes_run_today = 0;         ///< from the journal
  std::optional<OpenQuestion> open_question{};  ///< the bed's numbers are those without the unlogged runs;
                                                ///< its run is the smaller one, right in both cases
  double planned_minutes = missing;  ///< this morning's run, where a part of it or all has been run since
  double litres_run_today = 0;       ///< into the bed, from the journal
  double planned_litres = missing;   ///< into the bed, with `planned_minutes`
};

/// The answer to "what do I open now?".
struct Today {
  std::chrono::year_month_day date{};        ///< the day
  std::chrono::minutes from{0};              ///< no run starts earlier
  SkyDay sky{};                              ///< its weather
  double t_min_next_c = missing;             ///< lowest temperature of the day after: of the night to come
  PeopleDay people{};                        ///< what its heat means for those outside
  std::vector<BedToday> beds{};              ///< as in the garden file
  std::vector<std::size_t> opening_order{};  ///< indices into `beds`: the runs by their time
  std::vector<Estimate> estimates{};         ///< what was not measured
  std::optional<Likelihood> likelihood{};    ///< where the caller asked likelihood_of_today for it
};

/// A run that a day asks for and that has a slot.
struct AskedRun {
  std::size_t bed = 0;            ///< index into Garden::beds
  double minutes = missing;       ///< of running
  std::chrono::minutes begin{0};  ///< wall clock of the site
};

/// What the bed's run does to each of its plantings: outcomes_of_depth for the mean depth that the run
/// brings. Empty without a run.
std::vector<ShareOutcome> outcomes_of_run(const BedToday& bed);

/// Everything that an answer is made from.
struct TodayQuestion {
  /// Whether the hours of the day are gone through for wilt.
  enum class Wilt { told, left_out };
  std::chrono::year_month_day date{};  ///< the day
  std::chrono::minutes from{0};        ///< wall clock of the site: no run starts earlier
  Wilt wilt = Wilt::told;              ///< left out where nobody asks for it: the hours take time
};

/// The run of a bed's sprinkler that brings a net depth into it, within the sprinkler's own longest run and
/// `longest_min` (missing = no further limit).
/// Throws    Error as run_plan
RunPlan bed_run(const Garden& garden, const Bed& bed, double net_depth_mm, double longest_min = missing);

/// The runs of a day from its first minute on, by the account alone: what is not in the journal was not run.
/// Throws    as plan_today
std::vector<AskedRun> runs_asked_for(const Garden& garden, const Journal& journal, const Sky& sky,
                                     std::chrono::year_month_day date);

/// What to open today, for how long, who closes it, and which beds will hang.
///
/// Rule      A bed is opened when a planting would pass its limit (RAW; for seeds half of what the seed zone
///           holds available) before the close of the day ahead of the next chance to water, without any rain
///           to come. The net depth is the depletion of the planting that needs most; it never exceeds that
///           depletion but by what salt asks for (leaching). For seeds it is the deficit of the top 10 cm: a
///           person comes once a day at most, and what lies below keeps the seed zone damp (ours); the light
///           and frequent watering that is better is said beside it.
///           A run that would run off the bed is split in two with a pause, and cut to what two bring
///           (bed_cycles). Seedbeds come first, then the planting deepest beyond its limit. A run that fits
///           nowhere in full is cut and leaves the rest over. A planting whose season is over asks for
///           nothing. At a low of 0 °C or less no tap is opened (ours). A run of which a part has been run
///           today is asked for to its end (ask_for_rest); nothing starts before the journal's last run
///           ended. Not written down is unknown, neither done nor undone: the bed shows its numbers without
///           such runs (unlogged_runs) and with them, asks for a look into the soil, and its run is only what
///           fits in both cases.
/// Throws    Error, field "date", when the weather does not reach the day; as accounts_of_bed
Today plan_today(const Garden& garden, const Journal& journal, const Sky& sky, const TodayQuestion& question);

/// The same for a caller who has unlogged_runs of that day already, which is most of the work.
Today plan_today(const Garden& garden, const Journal& journal, const Sky& sky, const TodayQuestion& question,
                 const UnloggedRuns& unlogged);

/// How sure today's answer is: likelihood_of over the days ahead, and the doubt about the minutes of its runs.
/// Throws    as likelihood_of
Likelihood likelihood_of_today(const Garden& garden, const Journal& journal, const Sky& sky,
                               const Today& today, const MemberOptions& options = {});

/// How likely today's alerts are: the first day of likelihood_of_today, the same numbers with less work.
/// Throws    as likelihood_of
Likelihood likelihood_of_alerts(const Garden& garden, const Journal& journal, const Sky& sky,
                                const Today& today, const MemberOptions& options = {});

}  // namespace v1
}  // namespace noonleaf
