#include "noonleaf/soil/pot.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

using noonleaf::Error;
using noonleaf::PotWeights;

BOOST_AUTO_TEST_SUITE(pot)

// Arithmetic on the definitions: 4 l of mix, 1.2 kg of water held drained, 0.4 kg left when wilted.
BOOST_AUTO_TEST_CASE(four_weights_tell_the_soil) {
  const auto soil = noonleaf::soil_of(
      PotWeights{.soil_volume_l = 4, .soaked_kg = 5.4, .drained_kg = 4.8, .wilted_kg = 4.0, .dry_kg = 3.6});
  BOOST_CHECK_CLOSE(soil.field_capacity_m3_m3, 0.30, 1e-9);
  BOOST_CHECK_CLOSE(soil.wilting_point_m3_m3, 0.10, 1e-9);
  BOOST_CHECK_CLOSE(soil.saturation_m3_m3, 0.45, 1e-9);
  BOOST_TEST(soil.source.find("dry") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(without_the_dry_weight_the_available_water_is_still_exact) {
  const auto soil = noonleaf::soil_of(PotWeights{.soil_volume_l = 4, .drained_kg = 4.8, .wilted_kg = 4.0});
  BOOST_CHECK_CLOSE(noonleaf::taw_mm(soil, 1), 200, 1e-9);
  BOOST_TEST(soil.source.find("half") != std::string::npos);
}

BOOST_AUTO_TEST_CASE(weights_out_of_order_are_refused) {
  BOOST_CHECK_THROW(noonleaf::soil_of(PotWeights{.soil_volume_l = 4, .drained_kg = 4.0, .wilted_kg = 4.8}),
                    Error);
  BOOST_CHECK_THROW(noonleaf::soil_of(PotWeights{.soil_volume_l = 4, .drained_kg = 4.8}), Error);
  BOOST_CHECK_THROW(noonleaf::soil_of(PotWeights{.drained_kg = 4.8, .wilted_kg = 4.0}), Error);
  BOOST_CHECK_THROW(noonleaf::soil_of(PotWeights{.soil_volume_l = 1, .drained_kg = 4.8, .wilted_kg = 3.0}),
                    Error);
}

BOOST_AUTO_TEST_SUITE_END()
