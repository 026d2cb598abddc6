#pragma once

#include <span>
#include <string_view>

#include "noonleaf/missing.hpp"
#include "noonleaf/sprinkler/application_rate.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How much longer than a perfectly even sprinkler this one runs, and by which rule.
enum class MultiplierRule {
  even,               ///< DU of 1: no longer
  lower_half,         ///< 1 / (0.4 + 0.6 DU)
  lower_half_capped,  ///< the same would exceed `multiplier_cap`: mend the sprinkler instead
};

/// Highest run-time multiplier. Ours: below DU 0.44 longer runs mostly drain away under the wet spots.
inline constexpr double multiplier_cap = 1.5;

/// The multiplier, what it was before the cap, and the rule that made it.
struct RunTimeMultiplier {
  double value = missing;                      ///< as used, at most `multiplier_cap`
  double before_cap = missing;                 ///< by the rule alone
  MultiplierRule rule = MultiplierRule::even;  ///< which made it
};

/// Run-time multiplier from the uniformity of the low quarter.
///
/// Equation  M = 1 / (0.4 + 0.6 DU_LQ), at most `multiplier_cap`
/// Source    landscape irrigation audit practice (the mean of the lower half is close to
///           0.386 + 0.614 DU_LQ); from memory, not read in print. Cap: ours
/// Input     du_lq_frac 0.05 to 1
/// Missing   refused: pass 1 to say even
/// Throws    Error, field "du_lq_frac", when outside the accepted range or missing
/// Note      1 / DU_LQ would wet even the driest quarter fully and overwater most of the bed.
RunTimeMultiplier run_time_multiplier(double du_lq_frac);

/// What bounds a run.
struct RunLimits {
  double shortest_min =
      2.0;  ///< ours: below this hoses are still filling and a turning head has not been round
  double longest_min = 120.0;  ///< ours, where the sprinkler or the rules name none
};

/// Which limit changed a run.
enum class RunLimit {
  none,
  not_needed,          ///< net depth 0: no run
  raised_to_shortest,  ///< the shortest sensible run puts on more than asked
  cut_to_longest,      ///< the rest is `left_over_net_mm`
};

/// What a run has to put into the soil, and over which ground.
struct RunRequest {
  double net_depth_mm = missing;  ///< what the soil is to take; never above its depletion (plus leaching)
  double bed_area_m2 = missing;   ///< for litres in the bed; may be missing
  ApplicationRate sprinkler{};    ///< rate, uniformity and losses
  RunLimits limits{};             ///< shortest and longest run
};

/// A run with every number on the way; `run_plan_terms` explains them.
struct RunPlan {
  double net_depth_mm = missing;          ///< as asked for
  double du_lq_frac = missing;            ///< of the sprinkler, as used
  double multiplier = missing;            ///< M, for its unevenness
  double depth_in_bed_mm = missing;       ///< mean that has to land in the bed, net x multiplier
  double delivered_frac = missing;        ///< share of the stated rate that lands in the bed
  double gross_depth_mm = missing;        ///< at the stated rate, before losses
  double rate_mm_h = missing;             ///< as stated
  double exact_min = missing;             ///< before rounding and limits
  double minutes = missing;               ///< to open: rounded, within the limits; 0 when none is needed
  double mean_depth_mm = missing;         ///< what these minutes put into the bed on average
  double low_quarter_depth_mm = missing;  ///< and into its driest quarter
  double left_over_net_mm = missing;      ///< net depth the longest run leaves for another day, else 0
  double litres_in_bed = missing;         ///< missing without an area
  double litres_from_tap = missing;       ///< missing without a flow
  RateBasis basis = RateBasis::guess;     ///< of the rate
  MultiplierRule multiplier_rule = MultiplierRule::even;  ///< which made M
  RunLimit limit = RunLimit::none;                        ///< which one changed the minutes
};

/// Net depth to the minutes a person opens the tap.
///
/// Equation  in bed = net M;  gross = in bed / delivered;  minutes = 60 gross / rate
/// Source    net, gross and efficiency: NRCS National Engineering Handbook 652, ch. 5 (the usual form);
///           M and delivered as run_time_multiplier and delivered_frac
/// Method    Rounding as rounded_run_min, then the limits. What is left over is what the cut minutes lack,
///           given back as net depth.
/// Input     net_depth_mm 0 to 300; bed_area_m2 0.01 to 100 000 or missing; limits 1 to 1440, shortest not
///           above longest; sprinkler as require_usable
/// Throws    Error, every fault at once
RunPlan run_plan(const RunRequest& request);

/// Minutes as a person opens a tap: whole minutes below 15, fives from there on.
///
/// Rule      To the nearest, halves down (17.5 becomes 15): the balance follows what was really run, so a
///           short rest comes back in the next run, while water too much is lost. Never 0 for a needed run.
///           Ours.
/// Input     minutes 0 or more
/// Missing   NaN in, NaN out
double rounded_run_min(double minutes);

/// What minutes of running put into a bed.
struct InfiltratedDepth {
  double mean_mm = missing;         ///< for the balance
  double low_quarter_mm = missing;  ///< driest quarter, for the alerts
};

/// Minutes really run to the depth in the bed, before any runoff. The inverse of run_plan: the multiplier has
/// no place here.
///
/// Equation  mean = rate x delivered x minutes / 60;  low quarter = DU_LQ mean
/// Input     minutes 0 to 2880; sprinkler as require_usable
/// Missing   NaN minutes in, NaN out
/// Throws    Error, every fault at once
InfiltratedDepth infiltrated_depth_mm(const ApplicationRate& sprinkler, double minutes);

/// By hand, with watering cans.
struct HandWatering {
  double litres = missing;  ///< to pour on the bed
  double cans = missing;    ///< whole cans, at least one when water is needed; missing without a can size
};

/// Whole cans that bring so many litres: to the nearest, halves down, at least one when water is needed.
///
/// Input     litres 0 or more; can_l above 0
/// Missing   NaN in, NaN out
double whole_cans(double litres, double can_l);

/// Litres and cans for a net depth poured by hand: no multiplier, no loss (the person sees where it goes).
///
/// Equation  litres = net depth x area;  cans = litres / can, to the nearest whole, halves down
/// Input     net_depth_mm 0 to 300; bed_area_m2 0.01 to 100 000; can_l 0.5 to 100 or missing
/// Throws    Error, field named as the member
struct HandRequest {
  double net_depth_mm = missing;  ///< what the soil is to take
  double bed_area_m2 = missing;   ///< that it falls on
  double can_l = missing;         ///< what the can holds; missing = cans are not counted
};
/// Litres and cans: see HandRequest.
HandWatering hand_watering(const HandRequest& request);

/// One line of the explanation of a RunPlan.
struct RunPlanTerm {
  double RunPlan::*member = nullptr;  ///< of RunPlan
  std::string_view name{};            ///< of the member, in words
  std::string_view symbol{};          ///< as the working writes it
  std::string_view unit{};            ///< as printed
  std::string_view equation{};        ///< as text
  std::string_view source{};          ///< publication, or "ours"
};

/// Every number of a RunPlan in the order of the calculation, with symbol, equation and source.
std::span<const RunPlanTerm> run_plan_terms();

}  // namespace v1
}  // namespace noonleaf
