#pragma once

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <optional>
#include <string>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

inline bool is_digit(char letter) { return static_cast<unsigned char>(letter - '0') < 10U; }

/// Powers of ten that are exact doubles and more than the digits a fast number may have.
inline constexpr std::array<double, 16> exact_powers_of_ten{1e0, 1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                                            1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

/// A number digit by digit, for plain_decimal: up to 15 digits with one decimal mark.
const char* long_decimal(const char* place, char mark, double& magnitude);

/// The 8 bytes at `place` as digits 0 to 9 in order of the text, lowest byte first; other bytes become
/// above 9.
[[gnu::always_inline]] inline std::uint64_t eight_digits(const char* place) {
  std::uint64_t bytes = 0;
  std::memcpy(&bytes, place, sizeof bytes);
  return bytes ^ 0x3030303030303030U;
}

/// How many of the bytes, from the first on, are digits.
[[gnu::always_inline]] inline int leading_digits(std::uint64_t digits) {
  const std::uint64_t above_nine = ((digits + 0x7676767676767676U) | digits) & 0x8080808080808080U;
  return std::countr_zero(above_nine) / 8;  // 8 where none is above
}

/// The number that eight digits spell, the first the highest.
[[gnu::always_inline]] inline std::uint64_t number_of(std::uint64_t digits) {
  digits = digits * 10 + (digits >> 8U);  // pairs, in every other byte
  constexpr std::uint64_t mask = 0x000000FF000000FFU;
  return (((digits & mask) * 0x000F424000000064U) + (((digits >> 16U) & mask) * 0x0000271000000001U)) >> 32U;
}

/// A number of up to 7 digits within 8 bytes, without a branch that depends on its length (lengths change
/// from cell to cell and cannot be predicted). At least 8 bytes must be readable. Result    as plain_decimal;
/// also nullptr where the number may be longer
[[gnu::always_inline]] inline const char* short_decimal(const char* place, char mark, double& magnitude) {
  const std::uint64_t bytes = eight_digits(place);
  const int whole = leading_digits(bytes);
  if (whole == 8) return nullptr;
  const bool has_mark = place[whole] == mark;
  const std::uint64_t low = (std::uint64_t{1} << (8 * static_cast<unsigned>(whole))) - 1;  // whole part
  const std::uint64_t joined = has_mark ? (bytes & low) | ((bytes >> 8U) & ~low) : bytes;  // mark taken out
  // The byte that moved in behind is no digit: it ends the number that fills all eight.
  const std::uint64_t closed = has_mark ? joined | 0xFF00000000000000U : joined;
  const int count = leading_digits(closed);
  if (count == 0 || (has_mark && count == 7)) return nullptr;
  const std::uint64_t aligned = closed << (8 * static_cast<unsigned>(8 - count));  // zeros in front
  magnitude = static_cast<double>(static_cast<std::int64_t>(number_of(aligned))) /
              exact_powers_of_ten[static_cast<std::size_t>(has_mark ? count - whole : 0)];
  return place + count + (has_mark ? 1 : 0);
}

/// The common case of a number in a cell: sign, up to 15 digits, one decimal mark. Correctly rounded: digits
/// and power of ten are exact doubles, so that their quotient is rounded once (Clinger 1990, "How to read
/// floating point numbers accurately", the exact case). At least 9 bytes must be readable.
/// Result    first byte behind the number; nullptr where it is something else: parse_decimal decides then
[[gnu::always_inline]] inline const char* plain_decimal(const char* place, char mark, double& value) {
  const bool negative = *place == '-';
  if (negative) ++place;
  double magnitude = 0.0;
  const char* end = nullptr;
  if constexpr (std::endian::native == std::endian::little) end = short_decimal(place, mark, magnitude);
  if (end == nullptr) end = long_decimal(place, mark, magnitude);
  value = negative ? -magnitude : magnitude;
  return end;
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
