#pragma once

#include <bit>
#include <cstdint>

namespace noonleaf {
inline namespace v1 {
namespace formula {

/// Base-2 logarithm and power for the loops over members, to 4 parts in 10^14: a soil's tension needs no
/// more, and the last two digits would cost a third of the loop. As BatchMath: no branch, no table, no call.

/// log2 of a normal number above 0, within 3e-14 of its size; anything else in, nonsense out.
///
/// Method    x = 2^n m with m from sqrt(1/2) to sqrt(2); log2 m = s p(s²), s = (m - 1)/(m + 1), p our own
///           polynomial of degree 5 through the Chebyshev points of 0 to 0.02944
[[gnu::always_inline]] inline double short_log2(double x) {
  constexpr std::uint64_t sqrt_half = 0x3fe6a09e667f3bcdULL, exponent = 0xfff0000000000000ULL;
  const std::uint64_t bits = std::bit_cast<std::uint64_t>(x);
  const std::uint64_t shift = (bits - sqrt_half) & exponent;
  const double m = std::bit_cast<double>(bits - shift);
  const double n =
      std::bit_cast<double>(std::bit_cast<std::uint64_t>(0x1p52) | (((shift >> 52) + 2048) & 4095)) -
      (0x1p52 + 2048.0);
  const double s = (m - 1.0) / (m + 1.0), q = s * s, q2 = q * q;
  const double p = (0x1.71547652b8253p+1 + 0x1.ec709dc539e76p-1 * q) +
                   (0x1.2776c295f01cfp-1 + 0x1.a61a2cc1ced3bp-2 * q) * q2 +
                   (0x1.4795a63079ddfp-2 + 0x1.21ac9c9040d9ep-2 * q) * (q2 * q2);
  return n + s * p;
}

/// 2^x within 4e-14 of its size for x from -1020 to 1020; NaN for NaN.
///
/// Method    x = n + f with |f| <= 1/2; 2^f = 1 + f p(f), p our own polynomial of degree 8 through the
///           Chebyshev points of +-1/2; 2^n put straight into the exponent bits
[[gnu::always_inline]] inline double short_exp2(double x) {
  constexpr double to_integer = 0x1.8p52;
  const double shifted = x + to_integer;
  const double f = x - (shifted - to_integer), f2 = f * f;
  const double low = (0x1.62e42fefa39f0p-1 + 0x1.ebfbdff823cd0p-3 * f) +
                     (0x1.c6b08d70479ebp-5 + 0x1.3b2ab7181ff83p-7 * f) * f2;
  const double high = (0x1.5d87fe87d2c25p-10 + 0x1.4308ac7ad7562p-13 * f) +
                      (0x1.ffcb91fb176cfp-17 + 0x1.63d144a4d1fa4p-20 * f) * f2;
  const double f4 = f2 * f2;
  const double p = low + (high + 0x1.b63c0e9a296b3p-24 * f4) * f4;
  const double power_of_2 = std::bit_cast<double>((std::bit_cast<std::uint64_t>(shifted) << 52) +
                                                  std::bit_cast<std::uint64_t>(1.0));
  return power_of_2 * (1.0 + f * p);
}

}  // namespace formula
}  // namespace v1
}  // namespace noonleaf
