#include "noonleaf/plan/week.hpp"

#include <algorithm>

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/garden/zone.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::Garden;
using noonleaf::RelaxationKind;
using noonleaf::Sky;
using noonleaf::WeekLimit;
using noonleaf::WeekPlan;
using noonleaf::WeekRun;

namespace {

const std::string tomatoes = tomatoes_from("2025-05-01");

constexpr std::chrono::year_month_day monday{2025y / 7 / 7};

Sky sky_of(const Garden& garden) {
  return noonleaf::sky_over(garden.site, steady_weather(std::chrono::sys_days(2025y / 5 / 1), 90, 14));
}

WeekPlan week_of(const Garden& garden, int days = 7) {
  return noonleaf::plan_week(garden, {}, sky_of(garden), {.first = monday, .days = days});
}

noonleaf::WeeklyHours hours(std::string_view text) { return *noonleaf::parse_weekly_hours(text); }

noonleaf::WateringRestriction only_on(int weekday) {
  noonleaf::WateringRestriction restriction;
  restriction.name = "city stage 2";
  restriction.weekdays.reset();
  restriction.weekdays.set(static_cast<std::size_t>(weekday));
  return restriction;
}

bool is_weekend(std::chrono::year_month_day date) {
  const std::chrono::weekday day{std::chrono::sys_days(date)};
  return day == std::chrono::Saturday || day == std::chrono::Sunday;
}

/// Bed, minutes, clock times and people of the plan's first day against `today`; the number of runs.
int first_day_agrees(const Garden& garden, const noonleaf::Journal& journal, const Sky& sky,
                     std::chrono::year_month_day date, std::chrono::minutes from) {
  const auto today = noonleaf::plan_today(garden, journal, sky, {.date = date, .from = from});
  const WeekPlan plan = noonleaf::plan_week(garden, journal, sky, {.first = date, .from = from, .days = 3});
  std::vector<WeekRun> first;
  for (const WeekRun& run : plan.runs) {
    if (run.date == date) first.push_back(run);
  }
  BOOST_REQUIRE(first.size() == today.opening_order.size());
  for (std::size_t index = 0; index < first.size(); ++index) {
    const auto& bed = today.beds[today.opening_order[index]];
    BOOST_TEST(first[index].bed == bed.bed);
    BOOST_TEST(first[index].minutes == bed.run.minutes);
    BOOST_TEST(first[index].depth_mm == bed.run.mean_depth_mm);
    BOOST_TEST((first[index].cycles.front().begin == bed.slot->begin));
    BOOST_TEST((first[index].cycles.back().end == bed.slot->end));
    BOOST_TEST(first[index].closer == bed.slot->closer);
    double sum = 0;
    for (const auto& cycle : first[index].cycles)
      sum += static_cast<double>((cycle.end - cycle.begin).count());
    BOOST_TEST(sum == first[index].minutes);
  }
  return static_cast<int>(first.size());
}

}  // namespace

BOOST_AUTO_TEST_SUITE(week)

BOOST_AUTO_TEST_CASE(a_garden_with_people_enough_suffers_nothing) {
  const Garden garden = invented_garden(tomatoes);
  const WeekPlan plan = week_of(garden);
  BOOST_TEST(!plan.runs.empty());
  BOOST_TEST(plan.proof.optimal);
  BOOST_TEST(plan.proof.bound_stress_l == plan.proof.stress_l);
  BOOST_TEST((plan.looks_to == 2025y / 7 / 14));  // the Monday after: somebody is there again
  for (const WeekRun& run : plan.runs) {
    BOOST_TEST(!is_weekend(run.date));
    BOOST_TEST((run.cycles.front().begin >= 6h && run.cycles.back().end <= 14h));
    BOOST_TEST(run.net_depth_mm <= run.depletion_before_mm + 1e-9);
    BOOST_TEST(run.depth_mm == noonleaf::infiltrated_depth_mm(garden.sprinklers[0].rate, run.minutes).mean_mm,
               boost::test_tools::tolerance(1e-9));
  }
}

BOOST_AUTO_TEST_CASE(the_days_agree_with_the_runs_and_with_each_other) {
  const WeekPlan plan = week_of(invented_garden(tomatoes));
  BOOST_REQUIRE(plan.beds.size() == 1U);
  BOOST_REQUIRE(plan.beds[0].days.size() == 7U);
  double by_days = 0, by_runs = 0;
  for (std::size_t day = 0; day < 7; ++day) {
    const auto& here = plan.beds[0].days[day];
    by_days += here.irrigation_mm;
    BOOST_TEST(here.depletion_dawn_mm <= here.depletion_dawn_dry_mm + 1e-9);
    if (day > 0)
      BOOST_TEST(here.depletion_dawn_mm == plan.beds[0].days[day - 1].depletion_close_mm,
                 boost::test_tools::tolerance(0.2));  // roots grow into soil of another wetness
  }
  for (const WeekRun& run : plan.runs) by_runs += run.depth_mm;
  BOOST_TEST(by_days == by_runs, boost::test_tools::tolerance(1e-9));
}

// The sheet and the screen disagreed about the same day: other minutes, other beds.
BOOST_AUTO_TEST_CASE(the_first_day_is_what_today_says) {
  const std::string mixed =
      tomatoes + "share_pct = 60\n[[bed.planting]]\ncrop = \"carrot\"\nsown = 2025-07-04\nshare_pct = 40\n";
  for (const std::string& plantings : {tomatoes, mixed}) {
    Garden garden = invented_garden(plantings);
    for (const double slope_pct : {0.0, 15.0}) {
      garden.beds[0].framed = slope_pct == 0;
      garden.beds[0].slope_pct = slope_pct;
      for (const int day : {0, 4, 6}) {
        const std::chrono::year_month_day date{std::chrono::sys_days(monday) + std::chrono::days(day)};
        for (const auto from : {0min, 830min}) {
          first_day_agrees(garden, nothing_ran_before(date), sky_of(garden), date, from);
          first_day_agrees(garden, {}, sky_of(garden), date, from);  // runs that nobody wrote down
        }
      }
    }
  }
}

BOOST_AUTO_TEST_CASE(the_first_day_is_what_today_says_in_the_demo_garden) {
  const auto demo = noonleaf::read_garden_folder(NOONLEAF_DEMO_FOLDER, "demo");
  const Sky sky = noonleaf::sky_over(demo.garden.site, demo.weather);
  int runs = 0;
  for (int day = 0; day < 6; ++day) {
    const std::chrono::year_month_day date{std::chrono::sys_days(*demo.garden.site.demo_date) -
                                           std::chrono::days(day)};
    runs += first_day_agrees(demo.garden, demo.journal, sky, date, 0min);
  }
  BOOST_TEST(runs > 5);
}

BOOST_AUTO_TEST_CASE(the_rain_that_spares_a_run_is_that_of_the_run) {
  Garden garden = invented_garden(tomatoes);
  garden.beds[0].rain_catch_frac = 0.5;
  const WeekPlan plan = week_of(garden, 14);
  BOOST_REQUIRE(plan.runs.size() > 1U);
  bool differ = false;
  for (const WeekRun& run : plan.runs) {
    BOOST_TEST(run.skip_rain_mm == run.net_depth_mm / 0.5, boost::test_tools::tolerance(1e-9));
    differ = differ || std::abs(run.skip_rain_mm - plan.runs[0].skip_rain_mm) > 1;
  }
  BOOST_TEST(differ);
  garden.beds[0].rain_catch_frac = 0;
  for (const WeekRun& run : week_of(garden, 14).runs) BOOST_TEST(noonleaf::is_missing(run.skip_rain_mm));
}

// A run across a clock change ran an hour longer, or shorter, than its minutes.
BOOST_AUTO_TEST_CASE(no_run_crosses_a_clock_change) {
  Garden garden = invented_garden(tomatoes);
  garden.caretakers[0].hours = {hours("daily 00:30-03:30")};
  for (const std::chrono::year_month_day change : {2025y / 3 / 9, 2025y / 11 / 2}) {
    const auto sunday = std::chrono::sys_days(change);
    garden.beds[0].plantings[0].season.start = std::chrono::year_month_day(sunday - std::chrono::days(60));
    const Sky sky = noonleaf::sky_over(garden.site, steady_weather(sunday - std::chrono::days(80), 100));
    int runs = 0;
    for (int before = 0; before < 3; ++before) {
      const std::chrono::year_month_day from{sunday - std::chrono::days(before)};
      const auto plan =
          noonleaf::plan_week(garden, nothing_ran_before(from), sky, {.first = from, .days = 3});
      for (const WeekRun& run : plan.runs) {
        for (const auto& cycle : run.cycles) {
          BOOST_TEST((noonleaf::elapsed(garden.site.zone, {run.date, cycle.begin}, {run.date, cycle.end}) ==
                      cycle.end - cycle.begin));
        }
        if (run.date == change) ++runs;
      }
    }
    BOOST_TEST(runs > 0);
  }
}

// et_mm was that of the root zone beside the depletion of the top layer.
BOOST_AUTO_TEST_CASE(the_sums_of_a_day_add_up) {
  const std::string seeds = "[[bed.planting]]\ncrop = \"carrot\"\nsown = 2025-07-04\n";
  for (const std::string& planting : {tomatoes, seeds}) {
    bool any_seedbed = false, any_water = false;
    const WeekPlan plan = week_of(invented_garden(planting), 10);
    for (const auto& day : plan.beds[0].days) {
      any_seedbed = any_seedbed || day.seedbed;
      const double close_mm =
          day.depletion_dawn_mm - day.rain_counted_mm - day.irrigation_mm + day.et_mm + day.drained_mm;
      BOOST_TEST(day.depletion_close_mm == close_mm, boost::test_tools::tolerance(1e-9));
      BOOST_TEST(day.et_mm >= -1e-9);
      BOOST_TEST(day.et_mm < 12);  // ET0 of this weather is about 6 mm
      any_water = any_water || day.irrigation_mm > 0;
    }
    BOOST_TEST(any_water);
    BOOST_TEST(any_seedbed == (planting == seeds));
  }
}

// The cost was that until the next arrival, though a colleague stood by.
BOOST_AUTO_TEST_CASE(a_colleague_on_site_finds_an_open_tap) {
  Garden garden = invented_garden(tomatoes);
  garden.sprinklers[0].rate.flow_l_min = 10;
  garden.caretakers.push_back({.id = "teacher", .hours = {hours("mon-fri 05:00-15:00")}});
  const WeekPlan plan = week_of(garden);
  BOOST_REQUIRE(!plan.runs.empty());
  for (const WeekRun& run : plan.runs) {
    BOOST_TEST((run.unclosed.until_date == run.date));
    BOOST_REQUIRE(run.unclosed.finder.has_value());
    BOOST_TEST(*run.unclosed.finder != run.closer);
    BOOST_TEST(run.unclosed.extra_hours < 1.1);  // before six the teacher is alone
  }
}

BOOST_AUTO_TEST_CASE(opener_and_closer_may_be_two_people_and_both_are_there) {
  Garden garden = invented_garden(tomatoes);
  garden.caretakers = {{.id = "early", .hours = {hours("daily 06:00-06:10")}},
                       {.id = "late", .hours = {hours("daily 06:30-07:00")}}};
  const WeekPlan plan = week_of(garden);
  BOOST_REQUIRE(!plan.runs.empty());
  for (const WeekRun& run : plan.runs) {
    BOOST_TEST(run.opener == 0U);
    BOOST_TEST(run.closer == 1U);
    BOOST_TEST((run.cycles.front().begin <= 6h + 5min));
    BOOST_TEST((run.cycles.back().end >= 6h + 35min && run.cycles.back().end <= 7h));
  }
}

BOOST_AUTO_TEST_CASE(no_run_without_a_closer) {
  Garden garden = invented_garden(tomatoes);
  garden.caretakers = {{.id = "early", .hours = {hours("daily 06:00-06:10")}}};
  for (const WeekRun& run : week_of(garden, 14).runs) BOOST_TEST((run.cycles.back().end <= 6h + 10min));
  garden.caretakers[0].hours.clear();
  const WeekPlan plan = week_of(garden, 14);
  BOOST_TEST(plan.runs.empty());
  BOOST_REQUIRE(plan.misses.size() == 1U);
  BOOST_TEST((plan.misses[0].limit == WeekLimit::nobody_on_site));
  BOOST_TEST((plan.misses[0].relaxation.kind == RelaxationKind::come_then));
}

BOOST_AUTO_TEST_CASE(an_impossible_rule_is_named_with_the_cheapest_way_out) {
  Garden garden = invented_garden(tomatoes);
  garden.rules.restrictions = {only_on(0)};  // Sunday, when nobody is there
  garden.rules.restrictions[0].exempt_hand = true;
  const WeekPlan plan = week_of(garden, 14);
  BOOST_TEST(plan.runs.empty());
  BOOST_REQUIRE(plan.misses.size() == 1U);
  const auto& miss = plan.misses[0];
  BOOST_TEST(miss.stress_mm > 1.0);
  BOOST_TEST((miss.limit == WeekLimit::nobody_on_site || miss.limit == WeekLimit::restriction));
  BOOST_TEST((miss.relaxation.kind != RelaxationKind::none));
  BOOST_TEST(miss.relaxation.stress_left_mm < miss.stress_mm);
}

BOOST_AUTO_TEST_CASE(two_rules_that_leave_no_day_do_the_least_harm) {
  // Tuesdays by one rule, odd dates by another: within the fortnight only 15 July is both; nobody is there on
  // it.
  Garden garden = invented_garden(tomatoes);
  garden.caretakers[0].away = {{.name = "leave", .first = 2025y / 7 / 15, .last = 2025y / 7 / 15}};
  garden.rules.restrictions = {only_on(2), {}};
  garden.rules.restrictions[1].name = "odd dates";
  garden.rules.restrictions[1].dates = noonleaf::DateParity::odd;
  const WeekPlan plan = week_of(garden, 14);
  BOOST_TEST(plan.runs.empty());
  BOOST_REQUIRE(plan.misses.size() == 1U);
  BOOST_REQUIRE((plan.misses[0].limit == WeekLimit::restriction));
  BOOST_REQUIRE(plan.misses[0].restriction.has_value());
  BOOST_TEST((plan.misses[0].relaxation.kind == RelaxationKind::allow_weekday));
}

BOOST_AUTO_TEST_CASE(a_restriction_keeps_its_days_hours_and_exemptions) {
  Garden garden = invented_garden(tomatoes);
  garden.rules.restrictions = {only_on(4)};
  garden.rules.restrictions[0].hours = {hours("daily 07:00-09:00")};
  for (const WeekRun& run : week_of(garden).runs) {
    BOOST_TEST((run.date == 2025y / 7 / 10));
    BOOST_TEST((run.cycles.front().begin >= 7h && run.cycles.back().end <= 9h));
  }
  garden.rules.restrictions[0].drought_level = 2;  // not declared
  const auto free = week_of(garden).runs;
  BOOST_TEST(
      std::any_of(free.begin(), free.end(), [](const WeekRun& run) { return run.date != 2025y / 7 / 10; }));
  garden.rules.drought_level = 3;
  garden.rules.restrictions[0].exempt_drip = true;
  garden.sprinklers[0].kind = noonleaf::WettingKind::drip;
  const auto drip = week_of(garden).runs;
  BOOST_TEST(
      std::any_of(drip.begin(), drip.end(), [](const WeekRun& run) { return run.date != 2025y / 7 / 10; }));
}

BOOST_AUTO_TEST_CASE(reclaimed_water_is_refused_over_food_and_where_children_may_be) {
  Garden garden = invented_garden(tomatoes);
  garden.taps[0].reclaimed = true;
  WeekPlan plan = week_of(garden, 14);
  BOOST_TEST(plan.runs.empty());
  BOOST_REQUIRE(!plan.misses.empty());
  BOOST_TEST((plan.misses[0].limit == WeekLimit::reclaimed_on_food));  // whenever the children come
  garden.rules.quiet_hours = {hours("mon-fri 09:00-12:00")};
  plan = week_of(garden, 14);
  BOOST_TEST(plan.runs.empty());
  BOOST_REQUIRE(!plan.misses.empty());
  BOOST_TEST((plan.misses[0].limit == WeekLimit::reclaimed_on_food));
  BOOST_TEST((plan.misses[0].relaxation.kind == RelaxationKind::drinking_water));
  garden.sprinklers[0].kind = noonleaf::WettingKind::drip;
  BOOST_TEST(!week_of(garden).runs.empty());
}

BOOST_AUTO_TEST_CASE(wind_keeps_overhead_runs_to_calm_hours) {
  Garden garden = invented_garden(tomatoes);
  garden.caretakers[0].hours = {hours("daily 05:00-22:00")};
  garden.rules.wind_limit_m_s = 2.0;  // the day's mean: calm is before the wind gets up, and at night
  for (const WeekRun& run : week_of(garden).runs) {
    BOOST_TEST((run.cycles.back().end <= 9h || run.cycles.front().begin >= 19h));
    BOOST_TEST(run.evening_on_leaves == (run.cycles.front().begin >= 19h));
  }
}

BOOST_AUTO_TEST_CASE(frost_shuts_the_taps) {
  Garden garden = invented_garden(tomatoes);
  garden.rules.frost_lockout_c = 15;  // every night of the steady weather is as cold as that
  const WeekPlan plan = week_of(garden, 14);
  BOOST_TEST(plan.runs.empty());
  BOOST_REQUIRE(!plan.misses.empty());
  BOOST_TEST((plan.misses[0].limit == WeekLimit::frost));
}

BOOST_AUTO_TEST_CASE(a_sprinkler_that_draws_too_much_is_refused) {
  Garden garden = invented_garden(tomatoes);
  garden.taps[0].flow_l_min = 10;
  garden.sprinklers[0].rate.flow_l_min = 15;
  const WeekPlan plan = week_of(garden, 14);
  BOOST_TEST(plan.runs.empty());
  BOOST_REQUIRE(!plan.misses.empty());
  BOOST_TEST((plan.misses[0].limit == WeekLimit::tap_flow));
}

BOOST_AUTO_TEST_CASE(an_unclosed_run_costs_what_flows_until_somebody_comes) {
  Garden garden = invented_garden(tomatoes);
  garden.sprinklers[0].rate.flow_l_min = 10;
  garden.rules.restrictions = {only_on(5)};  // Friday: the next to come is there on Monday
  const WeekPlan plan = week_of(garden);
  BOOST_REQUIRE(plan.runs.size() == 1U);
  const WeekRun& run = plan.runs[0];
  BOOST_TEST((run.date == 2025y / 7 / 11));
  BOOST_TEST((run.unclosed.until_date == 2025y / 7 / 14));
  BOOST_TEST((run.unclosed.until == 6h));
  const auto extra = std::chrono::days(3) + 6h - run.cycles.back().end;
  BOOST_TEST(run.unclosed.extra_l ==
                 10.0 * static_cast<double>(std::chrono::duration_cast<std::chrono::minutes>(extra).count()),
             boost::test_tools::tolerance(1e-9));
  BOOST_TEST(run.unclosed.extra_depth_mm == run.unclosed.extra_hours * 30,
             boost::test_tools::tolerance(1e-9));
  BOOST_TEST(
      run.unclosed.percolation_mm == run.depth_mm + run.unclosed.extra_depth_mm - run.depletion_before_mm,
      boost::test_tools::tolerance(1e-9));
  BOOST_TEST(!run.backup.has_value());
}

BOOST_AUTO_TEST_CASE(holidays_and_leave_count) {
  Garden garden = invented_garden(tomatoes);
  garden.rules.holidays = {{.name = "festival", .first = monday, .last = 2025y / 7 / 9}};
  garden.caretakers[0].away = {{.name = "leave", .first = 2025y / 7 / 10, .last = 2025y / 7 / 10}};
  for (const WeekRun& run : week_of(garden).runs) BOOST_TEST((run.date == 2025y / 7 / 11));
}

BOOST_AUTO_TEST_CASE(letters_skip_those_that_are_taken) {
  Garden garden;
  garden.beds.resize(4);
  garden.beds[2].letter = "A";
  const auto letters = noonleaf::bed_letters(garden);
  BOOST_TEST(letters == (std::vector<std::string>{"B", "C", "A", "D"}), boost::test_tools::per_element());
}

BOOST_AUTO_TEST_CASE(a_week_without_weather_is_refused) {
  const Garden garden = invented_garden(tomatoes);
  BOOST_CHECK_THROW(noonleaf::plan_week(garden, {}, sky_of(garden), {.first = 2026y / 1 / 1}),
                    noonleaf::Error);
  BOOST_CHECK_THROW(noonleaf::plan_week(garden, {}, sky_of(garden), {.first = monday, .days = 15}),
                    noonleaf::Error);
}

BOOST_AUTO_TEST_SUITE_END()
