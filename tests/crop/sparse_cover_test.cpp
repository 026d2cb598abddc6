// FAO-56 ch. 9: examples 40 and 41 compute with these equations; their printed numbers are not remembered, so
// the equations are held at their limits and by hand.
#include "noonleaf/crop/sparse_cover.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

using noonleaf::kcb_of_cover;
using noonleaf::missing;

BOOST_AUTO_TEST_SUITE(sparse_cover)

BOOST_AUTO_TEST_CASE(full_cover_by_height_and_climate) {
  BOOST_CHECK_CLOSE(noonleaf::kcb_full_cover({2, 45}, 0.5), 1.05, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::kcb_full_cover({2, 45}, 2), 1.20, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::kcb_full_cover({2, 45}, 6), 1.20, 1e-9);  // not above
  BOOST_CHECK_CLOSE(noonleaf::kcb_full_cover({4, 25}, 3), 1.20 + 0.04 * 2 + 0.004 * 20, 1e-9);
}

BOOST_AUTO_TEST_CASE(part_of_the_ground) {
  const auto kcb = [](double fc, double fc_eff, double h) { return kcb_of_cover({1.15, fc, fc_eff, h}); };
  BOOST_CHECK_CLOSE(kcb(1, 1, 0.5), 1.15, 1e-9);
  BOOST_CHECK_CLOSE(kcb(0, 0, 0.5), 0.15, 1e-9);
  BOOST_CHECK_CLOSE(kcb(0.1, 0.8, 2), 0.15 + 0.2, 1e-9);             // 2 fc decides
  BOOST_CHECK_CLOSE(kcb(0.4, 0.5, 1), 0.15 + std::sqrt(0.5), 1e-9);  // fc eff^(1 / (1 + h)) decides
  BOOST_TEST(kcb(0.3, 0.4, 3) > kcb(0.3, 0.4, 0.3));  // tall plants catch more of the sun's energy
}

BOOST_AUTO_TEST_CASE(by_leaf_area) {
  BOOST_CHECK_CLOSE(noonleaf::kcb_of_leaf_area(1.15, 0), 0.15, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::kcb_of_leaf_area(1.15, std::log(2.0) / 0.7), 0.65, 1e-9);  // half way
  BOOST_TEST(noonleaf::kcb_of_leaf_area(1.15, 8) > 1.14);
}

BOOST_AUTO_TEST_CASE(missing_and_absurd) {
  BOOST_TEST(noonleaf::is_missing(noonleaf::kcb_full_cover({missing, 45}, 1)));
  BOOST_TEST(noonleaf::is_missing(kcb_of_cover({1.15, missing, 0.5, 1})));
  BOOST_TEST(noonleaf::is_missing(noonleaf::kcb_of_leaf_area(1.15, missing)));
  BOOST_CHECK_THROW(kcb_of_cover({1.15, 0.5, 0.4, 1}), noonleaf::Error);  // less shade than ground covered
  BOOST_CHECK_THROW(noonleaf::kcb_of_leaf_area(1.15, -1), noonleaf::Error);
}

BOOST_AUTO_TEST_SUITE_END()
