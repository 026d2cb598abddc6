#include "noonleaf/plan/today.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::BedAction;
using noonleaf::BedReason;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::Today;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
// Grown up by June: a fresh transplant, rooted in 15 cm, would ask for water every day.
const std::string tomato = tomatoes_from("2025-04-15");

Today ask(const Garden& garden, std::chrono::year_month_day date, const Journal& journal = {}, int days = 60,
          int forecast_days = 0) {
  const auto sky = noonleaf::sky_over(garden.site, steady_weather(first, days, forecast_days));
  return noonleaf::plan_today(garden, journal, sky, {.date = date});
}

/// The first day, from `from` on, whose dawn finds the tomatoes of an unwatered bed beyond RAW.
std::chrono::year_month_day first_thirsty_day(const Garden& garden) {
  for (std::chrono::sys_days day = first; day < first + std::chrono::days(60); day += std::chrono::days(1)) {
    const Today today = ask(garden, day);
    if (today.beds[0].plantings[0].dr_mm > today.beds[0].plantings[0].raw_mm) return day;
  }
  BOOST_FAIL("never thirsty");
  return {};
}

/// The day itself, or the Monday after it.
std::chrono::sys_days workday_from(std::chrono::sys_days day) {
  while (std::chrono::weekday(day).iso_encoding() > 5) day += std::chrono::days(1);
  return day;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(today)

BOOST_AUTO_TEST_CASE(full_soil_is_left_alone) {
  const Today answer = ask(invented_garden(tomato), 2025y / 6 / 3);
  BOOST_TEST((answer.beds[0].action == BedAction::leave_alone));
  BOOST_TEST((answer.beds[0].reason == BedReason::lasts));
  BOOST_TEST(answer.beds[0].plantings[0].limit_day.has_value());
}

BOOST_AUTO_TEST_CASE(a_bed_is_opened_before_its_limit_and_filled_no_further) {
  const Garden garden = invented_garden(tomato);
  Garden daily = garden;
  daily.caretakers[0].hours = {*noonleaf::parse_weekly_hours("daily 06:00-14:00")};
  const std::chrono::year_month_day thirsty = first_thirsty_day(daily);
  const std::chrono::year_month_day eve = std::chrono::sys_days(thirsty) - std::chrono::days(1);
  const Today answer = ask(daily, eve);
  const auto& bed = answer.beds[0];
  BOOST_TEST((bed.action == BedAction::open));
  BOOST_TEST((bed.reason == BedReason::limit_before_chance));
  BOOST_TEST((bed.plantings[0].limit_day == eve));
  BOOST_TEST(bed.run.net_depth_mm == bed.plantings[0].dr_mm);
  // An even sprinkler of 30 mm/h: two minutes a millimetre, in whole minutes or fives.
  BOOST_TEST(std::abs(bed.run.minutes - 2 * bed.plantings[0].dr_mm) <= 2.5);
  BOOST_TEST((ask(daily, std::chrono::sys_days(eve) - std::chrono::days(1)).beds[0].action ==
              BedAction::leave_alone));
}

// On a Friday the next chance is Monday: a bed that would pass its limit on Sunday is opened on Friday.
BOOST_AUTO_TEST_CASE(the_weekend_counts) {
  const Garden garden = invented_garden(tomato);
  Garden daily = garden;
  daily.caretakers[0].hours = {*noonleaf::parse_weekly_hours("daily 06:00-14:00")};
  const std::chrono::sys_days friday = 2025y / 6 / 20;
  bool seen = false;
  for (int days_ago = 1; days_ago < 10; ++days_ago) {  // filled some days before, so that the limit wanders
    const Journal journal{watered(friday - std::chrono::days(days_ago), 240)};
    const Today weekdays = ask(garden, friday, journal), every_day = ask(daily, friday, journal);
    const auto limit = weekdays.beds[0].plantings[0].limit_day;
    BOOST_TEST((weekdays.beds[0].next_chance == std::chrono::year_month_day(friday + std::chrono::days(3))));
    const bool at_weekend = limit && std::chrono::sys_days(*limit) > friday &&
                            std::chrono::sys_days(*limit) < friday + std::chrono::days(3);
    if (!at_weekend) continue;
    seen = true;
    BOOST_TEST((weekdays.beds[0].action == BedAction::open));
    BOOST_TEST((every_day.beds[0].action == BedAction::leave_alone));
  }
  BOOST_TEST(seen);
}

BOOST_AUTO_TEST_CASE(what_ran_this_morning_is_taken_off) {
  const Garden garden = invented_garden(tomato);
  const std::chrono::sys_days day = workday_from(first_thirsty_day(garden));
  const Today before = ask(garden, day), after = ask(garden, day, {watered(day, 10)}),
              full = ask(garden, day, {watered(day, 240)});
  BOOST_TEST((before.beds[0].action == BedAction::open));
  BOOST_TEST(after.beds[0].minutes_run_today == 10);
  BOOST_TEST(after.beds[0].plantings[0].dr_mm == before.beds[0].plantings[0].dr_mm - 5,
             boost::test_tools::tolerance(1e-9));
  BOOST_TEST((full.beds[0].action == BedAction::leave_alone));
}

BOOST_AUTO_TEST_CASE(nobody_on_site_blocks_the_run_and_says_so) {
  const Garden garden = invented_garden(tomato);
  std::chrono::sys_days saturday = first_thirsty_day(garden);
  while (std::chrono::weekday(saturday) != std::chrono::Saturday) saturday += std::chrono::days(1);
  const Today answer = ask(garden, saturday);
  BOOST_TEST((answer.beds[0].action == BedAction::blocked));
  BOOST_TEST((answer.beds[0].obstacle == noonleaf::RunObstacle::nobody_on_site));
  BOOST_TEST(answer.opening_order.empty());
}

BOOST_AUTO_TEST_CASE(what_ran_this_evening_is_taken_off_too) {
  const Garden garden = invented_garden(tomato);
  const std::chrono::year_month_day day = first_thirsty_day(garden);
  auto evening = watered(day, 10);
  evening.time_of_day = 1110min;
  const double before = ask(garden, day).beds[0].plantings[0].dr_mm;
  BOOST_TEST(ask(garden, day, {evening}).beds[0].plantings[0].dr_mm == before - 5,
             boost::test_tools::tolerance(1e-9));
}

BOOST_AUTO_TEST_CASE(a_crop_whose_season_is_over_asks_for_nothing) {
  const Garden garden = invented_garden("[[bed.planting]]\ncrop = \"radish\"\nsown = 2025-04-20\n");
  const Today answer = ask(garden, 2025y / 7 / 15);
  BOOST_TEST((answer.beds[0].plantings[0].stage == noonleaf::Stage::over));
  BOOST_TEST((answer.beds[0].action == BedAction::leave_alone));
  BOOST_TEST((answer.beds[0].plantings[0].wilt.verdict == noonleaf::WiltVerdict::unknown));
}

BOOST_AUTO_TEST_CASE(no_tap_is_opened_in_frost) {
  const Garden garden = invented_garden(tomato);
  const std::chrono::sys_days day = workday_from(first_thirsty_day(garden));
  auto series = steady_weather(first, 60);
  series.days[static_cast<std::size_t>((day - first).count())].t_min_c = -2;
  const Today answer =
      noonleaf::plan_today(garden, {}, noonleaf::sky_over(garden.site, series), {.date = day});
  BOOST_TEST((answer.beds[0].action == BedAction::blocked));
  BOOST_TEST((answer.beds[0].obstacle == noonleaf::RunObstacle::frost));
}

BOOST_AUTO_TEST_CASE(a_run_is_cut_to_the_time_there_is_and_leaves_the_rest_over) {
  Garden garden = invented_garden(tomato);
  garden.caretakers[0].hours = {*noonleaf::parse_weekly_hours("daily 06:00-06:20")};
  const std::chrono::sys_days day = std::chrono::sys_days(first_thirsty_day(garden)) + std::chrono::days(3);
  const Today answer = ask(garden, day, nothing_ran_before(day));
  BOOST_TEST((answer.beds[0].action == BedAction::open));
  BOOST_TEST(answer.beds[0].run.minutes == 20);
  BOOST_TEST(answer.beds[0].run.left_over_net_mm == answer.beds[0].plantings[0].dr_mm - 10,
             boost::test_tools::tolerance(1e-9));
}

BOOST_AUTO_TEST_CASE(a_huge_deficit_does_not_break_the_answer) {
  const Garden garden = invented_garden(tomato);
  BOOST_TEST(noonleaf::bed_run(garden, garden.beds[0], 500).left_over_net_mm > 0);
}

BOOST_AUTO_TEST_CASE(seed_asks_for_its_top_layer_only) {
  const Garden garden = invented_garden("[[bed.planting]]\ncrop = \"carrot\"\nsown = 2025-06-10\n");
  const Today answer = ask(garden, 2025y / 6 / 12, nothing_ran_before(2025y / 6 / 12));
  const auto& planting = answer.beds[0].plantings[0];
  BOOST_TEST(planting.in_seed_zone);
  BOOST_TEST((answer.beds[0].reason == BedReason::seed_zone_dry));
  BOOST_TEST(answer.beds[0].run.net_depth_mm == planting.top_layer_mm);
  BOOST_TEST(!ask(garden, 2025y / 6 / 25).beds[0].plantings[0].in_seed_zone);
}

BOOST_AUTO_TEST_CASE(rain_to_come_does_not_close_a_tap) {
  const Garden garden = invented_garden(tomato);
  const std::chrono::sys_days day = workday_from(first_thirsty_day(garden));
  auto series = steady_weather(first, 60, 60 - static_cast<int>((day - first).count()));
  series.days[static_cast<std::size_t>((day - first).count())].rain_mm = 80;
  const auto sky = noonleaf::sky_over(garden.site, series);
  BOOST_TEST((noonleaf::plan_today(garden, {}, sky, {.date = day}).beds[0].action == BedAction::open));
}

BOOST_AUTO_TEST_CASE(bare_ground_asks_for_nothing) {
  const Garden garden = invented_garden(
      "[[bed.planting]]\ncrop = \"tomato\"\ntransplanted = 2025-06-01\npulled = 2025-06-20\n");
  const Today answer = ask(garden, 2025y / 6 / 30);
  BOOST_TEST(answer.beds[0].plantings.empty());
  BOOST_TEST((answer.beds[0].reason == BedReason::nothing_grows));
}

BOOST_AUTO_TEST_CASE(a_day_beyond_the_weather_is_refused) {
  BOOST_CHECK_EXCEPTION(
      ask(invented_garden(tomato), 2025y / 9 / 1), noonleaf::Error, [](const noonleaf::Error& refused) {
        return std::string(refused.what()).find("the files hold 2025-06-01 to 2025-07-30") !=
               std::string::npos;
      });
}

BOOST_AUTO_TEST_CASE(what_is_not_measured_is_listed) {
  using noonleaf::NotMeasured;
  Garden garden = invented_garden("[[bed.planting]]\ncrop = \"chard\"\ntransplanted = 2025-06-01\n");
  const Today answer = ask(garden, 2025y / 6 / 20, {}, 60, 45);
  const auto lists = [&](NotMeasured fact) {
    return std::any_of(answer.estimates.begin(), answer.estimates.end(),
                       [&](const noonleaf::Estimate& each) { return each.fact == fact; });
  };
  BOOST_TEST(lists(NotMeasured::forecast_weather));
  BOOST_TEST(lists(NotMeasured::surrogate_crop));
  BOOST_TEST(lists(NotMeasured::journal_empty));
  BOOST_TEST(lists(NotMeasured::soil_full));
  BOOST_TEST(!lists(NotMeasured::sun_from_temperature));
}

BOOST_AUTO_TEST_CASE(a_mulch_that_is_not_reckoned_with_is_said) {
  noonleaf::JournalEntry mulch;
  mulch.event = noonleaf::JournalEvent::mulch;
  mulch.date = 2025y / 6 / 10;
  mulch.bed = "a";
  const Today answer = ask(invented_garden(tomato), 2025y / 6 / 11, {mulch});
  BOOST_TEST(
      std::any_of(answer.estimates.begin(), answer.estimates.end(), [](const noonleaf::Estimate& each) {
        return each.fact == noonleaf::NotMeasured::mulch_unsaid && each.date == 2025y / 6 / 10 &&
               each.bed == "a";
      }));
}

BOOST_AUTO_TEST_SUITE_END()
