// The C interface gives the numbers of the C++ doors, bit by bit: it calls the same cores.
#include <chrono>
#include <cmath>
#include <cstring>
#include <random>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/run.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/heat/demand.hpp"
#include "noonleaf/heat/turgor_table.hpp"
#include "noonleaf/heat/wilt.hpp"
#include "noonleaf/noonleaf.h"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/reference/daily_batch.hpp"
#include "noonleaf/reference/hourly_batch.hpp"
#include "noonleaf/report/alert_words.hpp"
#include "noonleaf/report/today_json.hpp"
#include "noonleaf/report/week_text.hpp"
#include "noonleaf/soil/texture.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

using namespace std::chrono;
using noonleaf::missing;

namespace {

constexpr std::size_t day_count = 1500;  // three blocks of days, two year ends
const noonleaf::Location place{.latitude_deg = 46.07, .longitude_deg = -118.33, .elevation_m = 290};

/// The same bits, or both missing.
bool same(double one, double other) { return one == other || (std::isnan(one) && std::isnan(other)); }

void check_same(const std::vector<double>& found, const std::vector<double>& wanted) {
  BOOST_REQUIRE_EQUAL(found.size(), wanted.size());
  for (std::size_t i = 0; i < found.size(); ++i)
    BOOST_REQUIRE_MESSAGE(same(found[i], wanted[i]), "row " << i << ": " << found[i] << " for " << wanted[i]);
}

/// Values drawn once; a few missing, a few far outside.
std::vector<double> drawn(unsigned seed, double low, double high, double strange) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> value(low, high), lot(0, 1);
  std::vector<double> values(day_count);
  for (double& v : values) {
    const double ticket = lot(random);
    v = ticket < 0.01 ? missing : ticket < 0.02 ? strange : value(random);
  }
  return values;
}

noonleaf_column of(const std::vector<double>& values) { return {values.data(), values.size(), 1}; }
noonleaf_result_column into(std::vector<double>& values) { return {values.data(), values.size(), 1}; }
noonleaf::ConstColumn column(const std::vector<double>& values) { return {values.data(), 1}; }

struct Days {
  std::vector<double> t_max = drawn(1, 15, 40, 100), t_min = drawn(2, -5, 14, -100),
                      ea = drawn(3, 0.4, 2.5, 30), rs = drawn(4, 2, 30, -4), u2 = drawn(5, 0.5, 6, 90);
  noonleaf::DailyColumns cpp() const {
    return {.day = {.first = sys_days{2019y / November / 3}},
            .t_max_c = column(t_max),
            .t_min_c = column(t_min),
            .ea_kpa = column(ea),
            .rs_mj_m2_d = column(rs),
            .u2_m_s = column(u2)};
  }
  noonleaf_daily_columns c(std::vector<double>& result) const {
    noonleaf_daily_columns columns;
    columns.size = sizeof columns;
    noonleaf_daily_columns_defaults(&columns);
    columns.first_day = {2019, 11, 3};
    columns.t_max_c = of(t_max);
    columns.t_min_c = of(t_min);
    columns.ea_kpa = of(ea);
    columns.rs_mj_m2_d = of(rs);
    columns.u2_m_s = of(u2);
    columns.et0_mm_d = into(result);
    return columns;
  }
};

struct Site {
  noonleaf_site* site = nullptr;
  Site() {
    const noonleaf_location location{sizeof location, place.latitude_deg, place.longitude_deg,
                                     place.elevation_m};
    BOOST_REQUIRE_EQUAL(noonleaf_site_make(&location, &site, nullptr), noonleaf_done);
  }
  Site(const Site&) = delete;
  Site& operator=(const Site&) = delete;
  ~Site() { noonleaf_site_free(site); }
};

}  // namespace

BOOST_AUTO_TEST_SUITE(doors_agree)

BOOST_AUTO_TEST_CASE(daily_reference_of_both_publications) {
  const Days days;
  const Site site;
  for (const auto equation : {noonleaf::Equation::fao56, noonleaf::Equation::asce}) {
    std::vector<double> cpp(day_count), c(day_count);
    const noonleaf::BadRows bad = noonleaf::daily_et0_mm_d(noonleaf::daily_site(place), days.cpp(), day_count,
                                                           {cpp.data(), 1}, equation);
    noonleaf_daily_columns columns = days.c(c);
    columns.equation = static_cast<int32_t>(equation);
    noonleaf_problems* problems = nullptr;
    BOOST_CHECK_EQUAL(noonleaf_daily_et0(site.site, &columns, &problems), noonleaf_rows_refused);
    check_same(c, cpp);
    BOOST_REQUIRE_EQUAL(noonleaf_problems_count(problems), bad.size());
    for (std::size_t i = 0; i < bad.size(); ++i) {
      noonleaf_problem problem;
      problem.size = sizeof problem;
      noonleaf_problems_at(problems, i, &problem);
      BOOST_CHECK_EQUAL(problem.row, bad[i]);
      BOOST_CHECK(std::strlen(problem.field) > 0);
    }
    noonleaf_problems_free(problems);
  }
}

BOOST_AUTO_TEST_CASE(days_of_a_column_backwards_and_in_gaps) {
  const Days days;
  const Site site;
  std::vector<int64_t> numbers(day_count);
  std::vector<sys_days> dates(day_count);
  for (std::size_t i = 0; i < day_count; ++i) {
    dates[i] = sys_days{2023y / December / 31} - std::chrono::days{3 * i};
    numbers[i] = dates[i].time_since_epoch().count();
  }
  noonleaf::DailyColumns in = days.cpp();
  in.day = {.first = {}, .column = dates.data(), .stride = 1};
  std::vector<double> cpp(day_count), c(day_count);
  const noonleaf::BadRows bad =
      noonleaf::daily_et0_mm_d(noonleaf::daily_site(place), in, day_count, {cpp.data(), 1});
  noonleaf_daily_columns columns = days.c(c);
  columns.day = {numbers.data(), day_count, 1};
  noonleaf_problems* problems = nullptr;
  noonleaf_daily_et0(site.site, &columns, &problems);
  check_same(c, cpp);
  BOOST_CHECK_EQUAL(noonleaf_problems_count(problems), bad.size());
  noonleaf_problems_free(problems);
}

BOOST_AUTO_TEST_CASE(result_over_an_input_column) {
  Days days;
  const Site site;
  std::vector<double> apart(day_count);
  noonleaf_daily_columns columns = days.c(apart);
  noonleaf_daily_et0(site.site, &columns, nullptr);
  columns.et0_mm_d = into(days.rs);
  noonleaf_daily_et0(site.site, &columns, nullptr);
  check_same(days.rs, apart);
}

BOOST_AUTO_TEST_CASE(beyond_a_thousand_refused_rows_a_row_is_only_numbered) {
  Days days;
  const Site site;
  for (double& t : days.t_max) t = 99;
  for (double& t : days.t_min) t = 0;
  std::vector<double> result(day_count);
  noonleaf_daily_columns columns = days.c(result);
  noonleaf_problems* problems = nullptr;
  noonleaf_daily_et0(site.site, &columns, &problems);
  const std::size_t count = noonleaf_problems_count(problems);
  BOOST_CHECK_GT(count, 1000U);
  noonleaf_problem last;
  last.size = sizeof last;
  BOOST_CHECK_EQUAL(noonleaf_problems_at(problems, count - 1, &last), noonleaf_done);
  BOOST_CHECK_GE(last.row, 1000U);
  BOOST_CHECK(std::strlen(last.message) > 0 && std::strlen(last.field) == 0);
  BOOST_CHECK_EQUAL(noonleaf_problems_at(problems, count, &last), noonleaf_call_refused);
  char* text = nullptr;
  BOOST_CHECK_EQUAL(noonleaf_problems_text(problems, &text), noonleaf_done);
  BOOST_CHECK(std::strstr(text, "more rows") != nullptr);
  noonleaf_text_free(text);
  noonleaf_problems_free(problems);
}

BOOST_AUTO_TEST_CASE(hourly_reference) {
  const std::vector<double> t = drawn(11, 5, 35, 99), ea = drawn(12, 0.4, 2, 30), rs = drawn(13, 0, 3.5, 9),
                            u2 = drawn(14, 0, 6, 90);
  const sys_seconds first = sys_days{2024y / May / 30} + 7h;
  std::vector<double> cpp(day_count), c(day_count);
  const noonleaf::BadRows bad = noonleaf::hourly_et0_mm_h(
      noonleaf::hourly_site(place, first),
      {.first_begin = first,
       .t_c = column(t),
       .ea_kpa = column(ea),
       .rs_mj_m2_h = column(rs),
       .u2_m_s = column(u2)},
      day_count, {cpp.data(), 1}, noonleaf::Surface::short_crop, noonleaf::Dryness::arid);
  noonleaf_hourly_place at;
  at.size = sizeof at;
  noonleaf_hourly_place_defaults(&at);
  at.latitude_deg = place.latitude_deg;
  at.longitude_deg = place.longitude_deg;
  at.elevation_m = place.elevation_m;
  at.begin_s = first.time_since_epoch().count();
  noonleaf_hourly_site* site = nullptr;
  BOOST_REQUIRE_EQUAL(noonleaf_hourly_site_make(&at, &site, nullptr), noonleaf_done);
  noonleaf_hourly_columns hours;
  hours.size = sizeof hours;
  noonleaf_hourly_columns_defaults(&hours);
  hours.first_begin_s = at.begin_s;
  hours.t_c = of(t);
  hours.ea_kpa = of(ea);
  hours.rs_mj_m2_h = of(rs);
  hours.u2_m_s = of(u2);
  hours.dryness = noonleaf_arid;
  hours.et0_mm_h = into(c);
  noonleaf_problems* problems = nullptr;
  BOOST_CHECK_EQUAL(noonleaf_hourly_et0(site, &hours, &problems), noonleaf_rows_refused);
  check_same(c, cpp);
  BOOST_CHECK_EQUAL(noonleaf_problems_count(problems), bad.size());
  noonleaf_problems_free(problems);
  noonleaf_hourly_site_free(site);
}

BOOST_AUTO_TEST_CASE(balance_of_a_season_with_a_gap_and_a_look_into_the_soil) {
  constexpr std::size_t rows = 140, gap = 60, look = 70;
  const noonleaf::SoilWater soil = noonleaf::soil_of(noonleaf::find_texture("loam"));
  const noonleaf::Planting planting{.start = 2024y / April / 15};
  const noonleaf::CropClimate climate{.u2_m_s = 3, .rh_min_pct = 30};
  const noonleaf::BalanceState start = noonleaf::initial_state(soil, 0.25, 1.5, 0.3);
  std::vector<double> et0 = drawn(21, 2, 8, 5), rain(rows), water(rows), found(rows, missing);
  et0.resize(rows);
  for (double& e : et0)
    if (std::isnan(e)) e = 4;
  et0[gap] = missing;
  found[look] = 20;
  for (std::size_t i = 0; i < rows; i += 9) rain[i] = 11, water[i / 2] = 8;
  std::vector<noonleaf::BalanceDay> days(rows);
  std::vector<noonleaf::GrowthDay> growth(rows);
  for (std::size_t i = 0; i < rows; ++i) {
    days[i].date = sys_days{planting.start} + std::chrono::days{i};
    days[i].et0_mm_d = et0[i];
    days[i].rain_mm = rain[i];
    days[i].irrigation_mm = water[i];
    growth[i] = noonleaf::growth_day(noonleaf::find_crop("tomato"), planting, days[i].date, climate);
  }
  const noonleaf::Correction correction{.date = days[look].date, .dr_mm = found[look]};
  const noonleaf::BalanceRun run =
      noonleaf::run_balance(start, days, growth, soil, {.irrigated_frac = 0.5}, {&correction, 1});

  noonleaf_soil c_soil;
  c_soil.size = sizeof c_soil;
  BOOST_REQUIRE_EQUAL(noonleaf_soil_of_texture("loam", &c_soil, nullptr), noonleaf_done);
  noonleaf_ground ground;
  ground.size = sizeof ground;
  const noonleaf_wetness wetness{sizeof wetness, 0.3, 0.25, 1.5};
  BOOST_REQUIRE_EQUAL(noonleaf_ground_of(&c_soil, &wetness, &ground, nullptr), noonleaf_done);
  noonleaf_planting tomato;
  tomato.size = sizeof tomato;
  noonleaf_planting_defaults(&tomato);
  tomato.crop = "tomato";
  tomato.start = {2024, 4, 15};
  tomato.u2_m_s = climate.u2_m_s;
  tomato.rh_min_pct = climate.rh_min_pct;
  noonleaf_balance_settings settings;
  settings.size = sizeof settings;
  noonleaf_balance_settings_defaults(&settings);
  settings.irrigated_frac = 0.5;
  noonleaf_balance_days c_days;
  c_days.size = sizeof c_days;
  noonleaf_balance_days_defaults(&c_days);
  c_days.first_day = tomato.start;
  c_days.et0_mm_d = of(et0);
  c_days.rain_mm = of(rain);
  c_days.irrigation_mm = of(water);
  c_days.observed_dr_mm = of(found);
  std::vector<double> dr(rows), ks(rows), drainage(rows);
  c_days.dr_mm = into(dr);
  c_days.ks = into(ks);
  c_days.drainage_mm = into(drainage);
  noonleaf_balance_totals totals;
  totals.size = sizeof totals;
  BOOST_REQUIRE_EQUAL(noonleaf_balance(&c_soil, &tomato, &settings, &c_days, &ground, &totals, nullptr),
                      noonleaf_done);
  for (std::size_t i = 0; i < rows; ++i) {
    BOOST_REQUIRE_MESSAGE(same(dr[i], run.days[i].end.dr_mm), "day " << i);
    BOOST_REQUIRE(same(ks[i], run.days[i].ks) && same(drainage[i], run.days[i].drainage_mm));
  }
  BOOST_CHECK(std::isnan(dr[gap]) && !std::isnan(dr[look]));
  BOOST_CHECK_EQUAL(totals.missing_days, look - gap);
  BOOST_CHECK_EQUAL(totals.transpiration_mm, run.transpiration_mm);
  BOOST_CHECK_EQUAL(totals.rain_mm, run.rain_mm);
  BOOST_CHECK_EQUAL(totals.stress_mm, run.stress_mm);
  BOOST_CHECK_EQUAL(ground.dr_mm, run.days.back().end.dr_mm);
}

BOOST_AUTO_TEST_CASE(run_time_of_every_basis) {
  for (int basis = noonleaf_cans_in_bed; basis <= noonleaf_guess; ++basis) {
    const noonleaf::RunPlan plan =
        noonleaf::run_plan({.net_depth_mm = 14,
                            .bed_area_m2 = 12,
                            .sprinkler = {.basis = static_cast<noonleaf::RateBasis>(basis),
                                          .rate_mm_h = 17,
                                          .off_target_frac = 0.2,
                                          .spray_loss_frac = 0.1,
                                          .du_lq_frac = 0.6,
                                          .flow_l_min = 9}});
    noonleaf_run_request request;
    request.size = sizeof request;
    noonleaf_run_request_defaults(&request);
    request.net_depth_mm = 14;
    request.bed_area_m2 = 12;
    request.basis = basis;
    request.rate_mm_h = 17;
    request.off_target_frac = 0.2;
    request.spray_loss_frac = 0.1;
    request.du_lq_frac = 0.6;
    request.flow_l_min = 9;
    noonleaf_run run;
    run.size = sizeof run;
    BOOST_REQUIRE_EQUAL(noonleaf_run_time(&request, &run, nullptr), noonleaf_done);
    BOOST_CHECK_EQUAL(run.minutes, plan.minutes);
    BOOST_CHECK_EQUAL(run.exact_min, plan.exact_min);
    BOOST_CHECK_EQUAL(run.litres_from_tap, plan.litres_from_tap);
    BOOST_CHECK_EQUAL(run.low_quarter_depth_mm, plan.low_quarter_depth_mm);
    BOOST_CHECK_EQUAL(run.limit, static_cast<int>(plan.limit));
  }
}

BOOST_AUTO_TEST_CASE(wilt_over_depletions) {
  const noonleaf::DaySite site{.date = 2024y / July / 10,
                               .location = {.latitude_deg = 32.8, .longitude_deg = -96.8, .elevation_m = 130},
                               .utc_offset_h = -5};
  const auto hours = noonleaf::hours_of_day(
      {.site = site, .t_max_c = 38, .t_min_c = 25, .ea_kpa = 2.2, .rs_mj_m2_d = 27, .u2_m_s = 3});
  const auto demand = noonleaf::hourly_transpiration_mm_h(hours.hours, site, 8);
  const noonleaf::Crop& crop = noonleaf::find_crop("squash_zucchini");
  int verdicts = 0;
  for (double dr = 0; dr <= 80; dr += 4) {
    const noonleaf::WiltDay wanted =
        noonleaf::wilt_day({.p_frac = crop.p_frac,
                            .turgor_loss_mpa = noonleaf::turgor_loss(crop.group).mpa,
                            .sunlit_factor = noonleaf::turgor_loss(crop.group).sunlit_factor,
                            .taw_mm = 80,
                            .raw_mm = 32,
                            .dr_mm = dr,
                            .soil = {.theta_33 = 0.25, .theta_1500 = 0.12}},
                           hours.hours, demand);
    noonleaf_wilt_request request;
    request.size = sizeof request;
    noonleaf_wilt_request_defaults(&request);
    request.date = {2024, 7, 10};
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
    request.crop = "squash_zucchini";
    request.taw_mm = 80;
    request.raw_mm = 32;
    request.dr_mm = dr;
    request.field_capacity_m3_m3 = 0.25;
    request.wilting_point_m3_m3 = 0.12;
    std::vector<double> supply(24);
    request.hour_supply_mm_h = into(supply);
    noonleaf_wilt_day day;
    day.size = sizeof day;
    BOOST_REQUIRE_EQUAL(noonleaf_wilt(&request, &day, nullptr), noonleaf_done);
    BOOST_CHECK_EQUAL(day.verdict, static_cast<int>(wanted.verdict));
    BOOST_CHECK_EQUAL(day.advice, static_cast<int>(wanted.advice));
    BOOST_CHECK_EQUAL(day.droop_hours, wanted.droop_hours);
    BOOST_CHECK(same(day.unmet_frac, wanted.unmet_frac) && same(day.peak_hour_h, wanted.peak_hour_h));
    for (std::size_t i = 0; i < 24; ++i) BOOST_CHECK(same(supply[i], wanted.hours[i].supply_mm_h));
    verdicts |= 1 << day.verdict;
  }
  BOOST_CHECK(verdicts & (1 << noonleaf_dry_soil_wilt));
  BOOST_CHECK(verdicts & ((1 << noonleaf_comfortable) | (1 << noonleaf_droop)));
}

BOOST_AUTO_TEST_CASE(plans_of_the_demo_garden) {
  const std::string folder = NOONLEAF_SOURCE_DIR "/weather_samples/demo";
  const noonleaf::GardenFolder read = noonleaf::read_garden_folder(folder, folder);
  const noonleaf::Sky sky = noonleaf::sky_over(read.garden.site, read.weather);
  auto today =
      noonleaf::plan_today(read.garden, read.journal, sky, {.date = 2025y / July / 16, .from = minutes{540}});
  today.likelihood = noonleaf::likelihood_of_today(read.garden, read.journal, sky, today);
  auto week = noonleaf::plan_week(read.garden, read.journal, sky,
                                  {.first = 2025y / July / 16, .from = minutes{540}, .days = 5});
  week.likelihood = noonleaf::likelihood_of_week(read.garden, read.journal, sky, week);
  noonleaf::WeekView view{.garden = read.garden,
                          .plan = week,
                          .language = noonleaf::Language::es,
                          .made = {2025y / July / 16, minutes{540}}};
  view.alerts = noonleaf::alerts_beside(week, view.made.date, read.garden, read.journal, sky, view.language);
  BOOST_REQUIRE(!view.alerts.empty());

  noonleaf_garden* garden = nullptr;
  BOOST_REQUIRE_EQUAL(noonleaf_garden_read(folder.c_str(), &garden, nullptr), noonleaf_done);
  const noonleaf_moment moment{sizeof moment, {2025, 7, 16}, 540};
  char* json = nullptr;
  BOOST_REQUIRE_EQUAL(noonleaf_today_json(garden, &moment, &json, nullptr), noonleaf_done);
  BOOST_CHECK_EQUAL(json, noonleaf::today_json({read.garden, today}));
  noonleaf_text_free(json);
  const noonleaf_week_request request{sizeof request, {2025, 7, 16}, 540, {}, 5, noonleaf_spanish};
  BOOST_REQUIRE_EQUAL(noonleaf_week_json(garden, &request, &json, nullptr), noonleaf_done);
  BOOST_CHECK_EQUAL(json, noonleaf::week_json(view));
  noonleaf_text_free(json);
  noonleaf_garden_free(garden);
}

BOOST_AUTO_TEST_SUITE_END()
