#pragma once

#include <array>
#include <charconv>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

inline bool is_digit(char letter) { return static_cast<unsigned char>(letter - '0') < 10U; }

/// The common case of a number in a cell: sign, up to 15 digits, one decimal mark. Correctly rounded: digits
/// and power of ten are exact doubles, so that their quotient is rounded once (Clinger 1990, "How to read
/// floating point numbers accurately", the exact case).
/// Result    first byte behind the number; nullptr where it is something else: parse_decimal decides then
[[gnu::always_inline]] inline const char* plain_decimal(const char* place, char mark, double& value) {
  constexpr std::array<double, 16> powers{1e0, 1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                          1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};
  const bool negative = *place == '-';
  if (negative) ++place;
  std::uint64_t digits = 0;
  const char* const whole = place;
  for (; is_digit(*place); ++place) digits = digits * 10 + static_cast<std::uint64_t>(*place - '0');
  std::ptrdiff_t count = place - whole;
  std::ptrdiff_t decimals = 0;
  if (*place == mark) {
    const char* const fraction = ++place;
    for (; is_digit(*place); ++place) digits = digits * 10 + static_cast<std::uint64_t>(*place - '0');
    decimals = place - fraction;
    count += decimals;
  }
  if (count == 0 || count > 15) return nullptr;
  const double magnitude =
      static_cast<double>(static_cast<std::int64_t>(digits)) / powers[static_cast<std::size_t>(decimals)];
  value = negative ? -magnitude : magnitude;
  return place;
}

/// Any decimal number that fills the text: sign (also +), digits, decimal mark, exponent.
/// Result    none where the text is no number or is beyond the range of double; "nan" and "inf" are no
/// numbers
std::optional<double> parse_decimal(std::string_view text, char mark);

/// Why a text is no number and what to do, in words: for trace, NA, a Unicode minus, a thousands separator, a
/// letter taken for a digit.
struct NumberFault {
  std::string message{}, fix{};
};
NumberFault number_fault(std::string_view text, char mark);

}  // namespace v1
}  // namespace noonleaf
