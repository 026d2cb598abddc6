// What a calling program can do wrong: null pointers, sizes, choices, lengths. Each is a status, none a
// crash.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/noonleaf.h"

namespace {

/// The field of the one problem of a refused call.
std::string refused_field(noonleaf_status status, noonleaf_problems* problems) {
  BOOST_CHECK_EQUAL(status, noonleaf_call_refused);
  BOOST_REQUIRE_EQUAL(noonleaf_problems_count(problems), 1U);
  noonleaf_problem problem;
  problem.size = sizeof problem;
  BOOST_CHECK_EQUAL(noonleaf_problems_at(problems, 0, &problem), noonleaf_done);
  const std::string field = problem.field;
  BOOST_CHECK(std::strlen(problem.message) > 0 && std::strlen(problem.fix) > 0);
  noonleaf_problems_free(problems);
  return field;
}

noonleaf_run_request usual_run() {
  noonleaf_run_request request;
  request.size = sizeof request;
  noonleaf_run_request_defaults(&request);
  request.net_depth_mm = 10;
  request.rate_mm_h = 12;
  return request;
}

/// A column call over `rows` rows with everything given.
struct DailyCall {
  std::vector<double> values, et0;
  noonleaf_site* site = nullptr;
  noonleaf_daily_columns columns;
  explicit DailyCall(std::size_t rows) : values(rows, 10.0), et0(rows, -1.0) {
    const noonleaf_location location{sizeof location, 50.8, 4.35, 100};
    BOOST_REQUIRE_EQUAL(noonleaf_site_make(&location, &site, nullptr), noonleaf_done);
    columns.size = sizeof columns;
    noonleaf_daily_columns_defaults(&columns);
    columns.first_day = {2023, 7, 6};
    columns.t_max_c = columns.t_min_c = columns.rs_mj_m2_d = columns.u2_m_s = {values.data(), rows, 1};
    columns.ea_kpa = columns.t_max_c;
    columns.et0_mm_d = {et0.data(), rows, 1};
  }
  DailyCall(const DailyCall&) = delete;
  DailyCall& operator=(const DailyCall&) = delete;
  ~DailyCall() { noonleaf_site_free(site); }
  std::string refused() {
    noonleaf_problems* problems = nullptr;
    const noonleaf_status status = noonleaf_daily_et0(site, &columns, &problems);
    return refused_field(status, problems);
  }
};

}  // namespace

BOOST_AUTO_TEST_SUITE(misuse)

BOOST_AUTO_TEST_CASE(null_pointers_are_refused) {
  noonleaf_problems* problems = nullptr;
  const auto field = [&](noonleaf_status status) {
    return refused_field(status, std::exchange(problems, nullptr));
  };
  const noonleaf_location location{sizeof location, 50.8, 4.35, 100};
  noonleaf_site* site = nullptr;
  noonleaf_hourly_site* hours = nullptr;
  noonleaf_garden* garden = nullptr;
  noonleaf_soil soil;
  soil.size = sizeof soil;
  noonleaf_ground ground;
  ground.size = sizeof ground;
  noonleaf_wetness wetness{sizeof wetness, 0, 0.3, 1};
  noonleaf_run run;
  run.size = sizeof run;
  noonleaf_wilt_day day;
  day.size = sizeof day;
  noonleaf_depth depth;
  depth.size = sizeof depth;
  char* text = nullptr;
  BOOST_CHECK_EQUAL(field(noonleaf_site_make(nullptr, &site, &problems)), "location");
  BOOST_CHECK_EQUAL(field(noonleaf_site_make(&location, nullptr, &problems)), "site");
  BOOST_CHECK_EQUAL(field(noonleaf_hourly_site_make(nullptr, &hours, &problems)), "place");
  BOOST_CHECK_EQUAL(field(noonleaf_daily_et0(nullptr, nullptr, &problems)), "site");
  BOOST_CHECK_EQUAL(field(noonleaf_hourly_et0(nullptr, nullptr, &problems)), "site");
  BOOST_CHECK_EQUAL(field(noonleaf_soil_of_texture(nullptr, &soil, &problems)), "texture");
  BOOST_CHECK_EQUAL(field(noonleaf_soil_of_texture("loam", nullptr, &problems)), "soil");
  BOOST_CHECK_EQUAL(field(noonleaf_ground_of(nullptr, &wetness, &ground, &problems)), "soil");
  BOOST_CHECK_EQUAL(field(noonleaf_balance(nullptr, nullptr, nullptr, nullptr, nullptr, nullptr, &problems)),
                    "ground");
  BOOST_CHECK_EQUAL(field(noonleaf_run_time(nullptr, &run, &problems)), "request");
  BOOST_CHECK_EQUAL(field(noonleaf_run_time(nullptr, nullptr, &problems)), "run");
  BOOST_CHECK_EQUAL(field(noonleaf_depth_of_minutes(nullptr, 5, &depth, &problems)), "request");
  BOOST_CHECK_EQUAL(field(noonleaf_wilt(nullptr, &day, &problems)), "request");
  BOOST_CHECK_EQUAL(field(noonleaf_garden_read(nullptr, &garden, &problems)), "folder");
  BOOST_CHECK_EQUAL(field(noonleaf_garden_read("x", nullptr, &problems)), "garden");
  BOOST_CHECK_EQUAL(field(noonleaf_today_json(nullptr, nullptr, &text, &problems)), "garden");
  BOOST_CHECK_EQUAL(field(noonleaf_week_json(nullptr, nullptr, nullptr, &problems)), "json");
  BOOST_CHECK_EQUAL(noonleaf_location_defaults(nullptr), noonleaf_call_refused);
  BOOST_CHECK_EQUAL(noonleaf_problems_at(nullptr, 0, nullptr), noonleaf_call_refused);
  BOOST_CHECK_EQUAL(noonleaf_problems_text(nullptr, &text), noonleaf_call_refused);
  BOOST_CHECK_EQUAL(noonleaf_problems_text(nullptr, nullptr), noonleaf_call_refused);
  BOOST_CHECK_EQUAL(noonleaf_run_time(nullptr, &run, nullptr), noonleaf_call_refused);  // no list wanted
}

BOOST_AUTO_TEST_CASE(an_older_shorter_struct_takes_defaults_for_what_it_lacks) {
  noonleaf_run_request request = usual_run();
  request.longest_min = 20;
  request.size = offsetof(noonleaf_run_request, flow_l_min);  // a version that ended before the flow
  noonleaf_run run;
  run.size = sizeof run;
  BOOST_REQUIRE_EQUAL(noonleaf_run_time(&request, &run, nullptr), noonleaf_done);
  BOOST_CHECK_EQUAL(run.minutes, 50);  // not cut to the 20 minutes that lie beyond its end
  BOOST_CHECK(std::isnan(run.litres_from_tap));
}

BOOST_AUTO_TEST_CASE(an_older_shorter_result_is_filled_to_its_end_and_no_further) {
  const noonleaf_run_request request = usual_run();
  noonleaf_run run;
  run.multiplier = -7;
  run.size = offsetof(noonleaf_run, multiplier);
  BOOST_REQUIRE_EQUAL(noonleaf_run_time(&request, &run, nullptr), noonleaf_done);
  BOOST_CHECK_EQUAL(run.minutes, 50);
  BOOST_CHECK_EQUAL(run.multiplier, -7);
  BOOST_CHECK_EQUAL(run.size, offsetof(noonleaf_run, multiplier));
  noonleaf_run_request older;
  older.flow_l_min = -7;
  older.size = offsetof(noonleaf_run_request, flow_l_min);
  BOOST_CHECK_EQUAL(noonleaf_run_request_defaults(&older), noonleaf_done);
  BOOST_CHECK_EQUAL(older.du_lq_frac, 1);
  BOOST_CHECK_EQUAL(older.flow_l_min, -7);
}

BOOST_AUTO_TEST_CASE(a_longer_struct_and_a_size_that_cannot_be_are_refused) {
  for (const std::size_t size : {std::size_t{0}, std::size_t{8}, std::size_t{20},
                                 sizeof(noonleaf_run_request) + 8, std::numeric_limits<std::size_t>::max()}) {
    noonleaf_run_request request = usual_run();
    request.size = size;
    noonleaf_run run;
    run.size = sizeof run;
    noonleaf_problems* problems = nullptr;
    const noonleaf_status status = noonleaf_run_time(&request, &run, &problems);
    BOOST_CHECK_EQUAL(refused_field(status, problems), "request");
    request.size = sizeof request;
    run.size = size > 20 ? sizeof run + 8 : size;
    BOOST_CHECK_EQUAL(noonleaf_run_time(&request, &run, nullptr), noonleaf_call_refused);
  }
}

BOOST_AUTO_TEST_CASE(choices_that_do_not_exist) {
  noonleaf_run_request request = usual_run();
  noonleaf_run run;
  run.size = sizeof run;
  for (const int basis : {-1, 5, 1000000}) {
    request.basis = basis;
    BOOST_CHECK_EQUAL(noonleaf_run_time(&request, &run, nullptr), noonleaf_call_refused);
  }
  DailyCall call(3);
  call.columns.equation = 2;
  BOOST_CHECK_EQUAL(call.refused(), "equation");
}

BOOST_AUTO_TEST_CASE(columns_that_do_not_fit) {
  DailyCall call(3);
  call.columns.u2_m_s.count = 2;
  BOOST_CHECK_EQUAL(call.refused(), "u2_m_s");
  call.columns.u2_m_s.count = 3;
  call.columns.et0_mm_d.stride = 0;
  BOOST_CHECK_EQUAL(call.refused(), "et0_mm_d");
  call.columns.et0_mm_d = {nullptr, 3, 1};
  BOOST_CHECK_EQUAL(call.refused(), "et0_mm_d");
  call.columns.et0_mm_d = {call.et0.data(), 3, 1};
  const int64_t day = 0;
  call.columns.day = {&day, 1, 1};
  BOOST_CHECK_EQUAL(call.refused(), "day");
  BOOST_CHECK_EQUAL(call.et0[0], -1);  // nothing was written
}

BOOST_AUTO_TEST_CASE(dates_that_do_not_exist) {
  DailyCall call(3);
  for (const noonleaf_date date :
       {noonleaf_date{0, 0, 0}, noonleaf_date{2023, 2, 29}, noonleaf_date{2023, 13, 1},
        noonleaf_date{2023, -1, 1}, noonleaf_date{40000, 1, 1}}) {
    call.columns.first_day = date;
    BOOST_CHECK_EQUAL(call.refused(), "first_day");
  }
}

BOOST_AUTO_TEST_CASE(no_rows_are_no_fault) {
  DailyCall call(0);
  BOOST_CHECK_EQUAL(noonleaf_daily_et0(call.site, &call.columns, nullptr), noonleaf_done);
}

// The one value of a column that repeats was read for no rows at all.
BOOST_AUTO_TEST_CASE(of_no_rows_nothing_is_read) {
  DailyCall call(0);
  const auto* nowhere = reinterpret_cast<const double*>(std::uintptr_t{8});
  call.columns.t_max_c = call.columns.u2_m_s = {nowhere, 0, 0};
  BOOST_CHECK_EQUAL(noonleaf_daily_et0(call.site, &call.columns, nullptr), noonleaf_done);
}

BOOST_AUTO_TEST_CASE(a_result_pointer_is_null_after_a_refusal) {
  const noonleaf_location nowhere{sizeof nowhere, 95, 4.35, 100};
  noonleaf_site* site = reinterpret_cast<noonleaf_site*>(1);
  noonleaf_problems* problems = nullptr;
  BOOST_CHECK_EQUAL(noonleaf_site_make(&nowhere, &site, &problems), noonleaf_input_refused);
  BOOST_CHECK(site == nullptr);
  BOOST_CHECK_EQUAL(noonleaf_problems_count(problems), 1U);
  noonleaf_problems_free(problems);
}

BOOST_AUTO_TEST_SUITE_END()
