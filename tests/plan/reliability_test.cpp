#include "plan/reliability.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

using reliability::Event;

namespace {

/// A few starts of one or more stations.
std::vector<reliability::Case> some_cases(const std::vector<std::string>& stations, int step_d,
                                          int step_years) {
  reliability::Settings settings;
  settings.members = 200;
  settings.step_d = step_d;
  settings.step_years = step_years;
  std::vector<reliability::Case> all;
  for (const std::string& station : stations) {
    const auto cases = reliability::cases_of(station, settings);
    all.insert(all.end(), cases.begin(), cases.end());
  }
  return all;
}

/// The mean share said less the share that came true. The days of one start hang together: the starts are
/// what counts.
void check_bias(const std::vector<reliability::Case>& cases, Event event, double starts) {
  double said = 0, came = 0;
  for (const auto& one : cases) {
    said += one.of(event).share;
    came += one.of(event).came_true ? 1 : 0;
  }
  const double n = static_cast<double>(cases.size());
  BOOST_TEST(std::abs(said / n - came / n) < 3 * std::sqrt(0.25 / starts));
}

}  // namespace

BOOST_AUTO_TEST_SUITE(reliability)

// A few starts of both coasts; the whole table is in docs/likelihood.md. Model against model.
BOOST_AUTO_TEST_CASE(what_is_called_likely_comes_true_about_as_often) {
  const auto all = some_cases({"Seattle", "New York"}, 15, 1);
  const auto score = reliability::score_of(all, Event::beyond_limit, 1, 10);
  BOOST_TEST(score.cases == 2u * 4 * 7 * 10);
  BOOST_TEST(score.brier < score.of_the_mean);
  // 56 starts. Three standard errors of a share of 0.8.
  BOOST_TEST(std::abs(score.within_frac - 0.8) < 3 * std::sqrt(0.8 * 0.2 / 56));
  check_bias(all, Event::beyond_limit, 56);
  check_bias(all, Event::droop, 56);
  check_bias(all, Event::dry_soil_wilt, 56);
}

// Under a roof, where no rain helps: five of the fourteen years of another place.
BOOST_AUTO_TEST_CASE(under_a_roof_too) {
  const auto all = some_cases({"Chicago"}, 30, 3);
  const auto limit = reliability::score_of(all, Event::beyond_limit, 1, 10);
  BOOST_TEST(limit.cases == 5u * 4 * 10);
  BOOST_TEST(limit.brier < limit.of_the_mean);
  const auto wilt = reliability::score_of(all, Event::dry_soil_wilt, 1, 10);
  BOOST_TEST(wilt.came_true > 0u);
  BOOST_TEST(wilt.brier < wilt.of_the_mean);
  check_bias(all, Event::beyond_limit, 20);
  check_bias(all, Event::dry_soil_wilt, 20);
}

BOOST_AUTO_TEST_SUITE_END()
