#include "noonleaf/plan/low_quarter.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

#include "noonleaf/plan/water_account.hpp"
#include "noonleaf/plan/watering.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::JournalEntry;
using noonleaf::JournalEvent;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
const std::string tomato = tomatoes_from("2025-04-15");

noonleaf::PlantingAccount account(const Garden& garden, const Journal& journal) {
  const auto sky = noonleaf::sky_over(garden.site, steady_weather(first, 60));
  return noonleaf::accounts_of_bed(garden, 0, journal, sky, 2025y / 6 / 25).front();
}

}  // namespace

BOOST_AUTO_TEST_SUITE(low_quarter)

BOOST_AUTO_TEST_CASE(an_even_sprinkler_has_no_driest_quarter) {
  const auto even = account(invented_garden(tomato), {watered(2025y / 6 / 15, 20)});
  BOOST_TEST(even.low_past.days.back().end.dr_mm == even.dawn.dr_mm);
}

// 20 minutes at 30 mm/h are 10 mm; at a DU of 0.6 the driest quarter gets 6 of them and stays 4 mm behind, as
// long as neither is stressed nor drains.
BOOST_AUTO_TEST_CASE(the_driest_quarter_lacks_what_it_did_not_get) {
  Garden garden = invented_garden(tomato);
  garden.sprinklers[0].rate.du_lq_frac = 0.6;
  const auto uneven = account(garden, {watered(2025y / 6 / 15, 20)});
  const auto& day = uneven.past.days[14];
  const auto& low = uneven.low_past.days[14];
  BOOST_REQUIRE(day.irrigation_mm > 9.9);
  BOOST_TEST(std::abs(low.irrigation_mm - 6) < 1e-9);
  BOOST_TEST(std::abs((low.dr_open_mm - day.dr_open_mm) - 4) < 1e-9);
  BOOST_TEST(uneven.low_ahead.days.front().start.dr_mm > uneven.dawn.dr_mm + 1);
}

BOOST_AUTO_TEST_CASE(a_soil_check_moves_both_traces_alike) {
  Garden garden = invented_garden(tomato);
  garden.sprinklers[0].rate.du_lq_frac = 0.6;
  JournalEntry look = entry_of(JournalEvent::feel, 2025y / 6 / 20);
  look.feel = noonleaf::SoilFeel::moist;
  const Journal dry{watered(2025y / 6 / 15, 20)};
  const auto before = account(garden, dry);
  const auto after = account(garden, {dry.front(), look});
  const double moved_mm = after.past.days[19].start.dr_mm - before.past.days[19].start.dr_mm;
  BOOST_TEST(std::abs(moved_mm) > 1);
  BOOST_TEST(std::abs(after.low_past.days[19].start.dr_mm - before.low_past.days[19].start.dr_mm - moved_mm) <
             1e-9);
}

// Litres: of a sprinkler with a known flow they are minutes; by hand they are depth over the area.
BOOST_AUTO_TEST_CASE(litres_of_a_meter_and_of_cans_become_depth) {
  Garden garden = invented_garden(tomato);
  garden.sprinklers[0].rate.flow_l_min = 8;
  JournalEntry metered = entry_of(JournalEvent::water, 2025y / 6 / 15);
  metered.litres = 160;
  const auto by_meter = noonleaf::watering_of(garden, garden.beds[0], metered);
  BOOST_TEST(std::abs(by_meter.minutes - 20) < 1e-12);
  BOOST_TEST(std::abs(by_meter.mean_mm - 10) < 1e-12);
  BOOST_TEST(by_meter.from_tap_l == 160);
  garden.sprinklers[0].kind = noonleaf::WettingKind::hand;
  metered.litres = 45;
  const auto by_hand = noonleaf::watering_of(garden, garden.beds[0], metered);
  BOOST_TEST(std::abs(by_hand.mean_mm - 4.5) < 1e-12);  // 45 L on 10 m2
  BOOST_TEST(std::abs(by_hand.minutes - 9) < 1e-12);  // as long as the sprinkler's 30 mm/h would take for it
}

BOOST_AUTO_TEST_SUITE_END()
