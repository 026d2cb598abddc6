// Compiled with -O3 -fno-math-errno -fno-trapping-math, but not -ffinite-math-only: here a NaN must be seen.
#include "noonleaf/heat/wilt_sound.hpp"

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {
namespace {

// Numbers, not truth values: without a branch, a loop over them becomes vector code.
[[gnu::always_inline]] inline int within(double value, double low, double high) {
  return int{value >= low} & int{value <= high};
}

/// Leaves the lane to the members that are known, and gives the others `stand_in`.
[[gnu::always_inline]] inline void keep_known(HeatLane& lane, const Sound& known, double stand_in) {
  for (std::size_t i = 0; i < heat_members; ++i) lane[i] = known[i] > 0 ? lane[i] : stand_in;
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void day_loop(DayBlock& day, double rso_mj_m2_d, Sound& known) {
  for (std::size_t i = 0; i < heat_members; ++i) {
    const int sound = int{rso_mj_m2_d > 0} & within(day.t_max[i], -60, 60) &
                      within(day.t_min[i], -60, day.t_max[i]) & within(day.t_max_before[i], -60, 60) &
                      within(day.t_min_after[i], -60, 60) & within(day.ea[i], 0, 10) &
                      within(day.rs[i], 0, 60) & within(day.u2[i], 0, 60);
    known[i] = sound ? 1 : 0;
  }
  keep_known(day.t_max, known, 25);
  keep_known(day.t_min, known, 15);
  keep_known(day.t_max_before, known, 25);
  keep_known(day.t_min_after, known, 15);
  keep_known(day.ea, known, 1.2);
  keep_known(day.rs, known, 20);
  keep_known(day.u2, known, 2);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void planting_loop(PlantingBlock& p, Sound& known) {
  for (std::size_t i = 0; i < heat_members; ++i) {
    const int sound = int{p.wilting_point[i] > 0} & int{p.wilting_point[i] < p.field_capacity[i]} &
                      int{p.field_capacity[i] < 1} & within(p.taw[i], 0.01, 1000) &
                      within(p.raw[i], 0, p.taw[i]) & within(p.dr[i], 0, 2000) & within(p.total[i], 0, 30) &
                      within(p.deficit[i], 0, leaf_refill_mm);
    known[i] = sound ? 1 : 0;
  }
  keep_known(p.wilting_point, known, 0.1);
  keep_known(p.field_capacity, known, 0.3);
  keep_known(p.taw, known, 100);
  keep_known(p.raw, known, 50);
  keep_known(p.dr, known, 0);
  keep_known(p.total, known, 5);
  keep_known(p.deficit, known, 0);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void result_loop(const Sound& day, const Sound& planting, PlantingBlock& block) {
  for (std::size_t i = 0; i < heat_members; ++i) {
    const bool sound = day[i] * planting[i] > 0;
    block.verdict[i] = sound ? block.verdict[i] : WiltVerdict::unknown;
    block.droop_hours[i] = sound ? block.droop_hours[i] : missing;
    block.deficit[i] = sound ? block.deficit[i] : missing;
    block.dr[i] = sound ? block.dr[i] : missing;
  }
}

}  // namespace

void set_aside(DayBlock& day, double rso_mj_m2_d, Sound& sound) { day_loop(day, rso_mj_m2_d, sound); }
void set_aside(PlantingBlock& planting, Sound& sound) { planting_loop(planting, sound); }
void take_away(const Sound& day, const Sound& planting, PlantingBlock& block) {
  result_loop(day, planting, block);
}

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
