#pragma once

#include <cstddef>

#include "noonleaf/balance/daily_step.hpp"
#include "noonleaf/balance/step_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {

/// Members that are carried through the days together: what they need stays in the first-level cache.
inline constexpr std::size_t block_members = 128;
using Lane = double[block_members];

/// A block of members. `poison` is 0, or NaN from the day on which a member's numbers are missing or
/// impossible.
struct alignas(64) EnsembleBlock {
  Lane rew, tew, available_mm_m, below_wilting_mm_m;
  Lane de, de_rain, dr, lower, raw, poison;
  Lane et0, rain, u2, rh_min, share, refill;
  Lane transpiration, evaporation, drainage, runoff, irrigation, stress, beyond, refills;
  std::size_t count = 0;
};

/// What all members of a day share.
struct SharedDay {
  double ze, zr, lower_depth;
  double kcb, kc_max_shared, height_term;  ///< height_term = (h / 3)^0.3
  double few, few_rain, irrigated_frac;
  double p, p_slope, p_low, p_high;  ///< p + p_slope (5 - ETc) within p_low to p_high; fixed: slope 0
  double salt, evaporation_factor, top_depth;
  double irrigation, evening_irrigation;  ///< planned
  double curve_number;                    ///< of average wetness; used where runoff is on
};

enum class Runoff { off, by_curve_number };

/// What comes before the flows: the rule's refill, the surface where it is not known, the root boundary.
struct Dawn {
  double refill_beyond, refill_max;  ///< no rule: refill_beyond is infinite
  double root_from, root_to, profile, ze;
  bool surface_known;
};
void dawn(EnsembleBlock& block, const Dawn& dawn);

/// One day of one block. Parts::two where irrigation wets a part of the ground.
void dual_day(EnsembleBlock& block, const SharedDay& day, step_formula::Parts parts, Runoff runoff);
void single_day(EnsembleBlock& block, const SharedDay& day, Runoff runoff);

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
