#include "noonleaf/atmosphere/soil_heat.hpp"

#include "noonleaf/atmosphere/accepted.hpp"

namespace noonleaf {
inline namespace v1 {

double soil_heat_of_month_mj_m2_d(const MonthlyTemperatures& months) {
  require_within("previous_c", months.previous_c, accepted::temperature_c, "°C");
  require_within("next_c", months.next_c, accepted::temperature_c, "°C");
  return 0.07 * (months.next_c - months.previous_c);  // FAO-56 eq. 43
}

double soil_heat_of_last_month_mj_m2_d(const MonthlyTemperatures& months) {
  require_within("previous_c", months.previous_c, accepted::temperature_c, "°C");
  require_within("this_c", months.this_c, accepted::temperature_c, "°C");
  return 0.14 * (months.this_c - months.previous_c);  // FAO-56 eq. 44
}

double soil_heat_mj_m2_d(const SoilWarming& soil) {
  require_within("previous_c", soil.previous_c, accepted::temperature_c, "°C");
  require_within("this_c", soil.this_c, accepted::temperature_c, "°C");
  require_within("days", soil.days, 0.01, 366, "d");
  require_within("depth_m", soil.depth_m, 0.01, 5, "m");
  require_within("heat_capacity_mj_m3_c", soil.heat_capacity_mj_m3_c, 0.1, 5, "MJ/m3/°C");
  return soil.heat_capacity_mj_m3_c * (soil.this_c - soil.previous_c) / soil.days * soil.depth_m;  // eq. 41
}

}  // namespace v1
}  // namespace noonleaf
