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
inline namespace [[gnu::visibility("default")]] v1 {

inline bool is_digit(char letter) { return static_cast<unsigned char>(letter - '0') < 10U; }

/// Powers of ten that are exact doubles and more than the digits a fast number may have.
inline constexpr std::array<double, 16> exact_powers_of_ten{1e0, 1e1, 1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                                            1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15};

/// A number digit by digit, for plain_decimal: 1 to 15 digits with at most one decimal mark, and nothing
/// else.
bool long_decimal(const char* begin, const char* end, char mark, double& magnitude);

/// The number that eight digits spell, lowest byte first, each 0 to 9.
[[gnu::always_inline]] inline std::uint64_t number_of(std::uint64_t digits) {
  digits = digits * 10 + (digits >> 8U);  // pairs, in every other byte
  constexpr std::uint64_t mask = 0x000000FF000000FFU;
  return (((digits & mask) * 0x000F424000000064U) + (((digits >> 16U) & mask) * 0x0000271000000001U)) >> 32U;
}

/// A number of 1 to 8 characters, all of them at once: lengths change from cell to cell, and a loop over them
/// could not be predicted. 8 bytes from `begin` on must be readable. Result    as plain_decimal
[[gnu::always_inline]] inline bool short_decimal(const char* begin, unsigned length, char mark,
                                                 double& magnitude) {
  std::uint64_t bytes = 0;
  std::memcpy(&bytes, begin, sizeof bytes);
  // Digits become 0 to 9; the last one moves to the highest byte, and zeros come in front of the first.
  const std::uint64_t digits = (bytes ^ 0x3030303030303030U) << (8 * (8 - length));
  const std::uint64_t others = ((digits + 0x7676767676767676U) | digits) & 0x8080808080808080U;
  if (others == 0) {
    magnitude = static_cast<double>(static_cast<std::int64_t>(number_of(digits)));
    return true;
  }
  const unsigned place = static_cast<unsigned>(std::countr_zero(others)) & ~7U;  // of the mark, in bits
  const auto found = static_cast<unsigned char>(digits >> place);
  if ((others & (others - 1)) != 0 || length == 1 || found != static_cast<unsigned char>(mark ^ '0'))
    return false;
  const std::uint64_t whole = digits & ((std::uint64_t{1} << place) - 1);
  const std::uint64_t decimals = digits & (~std::uint64_t{0xFF} << place);
  magnitude = static_cast<double>(static_cast<std::int64_t>(number_of(whole << 8U | decimals))) /
              exact_powers_of_ten[7 - place / 8];
  return true;
}

/// The common case of a number that fills a cell: sign, up to 15 digits, one decimal mark. Correctly rounded:
/// digits and power of ten are exact doubles, so that their quotient is rounded once (Clinger 1990, "How to
/// read floating point numbers accurately", the exact case). 9 bytes from `begin` on must be readable.
/// Result    false where the cell is something else: parse_decimal decides then
[[gnu::always_inline]] inline bool plain_decimal(const char* begin, const char* end, char mark,
                                                 double& value) {
  const bool negative = *begin == '-';
  if (negative) ++begin;
  const auto length = static_cast<std::size_t>(end - begin);
  double magnitude = 0.0;
  const bool is_short = length - 1 < 8 && std::endian::native == std::endian::little;
  const bool plain = is_short ? short_decimal(begin, static_cast<unsigned>(length), mark, magnitude)
                              : long_decimal(begin, end, mark, magnitude);
  value = negative ? -magnitude : magnitude;
  return plain;
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
