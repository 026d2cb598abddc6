/* Every call of the C interface from a C program: compiled as C11, pedantically, and linked with nothing but
 * noonleaf_c. Prints each expectation that fails; ends with 1 then. */
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "noonleaf/noonleaf.h"

static int failures = 0;

static void expect(int holds, const char* what, int line) {
  if (holds) return;
  ++failures;
  printf("every_call.c:%d: not so: %s\n", line, what);
}
#define EXPECT(condition) expect((condition), #condition, __LINE__)

static int near(double value, double wanted, double tolerance) { return fabs(value - wanted) <= tolerance; }

static int has(const char* text, const char* part) { return strstr(text, part) != NULL; }

/* The first problem of a list, which must have one. */
static noonleaf_problem first_of(const noonleaf_problems* problems) {
  noonleaf_problem problem = {.size = sizeof problem};
  EXPECT(noonleaf_problems_count(problems) >= 1);
  EXPECT(noonleaf_problems_at(problems, 0, &problem) == noonleaf_done);
  return problem;
}

static noonleaf_column days_of(const double* data, size_t count) {
  const noonleaf_column column = {data, count, 1};
  return column;
}

static noonleaf_result_column results_of(double* data, size_t count) {
  const noonleaf_result_column column = {data, count, 1};
  return column;
}

/* Uccle, 6 July: FAO-56, ch. 4, example 18, printed 3.9 mm/d (3.88 before rounding, as ex. 18 works it). */
static noonleaf_site* uccle(void) {
  noonleaf_location place = {.size = sizeof place};
  noonleaf_site* site = NULL;
  noonleaf_problems* problems = NULL;
  EXPECT(noonleaf_location_defaults(&place) == noonleaf_done);
  EXPECT(isnan(place.latitude_deg));
  place.latitude_deg = 50.8;
  place.elevation_m = 100;
  EXPECT(noonleaf_site_make(&place, &site, &problems) == noonleaf_done);
  EXPECT(site != NULL && problems == NULL);
  return site;
}

static noonleaf_daily_columns july(double* et0, size_t rows, const double* t_max, const double* t_min,
                                   const double* ea, const double* rs, const double* u2) {
  noonleaf_daily_columns days = {.size = sizeof days};
  EXPECT(noonleaf_daily_columns_defaults(&days) == noonleaf_done);
  days.first_day = (noonleaf_date){2023, 7, 6};
  days.t_max_c = days_of(t_max, rows);
  days.t_min_c = days_of(t_min, rows);
  days.ea_kpa = days_of(ea, rows);
  days.rs_mj_m2_d = days_of(rs, rows);
  days.u2_m_s = days_of(u2, rows);
  days.et0_mm_d = results_of(et0, rows);
  return days;
}

static void daily_et0(void) {
  noonleaf_site* site = uccle();
  const double t_max[] = {21.5, 81.5, NAN}, t_min[] = {12.3, 12.3, 12.3};
  const double ea = 1.409, rs = 22.07, u2 = 2.078;
  double et0[3] = {0, 0, 0};
  noonleaf_problems* problems = NULL;
  noonleaf_daily_columns days = july(et0, 3, t_max, t_min, &ea, &rs, &u2);
  days.ea_kpa.stride = days.rs_mj_m2_d.stride = days.u2_m_s.stride = 0; /* one value for all rows */
  EXPECT(noonleaf_daily_et0(site, &days, &problems) == noonleaf_rows_refused);
  EXPECT(near(et0[0], 3.88, 0.005));
  EXPECT(isnan(et0[1]) && isnan(et0[2]));
  EXPECT(noonleaf_problems_count(problems) == 1); /* missing is not wrong */
  const noonleaf_problem hot = first_of(problems);
  EXPECT(hot.row == 1 && strcmp(hot.field, "t_max_c") == 0);
  EXPECT(has(hot.message, "81.5") && hot.fix[0] != '\0' && hot.file[0] == '\0');
  char* words = NULL;
  EXPECT(noonleaf_problems_text(problems, &words) == noonleaf_done);
  EXPECT(has(words, "row 1") && has(words, "fix:"));
  noonleaf_text_free(words);
  noonleaf_problems_free(problems);

  const int64_t own_days[] = {INT64_MIN, 19544, INT64_MAX}; /* none, 2023-07-06, no day of the calendar */
  const double mild[] = {21.5, 21.5, 21.5};
  days.t_max_c = days_of(mild, 3);
  days.day = (noonleaf_day_column){own_days, 3, 1};
  EXPECT(noonleaf_daily_et0(site, &days, &problems) == noonleaf_rows_refused);
  EXPECT(isnan(et0[0]) && near(et0[1], 3.88, 0.005) && isnan(et0[2]));
  EXPECT(noonleaf_problems_count(problems) == 1);
  EXPECT(first_of(problems).row == 2 && strcmp(first_of(problems).field, "day") == 0);
  noonleaf_problems_free(problems);

  days.surface = noonleaf_tall_crop; /* FAO-56 has none */
  EXPECT(noonleaf_daily_et0(site, &days, &problems) == noonleaf_input_refused);
  EXPECT(strcmp(first_of(problems).field, "surface") == 0);
  noonleaf_problems_free(problems);
  noonleaf_site_free(site);
}

/* N'Diaye, 1 October: FAO-56, ch. 4, example 19, printed 0.63 mm/h at 14-15 h and 0.0 at 2-3 h. */
static void hourly_et0(void) {
  noonleaf_hourly_place place = {.size = sizeof place};
  noonleaf_hourly_columns hours = {.size = sizeof hours};
  noonleaf_hourly_site* site = NULL;
  EXPECT(noonleaf_hourly_place_defaults(&place) == noonleaf_done);
  EXPECT(noonleaf_hourly_columns_defaults(&hours) == noonleaf_done);
  EXPECT(place.length_s == 3600);
  place.latitude_deg = 16 + 13.0 / 60;
  place.longitude_deg = -(16 + 15.0 / 60);
  place.elevation_m = 8;
  place.begin_s = 1696161600; /* 2023-10-01 12:00 UTC */
  EXPECT(noonleaf_hourly_site_make(&place, &site, NULL) == noonleaf_done);
  const double t = 38, e = 6.625 * 0.52, rs = 2.450, u2 = 3.3;
  double et0 = 0;
  hours.first_begin_s = place.begin_s + 3 * 3600; /* 15:00 UTC is 14:00 by the clock of 15 W */
  hours.t_c = days_of(&t, 1);
  hours.ea_kpa = days_of(&e, 1);
  hours.rs_mj_m2_h = days_of(&rs, 1);
  hours.u2_m_s = days_of(&u2, 1);
  hours.et0_mm_h = results_of(&et0, 1);
  EXPECT(noonleaf_hourly_et0(site, &hours, NULL) == noonleaf_done);
  EXPECT(near(et0, 0.63, 0.005));
  noonleaf_problems* problems = NULL;
  hours.first_begin_s += 1;
  EXPECT(noonleaf_hourly_et0(site, &hours, &problems) == noonleaf_input_refused);
  EXPECT(strcmp(first_of(problems).field, "first_begin") == 0);
  noonleaf_problems_free(problems);
  noonleaf_hourly_site_free(site);
}

static void balance(void) {
  enum { rows = 30 };
  noonleaf_soil soil = {.size = sizeof soil};
  noonleaf_wetness wetness = {.size = sizeof wetness};
  noonleaf_ground ground = {.size = sizeof ground};
  noonleaf_planting tomato = {.size = sizeof tomato};
  noonleaf_balance_settings settings = {.size = sizeof settings};
  noonleaf_balance_days days = {.size = sizeof days};
  noonleaf_balance_totals totals = {.size = sizeof totals};
  noonleaf_problems* problems = NULL;
  EXPECT(noonleaf_soil_defaults(&soil) == noonleaf_done && near(soil.evaporation_depth_m, 0.10, 0));
  EXPECT(noonleaf_soil_of_texture("sandy_loam", &soil, &problems) == noonleaf_done);
  EXPECT(near(soil.field_capacity_m3_m3, 0.23, 1e-12)); /* FAO-56 Table 19: 0.18 to 0.28 */
  EXPECT(noonleaf_wetness_defaults(&wetness) == noonleaf_done);
  EXPECT(noonleaf_ground_defaults(&ground) == noonleaf_done && isnan(ground.dr_mm));
  wetness.depleted_frac = 0;
  wetness.root_depth_m = 0.25;
  wetness.profile_depth_m = 1.5;
  EXPECT(noonleaf_ground_of(&soil, &wetness, &ground, &problems) == noonleaf_done);
  EXPECT(ground.dr_mm == 0 && near(ground.profile_depth_m, 1.5, 0));
  EXPECT(noonleaf_planting_defaults(&tomato) == noonleaf_done && near(tomato.rh_min_pct, 45, 0));
  tomato.crop = "tomato";
  tomato.start = (noonleaf_date){2024, 4, 15};
  tomato.method = noonleaf_transplanted;
  EXPECT(noonleaf_balance_settings_defaults(&settings) == noonleaf_done &&
         near(settings.irrigated_frac, 1, 0));
  EXPECT(noonleaf_balance_days_defaults(&days) == noonleaf_done);
  const double et0 = 5;
  double rain[rows] = {0}, dr[rows], ks[rows], used[rows], raw[rows];
  rain[10] = 12;
  days.first_day = (noonleaf_date){2024, 6, 1};
  days.et0_mm_d = (noonleaf_column){&et0, rows, 0};
  days.rain_mm = days_of(rain, rows);
  days.dr_mm = results_of(dr, rows);
  days.ks = results_of(ks, rows);
  days.raw_mm = results_of(raw, rows);
  days.etc_adj_mm_d = results_of(used, rows);
  EXPECT(noonleaf_balance(&soil, &tomato, &settings, &days, &ground, &totals, &problems) == noonleaf_done);
  EXPECT(dr[0] > 0 && dr[9] > dr[0] && dr[10] < dr[9] && ks[0] == 1 && ks[29] < 1);
  EXPECT(near(totals.rain_mm, 12, 0) && totals.missing_days == 0 && totals.stress_mm > 0);
  EXPECT(near(ground.dr_mm, dr[29], 0) && ground.root_depth_m > 0.25 && ground.root_depth_m <= 0.7);
  double sum = 0;
  for (int i = 0; i < rows; ++i) sum += used[i];
  EXPECT(near(sum, totals.transpiration_mm + totals.evaporation_mm, 1e-9));

  rain[3] = -1;
  const double before = ground.dr_mm;
  EXPECT(noonleaf_balance(&soil, &tomato, NULL, &days, &ground, NULL, &problems) == noonleaf_input_refused);
  EXPECT(first_of(problems).row == 3 && strcmp(first_of(problems).field, "rain_mm") == 0);
  EXPECT(ground.dr_mm == before);
  noonleaf_problems_free(problems);
  tomato.crop = "tomatto";
  EXPECT(noonleaf_balance(&soil, &tomato, NULL, &days, &ground, NULL, &problems) == noonleaf_input_refused);
  EXPECT(has(first_of(problems).fix, "tomato"));
  noonleaf_problems_free(problems);
  EXPECT(noonleaf_soil_of_texture("sandy lome", &soil, &problems) == noonleaf_input_refused);
  EXPECT(has(first_of(problems).fix, "sandy_loam"));
  noonleaf_problems_free(problems);
}

static void run_time(void) {
  noonleaf_run_request request = {.size = sizeof request};
  noonleaf_run run = {.size = sizeof run};
  noonleaf_depth depth = {.size = sizeof depth};
  EXPECT(noonleaf_run_request_defaults(&request) == noonleaf_done);
  request.net_depth_mm = 10;
  request.rate_mm_h = 12;
  request.du_lq_frac = 0.75;
  request.bed_area_m2 = 20;
  EXPECT(noonleaf_run_time(&request, &run, NULL) == noonleaf_done);
  EXPECT(near(run.exact_min, 60.0 * 10 / (0.4 + 0.6 * 0.75) / 12, 1e-9)); /* 58.8 min by hand */
  EXPECT(run.minutes == 60 && run.multiplier_rule == noonleaf_lower_half && run.limit == noonleaf_no_limit);
  EXPECT(isnan(run.litres_from_tap) && near(run.litres_in_bed, 240, 1e-9));
  EXPECT(noonleaf_depth_of_minutes(&request, 60, &depth, NULL) == noonleaf_done);
  EXPECT(near(depth.mean_mm, 12, 1e-12) && near(depth.low_quarter_mm, 9, 1e-12));
  noonleaf_problems* problems = NULL;
  request.rate_mm_h = -1;
  request.du_lq_frac = 2;
  EXPECT(noonleaf_run_time(&request, &run, &problems) == noonleaf_input_refused);
  EXPECT(noonleaf_problems_count(problems) == 2); /* every fault at once */
  noonleaf_problems_free(problems);
}

static void wilt(void) {
  noonleaf_wilt_request request = {.size = sizeof request};
  noonleaf_wilt_day day = {.size = sizeof day};
  double demand[24], hangs[24];
  EXPECT(noonleaf_wilt_request_defaults(&request) == noonleaf_done);
  EXPECT(noonleaf_wilt(&request, &day, NULL) == noonleaf_call_refused); /* no date */
  request.date = (noonleaf_date){2024, 7, 10};
  EXPECT(noonleaf_wilt(&request, &day, NULL) == noonleaf_done && day.verdict == noonleaf_unknown);
  request.utc_offset_h = -5;
  request.latitude_deg = 32.8;
  request.longitude_deg = -96.8;
  request.elevation_m = 130;
  request.t_max_c = 38;
  request.t_min_c = 25;
  request.ea_kpa = 2.2;
  request.rs_mj_m2_d = 27;
  request.u2_m_s = 3;
  request.transpiration_mm_d = 8;
  request.crop = "tomato";
  request.taw_mm = 80;
  request.raw_mm = 32;
  request.dr_mm = 10;
  request.field_capacity_m3_m3 = 0.25;
  request.wilting_point_m3_m3 = 0.12;
  request.hour_demand_mm_h = results_of(demand, 24);
  request.hour_hangs = results_of(hangs, 24);
  EXPECT(noonleaf_wilt(&request, &day, NULL) == noonleaf_done);
  EXPECT(day.verdict == noonleaf_comfortable || day.verdict == noonleaf_droop);
  double sum = 0, hours = 0;
  for (int i = 0; i < 24; ++i) sum += demand[i], hours += hangs[i];
  EXPECT(sum >= 8 - 1e-9); /* in sun times the sunlit factor */
  EXPECT(near(hours, (double)day.droop_hours, 0));
  const int64_t moist = day.droop_hours;
  request.dr_mm = 78;
  EXPECT(noonleaf_wilt(&request, &day, NULL) == noonleaf_done);
  EXPECT(day.verdict == noonleaf_dry_soil_wilt && day.droop_hours >= moist);
  EXPECT(day.advice == noonleaf_water_at_once || day.advice == noonleaf_water_next_run);
}

static void garden(const char* folder) {
  noonleaf_garden* here = NULL;
  noonleaf_problems* problems = NULL;
  char* json = NULL;
  noonleaf_moment moment = {.size = sizeof moment};
  noonleaf_week_request week = {.size = sizeof week};
  EXPECT(noonleaf_garden_read(folder, &here, &problems) == noonleaf_done);
  EXPECT(noonleaf_moment_defaults(&moment) == noonleaf_done);
  moment.date = (noonleaf_date){2025, 7, 16};
  EXPECT(noonleaf_today_json(here, &moment, &json, &problems) == noonleaf_done);
  EXPECT(json != NULL && has(json, "\"noonleaf.today\"") && has(json, "2025-07-16"));
  noonleaf_text_free(json);
  EXPECT(noonleaf_week_request_defaults(&week) == noonleaf_done && week.days == 7);
  week.made_date = moment.date;
  week.language = noonleaf_spanish;
  EXPECT(noonleaf_week_json(here, &week, &json, &problems) == noonleaf_done);
  EXPECT(json != NULL && has(json, "\"noonleaf.week\"") && has(json, "2025-07-22"));
  noonleaf_text_free(json);
  week.days = 99;
  EXPECT(noonleaf_week_json(here, &week, &json, &problems) == noonleaf_input_refused && json == NULL);
  EXPECT(strcmp(first_of(problems).field, "days") == 0);
  noonleaf_problems_free(problems);
  moment.date = (noonleaf_date){1990, 7, 16};
  EXPECT(noonleaf_today_json(here, &moment, &json, &problems) == noonleaf_input_refused && json == NULL);
  noonleaf_problems_free(problems);
  moment.minute = 1441;
  EXPECT(noonleaf_today_json(here, &moment, &json, NULL) == noonleaf_call_refused);
  noonleaf_garden_free(here);
  EXPECT(noonleaf_garden_read("no/such/garden", &here, &problems) == noonleaf_input_refused && here == NULL);
  EXPECT(has(first_of(problems).file, "no/such/garden"));
  noonleaf_problems_free(problems);
}

static void broken_folder(const char* folder) {
  noonleaf_garden* here = NULL;
  noonleaf_problems* problems = NULL;
  EXPECT(noonleaf_garden_read(folder, &here, &problems) == noonleaf_input_refused && here == NULL);
  int found = 0;
  for (size_t i = 0; i < noonleaf_problems_count(problems); ++i) {
    noonleaf_problem problem = {.size = sizeof problem};
    EXPECT(noonleaf_problems_at(problems, i, &problem) == noonleaf_done);
    EXPECT(has(problem.file, "broken") && problem.message[0] != '\0' && problem.fix[0] != '\0');
    if (!has(problem.field, "latitude_deg")) continue;
    EXPECT(problem.line == 3 && problem.column == 16 && has(problem.text, "north"));
    ++found;
  }
  EXPECT(found == 1 && noonleaf_problems_count(problems) > 1);
  noonleaf_problems_free(problems);
}

int main(int count, char** words) {
  if (count != 3) return 2;
  EXPECT(noonleaf_interface_number() == noonleaf_interface);
  EXPECT(strcmp(noonleaf_version(), NOONLEAF_EXPECTED_VERSION) == 0);
  daily_et0();
  hourly_et0();
  balance();
  run_time();
  wilt();
  garden(words[1]);
  broken_folder(words[2]);
  noonleaf_site_free(NULL);
  noonleaf_hourly_site_free(NULL);
  noonleaf_garden_free(NULL);
  noonleaf_problems_free(NULL);
  noonleaf_text_free(NULL);
  EXPECT(noonleaf_problems_count(NULL) == 0);
  if (failures == 0) printf("every call did what it says\n");
  return failures == 0 ? 0 : 1;
}
