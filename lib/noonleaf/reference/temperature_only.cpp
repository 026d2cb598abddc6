#include "noonleaf/reference/temperature_only.hpp"

#include <cmath>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/sun.hpp"

namespace noonleaf {
inline namespace v1 {

double temperature_only_et0_mm_d(const TemperatureOnly& in) {
  require_within("t_max_c", in.t_max_c, accepted::temperature_c, "°C");
  require_within("t_min_c", in.t_min_c, accepted::temperature_c, "°C");
  require_within("t_mean_c", in.t_mean_c, accepted::temperature_c, "°C");
  require_ordered("t_max_c", in.t_max_c, "t_min_c", in.t_min_c, "°C");
  if (in.date == std::chrono::year_month_day{}) return missing;
  const double t_mean = is_missing(in.t_mean_c) ? (in.t_max_c + in.t_min_c) / 2.0 : in.t_mean_c;
  const double ra = extraterrestrial_radiation_mj_m2_d(
      {.latitude_deg = in.latitude_deg, .day_of_year = day_of_year(in.date)});
  return 0.0023 * (t_mean + 17.8) * std::sqrt(in.t_max_c - in.t_min_c) *
         evaporation_equivalent_mm(ra);  // FAO-56 eq. 52
}

}  // namespace v1
}  // namespace noonleaf
