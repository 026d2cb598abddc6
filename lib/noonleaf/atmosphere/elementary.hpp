#pragma once

#include <bit>
#include <cmath>
#include <cstdint>

namespace noonleaf {
inline namespace v1 {

/// Elementary functions of the C library: for one value at a time.
struct ScalarMath {
  [[gnu::always_inline]] static inline double exp(double x) { return std::exp(x); }
  [[gnu::always_inline]] static inline double sqrt(double x) { return std::sqrt(x); }
};

/// Elementary functions that a compiler can turn into vector code: for loops over many values. No branch, no
/// table, no call; sqrt is an instruction of its own everywhere.
struct BatchMath {
  /// e^x within 1.2 units in the last place for x up to 709; e^-708 = 3e-308 for all x below -708; NaN for
  /// NaN. Not for x above 709: no equation here comes near, and a second comparison costs a tenth of the
  /// whole.
  ///
  /// Method    x = n ln 2 + r with |r| <= ln 2 / 2, ln 2 in two parts; e^r = 1 + r + r²/2 + r³ p(r), p our
  ///           own polynomial of degree 8 through the Chebyshev points of +-0.34658, which leaves 3.4e-17
  ///           (relative) before rounding; 2^n put straight into the exponent bits
  [[gnu::always_inline]] static inline double exp(double x) {
    constexpr double to_integer = 0x1.8p52;  // adding it leaves round(n) in the low bits of the sum
    constexpr double log2_e = 0x1.71547652b82fep+0;
    constexpr double ln_2_high = 0x1.62e42fefa0000p-1;  // n ln_2_high is exact
    constexpr double ln_2_low = 0x1.cf79abc9e3b3ap-40;
    const double held = x < -708.0 ? -708.0 : x;  // written so that NaN stays NaN
    const double shifted = held * log2_e + to_integer;
    const double n = shifted - to_integer;
    const double r = (held - n * ln_2_high) - n * ln_2_low;
    double p = 0x1.af2362b18b5d0p-26;
    p = p * r + 0x1.28803a9f7bb01p-22;
    p = p * r + 0x1.71de17e6ef099p-19;
    p = p * r + 0x1.a019c9aa11c0bp-16;
    p = p * r + 0x1.a01a01a4b28f9p-13;
    p = p * r + 0x1.6c16c1738f05cp-10;
    p = p * r + 0x1.1111111110e6bp-7;
    p = p * r + 0x1.5555555554cb8p-5;
    p = p * r + 0x1.5555555555555p-3;
    p = p * r + 0.5;
    const double power_of_2 = std::bit_cast<double>((std::bit_cast<std::uint64_t>(shifted) << 52) +
                                                    std::bit_cast<std::uint64_t>(1.0));
    return power_of_2 * (1.0 + (r + r * r * p));
  }
  /// Natural logarithm of a normal number above 0, within 2 units in the last place; NaN for NaN. Anything
  /// else in, nonsense out: the caller has looked.
  ///
  /// Method    x = 2^n m with m from sqrt(1/2) to sqrt(2); log m = 2 artanh(s) = 2 s (1 + s² p(s²)),
  ///           s = (m - 1)/(m + 1), p our own polynomial of degree 6 through the Chebyshev points of 0 to
  ///           0.02944, which leaves 5e-18 (relative) before rounding
  [[gnu::always_inline]] static inline double log(double x) {
    constexpr std::uint64_t sqrt_half = 0x3fe6a09e667f3bcdULL;  // bits of sqrt(1/2)
    constexpr std::uint64_t exponent = 0xfff0000000000000ULL;
    constexpr double ln_2_high = 0x1.62e42fefa0000p-1, ln_2_low = 0x1.cf79abc9e3b3ap-40;
    const std::uint64_t bits = std::bit_cast<std::uint64_t>(x);
    const std::uint64_t shift = (bits - sqrt_half) & exponent;  // n in the exponent's place, signed
    const double m = std::bit_cast<double>(bits - shift);
    // n + 2048 into the low bits of 2^52: no conversion from integers, which older vector units lack.
    const double n =
        std::bit_cast<double>(std::bit_cast<std::uint64_t>(0x1p52) | (((shift >> 52) + 2048) & 4095)) -
        (0x1p52 + 2048.0);
    const double s = (m - 1.0) / (m + 1.0), q = s * s;
    const double q2 = q * q;  // in pairs: a shorter chain than one power after the other
    const double p =
        (0x1.5555555555558p-2 + 0x1.99999999952e2p-3 * q) +
        (0x1.2492492df148dp-3 + 0x1.c71c62e5800a1p-4 * q) * q2 +
        ((0x1.7462b4ab2ef6bp-4 + 0x1.39fe606542ddep-4 * q) + 0x1.2b584aae78a57p-4 * q2) * (q2 * q2);
    const double log_m = 2.0 * s + 2.0 * s * q * p;
    return n * ln_2_high + (n * ln_2_low + log_m) + (x - x);  // NaN stays NaN
  }
  [[gnu::always_inline]] static inline double sqrt(double x) { return std::sqrt(x); }
};

}  // namespace v1
}  // namespace noonleaf
