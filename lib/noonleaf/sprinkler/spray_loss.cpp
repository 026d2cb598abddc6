#include "noonleaf/sprinkler/spray_loss.hpp"

#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {

double spray_loss_frac(SprayTime time, const SprayAir& air) {
  require_within("wind_m_s", air.wind_m_s, 0.0, 12.0, "m/s");
  if (time == SprayTime::night) return (3.7 + 1.31 * air.wind_m_s) / 100.0;
  require_within("rh_pct", air.rh_pct, 0.0, 100.0, "%");
  const double percent = 20.3 + 0.214 * air.wind_m_s * air.wind_m_s - 0.00229 * air.rh_pct * air.rh_pct;
  return percent < 0.0 ? 0.0 : percent / 100.0;
}

}  // namespace v1
}  // namespace noonleaf
