/* Sizes and last members of the structs, to be compared with layout.txt. A struct may only grow, at its end.
 */
#include <stdio.h>

#include "noonleaf/noonleaf.h"

#define STRUCT(name, last) printf("%s %zu %s %zu\n", #name, sizeof(name), #last, offsetof(name, last))

int main(void) {
  STRUCT(noonleaf_column, stride);
  STRUCT(noonleaf_result_column, stride);
  STRUCT(noonleaf_day_column, stride);
  STRUCT(noonleaf_date, day);
  STRUCT(noonleaf_problem, fix);
  STRUCT(noonleaf_location, elevation_m);
  STRUCT(noonleaf_daily_columns, et0_mm_d);
  STRUCT(noonleaf_hourly_place, unused);
  STRUCT(noonleaf_hourly_columns, et0_mm_h);
  STRUCT(noonleaf_soil, evaporation_depth_m);
  STRUCT(noonleaf_planting, over);
  STRUCT(noonleaf_ground, wetted_frac);
  STRUCT(noonleaf_wetness, profile_depth_m);
  STRUCT(noonleaf_balance_settings, unused);
  STRUCT(noonleaf_balance_days, drainage_mm);
  STRUCT(noonleaf_balance_totals, missing_days);
  STRUCT(noonleaf_run_request, area);
  STRUCT(noonleaf_run, limit);
  STRUCT(noonleaf_depth, low_quarter_mm);
  STRUCT(noonleaf_wilt_request, hour_hangs);
  STRUCT(noonleaf_wilt_day, leaf_deficit_mm);
  STRUCT(noonleaf_moment, minute);
  STRUCT(noonleaf_week_request, language);
  return 0;
}
