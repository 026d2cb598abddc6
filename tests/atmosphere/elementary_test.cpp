#include "noonleaf/atmosphere/elementary.hpp"

#include <cmath>
#include <random>

#include <boost/test/unit_test.hpp>

#include "noonleaf/missing.hpp"

using noonleaf::BatchMath;

BOOST_AUTO_TEST_SUITE(elementary)

BOOST_AUTO_TEST_CASE(exp_is_as_exact_as_it_says) {
  std::mt19937_64 random(7);
  for (const auto& [low, high] : {std::pair{-708.0, 709.0}, {-6.0, 4.0}, {-0.35, 0.35}}) {
    std::uniform_real_distribution<double> pick(low, high);
    double worst = 0.0;
    for (int i = 0; i < 100'000; ++i) {
      const double x = pick(random);
      const long double exact = std::exp(static_cast<long double>(x));
      const double unit = std::ldexp(1.0, std::ilogb(static_cast<double>(exact)) - 52);
      worst = std::max(worst, static_cast<double>(std::abs(BatchMath::exp(x) - exact)) / unit);
    }
    BOOST_TEST(worst < 1.2);
  }
}

BOOST_AUTO_TEST_CASE(exp_at_its_ends) {
  BOOST_TEST(BatchMath::exp(0.0) == 1.0);
  BOOST_TEST(BatchMath::exp(-0.0) == 1.0);
  BOOST_TEST(std::isnan(BatchMath::exp(noonleaf::missing)));
  BOOST_TEST(std::isnan(BatchMath::exp(-noonleaf::missing)));
  BOOST_CHECK_CLOSE(BatchMath::exp(-708.0), std::exp(-708.0), 1e-12);
  for (const double below : {-708.5, -720.0, -745.0, -778.0}) {
    BOOST_TEST(BatchMath::exp(below) == BatchMath::exp(-708.0));
  }
  BOOST_TEST(BatchMath::exp(-1e9) == BatchMath::exp(-708.0));
  BOOST_TEST(BatchMath::exp(-HUGE_VAL) == BatchMath::exp(-708.0));
  BOOST_CHECK_CLOSE(BatchMath::exp(709.0), std::exp(709.0), 1e-12);
}

BOOST_AUTO_TEST_CASE(log_is_as_exact_as_it_says) {
  std::mt19937_64 random(8);
  for (const auto& [low, high] : {std::pair{-300.0, 300.0}, {-2.0, 2.0}, {-0.1, 0.1}}) {
    std::uniform_real_distribution<double> pick(low, high);
    double worst = 0.0;
    for (int i = 0; i < 100'000; ++i) {
      const double x = std::pow(10.0, pick(random));
      const long double exact = std::log(static_cast<long double>(x));
      const double unit = std::ldexp(1.0, std::ilogb(static_cast<double>(exact)) - 52);
      worst = std::max(worst, static_cast<double>(std::abs(BatchMath::log(x) - exact)) / unit);
    }
    BOOST_TEST(worst < 2.0);
  }
}

BOOST_AUTO_TEST_CASE(log_at_its_ends) {
  BOOST_TEST(BatchMath::log(1.0) == 0.0);
  BOOST_TEST(std::isnan(BatchMath::log(noonleaf::missing)));
  BOOST_CHECK_CLOSE(BatchMath::log(2.3e-308), std::log(2.3e-308), 1e-13);
  BOOST_CHECK_CLOSE(BatchMath::log(1.7e308), std::log(1.7e308), 1e-13);
}

BOOST_AUTO_TEST_SUITE_END()
