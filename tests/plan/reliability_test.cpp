#include "plan/reliability.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

BOOST_AUTO_TEST_SUITE(reliability)

// A few starts of both stations; the whole table is in docs/likelihood.md. Model against model.
BOOST_AUTO_TEST_CASE(what_is_called_likely_comes_true_about_as_often) {
  reliability::Settings settings;
  settings.members = 200;
  settings.step_d = 15;
  std::vector<reliability::Case> all;
  for (const char* station : {"Seattle", "New York"}) {
    const auto cases = reliability::cases_of(station, settings);
    all.insert(all.end(), cases.begin(), cases.end());
  }
  const auto score = reliability::score_of(all, 1, 10);
  BOOST_TEST(score.cases == 2u * 4 * 7 * 10);
  BOOST_TEST(score.brier < score.of_the_mean);
  // The days of one start hang together: 56 starts are what counts. Three standard errors of a share of 0.8.
  BOOST_TEST(std::abs(score.within_frac - 0.8) < 3 * std::sqrt(0.8 * 0.2 / 56));
  double said = 0, came = 0;
  for (const auto& one : all) {
    said += one.said;
    came += one.came_true ? 1 : 0;
  }
  const double n = static_cast<double>(all.size());
  BOOST_TEST(std::abs(said / n - came / n) < 3 * std::sqrt(0.25 / 56));
}

BOOST_AUTO_TEST_SUITE_END()
