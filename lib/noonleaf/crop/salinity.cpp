#include "noonleaf/crop/salinity.hpp"

#include <algorithm>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// How far the root zone is saltier than the crop bears; 0 below the threshold.
double excess_ds_m(double ece_ds_m, const SaltTolerance& crop) {
  require_within("ece_ds_m", ece_ds_m, 0, 60, "dS/m");
  require_within("ece_threshold_ds_m", crop.ece_threshold_ds_m, 0, 20, "dS/m");
  require_within("yield_loss_pct_m_ds", crop.yield_loss_pct_m_ds, 0, 100, "% m/dS");
  const double excess = ece_ds_m - crop.ece_threshold_ds_m;
  return is_missing(excess) ? missing : std::max(0.0, excess);
}

}  // namespace

double salt_yield_frac(double ece_ds_m, const SaltTolerance& crop) {
  const double left = 1 - excess_ds_m(ece_ds_m, crop) * crop.yield_loss_pct_m_ds / 100;
  return is_missing(left) ? missing : std::max(0.0, left);
}

double salt_stress_coefficient(double ece_ds_m, const SaltTolerance& crop) {
  require_within("ky", crop.ky, 0.1, 3, "");
  const double left = 1 - crop.yield_loss_pct_m_ds / (crop.ky * 100) * excess_ds_m(ece_ds_m, crop);
  return is_missing(left) ? missing : std::max(0.0, left);
}

double leaching_requirement(double ecw_ds_m, double ece_ds_m) {
  require_within("ecw_ds_m", ecw_ds_m, 0, 20, "dS/m");
  require_within("ece_ds_m", ece_ds_m, 0.1, 60, "dS/m");
  if (is_missing(ecw_ds_m) || is_missing(ece_ds_m)) return missing;
  if (5 * ece_ds_m <= 2 * ecw_ds_m) {  // LR >= 1
    Problem problem;
    problem.field = "ecw_ds_m";
    problem.text = number_text(ecw_ds_m);
    problem.message = "water of " + number_text(ecw_ds_m) + " dS/m cannot keep the root zone at " +
                      number_text(ece_ds_m) + " dS/m, however much is given";
    problem.fix = "use fresher water, or grow a crop that bears more salt";
    throw Error(std::move(problem));
  }
  return ecw_ds_m / (5 * ece_ds_m - ecw_ds_m);
}

}  // namespace v1
}  // namespace noonleaf
