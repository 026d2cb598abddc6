#pragma once

#include "noonleaf/reference/missing_data.hpp"
#include "noonleaf/reference/penman_monteith.hpp"

namespace noonleaf {
inline namespace v1 {

/// A day completed by the missing-data ladder as the reference equation takes it.
inline DailyInputs inputs_of(const DailyEstimate& day, const Location& location, double g_mj_m2_d = 0.0) {
  return {.date = day.date,
          .latitude_deg = location.latitude_deg,
          .elevation_m = location.elevation_m,
          .t_max_c = day.t_max_c,
          .t_min_c = day.t_min_c,
          .ea_kpa = day.ea_kpa,
          .rs_mj_m2_d = day.rs_mj_m2_d,
          .u2_m_s = day.u2_m_s,
          .pressure_kpa = day.pressure_kpa,
          .g_mj_m2_d = g_mj_m2_d};
}

}  // namespace v1
}  // namespace noonleaf
