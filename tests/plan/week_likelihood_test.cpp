#include <algorithm>
#include <utility>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/garden/garden_folder.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/week.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::DayLikelihood;
using noonleaf::Garden;
using noonleaf::Likelihood;
using noonleaf::PlannedWater;
using noonleaf::Sky;
using noonleaf::WeekPlan;

namespace {

constexpr std::chrono::year_month_day monday{2025y / 7 / 7};
constexpr noonleaf::MemberOptions members{.members = 300, .seed = 1};

Garden garden() { return invented_garden(tomatoes_from("2025-05-01")); }

/// Two months of steady weather, the week after `monday` a forecast with so much rain on every day.
Sky sky_with(const Garden& garden, double forecast_rain_mm) {
  noonleaf::DailySeries series = steady_weather(std::chrono::sys_days(2025y / 5 / 1), 82, 14);
  for (noonleaf::DailyWeather& day : series.days)
    if (std::chrono::sys_days(day.date) > std::chrono::sys_days(monday)) day.rain_mm = forecast_rain_mm;
  return noonleaf::sky_over(garden.site, series);
}

noonleaf::Journal journal() { return nothing_ran_before(std::chrono::sys_days(monday)); }

const std::vector<DayLikelihood>& bed_days(const Likelihood& answer) {
  return answer.beds.at(0).plantings.at(0).days;
}

double sum(const std::vector<DayLikelihood>& days, double DayLikelihood::*share) {
  double total = 0;
  for (const DayLikelihood& day : days) total += day.*share;
  return total;
}

WeekPlan week(const Garden& garden, const Sky& sky) {
  return noonleaf::plan_week(garden, journal(), sky, {.first = monday, .days = 7});
}

}  // namespace

BOOST_AUTO_TEST_SUITE(week_likelihood)

BOOST_AUTO_TEST_CASE(with_the_plan_followed_fewer_members_are_short) {
  const Garden here = garden();
  const Sky sky = sky_with(here, 0);
  const WeekPlan plan = week(here, sky);
  BOOST_REQUIRE(!plan.runs.empty());
  const Likelihood with = likelihood_of_week(here, journal(), sky, plan, members);
  WeekPlan none = plan;
  none.runs.clear();
  const Likelihood without = likelihood_of_week(here, journal(), sky, none, members);
  BOOST_REQUIRE(bed_days(with).size() == 7u);
  BOOST_REQUIRE(bed_days(without).size() == 7u);
  for (std::size_t day = 0; day < 7; ++day) {
    BOOST_TEST(bed_days(with)[day].beyond_frac <= bed_days(without)[day].beyond_frac);
    BOOST_TEST(bed_days(with)[day].wilt_frac <= bed_days(without)[day].wilt_frac);
    BOOST_TEST(bed_days(with)[day].dr50_mm <= bed_days(without)[day].dr50_mm);
  }
  BOOST_TEST(sum(bed_days(with), &DayLikelihood::beyond_frac) + 1 <
             sum(bed_days(without), &DayLikelihood::beyond_frac));
}

BOOST_AUTO_TEST_CASE(more_rain_leaves_fewer_members_short) {
  const Garden here = garden();
  const Sky dry = sky_with(here, 0), wet = sky_with(here, 8);
  const WeekPlan plan = week(here, dry);  // the same runs under both
  const Likelihood without = likelihood_of_week(here, journal(), dry, plan, members);
  const Likelihood with = likelihood_of_week(here, journal(), wet, plan, members);
  for (std::size_t day = 0; day < 7; ++day)
    BOOST_TEST(bed_days(with)[day].beyond_frac <= bed_days(without)[day].beyond_frac);
  BOOST_TEST(sum(bed_days(with), &DayLikelihood::beyond_frac) <
             sum(bed_days(without), &DayLikelihood::beyond_frac));
}

BOOST_AUTO_TEST_CASE(more_water_leaves_fewer_members_short) {
  const Garden here = garden();
  const Sky sky = sky_with(here, 0);
  WeekPlan plan = week(here, sky);
  const Likelihood as_planned = likelihood_of_week(here, journal(), sky, plan, members);
  for (noonleaf::WeekRun& run : plan.runs) run.depth_mm /= 3;
  const Likelihood third = likelihood_of_week(here, journal(), sky, plan, members);
  BOOST_TEST(sum(bed_days(as_planned), &DayLikelihood::beyond_frac) <
             sum(bed_days(third), &DayLikelihood::beyond_frac));
}

BOOST_AUTO_TEST_CASE(alerts_have_the_shares_of_today) {
  const Garden here = garden();
  const Sky sky = sky_with(here, 3);
  const noonleaf::Today today = plan_today(here, journal(), sky, {.date = monday});
  const Likelihood all = likelihood_of_today(here, journal(), sky, today, members);
  const Likelihood first = likelihood_of_alerts(here, journal(), sky, today, members);
  const auto& one = all.beds.at(0).plantings.at(0);
  const auto& other = first.beds.at(0).plantings.at(0);
  BOOST_TEST(other.days.size() == 1u);
  for (const auto& [here_day, there] :
       {std::pair(one.days.front(), other.days.front()),
        std::pair(one.low_quarter_days.front(), other.low_quarter_days.front())}) {
    BOOST_TEST(here_day.beyond_frac == there.beyond_frac);
    BOOST_TEST(here_day.droop_frac == there.droop_frac);
    BOOST_TEST(here_day.stress_frac == there.stress_frac);
    BOOST_TEST(here_day.wilt_frac == there.wilt_frac);
    BOOST_TEST(here_day.dr10_mm == there.dr10_mm);
    BOOST_TEST(here_day.dr90_mm == there.dr90_mm);
  }
}

// The hours of the driest quarter had the water of the whole bed's mean.
BOOST_AUTO_TEST_CASE(where_hardly_any_water_falls_the_hours_have_hardly_any) {
  Garden here = garden();
  here.sprinklers[0].rate.du_lq_frac = 0.05;
  const Sky sky = sky_with(here, 0);
  const auto stress_of_low_quarter = [&](double depth_mm) {
    const Likelihood answer = likelihood_of(
        here, journal(), sky,
        {.date = monday, .n_days = 1, .options = members, .runs = {}, .planned = {{0, 0, depth_mm}}});
    return answer.beds.at(0).plantings.at(0).low_quarter_days.front().stress_frac;
  };
  const double without = stress_of_low_quarter(0);
  BOOST_REQUIRE(without > 0.5);
  BOOST_TEST(stress_of_low_quarter(25) > without - 0.1);
}

// The plan takes runs that nobody wrote down as done; so do its members.
BOOST_AUTO_TEST_CASE(runs_taken_as_done_are_in_the_members) {
  const auto demo = noonleaf::read_garden_folder(NOONLEAF_DEMO_FOLDER, "demo");
  const Sky sky = sky_over(demo.garden.site, demo.weather);
  WeekPlan plan =
      plan_week(demo.garden, demo.journal, sky, {.first = *demo.garden.site.demo_date, .days = 3});
  const auto doubted = std::find_if(plan.beds.begin(), plan.beds.end(), [](const noonleaf::WeekBed& bed) {
    return bed.open_question.has_value();
  });
  BOOST_REQUIRE(doubted != plan.beds.end());
  const auto dawn_of = [&](const WeekPlan& asked) {
    const Likelihood answer = likelihood_of_week(demo.garden, demo.journal, sky, asked, members);
    return answer.beds.at(doubted->bed).plantings.at(0).days.front().dr50_mm;
  };
  const double as_done = dawn_of(plan);
  for (noonleaf::WeekBed& bed : plan.beds) bed.open_question.reset();
  BOOST_TEST(as_done + 5 < dawn_of(plan));
}

BOOST_AUTO_TEST_SUITE_END()
