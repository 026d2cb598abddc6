#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/plan/likelihood.hpp"
#include "noonleaf/plan/round.hpp"
#include "noonleaf/plan/today.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::Garden;
using noonleaf::RoundNeed;
using noonleaf::Sky;

namespace {

const std::string tomatoes = tomatoes_from("2025-05-01");

constexpr std::chrono::year_month_day monday{2025y / 7 / 7};

Sky sky_of(const Garden& garden, int days = 75) {
  return noonleaf::sky_over(garden.site, steady_weather(std::chrono::sys_days(2025y / 5 / 1), days, 5));
}

constexpr std::chrono::year_month_day friday{2025y / 5 / 30};

/// 50 mm on the day before `friday`.
noonleaf::Journal watered_on_thursday() {
  noonleaf::JournalEntry water;
  water.event = noonleaf::JournalEvent::water;
  water.bed = "a";
  water.date = 2025y / 5 / 29;
  water.time_of_day = 360min;
  water.minutes = 100;
  return {water};
}

}  // namespace

BOOST_AUTO_TEST_SUITE(round_of_gardens)

BOOST_AUTO_TEST_CASE(a_dry_bed_with_somebody_there_is_watered_and_without_anybody_needs_a_person) {
  Garden garden = invented_garden(tomatoes);
  const Sky sky = sky_of(garden);
  const auto weekday = noonleaf::round_entry(garden, {}, sky, monday);  // weeks without water
  BOOST_TEST((weekday.need == RoundNeed::run_today));
  BOOST_TEST(weekday.litres > 0.0);
  const auto weekend = noonleaf::round_entry(garden, {}, sky, 2025y / 7 / 12);  // a Saturday
  BOOST_TEST((weekend.need == RoundNeed::person_needed));
  BOOST_TEST(weekend.dry_days == 2);
  BOOST_REQUIRE(weekend.next_chance.has_value());
  BOOST_TEST((*weekend.next_chance == 2025y / 7 / 14));
  BOOST_TEST(goes_before(weekend, weekday));
  garden.caretakers.clear();
  const auto nobody = noonleaf::round_entry(garden, {}, sky, monday);
  BOOST_TEST((nobody.need == RoundNeed::person_needed));
  BOOST_TEST(!nobody.next_chance.has_value());
  BOOST_TEST(goes_before(nobody, weekend));
}

// `today` leaves a bed alone that has had its run; the round asked for it once more.
BOOST_AUTO_TEST_CASE(a_bed_that_has_had_its_run_is_not_asked_for_again) {
  Garden garden = invented_garden(tomatoes);
  garden.sprinklers[0].longest_run_min = 20;  // so that the bed is dry behind its run too
  const Sky sky = sky_of(garden);
  const auto today = [&](const noonleaf::Journal& journal) {
    return noonleaf::plan_today(garden, journal, sky, {.date = monday}).beds[0];
  };
  const auto round = [&](const noonleaf::Journal& journal) {
    return noonleaf::round_entry(garden, journal, sky, monday, {.members = 0});
  };
  const double planned = today({}).run.minutes;
  BOOST_REQUIRE(today({}).run.left_over_net_mm > 0);
  BOOST_TEST(!round({}).done_today);
  for (const double ran : {planned / 2, planned}) {
    const noonleaf::Journal journal{watered(monday, ran)};
    const bool more = today(journal).driver.has_value();
    BOOST_TEST(more == (ran < planned));
    const auto entry = round(journal);
    BOOST_TEST((entry.need == (more ? RoundNeed::run_today : RoundNeed::lasts)), ran);
    BOOST_TEST(entry.done_today != more);
    BOOST_TEST((entry.litres > 0) == more);
  }
}

BOOST_AUTO_TEST_CASE(a_fresh_bed_is_less_down_than_one_that_nobody_watered) {
  const Garden garden = invented_garden(tomatoes);
  const auto fresh = noonleaf::round_entry(garden, {}, sky_of(garden), 2025y / 5 / 2);
  const auto dry = noonleaf::round_entry(garden, {}, sky_of(garden), monday);
  BOOST_TEST(fresh.depletion_mm < dry.depletion_mm);
  BOOST_TEST(dry.depletion_mm > dry.limit_mm);
}

BOOST_AUTO_TEST_CASE(a_day_without_weather_is_refused) {
  const Garden garden = invented_garden(tomatoes);
  BOOST_CHECK_THROW(noonleaf::round_entry(garden, {}, sky_of(garden), 2026y / 1 / 1), noonleaf::Error);
}

BOOST_AUTO_TEST_CASE(the_likelihood_is_that_of_the_days_before_somebody_can_come) {
  Garden garden = invented_garden(tomatoes);
  const Sky sky = sky_of(garden);
  const noonleaf::MemberOptions members{.members = 200, .seed = 1};
  // A Friday with somebody there, again on Monday: three days. Nobody at all: a week.
  const auto entry = noonleaf::round_entry(garden, watered_on_thursday(), sky, friday, members);
  const auto* bed = noonleaf::worst_of_round(entry);
  BOOST_REQUIRE(bed != nullptr);
  BOOST_TEST(entry.members == 200U);
  BOOST_REQUIRE(bed->before.has_value());
  BOOST_TEST((*bed->before == 2025y / 6 / 2));
  const auto whole = noonleaf::likelihood_of(garden, watered_on_thursday(), sky,
                                             {.date = friday, .n_days = 8, .options = members, .runs = {}});
  const auto& days = whole.beds.at(0).plantings.at(0).days;
  BOOST_TEST(bed->leaves_range_frac == days[2].left_frac);
  BOOST_TEST((bed->leaves_range_frac > 0 && bed->leaves_range_frac < 1));
  garden.caretakers.clear();
  const auto nobody = noonleaf::round_entry(garden, watered_on_thursday(), sky, friday, members);
  BOOST_TEST(!noonleaf::worst_of_round(nobody)->before.has_value());
  BOOST_TEST(noonleaf::worst_of_round(nobody)->leaves_range_frac == days[6].left_frac);
  BOOST_TEST(noonleaf::worst_of_round(nobody)->leaves_range_frac >= bed->leaves_range_frac);
}

BOOST_AUTO_TEST_CASE(water_lowers_the_likelihood_and_it_leaves_the_order_alone) {
  const Garden garden = invented_garden(tomatoes);
  const Sky sky = sky_of(garden);
  const auto dry = noonleaf::round_entry(garden, {}, sky, friday);
  const auto watered = noonleaf::round_entry(garden, watered_on_thursday(), sky, friday);
  BOOST_TEST(noonleaf::worst_of_round(watered)->leaves_range_frac <
             noonleaf::worst_of_round(dry)->leaves_range_frac);
  const auto untried = noonleaf::round_entry(garden, {}, sky, friday, {.members = 0});
  BOOST_TEST((untried.need == dry.need));
  BOOST_TEST(untried.members == 0U);
  BOOST_TEST(noonleaf::worst_of_round(untried) == nullptr);
  BOOST_TEST(!goes_before(untried, dry));
  BOOST_TEST(!goes_before(dry, untried));
}

BOOST_AUTO_TEST_CASE(seed_is_not_tried) {
  const Garden garden = invented_garden("[[bed.planting]]\ncrop = \"carrot\"\nsown = 2025-07-06\n");
  const auto entry = noonleaf::round_entry(garden, {}, sky_of(garden), monday);
  BOOST_TEST(entry.seedbed);
  BOOST_REQUIRE(entry.likelihoods.size() == 1U);
  BOOST_TEST(noonleaf::is_missing(entry.likelihoods[0].leaves_range_frac));
  BOOST_TEST(noonleaf::worst_of_round(entry) == nullptr);
}

BOOST_AUTO_TEST_SUITE_END()
