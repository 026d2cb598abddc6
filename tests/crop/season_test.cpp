// The calendar of a season where the crop table has no example: rows of our own, invented.
#include <array>

#include <boost/test/unit_test.hpp>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/error.hpp"

using namespace std::chrono_literals;
using noonleaf::Crop;
using noonleaf::Error;
using noonleaf::find_crop;
using noonleaf::growth_day;
using noonleaf::growth_detail;
using noonleaf::GrowthDetail;
using noonleaf::missing;
using noonleaf::Planting;
using noonleaf::PlantingStart;
using noonleaf::season_calendar;
using noonleaf::Stage;
using noonleaf::StageLengths;
using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

namespace {

constexpr auto april_15 = 2024y / 4 / 15;

year_month_day plus(year_month_day date, int n) { return sys_days{date} + days{n}; }

/// A tomato with stage lengths of our own.
Crop with_rows(std::span<const StageLengths> rows) {
  Crop crop = find_crop("tomato");
  crop.stages = rows;
  return crop;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(season)

BOOST_AUTO_TEST_CASE(months_are_counted_round_the_year) {
  const std::array<StageLengths, 3> rows{{{.planted = "never said", .l_ini_d = 10},
                                          {.months = 1U << 0, .planted = "January", .l_ini_d = 20},
                                          {.months = 1U << 6, .planted = "July", .l_ini_d = 30}}};
  const Crop crop = with_rows(rows);
  const auto planted = [&](unsigned month) {
    const auto start = 2023y / std::chrono::month{month} / 10;
    return season_calendar(crop, {.start = start}, start).lengths->planted;
  };
  for (const unsigned month : {1U, 2U, 3U, 11U, 12U}) BOOST_TEST(planted(month) == "January", month);
  for (const unsigned month : {5U, 6U, 7U, 8U, 9U}) BOOST_TEST(planted(month) == "July", month);
}

BOOST_AUTO_TEST_CASE(december_is_one_month_from_january) {
  const std::array<StageLengths, 2> rows{
      {{.months = 1U << 9, .planted = "October"}, {.months = 1U << 0, .planted = "January"}}};
  const auto start = 2023y / 12 / 10;
  BOOST_TEST(season_calendar(with_rows(rows), {.start = start}, start).lengths->planted == "January");
}

BOOST_AUTO_TEST_CASE(a_row_without_months_is_taken_when_there_is_no_other) {
  const std::array<StageLengths, 1> rows{{{.planted = "never said", .l_ini_d = 10}}};
  const auto season = season_calendar(with_rows(rows), {.start = april_15}, april_15);
  BOOST_TEST(season.lengths->planted == "never said");
  BOOST_TEST((season.over - season.first).count() == 10);  // nor is any other stage said to have days
}

// Halved and rounded up: 15 of 30 days, 18 of 35.
BOOST_AUTO_TEST_CASE(a_transplant_has_half_of_an_even_number_of_days) {
  const Planting set{.start = april_15, .method = PlantingStart::transplanted, .region = "Mediterranean"};
  const auto season = season_calendar(find_crop("tomato"), set, april_15);
  BOOST_TEST((season.development - season.first).count() == 15);
}

// 30, 40, 45, 30 days: to a mid-season seen on day 71 + n the initial stage has 3/7 of the days, to the nearest day.
BOOST_AUTO_TEST_CASE(proportions_are_rounded_to_the_nearest_day) {
  Planting planting{.start = april_15, .region = "Mediterranean"};
  const auto initial_d = [&](int mid_season_d) {
    planting.observed.mid_season = plus(april_15, mid_season_d);
    const auto season = season_calendar(find_crop("tomato"), planting, april_15);
    return (season.development - season.first).count();
  };
  BOOST_TEST(initial_d(70) == 30);
  BOOST_TEST(initial_d(71) == 30);  // 30.43
  BOOST_TEST(initial_d(72) == 31);  // 30.86
  BOOST_TEST(initial_d(73) == 31);  // 31.29
  BOOST_TEST(initial_d(74) == 32);  // 31.71
  BOOST_TEST(initial_d(75) == 32);  // 32.14
  BOOST_TEST(initial_d(76) == 33);  // 32.57
}

BOOST_AUTO_TEST_CASE(what_was_seen_of_every_stage_is_the_calendar) {
  Planting planting{.start = april_15, .region = "Mediterranean"};  // 30, 40, 45, 30 in the table
  planting.observed = {plus(april_15, 20), plus(april_15, 90), plus(april_15, 100), plus(april_15, 160)};
  const auto season = season_calendar(find_crop("tomato"), planting, april_15);
  BOOST_TEST((season.development - season.first).count() == 20);
  BOOST_TEST((season.mid_season - season.first).count() == 90);
  BOOST_TEST((season.late_season - season.first).count() == 100);
  BOOST_TEST((season.over - season.first).count() == 160);
}

// Two stages of no length before the day that was seen: there is nothing to share out.
BOOST_AUTO_TEST_CASE(stages_of_no_length_share_no_days) {
  const std::array<StageLengths, 1> rows{{{.l_mid_d = 45, .l_late_d = 30}}};
  Planting planting{.start = april_15};
  planting.observed.mid_season = plus(april_15, 10);
  const auto season = season_calendar(with_rows(rows), planting, april_15);
  BOOST_TEST((season.development == season.first));
  BOOST_TEST((season.mid_season - season.first).count() == 10);
}

BOOST_AUTO_TEST_CASE(what_was_seen_too_early_is_told_with_both_days) {
  Planting planting{.start = 2024y / 11 / 5};
  planting.observed.development = 2024y / 11 / 4;
  BOOST_CHECK_EXCEPTION(season_calendar(find_crop("tomato"), planting, planting.start), Error,
                        [](const Error& refused) {
                          return refused.problems().front().message ==
                                 "the stage seen on 2024-11-04 lies before 2024-11-05, when tomato started";
                        });
  planting.observed.development = 2024y / 12 / 10;
  planting.observed.mid_season = 2024y / 12 / 9;
  BOOST_CHECK_EXCEPTION(
      season_calendar(find_crop("tomato"), planting, planting.start), Error, [](const Error& refused) {
        return refused.problems().front().message ==
               "the stage seen on 2024-12-09 lies before 2024-12-10, when tomato had passed on";
      });
  planting.observed.development = {};
  planting.observed.mid_season = 2024y / 11 / 4;  // the first thing seen, though not the first stage
  BOOST_CHECK_EXCEPTION(season_calendar(find_crop("tomato"), planting, planting.start), Error,
                        [](const Error& refused) {
                          return refused.problems().front().message.ends_with("when tomato started");
                        });
}

// "at least half a year after planting": 183 days. Asparagus starts on 1 March.
BOOST_AUTO_TEST_CASE(the_second_season_of_a_perennial) {
  const auto& asparagus = find_crop("asparagus");
  const auto day_of_season = [&](int days_before) {
    const Planting planting{.start = plus(2023y / 3 / 1, -days_before), .region = "Warm Winter"};
    return growth_day(asparagus, planting, 2023y / 3 / 1, {}).day_of_season;
  };
  BOOST_TEST(day_of_season(183) == 1);
  BOOST_TEST(day_of_season(182) == 183);
  // What was seen on the first day of the next season belongs to that one, and what was seen two years on to neither.
  Planting planting{.start = 2022y / 4 / 10, .region = "Warm Winter"};
  planting.observed.over = 2024y / 3 / 1;
  BOOST_TEST((season_calendar(asparagus, planting, 2023y / 7 / 1).over < sys_days{2024y / 3 / 1}));
  planting.observed.over = 2022y / 12 / 31;
  BOOST_TEST((season_calendar(asparagus, planting, 2022y / 7 / 1).over == sys_days{2022y / 12 / 31}));
}

BOOST_AUTO_TEST_CASE(the_equator_has_the_northern_calendar) {
  const auto& asparagus = find_crop("asparagus");
  for (const double latitude : {0.0, 0.4})
    BOOST_TEST((noonleaf::season_start_at(asparagus, latitude) == std::chrono::March / 1));
  BOOST_TEST((noonleaf::season_start_at(asparagus, -0.4) == std::chrono::September / 1));
}

// FAO-56 eq. 66 from what growth_detail tells of it gives the coefficients of the day, whatever the crop and stage.
BOOST_AUTO_TEST_CASE(the_working_gives_the_result) {
  for (const char* id : {"tomato", "asparagus", "apple_bare_frost", "lettuce"}) {
    const Planting planting{.start = april_15};
    for (int n = 0; n < 200; ++n) {
      const GrowthDetail detail = growth_detail(find_crop(id), planting, plus(april_15, n), {3, 30});
      if (detail.day.stage == Stage::dormant) continue;
      BOOST_TEST_CONTEXT(id << ", day " << n + 1) {
        BOOST_TEST(detail.day_of_season == n + 1);
        const double share = std::min(1.0, (detail.day_of_season - detail.passed_d) / detail.stage_d);
        BOOST_CHECK_CLOSE(detail.kcb_prev + share * (detail.kcb_next - detail.kcb_prev), detail.day.kcb,
                          1e-9);
        BOOST_CHECK_CLOSE(detail.kc_prev + share * (detail.kc_next - detail.kc_prev), detail.day.kc, 1e-9);
      }
    }
  }
}

// Tomato, Mediterranean: 30, 40, 45, 30 days; Kcb 0.15, 1.10, 0.70 (FAO-56, Tables 11 and 17).
BOOST_AUTO_TEST_CASE(the_working_of_a_tomato) {
  const Planting planting{.start = april_15, .region = "Mediterranean"};
  struct Piece {
    int day;
    double passed_d, stage_d, kcb_prev, kcb_next;
  };
  for (const Piece& piece : {Piece{1, 0, 30, 0.15, 0.15},
                             {30, 0, 30, 0.15, 0.15},
                             {31, 30, 40, 0.15, 1.10},
                             {70, 30, 40, 0.15, 1.10},
                             {71, 70, 45, 1.10, 1.10},
                             {115, 70, 45, 1.10, 1.10},
                             {116, 115, 30, 1.10, 0.70},
                             {145, 115, 30, 1.10, 0.70}}) {
    const auto detail = growth_detail(find_crop("tomato"), planting, plus(april_15, piece.day - 1), {});
    BOOST_TEST_CONTEXT("day " << piece.day) {
      BOOST_TEST(detail.passed_d == piece.passed_d);
      BOOST_TEST(detail.stage_d == piece.stage_d);
      BOOST_TEST(detail.kcb_prev == piece.kcb_prev);
      BOOST_TEST(detail.kcb_next == piece.kcb_next);
    }
  }
}

BOOST_AUTO_TEST_CASE(without_stages_there_is_no_curve_to_tell) {
  const auto turf = growth_detail(find_crop("turf_cool"), {.start = april_15}, plus(april_15, 40), {});
  BOOST_TEST(noonleaf::is_missing(turf.day_of_season));
  BOOST_TEST(noonleaf::is_missing(turf.stage_d));
  const Planting bed{.start = 2022y / 4 / 10, .region = "Warm Winter"};
  const auto dormant = growth_detail(find_crop("asparagus"), bed, 2022y / 12 / 20, {});
  BOOST_TEST((dormant.day.stage == Stage::dormant));
  BOOST_TEST(noonleaf::is_missing(dormant.stage_d));
}

BOOST_AUTO_TEST_CASE(before_the_start_nothing_is_counted) {
  const auto before = growth_day(find_crop("tomato"), {.start = april_15}, plus(april_15, -3), {4, 20});
  BOOST_TEST(before.day_of_season == 0);
  BOOST_TEST(before.days_since_planting == 0);
  BOOST_CHECK_CLOSE(before.kc_max, 1.2, 1e-9);  // FAO-56 eq. 72 without height
}

BOOST_AUTO_TEST_CASE(days_in_a_row_are_the_days_one_by_one) {
  const Planting planting{.start = april_15};
  const auto& crop = find_crop("tomato");
  const auto many = noonleaf::growth_days(crop, planting, plus(april_15, 25), 80, {3, 40});
  BOOST_REQUIRE_EQUAL(many.size(), 80U);
  for (int i = 0; i < 80; ++i) {
    const auto one = growth_day(crop, planting, plus(april_15, 25 + i), {3, 40});
    const auto& day = many[static_cast<std::size_t>(i)];
    BOOST_TEST((day.date == one.date));
    BOOST_TEST(day.kcb == one.kcb);
  }
}

// FAO-56 annex 8: a plant's height goes with Kcb up to mid-season. What has wood does not start from the ground.
BOOST_AUTO_TEST_CASE(height_follows_the_coefficient_but_of_wood) {
  const Planting planting{.start = april_15, .region = "Mediterranean"};
  const auto height = [&](const char* id, int day) {
    Planting one = planting;
    if (std::string_view(id) != "tomato") one.region = "";
    return growth_day(find_crop(id), one, plus(april_15, day - 1), {}).height_m;
  };
  BOOST_CHECK_CLOSE(height("tomato", 1), 0.15 / 1.10 * 0.6, 1e-9);
  BOOST_CHECK_CLOSE(height("tomato", 50), (0.15 + 0.5 * 0.95) / 1.10 * 0.6, 1e-9);
  BOOST_CHECK_CLOSE(height("tomato", 140), 0.6, 1e-9);
  for (const Crop& crop : noonleaf::crop_table()) {
    const bool wood =
        crop.group == noonleaf::CropGroup::fruit_tree || crop.group == noonleaf::CropGroup::berry;
    if (crop.basis != noonleaf::CropBasis::kc_curve || crop.stages.empty() || crop.kcb_ini >= crop.kcb_mid)
      continue;
    BOOST_TEST((growth_day(crop, {.start = april_15}, april_15, {}).height_m == crop.height_max_m) == wood,
               crop.id);
  }
  BOOST_TEST(growth_day(find_crop("turf_cool"), {.start = april_15}, april_15, {}).height_m ==
             find_crop("turf_cool").height_max_m);
  const Planting bed{.start = 2022y / 4 / 10,
                     .region = "Warm Winter"};  // asparagus, asleep: 0.15 / 0.90 of 0.8 m
  BOOST_CHECK_CLOSE(growth_day(find_crop("asparagus"), bed, 2022y / 12 / 20, {}).height_m, 0.15 / 0.90 * 0.8,
                    1e-9);
}

// Ours: what has no stages grows its roots in 120 days.
BOOST_AUTO_TEST_CASE(turf_has_its_roots_after_120_days) {
  const auto depth = [](int day) {
    return growth_day(find_crop("turf_cool"), {.start = april_15}, plus(april_15, day), {}).root_depth_m;
  };
  BOOST_CHECK_CLOSE(depth(60), (depth(0) + depth(400)) / 2, 1e-9);
  BOOST_TEST(depth(119) < depth(400));
  BOOST_TEST(depth(120) == depth(400));
}

BOOST_AUTO_TEST_SUITE_END()
