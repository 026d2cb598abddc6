#include "noonleaf/soil/texture.hpp"

#include <ostream>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/soil/wetted_fraction.hpp"

using noonleaf::Error;

BOOST_AUTO_TEST_SUITE(texture)

BOOST_AUTO_TEST_CASE(every_class_is_found_and_is_its_own_class) {
  BOOST_TEST(noonleaf::texture_table().size() == 12U);
  for (const auto& one : noonleaf::texture_table()) {
    BOOST_TEST(&noonleaf::find_texture(one.id) == &one);
    BOOST_TEST(noonleaf::classify_texture(one.sand_pct, one.clay_pct).id == one.id);
    BOOST_CHECK_NO_THROW(noonleaf::require_complete(noonleaf::soil_of(one)));
    BOOST_TEST(!one.name_es.empty());
  }
}

BOOST_AUTO_TEST_CASE(a_slip_gets_the_nearest_class) {
  BOOST_CHECK_EXCEPTION(noonleaf::find_texture("sandy lom"), Error, [](const Error& refused) {
    return refused.problems().front().fix == "did you mean sandy_loam?";
  });
  BOOST_TEST(noonleaf::find_texture("Silty Clay").id == "silty_clay");
}

// FAO-56 Table 19: TEW of eq. 73 at the middle of the printed FC and WP lies in the printed TEW range. From
// memory.
BOOST_AUTO_TEST_CASE(total_evaporable_water_lies_in_table_19) {
  for (const auto& one : noonleaf::texture_table()) {
    if (one.surrogate) continue;
    BOOST_TEST_CONTEXT(one.id) {
      const double tew = noonleaf::tew_mm(noonleaf::soil_of(one));
      BOOST_TEST(tew >= one.tew_mm.low);
      BOOST_TEST(tew <= one.tew_mm.high);
    }
  }
}

struct Corner {
  double sand, clay;
  const char* id;
};
std::ostream& operator<<(std::ostream& out, const Corner& c) {
  return out << c.sand << "/" << c.clay << " " << c.id;
}

// USDA Soil Survey Manual, ch. 3: class limits.
const std::vector<Corner> corners = {{100, 0, "sand"},
                                     {0, 0, "silt"},
                                     {0, 100, "clay"},
                                     {52, 7, "loam"},
                                     {52.5, 7, "sandy_loam"},
                                     {43, 6.9, "silt_loam"},
                                     {45, 27, "clay_loam"},
                                     {46, 27, "sandy_clay_loam"},
                                     {20, 27, "silty_clay_loam"},
                                     {20, 40, "silty_clay"},
                                     {21, 40, "clay"},
                                     {46, 35, "sandy_clay"},
                                     {20, 12, "silt_loam"},
                                     {8, 11.9, "silt"}};
BOOST_DATA_TEST_CASE(class_limits, boost::unit_test::data::make(corners), row) {
  BOOST_TEST(noonleaf::classify_texture(row.sand, row.clay).id == row.id);
}

BOOST_AUTO_TEST_CASE(refuses_more_than_all) {
  BOOST_CHECK_THROW(noonleaf::classify_texture(60, 50), Error);
  BOOST_CHECK_THROW(noonleaf::classify_texture(-1, 50), Error);
}

BOOST_AUTO_TEST_CASE(measured_values_are_checked) {
  const auto soil = noonleaf::measured_soil({.field_capacity_m3_m3 = 0.32, .wilting_point_m3_m3 = 0.12});
  BOOST_TEST(soil.rew_mm > 0);
  BOOST_TEST(soil.rew_mm < noonleaf::tew_mm(soil));
  BOOST_CHECK_THROW(noonleaf::measured_soil({.field_capacity_m3_m3 = 0.12, .wilting_point_m3_m3 = 0.32}),
                    Error);
  BOOST_CHECK_THROW(noonleaf::measured_soil({.field_capacity_m3_m3 = 32, .wilting_point_m3_m3 = 12}), Error);
  BOOST_CHECK_THROW(noonleaf::measured_soil({.field_capacity_m3_m3 = 0.32}), Error);
  BOOST_CHECK_THROW(
      noonleaf::measured_soil(
          {.field_capacity_m3_m3 = 0.32, .wilting_point_m3_m3 = 0.12, .saturation_m3_m3 = 0.30}),
      Error);
}

// FAO-56 Table 20, from memory.
BOOST_AUTO_TEST_CASE(wetted_fractions_of_table_20) {
  using noonleaf::WettingKind;
  BOOST_TEST(noonleaf::wetted_fraction(WettingKind::sprinkler).value == 1);
  BOOST_TEST(noonleaf::wetted_fraction(WettingKind::drip).low == 0.3);
  BOOST_TEST(noonleaf::wetted_fraction(WettingKind::drip).high == 0.4);
  BOOST_TEST(noonleaf::wetted_fraction(WettingKind::furrow_alternate).low == 0.3);
  for (const auto& row : noonleaf::wetted_fraction_table()) {
    BOOST_TEST(row.low <= row.value);
    BOOST_TEST(row.value <= row.high);
  }
}

BOOST_AUTO_TEST_SUITE_END()
