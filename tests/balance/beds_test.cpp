#include <algorithm>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/mixed_bed.hpp"
#include "noonleaf/balance/mulch.hpp"
#include "noonleaf/balance/run.hpp"
#include "noonleaf/balance/seed_zone.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/soil/texture.hpp"

using noonleaf::BedShare;
using noonleaf::Error;
using noonleaf::find_texture;
using noonleaf::missing;
using noonleaf::MulchKind;
using noonleaf::soil_of;

BOOST_AUTO_TEST_SUITE(beds)

BOOST_AUTO_TEST_CASE(the_thirstiest_planting_drives_and_the_others_pay) {
  const std::vector<BedShare> bed = {{0.5, 12, 30, 80}, {0.3, 9, 8, 20}, {0.2, 20, 40, 100}};
  const auto answer = noonleaf::water_mixed_bed(bed);
  BOOST_REQUIRE(answer.has_value());
  BOOST_TEST(answer->driver == 1U);
  BOOST_TEST(answer->depth_mm == 9);
  BOOST_TEST(answer->outcomes[0].short_mm == 3);
  BOOST_TEST(answer->outcomes[1].dr_after_mm == 0);
  BOOST_TEST(answer->outcomes[2].percolation_mm == 0);
  const auto deep = noonleaf::outcomes_of_depth(bed, 15);
  BOOST_TEST(deep[1].percolation_mm == 6);
}

BOOST_AUTO_TEST_CASE(the_order_of_the_plantings_changes_nothing) {
  std::vector<BedShare> bed = {{0.4, 12, 30, 80}, {0.3, 9, 8, 20}, {0.3, 20, 40, 100}};
  const double depth = noonleaf::water_mixed_bed(bed)->depth_mm;
  const double percolation = noonleaf::water_mixed_bed(bed)->mean_percolation_mm;
  std::rotate(bed.begin(), bed.begin() + 1, bed.end());
  BOOST_TEST(noonleaf::water_mixed_bed(bed)->depth_mm == depth);
  BOOST_TEST(noonleaf::water_mixed_bed(bed)->mean_percolation_mm == percolation);
}

BOOST_AUTO_TEST_CASE(a_planting_that_is_not_known_does_not_drive) {
  const auto answer =
      noonleaf::water_mixed_bed(std::vector<BedShare>{{0.5, missing, 30, 80}, {0.5, 9, 8, 20}});
  BOOST_REQUIRE(answer.has_value());
  BOOST_TEST(answer->driver == 1U);
  BOOST_TEST(noonleaf::is_missing(answer->outcomes[0].percolation_mm));
  BOOST_TEST(!noonleaf::water_mixed_bed(std::vector<BedShare>{{1, missing, 30, 80}}).has_value());
  BOOST_CHECK_THROW(noonleaf::water_mixed_bed(std::vector<BedShare>{{0.7, 1, 30, 80}, {0.5, 9, 8, 20}}),
                    Error);
}

// FAO-56 ch. 10: half the ground under straw, a quarter less evaporation. From memory.
BOOST_AUTO_TEST_CASE(mulch) {
  BOOST_CHECK_CLOSE(noonleaf::mulch_evaporation_factor(MulchKind::organic, 0.5), 0.75, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::mulch_evaporation_factor(MulchKind::plastic, 0.8), 0.2, 1e-9);
  BOOST_TEST(noonleaf::mulch_evaporation_factor(MulchKind::none, 1) == 1);
  BOOST_CHECK_THROW(noonleaf::mulch_evaporation_factor(MulchKind::organic, 1.1), Error);
}

BOOST_AUTO_TEST_CASE(a_seed_zone_is_thin_and_dries_within_a_hot_day) {
  const auto loam = soil_of(find_texture("loam"));
  const auto zone = noonleaf::seed_zone(loam, 0.012);
  BOOST_CHECK_CLOSE(zone.depth_m, 0.024, 1e-9);
  BOOST_TEST(zone.damp_mm < zone.tew_mm);
  const auto plan = noonleaf::seed_zone_watering(zone, 8);
  BOOST_TEST(plan.depth_mm < 3);
  BOOST_TEST(plan.per_day > 1);
  // The plan's own interval brings the layer from full to the edge of damp.
  BOOST_CHECK_CLOSE(noonleaf::seed_zone_depletion_mm(zone, 0, 0, 8 / plan.per_day), zone.damp_mm, 1e-6);
  BOOST_TEST(noonleaf::seed_zone(loam, 0).depth_m == 0.02);
}

BOOST_AUTO_TEST_CASE(a_seed_zone_in_pieces_is_the_same_as_at_once) {
  const auto zone = noonleaf::seed_zone(soil_of(find_texture("sandy_loam")), 0.02);
  double de = 0;
  for (int hour = 0; hour < 12; ++hour) de = noonleaf::seed_zone_depletion_mm(zone, de, 0, 0.5);
  BOOST_CHECK_CLOSE(de, noonleaf::seed_zone_depletion_mm(zone, 0, 0, 6), 1e-9);
  BOOST_TEST(noonleaf::seed_zone_depletion_mm(zone, 0, 0, 20) < zone.tew_mm);
  BOOST_TEST(noonleaf::seed_zone_depletion_mm(zone, de, 50, 0) == 0);
  BOOST_TEST(noonleaf::is_missing(noonleaf::seed_zone_depletion_mm(zone, missing, 0, 1)));
}

BOOST_AUTO_TEST_CASE(digging_in_compost_moves_no_water) {
  const auto sandy = soil_of(find_texture("sandy_loam"));
  const auto rich = soil_of(find_texture("silt_loam"));
  const auto before = noonleaf::initial_state(sandy, 0.4, 1.0, 0.5);
  const auto water = [](const noonleaf::BalanceState& s, const noonleaf::SoilWater& soil) {
    return 1000 * soil.field_capacity_m3_m3 * s.profile_depth_m - s.dr_mm - s.lower_mm;
  };
  const auto richer = state_in_other_soil(before, sandy, rich);
  BOOST_CHECK_CLOSE(water(richer.state, rich), water(before, sandy), 1e-9);
  BOOST_TEST(richer.drained_mm == 0);
  BOOST_TEST(richer.state.dr_mm > before.dr_mm);
  const auto full = noonleaf::initial_state(rich, 0.4, 1.0, 0);
  const auto poorer = state_in_other_soil(full, rich, sandy);
  BOOST_CHECK_CLOSE(water(poorer.state, sandy) + poorer.drained_mm, water(full, rich), 1e-9);
  BOOST_TEST(poorer.state.dr_mm == 0);
}

BOOST_AUTO_TEST_SUITE_END()
