#include "noonleaf/plan/run_slots.hpp"

#include <boost/test/unit_test.hpp>

using namespace std::chrono_literals;
using noonleaf::Garden;
using noonleaf::place_runs;
using noonleaf::RunObstacle;
using noonleaf::WantedRun;
using noonleaf::WeeklyHours;

namespace {

WeeklyHours hours(std::string_view text) { return *noonleaf::parse_weekly_hours(text); }

/// Two taps, three sprinklers (the first two share a tap), an early custodian and a later educator.
Garden garden() {
  Garden garden;
  garden.taps = {{.id = "shed"}, {.id = "wall"}};
  garden.sprinklers.resize(3);
  garden.sprinklers[2].tap = 1;
  garden.caretakers = {{.id = "custodian", .hours = {hours("mon-fri 06:00-08:00")}},
                       {.id = "educator", .hours = {hours("mon,wed 07:30-10:00")}}};
  garden.rules.allowed_hours = {hours("daily 05:00-10:00")};
  return garden;
}

const std::chrono::year_month_day wednesday{2025y / 7 / 16}, thursday{2025y / 7 / 17},
    saturday{2025y / 7 / 19};

}  // namespace

BOOST_AUTO_TEST_SUITE(run_slots)

BOOST_AUTO_TEST_CASE(starts_as_soon_as_somebody_is_there) {
  const std::vector<WantedRun> runs{{0, 30min}};
  const auto placed = place_runs(garden(), wednesday, 0min, runs);
  BOOST_REQUIRE(placed[0].slot.has_value());
  BOOST_TEST((placed[0].slot->begin == 360min));
  BOOST_TEST((placed[0].slot->end == 390min));
}

BOOST_AUTO_TEST_CASE(one_opens_and_another_closes_where_nobody_can_do_both) {
  const std::vector<WantedRun> runs{{0, 120min}};
  const auto placed = place_runs(garden(), wednesday, 6h + 31min, runs);
  BOOST_REQUIRE(placed[0].slot.has_value());
  BOOST_TEST((placed[0].slot->begin == 395min));  // rounded up to five minutes
  BOOST_TEST(placed[0].slot->opener == 0U);
  BOOST_TEST(placed[0].slot->closer == 1U);
}

BOOST_AUTO_TEST_CASE(a_sprinkler_that_needs_the_whole_supply_runs_alone) {
  Garden shared = garden();
  shared.sprinklers[2].rate.flow_l_min = 10;
  const std::vector<WantedRun> runs{{0, 30min}, {2, 30min}};
  BOOST_TEST((place_runs(shared, wednesday, 0min, runs)[1].slot->begin == 360min));  // two taps, side by side
  shared.taps[1].shared_flow_l_min = 10;
  BOOST_TEST((place_runs(shared, wednesday, 0min, runs)[1].slot->begin == 360min));  // enough for both
  shared.taps[1].shared_flow_l_min = 8;
  BOOST_TEST((place_runs(shared, wednesday, 0min, runs)[1].slot->begin == 390min));
  const std::vector<WantedRun> other_way{{2, 30min}, {0, 30min}};
  BOOST_TEST((place_runs(shared, wednesday, 0min, other_way)[1].slot->begin == 390min));
}

BOOST_AUTO_TEST_CASE(a_hand_over_is_spared_where_one_person_can_do_both) {
  const std::vector<WantedRun> runs{{0, 60min}};
  const auto placed = place_runs(garden(), wednesday, 7h + 35min, runs);  // both are there at 07:35
  BOOST_TEST(placed[0].slot->opener == 1U);
  BOOST_TEST(placed[0].slot->closer == 1U);
}

BOOST_AUTO_TEST_CASE(a_run_that_fits_nowhere_is_cut_but_not_below_its_shortest) {
  const std::vector<WantedRun> cut{{0, 400min, 5min}}, whole{{0, 400min}};
  const auto placed = place_runs(garden(), wednesday, 0min, cut);
  BOOST_REQUIRE(placed[0].slot.has_value());
  BOOST_TEST((placed[0].slot->end - placed[0].slot->begin == 240min));  // 06:00 to 10:00
  BOOST_TEST(!place_runs(garden(), wednesday, 0min, whole)[0].slot.has_value());
}

BOOST_AUTO_TEST_CASE(no_run_without_a_closer_on_site) {
  const std::vector<WantedRun> runs{{0, 60min}};
  const auto placed = place_runs(garden(), thursday, 7h + 31min, runs);  // the custodian leaves at eight
  BOOST_TEST(!placed[0].slot.has_value());
  BOOST_TEST((placed[0].obstacle == RunObstacle::no_time_left));
}

BOOST_AUTO_TEST_CASE(one_tap_serves_one_run_at_a_time) {
  const std::vector<WantedRun> runs{{0, 40min}, {1, 30min}, {2, 30min}};
  const auto placed = place_runs(garden(), wednesday, 0min, runs);
  BOOST_TEST((placed[1].slot->begin == placed[0].slot->end + 5min));
  BOOST_TEST((placed[2].slot->begin == 360min));  // the other tap
}

BOOST_AUTO_TEST_CASE(each_obstacle_has_its_name) {
  const std::vector<WantedRun> run{{0, 30min}};
  BOOST_TEST((place_runs(garden(), saturday, 0min, run)[0].obstacle == RunObstacle::nobody_on_site));
  Garden late = garden();
  late.rules.allowed_hours = {hours("daily 20:00-22:00")};
  BOOST_TEST((place_runs(late, wednesday, 0min, run)[0].obstacle == RunObstacle::allowed_hours));
  Garden quiet = garden();
  quiet.rules.quiet_hours = {hours("daily 05:00-12:00")};
  BOOST_TEST((place_runs(quiet, wednesday, 0min, run)[0].obstacle == RunObstacle::quiet_hours));
  const std::vector<WantedRun> two{{0, 100min}, {1, 100min}};
  BOOST_TEST((place_runs(garden(), thursday, 0min, two)[1].obstacle == RunObstacle::tap_taken));
}

BOOST_AUTO_TEST_CASE(quiet_hours_are_kept) {
  Garden quiet = garden();
  quiet.rules.quiet_hours = {hours("mon-fri 06:20-07:00")};
  const std::vector<WantedRun> run{{0, 30min}};
  const auto placed = place_runs(quiet, wednesday, 0min, run);
  BOOST_TEST((placed[0].slot->begin == 420min));
}

BOOST_AUTO_TEST_CASE(the_next_chance_skips_the_weekend) {
  BOOST_TEST((noonleaf::next_chance(garden(), 2025y / 7 / 18, {0, 30min}) == 2025y / 7 / 21));
  Garden nobody = garden();
  nobody.caretakers.clear();
  BOOST_TEST(!noonleaf::next_chance(nobody, 2025y / 7 / 18, {0, 30min}).has_value());
}

// Whatever is asked for, in whatever order: nothing overlaps at a tap, nobody is missing, no rule is broken.
BOOST_AUTO_TEST_CASE(every_placed_run_keeps_every_limit) {
  unsigned state = 12345;
  const auto draw = [&state](unsigned below) {
    return (state = state * 1103515245U + 12345U) / 65536U % below;
  };
  Garden place = garden();
  place.rules.quiet_hours = {hours("mon-fri 06:45-07:00")};
  for (int round = 0; round < 300; ++round) {
    std::vector<WantedRun> runs;
    for (unsigned count = draw(6) + 1; count > 0; --count)
      runs.push_back({draw(3), std::chrono::minutes(2 + draw(90))});
    const auto placed = place_runs(place, wednesday, std::chrono::minutes(draw(600)), runs);
    for (std::size_t a = 0; a < placed.size(); ++a) {
      if (!placed[a].slot) continue;
      const auto& slot = *placed[a].slot;
      BOOST_REQUIRE((slot.end - slot.begin == runs[a].length));
      BOOST_REQUIRE(noonleaf::covers(place.rules.allowed_hours, wednesday, slot.begin, slot.end));
      BOOST_REQUIRE(!noonleaf::overlaps(place.rules.quiet_hours, wednesday, slot.begin, slot.end));
      BOOST_REQUIRE(
          noonleaf::covers(place.caretakers[slot.opener].hours, wednesday, slot.begin, slot.begin + 1min));
      BOOST_REQUIRE(
          noonleaf::covers(place.caretakers[slot.closer].hours, wednesday, slot.end - 1min, slot.end));
      for (std::size_t b = 0; b < a; ++b) {
        const bool one_tap =
            place.sprinklers[runs[a].sprinkler].tap == place.sprinklers[runs[b].sprinkler].tap;
        if (!one_tap || !placed[b].slot) continue;
        BOOST_REQUIRE((slot.begin >= placed[b].slot->end || placed[b].slot->begin >= slot.end));
      }
    }
  }
}

BOOST_AUTO_TEST_SUITE_END()
