#include "noonleaf/sprinkler/spray_loss.hpp"

#include <ostream>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "refusal.hpp"

using namespace noonleaf;

BOOST_AUTO_TEST_SUITE(spray_loss)

struct Row {
  SprayTime time;
  double wind_m_s, rh_pct, loss_pct;
  const char* name;
};
std::ostream& operator<<(std::ostream& out, const Row& row) { return out << row.name; }

// Playán et al. 2005: the equations are from memory, the values derived from them.
const std::vector<Row> rows = {
    {SprayTime::day, 1, 60, 12.27, "day, 1 m/s, 60 %"},
    {SprayTime::day, 4, 30, 21.663, "day, 4 m/s, 30 %"},
    {SprayTime::night, 1, 90, 5.01, "night, 1 m/s"},
    {SprayTime::night, 2, 90, 6.32, "night, 2 m/s"},
    {SprayTime::night, 6, missing, 11.56, "night, 6 m/s, humidity unknown"},
    {SprayTime::day, 0, 100, 0.0, "day, calm and saturated: the line is below 0"},
};

BOOST_DATA_TEST_CASE(follows_the_equations, boost::unit_test::data::make(rows), row) {
  BOOST_CHECK_SMALL(100 * spray_loss_frac(row.time, {row.wind_m_s, row.rh_pct}) - row.loss_pct, 0.005);
}

BOOST_AUTO_TEST_CASE(grows_with_wind_and_dry_air) {
  for (double wind = 0; wind < 12; wind += 1) {
    BOOST_TEST(spray_loss_frac(SprayTime::day, {wind + 1, 40}) > spray_loss_frac(SprayTime::day, {wind, 40}));
    BOOST_TEST(spray_loss_frac(SprayTime::night, {wind + 1}) > spray_loss_frac(SprayTime::night, {wind}));
    BOOST_TEST(spray_loss_frac(SprayTime::day, {wind, 20}) > spray_loss_frac(SprayTime::day, {wind, 40}));
  }
}

BOOST_AUTO_TEST_CASE(missing_and_out_of_range) {
  BOOST_TEST(is_missing(spray_loss_frac(SprayTime::day, {2.0, missing})));
  BOOST_TEST(is_missing(spray_loss_frac(SprayTime::night, {})));
  BOOST_TEST(refused_fields([] { spray_loss_frac(SprayTime::night, {-1}); }).size() == 1U);
  BOOST_TEST(refused_fields([] { spray_loss_frac(SprayTime::day, {1, 101}); }).size() == 1U);
}

BOOST_AUTO_TEST_SUITE_END()
