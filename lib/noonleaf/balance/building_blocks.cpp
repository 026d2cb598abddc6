#include "noonleaf/balance/balance_formula.hpp"
#include "noonleaf/balance/evaporation.hpp"
#include "noonleaf/balance/root_zone.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace v1 {

double evaporation_reduction(double de_mm, double rew_mm, double tew_mm) {
  if (is_missing(de_mm) || is_missing(rew_mm) || is_missing(tew_mm)) return missing;
  if (!(rew_mm < tew_mm)) {
    Problem problem;
    problem.field = "tew_mm";
    problem.text = number_text(tew_mm);
    problem.message =
        number_text(tew_mm) + " mm is not above the readily evaporable " + number_text(rew_mm) + " mm";
    problem.fix = "readily evaporable water is mostly 40 to 60 % of the total";
    throw Error(std::move(problem));
  }
  return balance_formula::kr(de_mm, tew_mm, 1 / (tew_mm - rew_mm));
}

double exposed_wetted_frac(double fc, double fw, EmitterPlace place) {
  require_within("fc", fc, 0, 0.99, "");
  require_within("fw", fw, 0.01, 1, "");
  if (is_missing(fc) || is_missing(fw)) return missing;
  return place == EmitterPlace::open ? balance_formula::few(fc, fw)
                                     : balance_formula::few_under_canopy(fc, fw);
}

double evaporation_coefficient(double kr, double kc_max, double kcb, double few) {
  if (is_missing(kr) || is_missing(kc_max) || is_missing(kcb) || is_missing(few)) return missing;
  return balance_formula::ke(kr, kc_max, kcb, few);
}

double depletion_fraction(double p_table, double etc_mm_d) {
  require_within("p_frac", p_table, 0, 1, "");
  if (is_missing(p_table) || is_missing(etc_mm_d)) return missing;
  return balance_formula::p_adjusted(p_table, etc_mm_d);
}

double raw_mm(double taw_mm, double p_frac) { return p_frac * taw_mm; }

double stress_coefficient(double dr_mm, double taw_mm, double raw_mm) {
  if (is_missing(dr_mm) || is_missing(taw_mm) || is_missing(raw_mm)) return missing;
  return balance_formula::ks(dr_mm, taw_mm, raw_mm);
}

}  // namespace v1
}  // namespace noonleaf
