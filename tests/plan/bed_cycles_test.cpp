#include "noonleaf/plan/bed_cycles.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::BedAction;
using noonleaf::BedToday;
using noonleaf::Garden;
using noonleaf::Today;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
const std::chrono::year_month_day thirsty = 2025y / 6 / 25;  // a Wednesday
const std::string tomato = tomatoes_from("2025-04-15");

Today ask(const Garden& garden, const noonleaf::Journal& besides = {}) {
  const auto sky = noonleaf::sky_over(garden.site, steady_weather(first, 60, 0));
  noonleaf::Journal journal = besides;
  for (const auto& entry : nothing_ran_before(thirsty)) journal.push_back(entry);
  return noonleaf::plan_today(garden, journal, sky, {.date = thirsty});
}

Garden on_a_slope(double slope_pct) {
  Garden garden = invented_garden(tomato);
  garden.beds[0].framed = false;
  garden.beds[0].slope_pct = slope_pct;
  return garden;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(bed_cycles)

BOOST_AUTO_TEST_CASE(a_framed_bed_holds_what_an_open_slope_sheds) {
  const Garden framed = invented_garden(tomato), open = on_a_slope(15);
  const BedToday bed = ask(framed).beds[0];
  BOOST_REQUIRE((bed.action == BedAction::open));
  BOOST_TEST(noonleaf::bed_cycles(framed, bed, 40)->cycles.size() == 1U);
  BOOST_TEST(noonleaf::bed_cycles(open, bed, 40)->cycles.size() == 2U);
}

// 30 mm/h on loam (K 3.4 mm/h by the table) that holds 0.17 in on a slope above 12 %: not in one go.
BOOST_AUTO_TEST_CASE(on_a_slope_the_run_is_split_in_two_with_a_pause_and_the_rest_left_over) {
  const Today today = ask(on_a_slope(15));
  const BedToday& bed = today.beds[0];
  BOOST_REQUIRE((bed.action == BedAction::open));
  BOOST_REQUIRE(bed.cycles.has_value());
  BOOST_TEST(bed.cycles->cycles.size() == 2U);
  BOOST_TEST(bed.cycles->soak_min >= 15);
  BOOST_TEST(bed.cycles->soak_min <= noonleaf::longest_pause_min);
  BOOST_TEST(std::abs(noonleaf::running_min(*bed.cycles) - bed.run.minutes) < 1e-9);
  BOOST_REQUIRE(bed.openings.size() == 2U);
  const auto [first, second] = std::pair(bed.openings[0], bed.openings[1]);
  BOOST_TEST(static_cast<double>((first.end - first.begin + second.end - second.begin).count()) ==
             bed.run.minutes);  // no minute is lost in the pause
  const auto pause = static_cast<double>((second.begin - first.end).count());
  BOOST_TEST(pause >= bed.cycles->soak_min);
  BOOST_TEST(pause < bed.cycles->soak_min + 5);  // goes on at a clock time in fives
  BOOST_TEST((bed.slot->end == bed.slot->begin + second.end));
  BOOST_TEST(bed.cycles->left_out_min > 0);
  BOOST_TEST(bed.run.left_over_net_mm > 0);
  for (const auto& cycle : bed.cycles->cycles) BOOST_TEST(cycle.standing_mm <= 0.17 * 25.4 + 1e-9);
}

// A run of 35 minutes in two even halves was printed as 17 and 17.
BOOST_AUTO_TEST_CASE(openings_add_up_to_the_minutes_of_the_run) {
  noonleaf::CyclePlan halves;
  halves.cycles = {{.minutes = 17.5}, {.minutes = 17.5}};
  halves.soak_min = 21.3;
  for (const double minutes : {35.0, 34.0, 20.0, 18.0}) {
    double sum = 0;
    for (const auto& opening : noonleaf::openings_of_run(halves, minutes))
      sum += static_cast<double>((opening.end - opening.begin).count());
    BOOST_TEST(sum == minutes);
  }
  const auto openings = noonleaf::openings_of_run(halves, 35);
  BOOST_TEST(openings[0].end.count() == 18);
  BOOST_TEST(openings[1].begin.count() == 40);  // 18 + 21.3, up to a clock time in fives
  BOOST_TEST(openings[1].end.count() == 57);
  BOOST_TEST(noonleaf::openings_of_run(std::nullopt, 25).size() == 1U);
}

// Compost dug in raises field capacity: the same depletion leaves more water in the soil, and it takes less.
BOOST_AUTO_TEST_CASE(the_soil_is_that_of_the_day) {
  const Garden garden = on_a_slope(15);
  noonleaf::Journal dug;
  dug.push_back({.date = 2025y / 6 / 10,
                 .event = noonleaf::JournalEvent::amend,
                 .bed = garden.beds[0].id,
                 .field_capacity_pct = 38,
                 .wilting_point_pct = 14});
  const auto field_capacity = [&](const noonleaf::Journal& journal) {
    return ask(garden, journal).beds[0].plantings[0].field_capacity_m3_m3;
  };
  BOOST_TEST(field_capacity(dug) == 0.38, boost::test_tools::tolerance(1e-9));
  BOOST_TEST(field_capacity({}) != 0.38);
  BedToday before = ask(garden).beds[0], after = before;
  after.plantings[0].field_capacity_m3_m3 = 0.38;
  BOOST_TEST(noonleaf::running_min(*noonleaf::bed_cycles(garden, after, 60)) <
             noonleaf::running_min(*noonleaf::bed_cycles(garden, before, 60)));
}

BOOST_AUTO_TEST_CASE(steeper_ground_takes_less) {
  BOOST_TEST(ask(on_a_slope(15)).beds[0].run.minutes < ask(on_a_slope(1)).beds[0].run.minutes);
}

BOOST_AUTO_TEST_CASE(bare_ground_takes_less_than_covered) {
  const Today today = ask(on_a_slope(15));
  BedToday bare = today.beds[0];
  bare.plantings[0].cover_frac = 0;
  bare.plantings[0].dr_mm = 20;
  BedToday covered = bare;
  covered.plantings[0].cover_frac = 1;
  const Garden garden = on_a_slope(15);
  BOOST_TEST(noonleaf::bed_cycles(garden, bare, 60)->left_out_min >
             noonleaf::bed_cycles(garden, covered, 60)->left_out_min);
}

BOOST_AUTO_TEST_CASE(a_measured_intake_goes_before_the_table) {
  Garden garden = on_a_slope(15);
  const BedToday bed = ask(garden).beds[0];
  garden.beds[0].intake_mm_h = 30;  // as fast as the sprinkler: nothing stands
  BOOST_TEST(noonleaf::bed_cycles(garden, bed, 120)->cycles.size() == 1U);
}

BOOST_AUTO_TEST_CASE(of_drip_and_of_measured_soil_nothing_is_said) {
  const Today today = ask(on_a_slope(15));
  Garden garden = on_a_slope(15);
  garden.sprinklers[0].kind = noonleaf::WettingKind::drip;
  BOOST_TEST(!noonleaf::bed_cycles(garden, today.beds[0], 60).has_value());
  garden = on_a_slope(15);
  garden.beds[0].soil = {.field_capacity_m3_m3 = 0.28, .wilting_point_m3_m3 = 0.14, .saturation_m3_m3 = 0.46};
  BOOST_TEST(!noonleaf::bed_cycles(garden, today.beds[0], 60).has_value());
}

BOOST_AUTO_TEST_SUITE_END()
