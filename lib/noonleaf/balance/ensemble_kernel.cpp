// Compiled with -O3 -fno-math-errno -fno-trapping-math -ffp-contract=off: vector code, and the same decisions
// on every instruction set.
#include "noonleaf/balance/ensemble_kernel.hpp"

#include <limits>

namespace noonleaf {
inline namespace v1 {
namespace kernel {
namespace {

using balance_formula::least;
using balance_formula::most;
using step_formula::Parts;

struct Fraction {
  double slope, low, high;
  [[gnu::always_inline]] double operator()(double p_table, double etc) const {
    return most(low, least(high, p_table + slope * (5 - etc)));
  }
};

/// 0 where a number is within, NaN where it is not or is missing.
[[gnu::always_inline]] inline double poison_unless_within(double value, double low, double high) {
  const double inside = value >= low ? 0.0 : std::numeric_limits<double>::quiet_NaN();
  return value <= high ? inside : std::numeric_limits<double>::quiet_NaN();
}

/// TR-55 and the wetness of the surface, as soil/runoff.hpp has them.
[[gnu::always_inline]] inline double runoff_of(double rain, double average, double de, double rew,
                                               double tew) {
  const double cn_dry = average / (2.281 - 0.01281 * average);
  const double cn_wet = average / (0.427 + 0.00573 * average);
  const double wet_to = 0.5 * rew;
  const double dryness = most(0, least(1, (de - wet_to) / (0.7 * rew + 0.3 * tew - wet_to)));
  const double s = 25400 / (cn_wet + dryness * (cn_dry - cn_wet)) - 254;
  const double beyond = most(0, rain - 0.2 * s);
  return beyond * beyond / (rain + 0.8 * s);
}

/// Kc max of the member's day, else the shared one (coefficients_formula.hpp with the height's power taken
/// out).
[[gnu::always_inline]] inline double kc_max_of(const SharedDay& day, double u2, double rh_min) {
  const double wind = most(1, least(6, u2)), humidity = most(20, least(80, rh_min));
  const double open = 1.2 + (0.04 * (wind - 2) - 0.004 * (humidity - 45)) * day.height_term;
  const double own = most(open, day.kcb + 0.05);
  const double known = u2 + rh_min;
  return known == known ? own : day.kc_max_shared;
}

/// Water of one member's day: rain after runoff, plan and rule.
struct Water {
  double morning, evening, rain, irrigation, runoff, refills;
};
template <Runoff runoff>
[[gnu::always_inline]] inline Water water_of(const EnsembleBlock& b, const SharedDay& day, std::size_t i,
                                             double rain, double de) {
  Water w{};
  w.refills = b.refill[i] > 0 ? 1.0 : 0.0;
  const double morning = day.irrigation * b.share[i] + b.refill[i];
  const double evening = day.evening_irrigation * b.share[i];
  w.runoff = runoff == Runoff::off ? 0.0 : runoff_of(rain, day.curve_number, de, b.rew[i], b.tew[i]);
  w.rain = rain - w.runoff;
  w.irrigation = morning + evening;
  w.morning = w.rain + morning;
  w.evening = evening;
  return w;
}

[[gnu::always_inline]] inline step_formula::Day plain_day(const SharedDay& day, const Water& w, double et0,
                                                          double kc_max) {
  step_formula::Day out{};
  out.et0 = et0;
  out.zr = day.zr;
  out.lower_depth = day.lower_depth;
  out.kcb = day.kcb;
  out.kc_max = kc_max;
  out.few = day.few;
  out.few_rain = day.few_rain;
  out.p = day.p;
  out.salt = day.salt;
  out.evaporation_factor = day.evaporation_factor;
  out.top_depth = day.top_depth;
  out.morning = w.morning;
  out.evening = w.evening;
  out.surface_morning = w.rain + (w.morning - w.rain) / day.irrigated_frac;
  out.surface_evening = w.evening / day.irrigated_frac;
  out.rain_part_morning = w.rain;
  out.rain_part_evening = 0;
  return out;
}

[[gnu::always_inline]] inline void keep(EnsembleBlock& b, std::size_t i, const step_formula::State& after,
                                        const step_formula::Flows& f, const Water& w, double unstressed,
                                        double poison) {
  b.poison[i] = poison;
  b.de[i] = after.de + poison;
  b.de_rain[i] = after.de_rain + poison;
  b.dr[i] = after.dr + poison;
  b.lower[i] = after.lower + poison;
  b.raw[i] = f.raw + poison;
  b.transpiration[i] += f.transpiration + poison;
  b.evaporation[i] += f.evaporation + poison;
  b.drainage[i] += f.drainage + poison;
  b.runoff[i] += w.runoff + poison;
  b.irrigation[i] += w.irrigation + poison;
  b.stress[i] += most(0, unstressed - f.transpiration) + poison;
  b.beyond[i] += (after.dr > f.raw ? 1.0 : 0.0) + poison;
  b.refills[i] += w.refills + poison;
}

template <Parts parts, Runoff runoff>
[[gnu::always_inline]] inline void dual_loop(
    EnsembleBlock& b, const SharedDay day) {  // by value: no load may hang on a condition
  for (std::size_t i = 0; i < block_members; ++i) {
    const double poison =
        b.poison[i] + poison_unless_within(b.et0[i], 0, 30) + poison_unless_within(b.rain[i], 0, 2000);
    const step_formula::Soil soil{b.rew[i], b.tew[i], b.available_mm_m[i], b.below_wilting_mm_m[i], day.ze};
    const step_formula::State before{b.de[i], b.de_rain[i], b.dr[i], b.lower[i]};
    const double fw = day.irrigated_frac;
    const Water w = water_of<runoff>(b, day, i, b.rain[i], fw * b.de[i] + (1 - fw) * b.de_rain[i]);
    step_formula::Flows f{};
    const step_formula::State after = step_formula::dual<parts, step_formula::Tie::to_root_zone>(
        soil, plain_day(day, w, b.et0[i], kc_max_of(day, b.u2[i], b.rh_min[i])), before,
        Fraction{day.p_slope, day.p_low, day.p_high}, f);
    keep(b, i, after, f, w, day.kcb * b.et0[i], poison);
  }
}

template <Runoff runoff>
[[gnu::always_inline]] inline void single_loop(EnsembleBlock& b, const SharedDay day) {
  for (std::size_t i = 0; i < block_members; ++i) {
    const double poison =
        b.poison[i] + poison_unless_within(b.et0[i], 0, 30) + poison_unless_within(b.rain[i], 0, 2000);
    const step_formula::Soil soil{b.rew[i], b.tew[i], b.available_mm_m[i], b.below_wilting_mm_m[i], day.ze};
    const step_formula::State before{b.de[i], b.de_rain[i], b.dr[i], b.lower[i]};
    const double fw = day.irrigated_frac;
    const Water w = water_of<runoff>(b, day, i, b.rain[i], fw * b.de[i] + (1 - fw) * b.de_rain[i]);
    step_formula::Flows f{};
    const step_formula::State after = step_formula::single(soil, plain_day(day, w, b.et0[i], 1), before,
                                                           Fraction{day.p_slope, day.p_low, day.p_high}, f);
    keep(b, i, after, f, w, day.kcb * b.et0[i], poison);
  }
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void dual_one(EnsembleBlock& b, const SharedDay& day) {
  dual_loop<Parts::one, Runoff::off>(b, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void dual_one_runoff(EnsembleBlock& b, const SharedDay& day) {
  dual_loop<Parts::one, Runoff::by_curve_number>(b, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void dual_two(EnsembleBlock& b, const SharedDay& day) {
  dual_loop<Parts::two, Runoff::off>(b, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void dual_two_runoff(EnsembleBlock& b, const SharedDay& day) {
  dual_loop<Parts::two, Runoff::by_curve_number>(b, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void single_plain(EnsembleBlock& b, const SharedDay& day) {
  single_loop<Runoff::off>(b, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void single_runoff(EnsembleBlock& b, const SharedDay& day) {
  single_loop<Runoff::by_curve_number>(b, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void dawn_loops(EnsembleBlock& b, const Dawn& dawn) {
  const double beyond = dawn.refill_beyond, limit = dawn.refill_max;
  for (std::size_t i = 0; i < block_members; ++i) {
    const double dr = b.dr[i], refill = least(dr, limit);
    b.refill[i] = dr > beyond * b.raw[i] ? refill : 0.0;
  }
  if (!dawn.surface_known)
    for (std::size_t i = 0; i < block_members; ++i)
      b.de[i] = b.de_rain[i] = least(most(0, b.dr[i]), b.tew[i]);
  if (dawn.root_to == dawn.root_from) return;
  for (std::size_t i = 0; i < block_members; ++i) {
    const step_formula::Soil soil{b.rew[i], b.tew[i], b.available_mm_m[i], b.below_wilting_mm_m[i], dawn.ze};
    const double moved =
        dawn.root_to > dawn.root_from
            ? step_formula::gain_by_growth(soil, b.lower[i], dawn.root_from, dawn.root_to, dawn.profile)
            : -step_formula::loss_by_pulling(soil, b.dr[i], dawn.root_from, dawn.root_to);
    b.dr[i] += moved + b.poison[i];
    b.lower[i] -= moved;
  }
}

}  // namespace

void dawn(EnsembleBlock& block, const Dawn& dawn) { dawn_loops(block, dawn); }

void dual_day(EnsembleBlock& block, const SharedDay& day, Parts parts, Runoff runoff) {
  if (parts == Parts::one)
    runoff == Runoff::off ? dual_one(block, day) : dual_one_runoff(block, day);
  else
    runoff == Runoff::off ? dual_two(block, day) : dual_two_runoff(block, day);
}

void single_day(EnsembleBlock& block, const SharedDay& day, Runoff runoff) {
  runoff == Runoff::off ? single_plain(block, day) : single_runoff(block, day);
}

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
