#include "noonleaf/heat/turgor_table.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/heat/hydraulics.hpp"

#include "refusal.hpp"

BOOST_AUTO_TEST_SUITE(turgor_table)

BOOST_AUTO_TEST_CASE(every_crop_of_the_table_has_a_water_path) {
  for (const noonleaf::Crop& crop : noonleaf::crop_table()) {
    if (crop.group == noonleaf::CropGroup::bare_soil || noonleaf::is_missing(crop.p_frac)) continue;
    const noonleaf::TurgorLoss& row = noonleaf::turgor_loss(crop.group);
    BOOST_CHECK_NO_THROW(noonleaf::water_path({.p_frac = crop.p_frac, .turgor_loss_mpa = row.mpa}));
  }
}

BOOST_AUTO_TEST_CASE(every_row_says_that_it_is_a_surrogate) {
  for (const noonleaf::TurgorLoss& row : noonleaf::turgor_loss_table()) {
    BOOST_TEST(row.source.find("surrogate") != std::string_view::npos);
    BOOST_TEST(row.mpa < -0.5);
    BOOST_TEST(row.sunlit_factor >= 1.0);
  }
}

BOOST_AUTO_TEST_CASE(bare_soil_has_none) {
  BOOST_CHECK_EXCEPTION(noonleaf::turgor_loss(noonleaf::CropGroup::bare_soil), noonleaf::Error,
                        NamesField{"crop"});
}

BOOST_AUTO_TEST_SUITE_END()
