#include "noonleaf/plan/likelihood.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

#include "noonleaf/plan/bed_members.hpp"
#include "noonleaf/plan/today.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::BedLikelihood;
using noonleaf::CheapMeasurement;
using noonleaf::DayLikelihood;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::Likelihood;
using noonleaf::MemberOptions;
using noonleaf::Today;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
const std::string tomato = tomatoes_from("2025-04-15");

noonleaf::JournalEntry entry(noonleaf::JournalEvent event, std::chrono::year_month_day date) {
  noonleaf::JournalEntry out = entry_of(event, date);
  out.time_of_day = 360min;
  return out;
}

struct Asked {
  Garden garden = invented_garden(tomato);
  Journal journal{};
  std::chrono::year_month_day date = 2025y / 6 / 20;
  int days = 40, forecast_days = 15;
  MemberOptions options{.members = 400};

  noonleaf::Sky sky() const {
    return noonleaf::sky_over(garden.site, steady_weather(first, days, forecast_days));
  }
  Today today() const { return noonleaf::plan_today(garden, journal, sky(), {.date = date}); }
  Likelihood likelihood() const { return likelihood_of_today(garden, journal, sky(), today(), options); }
  const std::vector<DayLikelihood> bed_days() const { return likelihood().beds.at(0).plantings.at(0).days; }
};

}  // namespace

BOOST_AUTO_TEST_SUITE(likelihood)

BOOST_AUTO_TEST_CASE(shares_are_shares_and_depletion_is_in_order) {
  const Likelihood answer = Asked{}.likelihood();
  BOOST_TEST(answer.members == 400u);
  for (const auto* days :
       {&answer.beds[0].plantings[0].days, &answer.beds[0].plantings[0].low_quarter_days}) {
    BOOST_TEST(days->size() == noonleaf::days_ahead);
    double left = 0, wilted = 0;
    for (const DayLikelihood& day : *days) {
      for (const double share :
           {day.beyond_frac, day.left_frac, day.droop_frac, day.stress_frac, day.wilt_frac, day.wilted_frac})
        BOOST_TEST((share >= 0 && share <= 1));
      BOOST_TEST(day.left_frac >= left);  // who has left has left
      BOOST_TEST(day.wilted_frac >= wilted);
      BOOST_TEST(day.wilt_frac <= day.stress_frac);
      BOOST_TEST(day.dr10_mm <= day.dr50_mm);
      BOOST_TEST(day.dr50_mm <= day.dr90_mm);
      left = day.left_frac;
      wilted = day.wilted_frac;
    }
  }
}

// The member without errors is the garden's own account.
BOOST_AUTO_TEST_CASE(the_member_without_error_has_the_accounts_depletion) {
  const Asked asked;
  const auto sky = asked.sky();
  const auto accounts =
      noonleaf::accounts_of_bed(asked.garden, 0, asked.journal, sky, asked.date, noonleaf::days_ahead);
  const auto members =
      noonleaf::member_sky(asked.garden.site, sky, asked.date, noonleaf::days_ahead, asked.options);
  const auto draws =
      noonleaf::bed_draws(asked.garden, 0, asked.journal, accounts[0].soil, asked.date, asked.options);
  const std::vector<double> share(members.days, 1.0);
  const auto trace = noonleaf::members_of_planting(
      {asked.garden, 0, asked.journal, accounts[0], members, share, draws, asked.options},
      noonleaf::BedTrace::mean);
  for (std::size_t day = 0; day < members.days; ++day) {
    const auto& own = accounts[0].dry_ahead.days[day];
    BOOST_TEST(std::abs(trace.dr_mm[day * 401 + 400] - own.end.dr_mm) < 0.05);
    BOOST_TEST(std::abs(trace.raw_mm[day * 401 + 400] - own.raw_mm) < 0.05);
  }
  BOOST_TEST(std::abs(trace.dr_dawn_mm[400] - accounts[0].dry_ahead.days[0].start.dr_mm) < 1e-9);
}

BOOST_AUTO_TEST_CASE(the_middle_of_the_members_is_near_the_account) {
  const Asked asked;
  const auto accounts = noonleaf::accounts_of_bed(asked.garden, 0, asked.journal, asked.sky(), asked.date,
                                                  noonleaf::days_ahead);
  const auto days = asked.bed_days();
  const double taw = accounts[0].dry_ahead.days[0].taw_mm;
  for (std::size_t day = 0; day < 5; ++day)
    BOOST_TEST(std::abs(days[day].dr50_mm - accounts[0].dry_ahead.days[day].end.dr_mm) < 0.08 * taw);
}

// On forecast days and on those behind them; from a wet morning, so that no dry soil hides what the sky asks for.
BOOST_AUTO_TEST_CASE(the_members_of_a_bed_use_water_by_its_shade) {
  for (const double sun_frac : {1.0, 0.4}) {
    Asked asked{.date = 2025y / 6 / 2, .days = 4, .forecast_days = 2};
    asked.garden.beds[0].sun_frac = sun_frac;
    const auto ahead = noonleaf::accounts_of_bed(asked.garden, 0, asked.journal, asked.sky(), asked.date,
                                                 noonleaf::days_ahead)[0]
                           .dry_ahead;
    const auto members = asked.bed_days();
    const double used_mm = ahead.days[6].end.dr_mm - ahead.days[0].end.dr_mm;
    BOOST_TEST_CONTEXT("sun " << sun_frac << ", mm: " << used_mm << " and "
                              << members[6].dr50_mm - members[0].dr50_mm)
    BOOST_TEST(std::abs(members[6].dr50_mm - members[0].dr50_mm - used_mm) < 0.08 * used_mm);
  }
}

// As the balance: by what lies in the soil in the morning. A shallow bed, full the day before (TAW 14 mm), gives enough
// all day, though it is nearly empty at night.
BOOST_AUTO_TEST_CASE(half_of_the_demand_is_judged_in_the_morning) {
  Asked asked{.date = 2025y / 6 / 2};
  asked.garden.beds[0].plantings[0].season.root_limit_m = 0.10;
  asked.garden.beds[0].known_wet = asked.date;
  const auto days = asked.bed_days();
  BOOST_TEST(days[1].half_frac < 0.5);
  BOOST_TEST(days[1].dr50_mm > 11);
  BOOST_TEST(days[2].half_frac > 0.5);
  BOOST_TEST(days[2].halved_frac >= days[2].half_frac);
}

BOOST_AUTO_TEST_CASE(no_water_makes_every_later_day_likelier) {
  Asked asked;
  asked.date = 2025y / 6 / 2;
  const auto early = asked.bed_days();
  asked.date = 2025y / 6 / 5;
  const auto late = asked.bed_days();
  BOOST_TEST(early.front().left_frac < 0.5);
  BOOST_TEST(early.back().left_frac > early.front().left_frac);
  BOOST_TEST(late.front().left_frac >= early.front().left_frac);
}

BOOST_AUTO_TEST_CASE(a_soil_check_narrows_the_depletion) {
  Asked asked;
  const auto before = asked.bed_days();
  auto probe = entry(noonleaf::JournalEvent::feel, asked.date);
  probe.feel = noonleaf::SoilFeel::moist;
  asked.journal.push_back(probe);
  const auto after = asked.bed_days();
  BOOST_TEST(after.front().dr90_mm - after.front().dr10_mm < before.front().dr90_mm - before.front().dr10_mm);
}

BOOST_AUTO_TEST_CASE(the_same_seed_gives_the_same_answer) {
  const Asked asked;
  const auto one = asked.bed_days(), two = asked.bed_days();
  for (std::size_t day = 0; day < one.size(); ++day) {
    BOOST_TEST(one[day].left_frac == two[day].left_frac);
    BOOST_TEST(one[day].dr50_mm == two[day].dr50_mm);
  }
}

BOOST_AUTO_TEST_CASE(seeds_and_bare_beds_are_left_out) {
  Asked asked;
  asked.garden = invented_garden("[[bed.planting]]\ncrop = \"carrot\"\nsown = 2025-06-19\n");
  BOOST_TEST(asked.likelihood().beds.at(0).plantings.empty());
  asked.garden = invented_garden("");
  BOOST_TEST(asked.likelihood().beds.at(0).plantings.empty());
}

BOOST_AUTO_TEST_CASE(a_guessed_rate_is_what_to_measure) {
  Asked asked;
  asked.garden.sprinklers[0].rate.basis = noonleaf::RateBasis::guess;
  const Likelihood guess = asked.likelihood();
  BOOST_REQUIRE(!guess.measurements.empty());
  BOOST_CHECK(guess.measurements[0].what == CheapMeasurement::cans_test);
  BOOST_TEST(guess.measurements[0].explained_frac > 0.5);
  const auto& gain = guess.measurements[0];
  BOOST_TEST(gain.then.p90_min - gain.then.p10_min < gain.now.p90_min - gain.now.p10_min);
  // Cans in the bed already: the rate is no longer what is asked for, and the minutes are surer.
  asked.garden.sprinklers[0].rate.basis = noonleaf::RateBasis::cans_in_bed;
  const Likelihood cans = asked.likelihood();
  BOOST_REQUIRE(!cans.measurements.empty());
  BOOST_CHECK(cans.measurements[0].what != CheapMeasurement::cans_test);
  BOOST_TEST(cans.minutes[0].p90_min - cans.minutes[0].p10_min <
             guess.minutes[0].p90_min - guess.minutes[0].p10_min);
}

BOOST_AUTO_TEST_CASE(no_run_leaves_nothing_to_narrow) {
  Asked asked;
  asked.date = 2025y / 6 / 3;  // full soil
  const Likelihood answer = asked.likelihood();
  BOOST_TEST(answer.minutes.empty());
  BOOST_TEST(answer.measurements.empty());
}

BOOST_AUTO_TEST_SUITE_END()
