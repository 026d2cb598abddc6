#include "noonleaf/sprinkler/run_time.hpp"

#include "noonleaf/c_interface/sized_struct.hpp"

using namespace noonleaf::c_interface;

namespace {

noonleaf::ApplicationRate rate_of(const noonleaf_run_request& request) {
  return {.basis = chosen<noonleaf::RateBasis>(request.basis, 5, "basis"),
          .rate_mm_h = request.rate_mm_h,
          .off_target_frac = request.off_target_frac,
          .area = chosen<noonleaf::WateredArea>(request.area, 2, "area"),
          .spray_loss_frac = request.spray_loss_frac,
          .du_lq_frac = request.du_lq_frac,
          .flow_l_min = request.flow_l_min};
}

noonleaf_run run_of(const noonleaf::RunPlan& plan) {
  return {.size = sizeof(noonleaf_run),
          .minutes = plan.minutes,
          .exact_min = plan.exact_min,
          .multiplier = plan.multiplier,
          .depth_in_bed_mm = plan.depth_in_bed_mm,
          .delivered_frac = plan.delivered_frac,
          .gross_depth_mm = plan.gross_depth_mm,
          .mean_depth_mm = plan.mean_depth_mm,
          .low_quarter_depth_mm = plan.low_quarter_depth_mm,
          .left_over_net_mm = plan.left_over_net_mm,
          .litres_in_bed = plan.litres_in_bed,
          .litres_from_tap = plan.litres_from_tap,
          .multiplier_rule = static_cast<int32_t>(plan.multiplier_rule),
          .limit = static_cast<int32_t>(plan.limit)};
}

}  // namespace

noonleaf_status noonleaf_run_time(const noonleaf_run_request* request, noonleaf_run* run,
                                  noonleaf_problems** problems) {
  return guarded(problems, [&] {
    require_fillable(run, "run");
    const noonleaf_run_request given = taken(request, default_run_request(), "request");
    const noonleaf::RunPlan plan = noonleaf::run_plan(
        {.net_depth_mm = given.net_depth_mm,
         .bed_area_m2 = given.bed_area_m2,
         .sprinkler = rate_of(given),
         .limits = {.shortest_min = given.shortest_min, .longest_min = given.longest_min}});
    fill(run, run_of(plan));
    return noonleaf_status{noonleaf_done};
  });
}

noonleaf_status noonleaf_depth_of_minutes(const noonleaf_run_request* request, double minutes,
                                          noonleaf_depth* depth, noonleaf_problems** problems) {
  return guarded(problems, [&] {
    require_fillable(depth, "depth");
    const noonleaf_run_request given = taken(request, default_run_request(), "request");
    const noonleaf::InfiltratedDepth found = noonleaf::infiltrated_depth_mm(rate_of(given), minutes);
    fill(depth,
         {.size = sizeof(noonleaf_depth), .mean_mm = found.mean_mm, .low_quarter_mm = found.low_quarter_mm});
    return noonleaf_status{noonleaf_done};
  });
}
