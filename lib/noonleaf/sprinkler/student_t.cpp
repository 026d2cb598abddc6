#include "noonleaf/sprinkler/student_t.hpp"

#include <cmath>
#include <numbers>

namespace noonleaf {
inline namespace v1 {
namespace {

// A(t|nu), the probability that |T| <= t.
double probability_within(double t, std::size_t nu) {
  const double theta = std::atan(t / std::sqrt(static_cast<double>(nu)));
  const double cos2 = std::cos(theta) * std::cos(theta);
  if (nu % 2 == 1) {
    double sum = 0.0;
    double term = std::cos(theta);
    for (std::size_t k = 1; k + 2 <= nu; k += 2) {  // 1, 2/3, (2 4)/(3 5), … times cos^k
      sum += term;
      term *= cos2 * static_cast<double>(k + 1) / static_cast<double>(k + 2);
    }
    return 2.0 / std::numbers::pi * (theta + std::sin(theta) * sum);
  }
  double sum = 0.0;
  double term = 1.0;
  for (std::size_t k = 0; k + 2 <= nu; k += 2) {  // 1, 1/2, (1 3)/(2 4), … times cos^k
    sum += term;
    term *= cos2 * static_cast<double>(k + 1) / static_cast<double>(k + 2);
  }
  return std::sin(theta) * sum;
}

}  // namespace

double student_t_two_sided(double confidence_frac, std::size_t degrees_of_freedom) {
  double low = 0.0;
  double high = 1000.0;  // one degree of freedom at 0.999 asks for 637
  for (int halving = 0; halving < 60; ++halving) {
    const double middle = 0.5 * (low + high);
    (probability_within(middle, degrees_of_freedom) < confidence_frac ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace v1
}  // namespace noonleaf
