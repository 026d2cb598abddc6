#pragma once

#include <cstddef>
#include <vector>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One can of a catch-can test. Positions are for all cans of a test or for none.
struct CatchCan {
  double depth_mm = missing;  ///< depth caught
  double x_m = missing;       ///< where it stood, from any corner; missing = not written down
  double y_m = missing;       ///< likewise; which way is north is the caller's
};

/// One catch-can test: straight-sided cans of one size under a running sprinkler.
struct CatchCanTest {
  std::vector<CatchCan> cans{};  ///< three or more (fewest_cans)
  double minutes = missing;      ///< how long the sprinkler ran
};

/// A value from the cans with its confidence interval (`can_confidence_frac`).
struct CanEstimate {
  double value = missing;  ///< from the cans
  double low = missing;    ///< lower end of the interval
  double high = missing;   ///< upper end of it
};

/// How the driest quarter was cut out of the cans.
enum class QuarterRule {
  whole_cans,          ///< equal areas, count divisible by four: exactly the n/4 lowest cans
  fractional_quarter,  ///< the lowest cans up to a quarter of the area, the last one counted in part
};

/// How much ground each can stands for.
enum class CanWeighting {
  equal,          ///< no positions: every can counts the same
  thiessen_area,  ///< positions: by the ground nearer to this can than to any other
};

/// What a catch-can test says.
struct CanResult {
  std::size_t can_count = 0;                           ///< as given
  double minutes = missing;                            ///< as given
  CanWeighting weighting = CanWeighting::equal;        ///< how much ground each can stands for
  QuarterRule quarter_rule = QuarterRule::whole_cans;  ///< how the driest quarter was cut out
  std::vector<double> area_share{};                    ///< of each can, as given; sums to 1
  double mean_depth_mm = missing;                      ///< weighted mean of the cans
  double low_quarter_depth_mm = missing;               ///< mean of the driest quarter
  double coefficient_of_variation = missing;           ///< standard deviation / mean
  CanEstimate rate_mm_h{};                             ///< mean depth over the minutes
  CanEstimate du_lq_frac{};                            ///< distribution uniformity of the low quarter
  CanEstimate cu_frac{};                   ///< Christiansen's coefficient; below 0 for very uneven catches
  std::size_t driest_can = 0;              ///< index into the test's cans, the first of equals
  std::size_t wettest_can = 0;             ///< likewise
  std::size_t cans_for_quarter_error = 0;  ///< cans this sprinkler needs, see cans_needed
};

/// Fewest cans that `catch_can_result` accepts. Ours; eight or more are sensible.
inline constexpr std::size_t fewest_cans = 3;

/// Confidence level of every interval from a can test. The level of the 2007 study cited at cans_needed.
inline constexpr double can_confidence_frac = 0.90;

/// Rate and uniformity from a catch-can test.
///
/// Equation  rate = 60 mean / minutes;  DU_LQ = mean of the driest quarter / mean;
///           CU = 1 - sum w |x - mean| / (mean sum w), w = area share of the can
/// Source    DU_LQ: Merriam & Keller 1978, Farm Irrigation System Evaluation. CU: Christiansen 1942, Univ.
///           of California Bulletin 670
/// Method    Quarter: cans sorted by depth, taken until a quarter of the area is reached, the last can in
///           part (10 equal cans: the lowest two and half of the third). The other custom, whole cans
///           only, gives other numbers; `quarter_rule` says which was needed.
///           Areas: Thiessen polygons inside the cans' rectangle widened by half the median distance
///           between neighbours (ours), so that a regular grid weighs all cans equally.
///           Intervals: delete-one jackknife (Efron & Tibshirani 1993, ch. 11) with Student's t on n - 1
///           degrees of freedom at 90 %; for equal areas the rate's is the usual t-interval. Fractions end
///           at 1, rate and DU at 0; low and high are missing where leaving out one can leaves no water.
/// Input     depth_mm 0 to 1000, minutes above 0 to 1440, 1000 cans at most (our guards)
/// Throws    Error, one problem per fault with `row` the can's index: fewer than `fewest_cans`, a depth
///           negative or missing, all cans empty, minutes 0 or missing, positions for some cans only,
///           two cans in one place
/// Note      Few cans flatter a sprinkler: in our simulations of even, normal and skewed catches 4 to 8 cans
///           read DU 0.02 to 0.09 too high, and the DU interval held the true value in 76 to 91 % of cases
///           rather than 90 (docs/sprinkler.md).
/// Note      Only cans inside the bed tell the bed's rate. Test in calm air (5 mph, 2.2 m/s, at most).
CanResult catch_can_result(const CatchCanTest& test);

/// Depth in a straight-sided round can from the volume caught.
///
/// Equation  depth = 4000 ml / (pi d^2)
/// Source    geometry
/// Input     caught_ml 0 to 100 000; can_diameter_mm 10 to 1000, inside, at the rim
/// Missing   NaN in, NaN out
/// Throws    Error, field "caught_ml" or "can_diameter_mm", when outside the accepted range
struct CanCatch {
  double caught_ml = missing;        ///< 0 to 100 000
  double can_diameter_mm = missing;  ///< of the opening
};
/// Equation, input, result: see CanCatch.
double can_depth_mm(const CanCatch& caught);

/// How many cans bring the mean within `relative_error_frac` at the confidence `can_confidence_frac`.
///
/// Equation  smallest n with t(n-1) CV / sqrt(n) <= relative error
/// Source    usual sample-size rule for a mean. For ±25 % at 90 %: J. Am. Water Resour. Assoc. 2007
///           (catch-can study, abstract): hose-end and hand-moved sprinklers need 6 to more than 50 cans,
///           in-ground systems 2 to 8
/// Input     coefficient_of_variation 0 to 40; relative_error_frac 0.05 to 1
/// Result    2 or more
/// Throws    Error when either is missing or outside the accepted range
struct CanPrecision {
  double coefficient_of_variation = missing;  ///< of the cans that were set out
  double relative_error_frac = 0.25;          ///< wanted; of the mean
};
/// Equation, input, result: see CanPrecision.
std::size_t cans_needed(const CanPrecision& wanted);

}  // namespace v1
}  // namespace noonleaf
