#pragma once

#include <cstddef>
#include <cstdint>
#include <span>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Where a random number stands: not the next of a row, but the one at an address. Whoever asks, in whatever
/// order and on however many threads, gets the same.
struct DrawAddress {
  std::uint64_t seed = 0;    ///< one number for a whole ensemble; the same seed, the same draws
  std::uint32_t member = 0;  ///< which member of the ensemble
  std::uint32_t what = 0;    ///< which uncertain quantity
  std::uint32_t place = 0;   ///< which bed, sprinkler or day of that quantity
};

/// A number evenly between 0 and 1, neither of them included.
///
/// Equation  (k + 1/2) / 2^52, k the upper 52 bits of the first two words of Philox4x32-10 at the counter
///           (member, what, place, 0) under the key (seed's lower half, seed's upper half)
/// Source    Salmon, Moraes, Dror & Shaw (2011), Parallel random numbers: as easy as 1, 2, 3, Proc. SC11; by
///           its authors' library Random123
/// Result    the same bits on every machine, instruction set and thread
double uniform_draw(const DrawAddress& address);

/// A number from the standard normal distribution: standard_normal_quantile of uniform_draw.
double normal_draw(const DrawAddress& address);

/// normal_draw for members in a row, the first one given by the address.
void normal_draws(const DrawAddress& first, std::span<double> out);

/// Quantile of the standard normal distribution.
///
/// Equation  PPND16: rational functions of p - 1/2 within 0.425 of the middle, of sqrt(-log min(p, 1 - p))
///           beyond
/// Source    Wichura (1988), Algorithm AS 241, Appl. Statist. 37:477-484; about 1 part in 10^16. The
///           logarithm is our own (a fixed row of sums and products), the square root is exact by IEEE 754:
///           no result depends on the machine's mathematical library
/// Input     p above 0 and below 1; 1e-300 and up was tested
/// Missing   NaN for NaN and for p outside
double standard_normal_quantile(double p);

/// e^z by fixed arithmetic, for factors that a draw decides: log-normal is fixed_exp(sd z).
/// Input     z -708 to 709
double fixed_exp(double z);

}  // namespace v1
}  // namespace noonleaf
