// Compiled with -O3 -fno-math-errno -fno-trapping-math -ffp-contract=off: vector code, and the same verdicts
// on every instruction set. Also with -ffinite-math-only -fno-signed-zeros: no missing number may come in
// here, wilt_sound.cpp puts members with one aside.
#include "noonleaf/heat/wilt_kernel.hpp"

#include <numbers>

#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/heat/demand_formula.hpp"
#include "noonleaf/heat/wilt.hpp"
#include "noonleaf/heat/wilt_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {
namespace {

[[gnu::always_inline]] inline double least(double a, double b) { return a < b ? a : b; }
[[gnu::always_inline]] inline double most(double a, double b) { return a > b ? a : b; }

struct alignas(64) HoursBlock {
  HeatLane t[24], saturation[24];
  HeatLane low, high, level, fcd;
};

[[gnu::always_inline]] inline void temperatures(const DayPlace& place, const DayBlock& day,
                                                HoursBlock& hours) {
  const formula::DiurnalShape& shape = place.shape;
  for (std::size_t i = 0; i < heat_members; ++i) {
    hours.low[i] = 1e9;
    hours.high[i] = -1e9;
  }
  for (std::size_t h = 0; h < 24; ++h) {
    const formula::HourPart part = shape.part[h];
    const double rise = shape.rise[h], left = shape.left[h], rise_at_sunset = shape.rise_at_sunset;
    for (std::size_t i = 0; i < heat_members; ++i) {
      const formula::WaveEnds ends{day.t_min[i], day.t_max[i], least(day.t_min_after[i], day.t_max[i]),
                                   day.t_max_before[i], least(day.t_min[i], day.t_max_before[i])};
      const double t = formula::wave_c(part, rise, left, rise_at_sunset, ends);
      hours.t[h][i] = t;
      hours.low[i] = least(hours.low[i], t);
      hours.high[i] = most(hours.high[i], t);
    }
  }
  HeatLane per_range;
  for (std::size_t i = 0; i < heat_members; ++i) per_range[i] = 1 / (hours.high[i] - hours.low[i]);
  for (std::size_t h = 0; h < 24; ++h)
    for (std::size_t i = 0; i < heat_members; ++i) {
      const double up = (hours.t[h][i] - hours.low[i]) * per_range[i];
      const double stretched = day.t_min[i] * (1 - up) + day.t_max[i] * up;
      const double t = hours.high[i] > hours.low[i] ? stretched : hours.t[h][i];
      hours.t[h][i] = t;
      hours.saturation[h][i] = formula::saturation_vapour_pressure_kpa<BatchMath>(t);
    }
}

/// One step of Newton's method towards the level L with mean min(e°, L) = ea. The mean is concave in pieces
/// of straight lines: from below, each step lands on the next piece or on the root. Result    the largest
/// step taken
[[gnu::always_inline]] inline double level_step(const DayBlock& day, HoursBlock& hours) {
  double largest = 0;
  HeatLane sum, above;
  for (std::size_t i = 0; i < heat_members; ++i) sum[i] = above[i] = 0;
  for (std::size_t h = 0; h < 24; ++h)
    for (std::size_t i = 0; i < heat_members; ++i) {
      const double es = hours.saturation[h][i], level = hours.level[i];
      sum[i] += es < level ? es : level;
      above[i] += es > level ? 1.0 : 0.0;
    }
  for (std::size_t i = 0; i < heat_members; ++i) {
    const double wanted = (24 * day.ea[i] - sum[i]) / most(above[i], 1);
    const double step = above[i] > 0 && wanted > 0 ? wanted : 0.0;
    hours.level[i] += step;
    largest = most(largest, step);
  }
  return largest;
}

[[gnu::always_inline]] inline void humidity(const DayBlock& day, HoursBlock& hours) {
  for (std::size_t i = 0; i < heat_members; ++i) hours.level[i] = day.ea[i];
  constexpr double rounding_kpa = 1e-13;
  for (int step = 0; step < 24; ++step)
    if (level_step(day, hours) < rounding_kpa) break;
}

[[gnu::always_inline]] inline void demand(const DayPlace& place, const DayBlock& day, const HoursBlock& hours,
                                          ShareBlock& out) {
  HeatLane total;
  for (std::size_t i = 0; i < heat_members; ++i) total[i] = 0;
  const double gamma = place.gamma_kpa_c;
  for (std::size_t h = 0; h < 24; ++h) {
    const double sun = place.shape.sun[h], wind = place.shape.wind[h];
    for (std::size_t i = 0; i < heat_members; ++i) {
      const double es = hours.saturation[h][i];
      const WeatherHour hour{hours.t[h][i], least(es, hours.level[i]), day.rs[i] * sun, day.u2[i] * wind};
      const double et = formula::short_reference_mm_h<BatchMath>(hour, es, hours.fcd[i], gamma);
      out.share[h][i] = et;
      total[i] += et;
    }
  }
  HeatLane per_total;
  for (std::size_t i = 0; i < heat_members; ++i) per_total[i] = 1 / total[i];
  for (std::size_t h = 0; h < 24; ++h) {
    const double sun = place.shape.sun[h];
    for (std::size_t i = 0; i < heat_members; ++i) {
      const double without_demand = day.rs[i] > 0 ? sun : 1.0 / 24;
      const double share = out.share[h][i] * per_total[i];
      out.share[h][i] = total[i] <= 0 ? without_demand : share;
    }
  }
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void shares_loops(const DayPlace& place, const DayBlock& day, ShareBlock& out) {
  HoursBlock hours;
  temperatures(place, day, hours);
  humidity(day, hours);
  for (std::size_t i = 0; i < heat_members; ++i)
    hours.fcd[i] = formula::cloudiness_of_day(day.rs[i], place.rso_mj_m2_d);
  demand(place, day, hours, out);
}

/// What the hours of a planting need beside its block.
struct alignas(64) WiltWork {
  HeatLane log2_a, b, theta_per_mm, per_span;
  HeatLane dr_at_dawn;
  HeatLane dr_hanging;  ///< depletion in the last hour that the leaves hang; 0 without one
  HeatLane power;
};

[[gnu::always_inline]] inline void prepare(PlantingBlock& p, WiltWork& work) {
  for (std::size_t i = 0; i < heat_members; ++i) {
    const formula::RetentionLine line = formula::retention_line(p.field_capacity[i], p.wilting_point[i]);
    const double span = p.taw[i] - p.raw[i];
    work.log2_a[i] = line.log2_a;
    work.b[i] = line.b;
    work.theta_per_mm[i] = (p.field_capacity[i] - p.wilting_point[i]) / p.taw[i];
    work.per_span[i] = span > 0 ? std::numbers::log2e / span : 1e300;
    work.dr_at_dawn[i] = p.dr[i];
    p.droop_hours[i] = work.dr_hanging[i] = 0;
  }
}

/// In short loops, one after the other: short chains of operations keep a processor busier than one long one.
[[gnu::always_inline]] inline void one_hour(const HeatLane& share, double sun_factor,
                                            const formula::LeafWater leaf, PlantingBlock& __restrict p,
                                            WiltWork& __restrict work) {
  for (std::size_t i = 0; i < heat_members; ++i) {
    const double theta = p.field_capacity[i] - p.dr[i] * work.theta_per_mm[i];
    work.power[i] = formula::log2_tension_kpa({work.log2_a[i], work.b[i]}, theta);
  }
  for (std::size_t i = 0; i < heat_members; ++i) work.power[i] = formula::short_exp2(work.power[i]);
  for (std::size_t i = 0; i < heat_members; ++i) {
    const double drawn = share[i] * p.total[i], supply = formula::supply_mm_h(leaf, work.power[i]);
    const double deficit = formula::leaf_deficit_mm(p.deficit[i], drawn * sun_factor, supply);
    p.deficit[i] = deficit;
    p.droop_hours[i] += deficit > 0 ? 1.0 : 0.0;
    work.dr_hanging[i] = deficit > 0 ? p.dr[i] : work.dr_hanging[i];
  }
  for (std::size_t i = 0; i < heat_members; ++i) {
    const double drawn = share[i] * p.total[i], dr = p.dr[i];
    const double left = formula::short_exp2(formula::log2_share_left(dr, drawn, p.raw[i], work.per_span[i]));
    p.dr[i] = formula::dried_mm(dr, drawn, p.taw[i], p.raw[i], left);
  }
}

[[gnu::always_inline]] inline void judge(const WiltWork& work, double bearable_raw_frac, PlantingBlock& p) {
  for (std::size_t i = 0; i < heat_members; ++i) {
    const bool beyond = (work.dr_at_dawn[i] > p.raw[i]) | (work.dr_hanging[i] > bearable_raw_frac * p.raw[i]);
    WiltVerdict verdict = p.droop_hours[i] > 0 ? WiltVerdict::droop : WiltVerdict::comfortable;
    verdict = beyond ? WiltVerdict::stress : verdict;
    p.verdict[i] = p.deficit[i] > 0 ? WiltVerdict::dry_soil_wilt : verdict;
  }
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void wilt_loops(const ShareBlock& shares, const PlantingShared& shared, PlantingBlock& p) {
  WiltWork work;
  prepare(p, work);
  const formula::LeafWater leaf{shared.turgor_loss_mpa, shared.plant_mpa_h_mm, shared.soil_mpa_h_mm};
  for (std::size_t step = 0; step < 24; ++step)
    one_hour(shares.share[static_cast<std::size_t>(shared.clock[step])], shared.sun_factor[step], leaf, p,
             work);
  judge(work, shared.bearable_raw_frac, p);
}

}  // namespace

void transpiration_shares(const DayPlace& place, const DayBlock& day, ShareBlock& out) {
  shares_loops(place, day, out);
}

void wilt_hours(const ShareBlock& shares, const PlantingShared& shared, PlantingBlock& block) {
  wilt_loops(shares, shared, block);
}

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
