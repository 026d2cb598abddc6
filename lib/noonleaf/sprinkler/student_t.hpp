#pragma once

#include <cstddef>

namespace noonleaf {
inline namespace v1 {

/// The t that |T| does not exceed with probability `confidence_frac`.
///
/// Equation  the finite sums A(t|nu) for odd and even degrees of freedom, inverted by bisection
/// Source    Abramowitz & Stegun 1964, 26.7.3 and 26.7.4
/// Input     confidence_frac above 0 to 0.999; degrees_of_freedom 1 or more
double student_t_two_sided(double confidence_frac, std::size_t degrees_of_freedom);

}  // namespace v1
}  // namespace noonleaf
