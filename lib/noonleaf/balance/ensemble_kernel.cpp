// Compiled with -O3 -fno-math-errno -fno-trapping-math -ffp-contract=off: vector code, and the same decisions
// on every instruction set. Also with -ffinite-math-only -fno-signed-zeros, so that least and most are one
// instruction each (a fifth of the time, measured): no missing number may come in here,
// ensemble.cpp and ensemble_weather.cpp put members with one aside.
#include "noonleaf/balance/ensemble_kernel.hpp"

#include "noonleaf/soil/runoff_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {
namespace {

using balance_formula::least;
using balance_formula::most;
using step_formula::Parts;
using step_formula::Reach;
using step_formula::TopRoots;

struct Fraction {
  double slope, low, high;
  [[gnu::always_inline]] double operator()(double p_table, double etc) const {
    return most(low, least(high, p_table + slope * (5 - etc)));
  }
};

/// TR-55 and the wetness of the surface, as soil/runoff.hpp has them.
[[gnu::always_inline]] inline double runoff_of(double rain, double average, double de, double rew,
                                               double tew) {
  const double cn_dry = runoff_formula::curve_number_dry(average);
  const double cn_wet = runoff_formula::curve_number_wet(average);
  const double dryness = most(0, least(1, runoff_formula::dryness(de, rew, tew)));
  return runoff_formula::runoff_mm(rain, runoff_formula::retention_mm(cn_wet + dryness * (cn_dry - cn_wet)));
}

/// Kc max of the member's day, else the shared one (coefficients_formula.hpp with the height's power taken
/// out).
[[gnu::always_inline]] inline double kc_max_of(const SharedDay& day, double climate) {
  const double own = most(1.2 + climate * day.height_term, day.kcb + 0.05);
  return climate > climate_unknown ? own : day.kc_max_shared;
}

/// Water of one member's day: rain after runoff, plan and rule.
struct Water {
  double morning, evening, rain;
};
template <Runoff runoff>
[[gnu::always_inline]] inline Water water_of(EnsembleBlock& b, const SharedDay& day, std::size_t i,
                                             double rain, double de) {
  Water w{};
  w.rain = rain;
  if constexpr (runoff == Runoff::by_curve_number) {
    const double lost = runoff_of(rain, day.curve_number, de, b.rew[i], b.tew[i]);
    b.runoff[i] += lost;
    w.rain -= lost;
  }
  w.morning = w.rain + (day.irrigation * b.share[i] + b.refill[i]);
  w.evening = day.evening_irrigation * b.share[i];
  return w;
}

template <Parts parts>
[[gnu::always_inline]] inline step_formula::Day plain_day(const SharedDay& day, const Water& w, double et0) {
  step_formula::Day out{};
  out.et0 = et0;
  out.zr = day.zr;
  out.lower_depth = day.lower_depth;
  out.kcb = day.kcb;
  out.few = day.few;
  out.few_rain = day.few_rain;
  out.per_few = day.per_few;
  out.per_few_rain = day.per_few_rain;
  out.p = day.p;
  out.salt = day.salt;
  out.evaporation_factor = day.evaporation_factor;
  out.top_depth = day.top_depth;
  out.morning = w.morning;
  out.evening = w.evening;
  // Where irrigation wets all of the ground its depth is the depth on the surface.
  const double fw = day.irrigated_frac;
  out.surface_morning = parts == Parts::one ? w.morning : w.rain + (w.morning - w.rain) / fw;
  out.surface_evening = parts == Parts::one ? w.evening : w.evening / fw;
  out.rain_part_morning = w.rain;
  out.rain_part_evening = 0;
  return out;
}

[[gnu::always_inline]] inline step_formula::Soil soil_of_lane(const EnsembleBlock& b, const SharedDay& day,
                                                              std::size_t i) {
  return {b.rew[i], b.tew[i], b.available_mm_m[i], b.below_wilting_mm_m[i], day.ze, b.per_drying[i]};
}

[[gnu::always_inline]] inline void keep(EnsembleBlock& b, std::size_t i, const step_formula::State& after,
                                        const step_formula::Flows& f, double unstressed) {
  b.dr[i] = after.dr;
  b.lower[i] = after.lower;
  b.transpiration[i] += f.transpiration;
  b.evaporation[i] += f.evaporation;
  b.drainage[i] += f.drainage;
  b.stress[i] += most(0, unstressed - f.transpiration);
  b.beyond[i] += after.dr > f.raw ? 1.0 : 0.0;
}

/// First half of the day. The shared day comes by value: no load may hang on a condition.
template <Parts parts, Runoff runoff>
[[gnu::always_inline]] inline void demand_loop(EnsembleBlock& b, const WeatherRow sky, const SharedDay day) {
  for (std::size_t i = 0; i < block_members; ++i) {
    const step_formula::State before{b.de[i], b.de_rain[i], b.dr[i], b.lower[i]};
    const double fw = day.irrigated_frac;
    const double de = parts == Parts::one ? b.de[i] : fw * b.de[i] + (1 - fw) * b.de_rain[i];
    const Water w = water_of<runoff>(b, day, i, sky.rain[i], de);
    step_formula::Day plain = plain_day<parts>(day, w, sky.et0[i]);
    plain.kc_max = kc_max_of(day, sky.climate[i]);
    step_formula::Flows f{};
    step_formula::demand<parts>(soil_of_lane(b, day, i), plain, before,
                                Fraction{day.p_slope, day.p_low, day.p_high}, f);
    b.de_wet[i] = f.de_wet;
    b.evaporation_demand[i] = f.evaporation_irrigated;
    if constexpr (parts == Parts::two) {
      b.de_rain_wet[i] = f.de_rain_wet;
      b.rain_part_demand[i] = f.evaporation_rain_part;
    }
    b.transpiration_demand[i] = f.transpiration;
    b.dr_open[i] = f.dr_open;
    b.raw[i] = f.raw;
  }
}

/// Second half.
template <Parts parts, TopRoots top_roots, Reach reach>
[[gnu::always_inline]] inline void settle_loop(EnsembleBlock& b, const WeatherRow sky, const SharedDay day) {
  for (std::size_t i = 0; i < block_members; ++i) {
    const step_formula::Soil soil = soil_of_lane(b, day, i);
    const step_formula::State before{b.de[i], b.de_rain[i], b.dr[i], b.lower[i]};
    Water w{};
    w.evening = day.evening_irrigation * b.share[i];
    step_formula::Flows f{};
    f.taw = soil.available_mm_m * day.zr;
    f.raw = b.raw[i];
    f.de_wet = b.de_wet[i];
    f.evaporation_irrigated = b.evaporation_demand[i];
    if constexpr (parts == Parts::two) {
      f.de_rain_wet = b.de_rain_wet[i];
      f.evaporation_rain_part = b.rain_part_demand[i];
    }
    f.evaporation = f.evaporation_irrigated + f.evaporation_rain_part;
    f.transpiration = b.transpiration_demand[i];
    f.dr_open = b.dr_open[i];
    f.dr_wet = most(0, f.dr_open);
    const step_formula::State after =
        step_formula::settle<parts, step_formula::Tie::to_root_zone, top_roots, reach>(
            soil, plain_day<parts>(day, w, sky.et0[i]), before, f);
    b.de[i] = after.de;
    if constexpr (parts == Parts::two) b.de_rain[i] = after.de_rain;
    keep(b, i, after, f, day.kcb * sky.et0[i]);
  }
}

template <Parts parts, TopRoots top_roots, Reach reach, Runoff runoff>
[[gnu::always_inline]] inline void dual_loops(EnsembleBlock& b, const WeatherRow& sky, const SharedDay& day) {
  demand_loop<parts, runoff>(b, sky, day);
  settle_loop<parts, top_roots, reach>(b, sky, day);
}

template <Runoff runoff>
[[gnu::always_inline]] inline void single_loop(EnsembleBlock& b, const WeatherRow sky, const SharedDay day) {
  for (std::size_t i = 0; i < block_members; ++i) {
    const step_formula::State before{b.de[i], b.de_rain[i], b.dr[i], b.lower[i]};
    const double fw = day.irrigated_frac;
    const Water w = water_of<runoff>(b, day, i, sky.rain[i], fw * b.de[i] + (1 - fw) * b.de_rain[i]);
    step_formula::Flows f{};
    const step_formula::State after =
        step_formula::single(soil_of_lane(b, day, i), plain_day<Parts::one>(day, w, sky.et0[i]), before,
                             Fraction{day.p_slope, day.p_low, day.p_high}, f);
    b.raw[i] = f.raw;
    keep(b, i, after, f, day.kcb * sky.et0[i]);
  }
}

// Sprinklers over deep roots are most of all days and get the shortest form; what is rarer shares the general
// ones.
#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void sprinkled(EnsembleBlock& b, const WeatherRow& sky, const SharedDay& day) {
  dual_loops<Parts::one, TopRoots::ignored, Reach::whole_top_layer, Runoff::off>(b, sky, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void sprinkled_runoff(EnsembleBlock& b, const WeatherRow& sky, const SharedDay& day) {
  dual_loops<Parts::one, TopRoots::ignored, Reach::whole_top_layer, Runoff::by_curve_number>(b, sky, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void general(EnsembleBlock& b, const WeatherRow& sky, const SharedDay& day) {
  dual_loops<Parts::two, TopRoots::drawn, Reach::whole_top_layer, Runoff::off>(b, sky, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void general_runoff(EnsembleBlock& b, const WeatherRow& sky, const SharedDay& day) {
  dual_loops<Parts::two, TopRoots::drawn, Reach::whole_top_layer, Runoff::by_curve_number>(b, sky, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void shallow(EnsembleBlock& b, const WeatherRow& sky, const SharedDay& day) {
  dual_loops<Parts::two, TopRoots::drawn, Reach::part_of_it, Runoff::off>(b, sky, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void shallow_runoff(EnsembleBlock& b, const WeatherRow& sky, const SharedDay& day) {
  dual_loops<Parts::two, TopRoots::drawn, Reach::part_of_it, Runoff::by_curve_number>(b, sky, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void single_plain(EnsembleBlock& b, const WeatherRow& sky, const SharedDay& day) {
  single_loop<Runoff::off>(b, sky, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void single_runoff(EnsembleBlock& b, const WeatherRow& sky, const SharedDay& day) {
  single_loop<Runoff::by_curve_number>(b, sky, day);
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void refill_loop(EnsembleBlock& b, const double beyond, const double limit) {
  for (std::size_t i = 0; i < block_members; ++i) {
    const double due = b.dr[i] > beyond * b.raw[i] ? 1.0 : 0.0;
    const double refill = due * least(b.dr[i], limit);  // a product, where a choice would be stored twice
    b.refill[i] = refill;
    b.irrigation[i] += refill;
    b.refills[i] += due;
  }
}

#ifdef NOONLEAF_DISPATCH
[[gnu::target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")]]
#endif
void root_loop(EnsembleBlock& b, const Dawn dawn) {
  const bool deeper = dawn.root_to > dawn.root_from;
  for (std::size_t i = 0; i < block_members; ++i) {
    const step_formula::Soil soil{b.rew[i], b.tew[i],       b.available_mm_m[i], b.below_wilting_mm_m[i],
                                  dawn.ze,  b.per_drying[i]};
    const double moved =
        deeper ? step_formula::gain_by_growth(soil, b.lower[i], dawn.root_from, dawn.root_to, dawn.profile)
               : -step_formula::loss_by_pulling(soil, b.dr[i], dawn.root_from, dawn.root_to);
    b.dr[i] += moved;
    b.lower[i] -= moved;
  }
}

}  // namespace

void dawn(EnsembleBlock& block, const Dawn& dawn) {
  if (dawn.has_rule) refill_loop(block, dawn.refill_beyond, dawn.refill_max);
  if (!dawn.surface_known)
    for (std::size_t i = 0; i < block_members; ++i)
      block.de[i] = block.de_rain[i] = least(most(0, block.dr[i]), block.tew[i]);
  if (dawn.root_to != dawn.root_from) root_loop(block, dawn);
}

void dual_day(EnsembleBlock& block, const WeatherRow& sky, const SharedDay& day, const Form& form) {
  const bool runs_off = form.runoff == Runoff::by_curve_number;
  if (form.reach == Reach::part_of_it)
    runs_off ? shallow_runoff(block, sky, day) : shallow(block, sky, day);
  else if (form.parts == Parts::two || form.top_roots == TopRoots::drawn)
    runs_off ? general_runoff(block, sky, day) : general(block, sky, day);
  else
    runs_off ? sprinkled_runoff(block, sky, day) : sprinkled(block, sky, day);
}

void single_day(EnsembleBlock& block, const WeatherRow& sky, const SharedDay& day, Runoff runoff) {
  runoff == Runoff::off ? single_plain(block, sky, day) : single_runoff(block, sky, day);
}

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
