#include "noonleaf/soil/retention.hpp"

#include <cmath>
#include <ostream>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

#include "refusal.hpp"

using noonleaf::missing;
using noonleaf::retention_curve;
using noonleaf::RetentionCurve;
using noonleaf::RetentionPoints;
using noonleaf::soil_tension_kpa;
using noonleaf::soil_water_at_tension_m3_m3;

namespace {

struct Printed {
  const char* texture;
  double theta_1500, theta_33, theta_s;
};
std::ostream& operator<<(std::ostream& out, const Printed& row) { return out << row.texture; }

// Saxton & Rawls (2006), Table 3, 2.5 % organic matter; from memory.
const std::vector<Printed> table_3 = {{"sand", .05, .10, .46},       {"loamy sand", .05, .12, .46},
                                      {"sandy loam", .08, .18, .45}, {"loam", .14, .28, .46},
                                      {"silt loam", .11, .31, .48},  {"clay loam", .22, .36, .48},
                                      {"clay", .30, .42, .50}};

}  // namespace

BOOST_AUTO_TEST_SUITE(retention)

BOOST_DATA_TEST_CASE(passes_through_its_points, boost::unit_test::data::make(table_3), row) {
  const RetentionCurve curve =
      retention_curve({.theta_33 = row.theta_33, .theta_1500 = row.theta_1500, .theta_s = row.theta_s});
  BOOST_CHECK_CLOSE(soil_tension_kpa(curve, row.theta_33), 33.0, 1e-9);
  BOOST_CHECK_CLOSE(soil_tension_kpa(curve, row.theta_1500), 1500.0, 1e-9);
  BOOST_CHECK_SMALL(soil_tension_kpa(curve, row.theta_s), 1e-12);
  // A power law: the geometric mean of two contents stands at the geometric mean of their tensions.
  BOOST_CHECK_CLOSE(soil_tension_kpa(curve, std::sqrt(row.theta_33 * row.theta_1500)),
                    std::sqrt(33.0 * 1500.0), 1e-9);
}

BOOST_DATA_TEST_CASE(goes_there_and_back, boost::unit_test::data::make(table_3), row) {
  const RetentionCurve curve = retention_curve(
      {.theta_33 = row.theta_33, .theta_1500 = row.theta_1500, .theta_s = row.theta_s, .air_entry_kpa = 3});
  double last = 1e9;
  for (double theta = soil_water_at_tension_m3_m3(curve, 15'000); theta <= row.theta_s; theta += 0.001) {
    const double tension = soil_tension_kpa(curve, theta);
    BOOST_TEST(tension < last);
    BOOST_CHECK_SMALL(soil_water_at_tension_m3_m3(curve, tension) - theta, 1e-12);
    last = tension;
  }
}

BOOST_AUTO_TEST_CASE(air_entry_ends_the_straight_line) {
  const RetentionCurve curve =
      retention_curve({.theta_33 = 0.31, .theta_1500 = 0.11, .theta_s = 0.48, .air_entry_kpa = 4});
  BOOST_CHECK_CLOSE(soil_tension_kpa(curve, 0.48), 4.0, 1e-9);
  BOOST_CHECK_CLOSE(soil_tension_kpa(curve, 0.395), 18.5, 1e-9);  // halfway between 33 and 4
  BOOST_TEST(soil_water_at_tension_m3_m3(curve, 2) == 0.48);      // eq. 13
}

BOOST_AUTO_TEST_CASE(does_without_saturation_below_field_capacity) {
  const RetentionCurve curve = retention_curve({.theta_33 = 0.31, .theta_1500 = 0.11});
  BOOST_TEST(soil_tension_kpa(curve, 0.2) > 33);
  BOOST_TEST(std::isnan(soil_tension_kpa(curve, 0.32)));
  BOOST_TEST(std::isnan(soil_water_at_tension_m3_m3(curve, 10)));
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(std::isnan(soil_tension_kpa(retention_curve({}), 0.2)));
  const RetentionCurve curve = retention_curve({.theta_33 = 0.31, .theta_1500 = 0.11});
  BOOST_TEST(std::isnan(soil_tension_kpa(curve, missing)));
  BOOST_TEST(std::isnan(soil_water_at_tension_m3_m3(curve, missing)));
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  const auto refused = [](const RetentionPoints& points, const char* field) {
    BOOST_CHECK_EXCEPTION(retention_curve(points), noonleaf::Error, NamesField{field});
  };
  refused({.theta_33 = 0.2, .theta_1500 = 0.2}, "theta_1500");
  refused({.theta_33 = 0.2, .theta_1500 = 0}, "theta_1500");
  refused({.theta_33 = 1.2, .theta_1500 = 0.2}, "theta_33");
  refused({.theta_33 = 0.3, .theta_1500 = 0.2, .theta_s = 0.3}, "theta_s");
  refused({.theta_33 = 0.3, .theta_1500 = 0.2, .air_entry_kpa = 40}, "air_entry_kpa");
  const RetentionCurve curve = retention_curve({.theta_33 = 0.31, .theta_1500 = 0.11, .theta_s = 0.48});
  BOOST_CHECK_EXCEPTION(soil_tension_kpa(curve, 0), noonleaf::Error, NamesField{"theta"});
  BOOST_CHECK_EXCEPTION(soil_tension_kpa(curve, 0.49), noonleaf::Error, NamesField{"theta"});
  BOOST_CHECK_EXCEPTION(soil_water_at_tension_m3_m3(curve, -1), noonleaf::Error, NamesField{"tension_kpa"});
}

BOOST_AUTO_TEST_SUITE_END()
