#include <cstdio>

#include "noonleaf/sprinkler/catch_cans.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

int main() {
  // Eight cans stood in the bed while the sprinkler ran for 15 minutes.
  noonleaf::CatchCanTest test{.minutes = 15};
  for (const double depth_mm : {5.1, 6.0, 4.2, 5.5, 6.3, 3.9, 5.0, 5.8})
    test.cans.push_back({.depth_mm = depth_mm});
  const noonleaf::CanResult cans = noonleaf::catch_can_result(test);
  const noonleaf::RunPlan run = noonleaf::run_plan({.net_depth_mm = 18,  // what the soil is short of
                                                    .bed_area_m2 = 9,
                                                    .sprinkler = {.basis = noonleaf::RateBasis::cans_in_bed,
                                                                  .rate_mm_h = cans.rate_mm_h.value,
                                                                  .du_lq_frac = cans.du_lq_frac.value}});
  std::printf("%.1f mm/h, DU %.2f: %.0f minutes, %.0f litres in the bed\n", cans.rate_mm_h.value,
              cans.du_lq_frac.value, run.minutes, run.litres_in_bed);
}
