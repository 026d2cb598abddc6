#include "noonleaf/atmosphere/vapour_batch.hpp"

#include <cmath>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/atmosphere/instruction_set.hpp"
#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/missing.hpp"

using noonleaf::BadRows;
using noonleaf::missing;

namespace {

/// More than two blocks, and no multiple of any number of lanes.
std::vector<double> temperatures() {
  std::vector<double> t_c;
  for (int i = 0; i < 613; ++i) t_c.push_back(-60.0 + 120.0 * i / 612.0);
  return t_c;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(vapour_batch)

BOOST_AUTO_TEST_CASE(doors_agree) {
  const std::vector<double> t_c = temperatures();
  std::vector<double> e(t_c.size()), delta(t_c.size());
  BOOST_TEST(noonleaf::saturation_vapour_pressure_kpa({t_c.data()}, t_c.size(), {e.data()}).empty());
  BOOST_TEST(noonleaf::saturation_slope_kpa_c({t_c.data()}, t_c.size(), {delta.data()}).empty());
  for (std::size_t i = 0; i < t_c.size(); ++i) {
    const double scalar_e = noonleaf::saturation_vapour_pressure_kpa(t_c[i]);
    const double scalar_delta = noonleaf::saturation_slope_kpa_c(t_c[i]);
    BOOST_TEST(std::abs(e[i] - scalar_e) <= 1e-14 * scalar_e);
    BOOST_TEST(std::abs(delta[i] - scalar_delta) <= 1e-14 * scalar_delta);
  }
}

BOOST_AUTO_TEST_CASE(strides_and_work_in_place) {
  const std::vector<double> t_c = temperatures();
  for (const std::size_t stride : {2U, 3U}) {
    std::vector<double> wide(stride * t_c.size(), -1.0);
    for (std::size_t i = 0; i < t_c.size(); ++i) wide[stride * i + 1] = t_c[i];
    const auto step = static_cast<std::ptrdiff_t>(stride);
    noonleaf::saturation_vapour_pressure_kpa({wide.data() + 1, step}, t_c.size(), {wide.data() + 1, step});
    for (std::size_t i = 0; i < wide.size(); ++i) {
      if (i % stride == 1) {
        BOOST_CHECK_CLOSE(wide[i], noonleaf::saturation_vapour_pressure_kpa(t_c[i / stride]), 1e-12);
      } else {
        BOOST_TEST(wide[i] == -1.0);
      }
    }
  }
}

BOOST_AUTO_TEST_CASE(missing_is_not_wrong_and_wrong_is_listed) {
  std::vector<double> t_c = temperatures();
  t_c[0] = missing;
  t_c[7] = 75.0;
  t_c[95] = -61.0;
  t_c[96] = -missing;
  t_c[400] = -237.3;  // the pole of the formula
  t_c[612] = HUGE_VAL;
  std::vector<double> e(t_c.size());
  const BadRows bad = noonleaf::saturation_vapour_pressure_kpa({t_c.data()}, t_c.size(), {e.data()});
  BOOST_TEST(bad == (BadRows{7, 95, 400, 612}), boost::test_tools::per_element());
  for (const std::size_t row : {0U, 7U, 95U, 96U, 400U, 612U}) BOOST_TEST(std::isnan(e[row]));
  BOOST_TEST(!std::isnan(e[1]));
  t_c = temperatures();
  t_c[300] = -0.0;
  BOOST_TEST(noonleaf::saturation_slope_kpa_c({t_c.data()}, t_c.size(), {e.data()}).empty());
}

BOOST_AUTO_TEST_CASE(a_wrong_first_row_is_found) {
  const std::vector<double> t_c{-60.5, 20.0};
  std::vector<double> e(2);
  BOOST_TEST(noonleaf::saturation_vapour_pressure_kpa({t_c.data()}, 2, {e.data()}) == BadRows{0},
             boost::test_tools::per_element());
  BOOST_TEST(std::isnan(e[0]));
}

BOOST_AUTO_TEST_CASE(eigen_door) {
  Eigen::ArrayXXd table = Eigen::ArrayXXd::Constant(5, 2, 20.0);
  table(3, 0) = 99.0;
  BadRows bad;
  const Eigen::ArrayXd e = noonleaf::saturation_vapour_pressure_kpa(Eigen::ArrayXd(table.col(0)), &bad);
  BOOST_TEST(e.size() == 5);
  for (const Eigen::Index row : {0, 1, 2, 4}) {
    BOOST_CHECK_CLOSE(e(row), noonleaf::saturation_vapour_pressure_kpa(20.0), 1e-12);
    BOOST_CHECK_CLOSE(noonleaf::saturation_slope_kpa_c(Eigen::ArrayXd(table.col(1)))(row),
                      noonleaf::saturation_slope_kpa_c(20.0), 1e-12);
  }
  BOOST_TEST(bad == BadRows{3}, boost::test_tools::per_element());
  BOOST_TEST(std::isnan(e(3)));
  BOOST_TEST(noonleaf::saturation_slope_kpa_c(Eigen::ArrayXd(0)).size() == 0);
}

BOOST_AUTO_TEST_CASE(says_what_it_runs_with) {
  BOOST_TEST(!noonleaf::batch_instruction_set().empty());
  const int lanes = noonleaf::batch_lanes();
  BOOST_TEST((lanes == 1 || lanes == 2 || lanes == 4 || lanes == 8));
}

BOOST_AUTO_TEST_SUITE_END()
