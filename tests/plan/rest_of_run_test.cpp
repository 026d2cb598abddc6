#include "noonleaf/plan/rest_of_run.hpp"

#include <set>
#include <utility>

#include <boost/test/unit_test.hpp>

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::BedAction;
using noonleaf::BedReason;
using noonleaf::BedToday;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::JournalEntry;
using noonleaf::Today;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
const std::chrono::year_month_day thirsty = 2025y / 7 / 23;  // a Wednesday, weeks after the last rain
const std::string tomato = tomatoes_from("2025-04-15");

Today ask(const Garden& garden, const Journal& journal) {
  return noonleaf::plan_today(garden, journal, noonleaf::sky_over(garden.site, steady_weather(first, 60, 0)),
                              {.date = thirsty});
}

JournalEntry water(double minutes, std::chrono::minutes at = 360min) { return watered(thirsty, minutes, at); }

}  // namespace

BOOST_AUTO_TEST_SUITE(rest_of_run)

BOOST_AUTO_TEST_CASE(a_run_that_was_begun_is_asked_for_to_its_end) {
  const Garden garden = invented_garden(tomato);
  const Today morning = ask(garden, {});
  BOOST_REQUIRE((morning.beds[0].action == BedAction::open));
  const double planned = morning.beds[0].run.minutes;
  BOOST_REQUIRE(planned > 12);
  const Today later = ask(garden, {water(10)});
  BOOST_TEST((later.beds[0].action == BedAction::open));
  BOOST_TEST(later.beds[0].planned_minutes == planned);
  BOOST_TEST(later.beds[0].minutes_run_today == 10);
  BOOST_TEST(later.beds[0].run.minutes == planned - 10);
  BOOST_TEST(std::abs(later.beds[0].run.mean_depth_mm -
                      morning.beds[0].run.mean_depth_mm * (planned - 10) / planned) < 1e-9);
  BOOST_TEST((later.beds[0].slot->begin >= 370min));  // not before what was run has ended
}

BOOST_AUTO_TEST_CASE(two_parts_add_up) {
  const Garden garden = invented_garden(tomato);
  const double planned = ask(garden, {}).beds[0].run.minutes;
  const Today later = ask(garden, {water(5), water(6, 400min)});
  BOOST_TEST(later.beds[0].run.minutes == planned - 11);
}

BOOST_AUTO_TEST_CASE(a_whole_run_asks_for_no_more) {
  const Garden garden = invented_garden(tomato);
  const double planned = ask(garden, {}).beds[0].run.minutes;
  const Today later = ask(garden, {water(planned)});
  BOOST_TEST((later.beds[0].action == BedAction::leave_alone));
  BOOST_TEST(later.beds[0].planned_minutes == planned);
  BOOST_TEST((ask(garden, {water(planned - 1)}).beds[0].action == BedAction::leave_alone));
}

BOOST_AUTO_TEST_CASE(water_that_nobody_planned_leaves_the_account_to_decide) {
  const Garden garden = invented_garden(tomato);
  Journal journal{water(240)};
  journal.front().date = std::chrono::sys_days(thirsty) - std::chrono::days(1);
  const Today morning = ask(garden, journal);
  BOOST_REQUIRE((morning.beds[0].action == BedAction::leave_alone));
  journal.push_back(water(10));
  const Today later = ask(garden, journal);
  BOOST_TEST((later.beds[0].action == BedAction::leave_alone));
  BOOST_TEST(noonleaf::is_missing(later.beds[0].planned_minutes));
}

// The numbers of the answer hold this morning's water, so its reason has to hold it too.
BOOST_AUTO_TEST_CASE(the_reason_is_that_of_the_bed_as_it_is_now) {
  const Garden garden = invented_garden(tomato);
  Journal before = nothing_ran_before(thirsty);
  std::size_t back = 4;  // just beyond the limit, so that the run is not cut
  for (before[back].minutes = 240; ask(garden, before).beds[0].reason != BedReason::beyond_limit;) {
    BOOST_REQUIRE(back + 1 < before.size());
    std::swap(before[back].minutes, before[back + 1].minutes);
    ++back;
  }
  const Today morning = ask(garden, before);
  std::set<BedReason> reasons;
  for (double ran = 1; ran <= morning.beds[0].run.minutes - 2; ran += 1) {
    Journal journal = before;
    journal.push_back(water(ran));
    const BedToday bed = ask(garden, journal).beds[0];
    BOOST_REQUIRE((bed.action == BedAction::open));
    const noonleaf::PlantingToday& plant = bed.plantings[*bed.urgent];
    const bool before_chance = plant.limit_day && *plant.limit_day < *bed.next_chance;
    const BedReason expected = plant.dr_mm > plant.raw_mm ? BedReason::beyond_limit
                               : before_chance            ? BedReason::limit_before_chance
                                                          : BedReason::rest_of_run;
    BOOST_TEST((bed.reason == expected), ran);
    reasons.insert(bed.reason);
  }
  BOOST_TEST(reasons.size() == 3U);
}

// How long pouring took nobody wrote down, and a can holds no tap.
BOOST_AUTO_TEST_CASE(litres_from_cans_hold_up_no_other_run) {
  Garden garden = invented_garden(tomato);
  JournalEntry cans = water(noonleaf::missing, 415min);
  cans.litres = 90;
  BOOST_TEST(noonleaf::last_run_end(garden, {cans}, thirsty).count() > 415);  // a meter at a sprinkler
  garden.sprinklers[0].kind = noonleaf::WettingKind::hand;
  garden.sprinklers[0].can_l = 9;
  BOOST_TEST(noonleaf::last_run_end(garden, {cans}, thirsty).count() == 0);
  cans.minutes = 20;  // somebody looked at the clock
  BOOST_TEST(noonleaf::last_run_end(garden, {cans}, thirsty).count() == 435);
  cans.minutes = noonleaf::missing;
  BOOST_TEST((ask(garden, {cans}).from == 0min));
}

// Who carries cans counts them: the cans that were asked for are the run, whatever the litres behind them.
BOOST_AUTO_TEST_CASE(as_many_cans_as_asked_for_are_the_whole_run) {
  Garden garden = invented_garden(tomato);
  garden.sprinklers[0].kind = noonleaf::WettingKind::hand;
  const double litres = ask(garden, {}).beds[0].run.litres_in_bed;
  garden.sprinklers[0].can_l = litres / 4.4;  // four cans, and less than half a can more
  JournalEntry cans = water(noonleaf::missing);
  cans.litres = 4 * garden.sprinklers[0].can_l;
  const BedToday whole = ask(garden, {cans}).beds[0];
  BOOST_TEST((whole.action == BedAction::leave_alone));
  BOOST_TEST(whole.litres_run_today == cans.litres);
  BOOST_TEST(whole.planned_litres == litres);
  cans.litres -= garden.sprinklers[0].can_l;
  const BedToday three = ask(garden, {cans}).beds[0];
  BOOST_TEST((three.action == BedAction::open));
  BOOST_TEST(noonleaf::whole_cans(three.run.litres_in_bed, garden.sprinklers[0].can_l) == 1);
}

// Minutes of a rate that nobody measured have no doubt worth telling where the amount counts.
BOOST_AUTO_TEST_CASE(beds_watered_by_hand_have_no_doubtful_minutes) {
  Garden garden = invented_garden(tomato);
  const noonleaf::Sky sky = noonleaf::sky_over(garden.site, steady_weather(first, 60, 0));
  const auto runs = [&] {
    return noonleaf::likelihood_of_today(garden, {}, sky, ask(garden, {}), {.members = 8}).minutes.size();
  };
  BOOST_TEST(runs() == 1U);
  garden.sprinklers[0].kind = noonleaf::WettingKind::hand;
  BOOST_TEST(runs() == 0U);
}

BOOST_AUTO_TEST_SUITE_END()
