#include "noonleaf/crop/growth.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"

using namespace std::chrono_literals;
using noonleaf::CropClimate;
using noonleaf::Error;
using noonleaf::find_crop;
using noonleaf::growth_day;
using noonleaf::Planting;
using noonleaf::PlantingStart;
using noonleaf::season_calendar;
using noonleaf::Stage;
using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

namespace {

constexpr auto april_15 = 2024y / 4 / 15;

year_month_day plus(year_month_day date, int n) { return sys_days{date} + days{n}; }

}  // namespace

BOOST_AUTO_TEST_SUITE(growth)

// Tomato, FAO-56 Table 11, April/May: Calif. 35, 40, 50, 30 and Mediterranean 30, 40, 45, 30 days.
BOOST_AUTO_TEST_CASE(a_season_of_tomato) {
  const Planting planting{.start = april_15, .region = "Mediterranean"};
  const auto on = [&](int day) {
    return growth_day(find_crop("tomato"), planting, plus(april_15, day - 1), {});
  };
  BOOST_TEST((on(0).stage == Stage::not_started));
  BOOST_TEST(on(0).kcb == 0);
  BOOST_TEST((on(1).stage == Stage::initial));
  BOOST_TEST((on(30).stage == Stage::initial));
  BOOST_TEST((on(31).stage == Stage::development));
  BOOST_TEST((on(70).stage == Stage::development));
  BOOST_TEST((on(71).stage == Stage::mid_season));
  BOOST_TEST((on(116).stage == Stage::late_season));
  BOOST_TEST((on(145).stage == Stage::late_season));
  BOOST_TEST((on(146).stage == Stage::over));
  BOOST_TEST(on(30).kcb == 0.15);
  BOOST_CHECK_CLOSE(on(50).kcb, 0.15 + 20.0 / 40 * 0.95, 1e-9);
  BOOST_TEST(on(71).kcb == 1.10);
  BOOST_TEST(on(71).kc == 1.15);
  BOOST_CHECK_CLOSE(on(145).kcb, 0.70, 1e-9);
  BOOST_CHECK_CLOSE(on(300).kcb, 0.70, 1e-9);  // held, and said to be over
  BOOST_TEST(on(1).root_depth_m == 0.15);
  BOOST_CHECK_CLOSE(on(50).root_depth_m, 0.15 + 0.5 * 0.55, 1e-9);
  BOOST_CHECK_CLOSE(on(70).root_depth_m, 0.7, 1e-9);
  BOOST_TEST(on(120).root_depth_m == 0.7);
  BOOST_TEST(on(120).height_m == 0.6);
  BOOST_TEST(on(50).season_length_d == 145);
}

BOOST_AUTO_TEST_CASE(the_row_planted_nearest_in_the_year_is_taken) {
  const auto lengths = [](year_month_day start) {
    return *season_calendar(find_crop("lettuce"), {.start = start}, start).lengths;
  };
  BOOST_TEST(lengths(2024y / 4 / 1).planted == "April");
  BOOST_TEST(lengths(2024y / 5 / 20).planted == "April");
  BOOST_TEST(lengths(2024y / 2 / 10).planted == "Feb");
  BOOST_TEST(lengths(2024y / 10 / 3).planted == "Oct/Nov");
  BOOST_TEST(lengths(2024y / 12 / 20).planted == "Nov/Jan");
}

BOOST_AUTO_TEST_CASE(regions_are_found_by_words_and_slips_are_named) {
  const auto& tomato = find_crop("tomato");
  BOOST_TEST(season_calendar(tomato, {.start = april_15, .region = "arid"}, april_15).lengths->region ==
             "Arid Region");
  BOOST_CHECK_EXCEPTION(
      season_calendar(tomato, {.start = april_15, .region = "Mediteranean"}, april_15), Error,
      [](const Error& refused) { return refused.problems().front().fix == "did you mean Mediterranean?"; });
}

BOOST_AUTO_TEST_CASE(a_transplant_has_half_the_initial_stage) {
  const Planting sown{.start = april_15, .region = "Calif., USA"};
  Planting set = sown;
  set.method = PlantingStart::transplanted;
  const auto a = season_calendar(find_crop("tomato"), sown, april_15);
  const auto b = season_calendar(find_crop("tomato"), set, april_15);
  BOOST_TEST((a.development - a.first).count() == 35);
  BOOST_TEST((b.development - b.first).count() == 18);
  BOOST_TEST((b.over - b.development).count() == (a.over - a.development).count());
}

BOOST_AUTO_TEST_CASE(observed_stages_are_kept_and_the_rest_follows) {
  Planting planting{.start = april_15, .region = "Mediterranean"};  // 30, 40, 45, 30
  planting.observed.mid_season = plus(april_15, 84);                // 14 days late
  const auto season = season_calendar(find_crop("tomato"), planting, april_15);
  BOOST_TEST((season.mid_season == sys_days{plus(april_15, 84)}));
  BOOST_TEST((season.development - season.first).count() == 36);  // 30 / 70 of 84 days
  BOOST_TEST((season.late_season - season.mid_season).count() == 45);
  BOOST_TEST((season.over - season.late_season).count() == 30);
  const auto day = growth_day(find_crop("tomato"), planting, plus(april_15, 84), {});
  BOOST_TEST((day.stage == Stage::mid_season));
  BOOST_TEST(day.kcb == 1.10);
}

BOOST_AUTO_TEST_CASE(observed_end_ends_the_season) {
  Planting planting{.start = april_15, .region = "Mediterranean"};
  planting.observed.over = plus(april_15, 100);
  BOOST_TEST((growth_day(find_crop("tomato"), planting, plus(april_15, 99), {}).stage == Stage::late_season));
  BOOST_TEST((growth_day(find_crop("tomato"), planting, plus(april_15, 100), {}).stage == Stage::over));
}

BOOST_AUTO_TEST_CASE(observed_stages_out_of_order_are_refused) {
  Planting planting{.start = april_15};
  planting.observed.development = plus(april_15, 40);
  planting.observed.mid_season = plus(april_15, 30);
  BOOST_CHECK_THROW(season_calendar(find_crop("tomato"), planting, april_15), Error);
  planting.observed = {};
  planting.observed.development = plus(april_15, -1);
  BOOST_CHECK_THROW(season_calendar(find_crop("tomato"), planting, april_15), Error);
  BOOST_CHECK_THROW(season_calendar(find_crop("tomato"), {}, april_15), Error);
}

BOOST_AUTO_TEST_CASE(no_stage_is_higher_than_the_crop_gets) {
  noonleaf::Crop evergreen = find_crop("asparagus");
  evergreen.kcb_ini = 2 * evergreen.kcb_mid;  // covers the ground while it rests
  const Planting planting{.start = 2022y / 4 / 10, .region = "Warm Winter"};
  for (const year_month_day date : {2022y / 4 / 20, 2022y / 12 / 20}) {
    const auto day = growth_day(evergreen, planting, date, {});
    BOOST_TEST(day.height_m == evergreen.height_max_m);
  }
}

BOOST_AUTO_TEST_CASE(perennials_start_anew_every_year) {
  const auto& asparagus = find_crop("asparagus");
  const Planting planting{.start = 2022y / 4 / 10, .region = "Warm Winter"};  // 50, 30, 100, 50; from 1 March
  const auto on = [&](year_month_day date) { return growth_day(asparagus, planting, date, {}); };
  BOOST_TEST((on(2022y / 4 / 9).stage == Stage::not_started));
  BOOST_TEST(on(2022y / 4 / 10).day_of_season == 1);
  BOOST_TEST((on(2022y / 12 / 20).stage == Stage::dormant));
  BOOST_TEST(on(2023y / 3 / 1).day_of_season == 1);
  BOOST_TEST(on(2024y / 3 / 1).day_of_season == 1);
  BOOST_TEST(on(2024y / 2 / 29).kcb == 0.15);
  BOOST_TEST(on(2022y / 4 / 20).root_depth_m == 0.3);
  BOOST_TEST(on(2023y / 3 / 1).root_depth_m == 1.2);  // established
  BOOST_TEST((on(2023y / 6 / 15).stage == Stage::mid_season));
}

BOOST_AUTO_TEST_CASE(an_observation_belongs_to_its_own_year) {
  Planting planting{.start = 2022y / 4 / 10, .region = "Warm Winter"};
  planting.observed.mid_season = 2023y / 6 / 30;
  const auto& asparagus = find_crop("asparagus");
  BOOST_TEST((season_calendar(asparagus, planting, 2023y / 7 / 1).mid_season == sys_days{2023y / 6 / 30}));
  BOOST_TEST((season_calendar(asparagus, planting, 2024y / 7 / 1).mid_season != sys_days{2024y / 6 / 30}));
}

BOOST_AUTO_TEST_CASE(a_perennial_set_out_in_winter_starts_once) {
  const Planting planting{.start = 2023y / 1 / 20, .region = "Warm Winter"};
  const auto day = growth_day(find_crop("asparagus"), planting, 2023y / 3 / 10, {});
  BOOST_TEST(day.day_of_season == 50);
  BOOST_TEST(growth_day(find_crop("asparagus"), planting, 2024y / 3 / 1, {}).day_of_season == 1);
}

BOOST_AUTO_TEST_CASE(the_south_has_its_seasons) {
  BOOST_TEST((noonleaf::season_start_at(find_crop("asparagus"), -34) == std::chrono::September / 1));
  BOOST_TEST((noonleaf::season_start_at(find_crop("asparagus"), 34) == std::chrono::March / 1));
}

BOOST_AUTO_TEST_CASE(plant_factors_have_no_basal_part) {
  const auto day = growth_day(find_crop("annual_flowers"), {.start = april_15}, plus(april_15, 200), {6, 20});
  BOOST_TEST((day.basis == noonleaf::CropBasis::plant_factor));
  BOOST_TEST(day.kc == 0.8);  // never adjusted to the climate
  BOOST_TEST(noonleaf::is_missing(day.kcb));
  BOOST_TEST(day.root_depth_m == 0.2);
}

BOOST_AUTO_TEST_CASE(roots_stop_at_the_bottom_of_the_bed) {
  const Planting planting{.start = april_15, .root_limit_m = 0.25};
  BOOST_TEST(growth_day(find_crop("tomato"), planting, plus(april_15, 100), {}).root_depth_m == 0.25);
  const Planting deep{.start = april_15, .rooting = noonleaf::RootingDepth::rainfed};
  BOOST_TEST(growth_day(find_crop("tomato"), deep, plus(april_15, 100), {}).root_depth_m == 1.5);
}

BOOST_AUTO_TEST_CASE(climate_moves_the_middle_and_the_end) {
  const Planting planting{.start = april_15, .region = "Mediterranean"};
  const CropClimate dry{4, 25};
  const auto mid = growth_day(find_crop("tomato"), planting, plus(april_15, 90), dry);
  BOOST_CHECK_CLOSE(mid.kcb, noonleaf::adjusted_kc(1.10, dry, 0.6), 1e-9);
  BOOST_TEST(growth_day(find_crop("tomato"), planting, april_15, dry).kcb == 0.15);
  BOOST_TEST(noonleaf::is_missing(
      growth_day(find_crop("tomato"), planting, plus(april_15, 90), {noonleaf::missing, 25}).kcb));
}

BOOST_AUTO_TEST_CASE(every_crop_has_sound_numbers_on_every_day) {
  for (const auto& crop : noonleaf::crop_table())
    for (const auto method : {PlantingStart::sown, PlantingStart::transplanted}) {
      const Planting planting{.start = april_15, .method = method};
      double deepest = 0;
      for (const auto& day : noonleaf::growth_days(crop, planting, plus(april_15, -5), 500, {3, 30}))
        BOOST_TEST_CONTEXT(crop.id << " " << day.day_of_season) {
          BOOST_TEST(day.root_depth_m >= 0.1);
          BOOST_TEST(day.root_depth_m >= deepest);
          deepest = day.root_depth_m;
          if (crop.basis != noonleaf::CropBasis::kc_curve) continue;
          BOOST_TEST(day.kcb >= 0);
          BOOST_TEST(day.kcb <= 1.35);
          BOOST_TEST(day.kc_max >= day.kcb + 0.05 - 1e-12);
          BOOST_TEST(day.cover_frac >= 0);
          BOOST_TEST(day.cover_frac <= 0.99);
          BOOST_TEST(day.height_m <= crop.height_max_m);
        }
    }
}

BOOST_AUTO_TEST_SUITE_END()
