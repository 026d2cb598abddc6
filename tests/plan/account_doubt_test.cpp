#include "noonleaf/plan/account_doubt.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

#include "noonleaf/plan/today.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::AccountDoubt;
using noonleaf::Culprit;
using noonleaf::SoilCheck;

namespace {

SoilCheck check(double before_mm, double difference_mm, double water_behind_mm, double used_behind_mm) {
  SoilCheck result;
  result.before = {before_mm, 5};
  result.found = {before_mm + difference_mm, 5};
  result.water_behind_mm = water_behind_mm;
  result.used_behind_mm = used_behind_mm;
  return result;
}

// The differences are made by one culprit alone: it is named, with its size, and explains all of them.
std::vector<SoilCheck> by_rate() {
  return {check(40, 12, 30, 60), check(15, 20, 50, 40), check(30, 8, 20, 50)};
}
std::vector<SoilCheck> by_crop() {
  return {check(20, 12, 50, 40), check(40, 9, 10, 30), check(10, 18, 30, 60)};
}
std::vector<SoilCheck> by_soil() {
  return {check(20, 8, 50, 60), check(40, 16, 10, 20), check(25, 10, 40, 50)};
}

}  // namespace

BOOST_AUTO_TEST_SUITE(account_doubt)

BOOST_AUTO_TEST_CASE(the_culprit_that_made_the_differences_is_named_first) {
  const struct {
    std::vector<SoilCheck> checks;
    Culprit culprit;
    double share;
    noonleaf::RateBasis basis;
  } cases[] = {{by_rate(), Culprit::rate, -0.4, noonleaf::RateBasis::guess},
               {by_crop(), Culprit::crop_stage, 0.3, noonleaf::RateBasis::cans_in_bed},
               {by_soil(), Culprit::soil, -0.4, noonleaf::RateBasis::cans_in_bed}};
  for (const auto& each : cases) {
    const auto doubt = noonleaf::account_doubt(each.checks, each.basis);
    BOOST_REQUIRE(doubt.has_value());
    BOOST_TEST((doubt->suspects.front().culprit == each.culprit), code(doubt->suspects.front().culprit));
    BOOST_TEST(std::abs(doubt->suspects.front().share - each.share) < 1e-9);
    BOOST_TEST(std::abs(doubt->suspects.front().explained_frac - 1) < 1e-9);
    BOOST_TEST(doubt->suspects[1].explained_frac < 0.95);
    BOOST_TEST(doubt->entry_ids.size() == 3U);
  }
}

BOOST_AUTO_TEST_CASE(two_checks_or_a_small_or_mixed_difference_raise_no_doubt) {
  std::vector<SoilCheck> checks = by_rate();
  BOOST_TEST(!noonleaf::account_doubt({checks.data(), 2}, noonleaf::RateBasis::guess).has_value());
  checks[1].found.dr_mm = checks[1].before.dr_mm - 20;  // wetter, among drier
  BOOST_TEST(!noonleaf::account_doubt(checks, noonleaf::RateBasis::guess).has_value());
  checks = by_rate();
  for (SoilCheck& each : checks)
    each.found.dr_mm = each.before.dr_mm + 8;  // 8 / sqrt(5^2 + 5^2), times sqrt(3): 1.96
  BOOST_TEST(!noonleaf::account_doubt(checks, noonleaf::RateBasis::guess).has_value());
  for (SoilCheck& each : checks) each.found.dr_mm = each.before.dr_mm + 8.5;  // 2.08
  BOOST_TEST(noonleaf::account_doubt(checks, noonleaf::RateBasis::guess).has_value());
  BOOST_TEST(!noonleaf::account_doubt({}, noonleaf::RateBasis::guess).has_value());
}

BOOST_AUTO_TEST_CASE(an_agreement_ends_the_row) {
  std::vector<SoilCheck> checks = by_rate();
  checks.insert(checks.begin() + 1, check(20, 0, 30, 30));
  BOOST_TEST(!noonleaf::account_doubt(checks, noonleaf::RateBasis::guess).has_value());
}

// From garden to doubt: the file says 30 mm/h, in truth it is 6. The handfuls are what the true account
// shows.
BOOST_AUTO_TEST_CASE(a_sprinkler_that_brings_less_is_doubted_by_today) {
  const auto garden = invented_garden(tomatoes_from("2025-04-15"));
  auto true_garden = garden;
  true_garden.sprinklers[0].rate.rate_mm_h = 6;
  const auto sky = noonleaf::sky_over(garden.site, steady_weather(2025y / 6 / 1, 60, 0));
  noonleaf::Journal journal;
  for (int after = 0; after < 24; ++after) {
    noonleaf::JournalEntry run;
    run.date = std::chrono::sys_days(2025y / 6 / 4) + std::chrono::days(after);
    run.event = noonleaf::JournalEvent::water;
    run.bed = "a";
    run.minutes = after % 3 == 0 ? 36 : 0;  // and of the other days it is known that nothing ran
    journal.push_back(run);
  }
  for (const auto date : {2025y / 6 / 12, 2025y / 6 / 18, 2025y / 6 / 24}) {
    const auto truth = noonleaf::accounts_of_bed(true_garden, 0, journal, sky, date).front();
    const double depleted = truth.dawn.dr_mm / truth.dry_ahead.days.front().taw_mm;
    noonleaf::JournalEntry look;
    look.date = date;
    look.event = noonleaf::JournalEvent::feel;
    look.feel = static_cast<noonleaf::SoilFeel>(std::max(0, 3 - static_cast<int>(4 * depleted)));
    look.bed = "b";  // so that the truth is not set right by its own handfuls
    journal.push_back(look);
  }
  for (auto& entry : journal) entry.bed = "a";
  const auto today = noonleaf::plan_today(garden, journal, sky, {.date = 2025y / 6 / 24});
  const auto& checks = today.beds[0].plantings[0].soil_checks;
  BOOST_REQUIRE(checks.size() == 3U);
  const auto doubt = noonleaf::account_doubt(checks, noonleaf::RateBasis::guess);
  BOOST_REQUIRE(doubt.has_value());
  BOOST_TEST(doubt->least_difference_mm > 0);
  BOOST_TEST((doubt->suspects.front().culprit == Culprit::rate), code(doubt->suspects.front().culprit));
  BOOST_TEST(doubt->suspects.front().share < -0.5);
  BOOST_TEST(doubt->suspects.front().explained_frac > 0.8);
  BOOST_TEST((noonleaf::account_doubt(checks, noonleaf::RateBasis::cans_in_bed)->suspects.front().culprit ==
              Culprit::crop_stage));
}

BOOST_AUTO_TEST_SUITE_END()
