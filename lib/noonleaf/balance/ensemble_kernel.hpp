#pragma once

#include <cstddef>

#include "noonleaf/balance/daily_step.hpp"
#include "noonleaf/balance/step_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {

/// Members that are carried through the days together: what they need stays in the first-level cache.
inline constexpr std::size_t block_members = 64;
using Lane = double[block_members + 8];

/// A block of members; no number in it is missing.
struct alignas(64) EnsembleBlock {
  Lane rew, tew, per_drying, available_mm_m, below_wilting_mm_m;
  Lane de, de_rain, dr, lower, raw;
  Lane share, refill;
  Lane transpiration, evaporation, drainage, runoff, irrigation, stress, beyond, refills;
  /// Between the two halves of a day: short chains of operations keep a processor busier than one long one.
  Lane de_wet, de_rain_wet, evaporation_demand, rain_part_demand, transpiration_demand, dr_open;
};

/// Far below every climate term: wind or humidity of the day is missing.
inline constexpr double climate_unknown = -1000;

/// One day's weather of a block, block_members numbers each, none missing. climate is FAO-56 eq. 72's term
/// before the height comes in, or climate_unknown.
struct WeatherRow {
  const double* __restrict et0, * __restrict rain, * __restrict climate;
};

/// What all members of a day share.
struct SharedDay {
  double ze, zr, lower_depth;
  double kcb, kc_max_shared, height_term;  ///< height_term = (h / 3)^0.3
  double few, few_rain, per_few, per_few_rain, irrigated_frac;
  double p, p_slope, p_low, p_high;  ///< p + p_slope (5 - ETc) within p_low to p_high; fixed: slope 0
  double salt, evaporation_factor, top_depth;
  double irrigation, evening_irrigation;  ///< planned
  double curve_number;                    ///< of average wetness; used where runoff is on
};

enum class Runoff { off, by_curve_number };

/// What comes before the flows: the rule's refill, the surface where it is not known, the root boundary.
struct Dawn {
  bool has_rule;
  double refill_beyond, refill_max;
  double root_from, root_to, profile, ze;
  bool surface_known;
};
void dawn(EnsembleBlock& block, const Dawn& dawn);

/// Which form of the equations serves a day.
struct Form {
  step_formula::Parts parts;  ///< two where irrigation wets a part of the ground
  step_formula::TopRoots top_roots;
  step_formula::Reach reach;
  Runoff runoff;
};

/// One day of one block.
void dual_day(EnsembleBlock& block, const WeatherRow& weather, const SharedDay& day, const Form& form);
void single_day(EnsembleBlock& block, const WeatherRow& weather, const SharedDay& day, Runoff runoff);

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
