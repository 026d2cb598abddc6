#include "noonleaf/sprinkler/can_areas.hpp"

#include <cmath>
#include <vector>

#include <boost/test/unit_test.hpp>

using noonleaf::GroundPoint;
using noonleaf::thiessen_shares;

BOOST_AUTO_TEST_SUITE(can_areas)

BOOST_AUTO_TEST_CASE(a_regular_grid_weighs_all_cans_equally) {
  std::vector<GroundPoint> points;
  for (int column = 0; column < 6; ++column)
    for (int row = 0; row < 4; ++row) points.push_back({100.0 + 1.5 * column, -20.0 + 1.5 * row});
  for (const double share : thiessen_shares(points)) BOOST_CHECK_SMALL(share - 1.0 / 24.0, 1e-12);
}

BOOST_AUTO_TEST_CASE(cans_in_a_row_share_it_at_the_midpoints) {
  // At 0, 1 and 3 m; neighbours 1, 1, 2 m away, so the ground runs from -0.5 to 3.5 m.
  const std::vector<GroundPoint> points = {{0, 0}, {3, 0}, {1, 0}};
  const std::vector<double> shares = thiessen_shares(points);
  BOOST_CHECK_SMALL(shares[0] - 1.0 / 4.0, 1e-12);
  BOOST_CHECK_SMALL(shares[1] - 1.5 / 4.0, 1e-12);
  BOOST_CHECK_SMALL(shares[2] - 1.5 / 4.0, 1e-12);
}

BOOST_AUTO_TEST_CASE(scattered_cans_share_the_ground_by_nearness) {
  // Four corner cans and their twins 0.2 m away set the ground's rectangle: most of the 12 cans have their
  // nearest neighbour 0.2 m away, so it is 10.2 x 6.2 m.
  std::vector<GroundPoint> points = {{0, 0},   {10, 0},  {0, 6},     {10, 6},    {0.2, 0}, {9.8, 0},
                                     {0.2, 6}, {9.8, 6}, {3.1, 2.2}, {4.4, 5.0}, {7, 1.3}, {6.1, 3.9}};
  const std::vector<double> shares = thiessen_shares(points);
  std::vector<double> counted(points.size(), 0.0);
  const int steps = 400;
  for (int i = 0; i < steps; ++i) {
    for (int j = 0; j < steps; ++j) {
      const double x = -0.1 + 10.2 * (i + 0.5) / steps;
      const double y = -0.1 + 6.2 * (j + 0.5) / steps;
      std::size_t nearest = 0;
      double best = 1e9;
      for (std::size_t k = 0; k < points.size(); ++k) {
        const double distance = std::hypot(points[k].x_m - x, points[k].y_m - y);
        if (distance < best) {
          best = distance;
          nearest = k;
        }
      }
      counted[nearest] += 1.0 / (steps * steps);
    }
  }
  for (std::size_t k = 0; k < points.size(); ++k)
    BOOST_CHECK_SMALL(shares[k] - counted[k], 0.001);  // the count's own grain
}

BOOST_AUTO_TEST_SUITE_END()
