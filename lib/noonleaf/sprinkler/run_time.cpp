#include "noonleaf/sprinkler/run_time.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/sprinkler/fault_list.hpp"
#include "noonleaf/sprinkler/rate_faults.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

// A tie must fall the same way whether 17.5 came from inches or from millimetres.
constexpr double tie_tolerance = 1e-6;

double nearest_halves_down(double value) { return std::ceil(value - 0.5 - tie_tolerance); }

void check_request(const RunRequest& request) {
  FaultList faults;
  add_faults(request.sprinkler, faults);
  faults.within("net_depth_mm", request.net_depth_mm, 0.0, 300.0, "mm");
  faults.within_or_missing("bed_area_m2", request.bed_area_m2, 0.01, 100000.0, "m2");
  faults.within("shortest_min", request.limits.shortest_min, 1.0, 1440.0, "min");
  faults.within("longest_min", request.limits.longest_min, 1.0, 1440.0, "min");
  if (request.limits.shortest_min > request.limits.longest_min)
    faults.add("shortest_min", 0,
               number_text(request.limits.shortest_min) + " is above the longest run, " +
                   number_text(request.limits.longest_min) + " min",
               "give a shortest run that is not longer than the longest");
  faults.throw_if_any();
}

// Fills minutes, limit and what is left over from exact_min.
void bound_run(RunPlan& plan, const RunLimits& limits) {
  plan.left_over_net_mm = 0.0;
  if (plan.exact_min <= 0.0) {
    plan.minutes = 0.0;
    plan.limit = RunLimit::not_needed;
    return;
  }
  plan.minutes = std::clamp(rounded_run_min(plan.exact_min), limits.shortest_min, limits.longest_min);
  if (plan.exact_min < limits.shortest_min) plan.limit = RunLimit::raised_to_shortest;
  if (plan.exact_min > limits.longest_min) {
    plan.limit = RunLimit::cut_to_longest;
    plan.left_over_net_mm = plan.net_depth_mm * (1.0 - limits.longest_min / plan.exact_min);
  }
}

}  // namespace

RunTimeMultiplier run_time_multiplier(double du_lq_frac) {
  FaultList faults;
  faults.within("du_lq_frac", du_lq_frac, 0.05, 1.0, "");
  faults.throw_if_any();
  const double before_cap = 1.0 / (0.4 + 0.6 * du_lq_frac);
  if (before_cap > multiplier_cap)
    return {.value = multiplier_cap, .before_cap = before_cap, .rule = MultiplierRule::lower_half_capped};
  return {.value = before_cap,
          .before_cap = before_cap,
          .rule = du_lq_frac < 1.0 ? MultiplierRule::lower_half : MultiplierRule::even};
}

double rounded_run_min(double minutes) {
  require_within("minutes", minutes, 0.0, 1e6, "min");
  if (is_missing(minutes) || minutes == 0.0) return minutes;
  if (minutes < 15.0) return std::max(1.0, nearest_halves_down(minutes));
  return 5.0 * nearest_halves_down(minutes / 5.0);
}

RunPlan run_plan(const RunRequest& request) {
  check_request(request);
  const RunTimeMultiplier multiplier = run_time_multiplier(request.sprinkler.du_lq_frac);
  RunPlan plan;
  plan.basis = request.sprinkler.basis;
  plan.multiplier_rule = multiplier.rule;
  plan.net_depth_mm = request.net_depth_mm;
  plan.du_lq_frac = request.sprinkler.du_lq_frac;
  plan.multiplier = multiplier.value;
  plan.depth_in_bed_mm = plan.net_depth_mm * plan.multiplier;
  plan.delivered_frac = delivered_frac(request.sprinkler);
  plan.gross_depth_mm = plan.depth_in_bed_mm / plan.delivered_frac;
  plan.rate_mm_h = request.sprinkler.rate_mm_h;
  plan.exact_min = 60.0 * plan.gross_depth_mm / plan.rate_mm_h;
  bound_run(plan, request.limits);
  const InfiltratedDepth depth = infiltrated_depth_mm(request.sprinkler, plan.minutes);
  plan.mean_depth_mm = depth.mean_mm;
  plan.low_quarter_depth_mm = depth.low_quarter_mm;
  plan.litres_in_bed = plan.mean_depth_mm * request.bed_area_m2;
  plan.litres_from_tap = request.sprinkler.flow_l_min * plan.minutes;
  return plan;
}

InfiltratedDepth infiltrated_depth_mm(const ApplicationRate& sprinkler, double minutes) {
  FaultList faults;
  add_faults(sprinkler, faults);
  faults.within_or_missing("minutes", minutes, 0.0, 2880.0, "min");
  faults.throw_if_any();
  const double mean = sprinkler.rate_mm_h * delivered_frac(sprinkler) * minutes / 60.0;
  return {.mean_mm = mean, .low_quarter_mm = sprinkler.du_lq_frac * mean};
}

double whole_cans(double litres, double can_l) {
  if (is_missing(litres) || is_missing(can_l)) return missing;
  return litres > 0.0 ? std::max(1.0, nearest_halves_down(litres / can_l)) : 0.0;
}

HandWatering hand_watering(const HandRequest& request) {
  FaultList faults;
  faults.within("net_depth_mm", request.net_depth_mm, 0.0, 300.0, "mm");
  faults.within("bed_area_m2", request.bed_area_m2, 0.01, 100000.0, "m2");
  faults.within_or_missing("can_l", request.can_l, 0.5, 100.0, "L");
  faults.throw_if_any();
  HandWatering watering;
  watering.litres = request.net_depth_mm * request.bed_area_m2;
  watering.cans = whole_cans(watering.litres, request.can_l);
  return watering;
}

std::span<const RunPlanTerm> run_plan_terms() {
  static constexpr std::array<RunPlanTerm, 14> terms = {{
      {&RunPlan::net_depth_mm, "net depth", "d_n", "mm", "what the soil is to take", "soil-water balance"},
      {&RunPlan::du_lq_frac, "uniformity", "DU_LQ", "", "mean of the driest quarter / mean",
       "Merriam & Keller 1978"},
      {&RunPlan::multiplier, "run-time multiplier", "M", "", "min(1.5, 1 / (0.4 + 0.6 DU_LQ))",
       "irrigation audit practice, from memory; the cap is ours"},
      {&RunPlan::depth_in_bed_mm, "mean depth wanted in the bed", "d_b", "mm", "d_n M",
       "irrigation audit practice"},
      {&RunPlan::delivered_frac, "share of the rate that lands in the bed", "E_d", "",
       "each loss that the rate has not seen yet, once", "bookkeeping of our own"},
      {&RunPlan::gross_depth_mm, "gross depth", "d_g", "mm", "d_b / E_d", "NRCS NEH 652, ch. 5"},
      {&RunPlan::rate_mm_h, "application rate", "i", "mm/h", "as measured or guessed", "the sprinkler"},
      {&RunPlan::exact_min, "run time", "t", "min", "60 d_g / i", "NRCS NEH 652, ch. 5"},
      {&RunPlan::minutes, "minutes to open", "t_r", "min",
       "whole minutes below 15, fives above, halves down, within the limits", "ours"},
      {&RunPlan::mean_depth_mm, "mean depth these minutes bring", "d_m", "mm", "i E_d t_r / 60",
       "definition of the rate"},
      {&RunPlan::low_quarter_depth_mm, "depth in the driest quarter", "d_lq", "mm", "DU_LQ d_m",
       "definition of DU_LQ"},
      {&RunPlan::left_over_net_mm, "left for another day", "d_r", "mm", "d_n (1 - t_r / t)",
       "ours; 0 unless the run was cut"},
      {&RunPlan::litres_in_bed, "water in the bed", "V_b", "L", "d_m area", "1 mm on 1 m2 is 1 L, exact"},
      {&RunPlan::litres_from_tap, "water from the tap", "V_t", "L", "flow t_r", "the sprinkler's flow"},
  }};
  return terms;
}

}  // namespace v1
}  // namespace noonleaf
