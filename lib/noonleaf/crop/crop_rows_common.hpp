#pragma once

#include <cstdint>
#include <initializer_list>
#include <string_view>

namespace noonleaf {
inline namespace v1 {
namespace crop_rows {

/// Planting months as bits, bit 0 = January.
constexpr std::uint16_t months(std::initializer_list<int> ones) {
  std::uint16_t bits = 0;
  for (const int month : ones) bits = static_cast<std::uint16_t>(bits | (1U << (month - 1)));
  return bits;
}

inline constexpr std::string_view fao56_tables =
    "FAO Irrigation and Drainage Paper 56 (Allen et al. 1998), Tables 11, 12, 17, 22, 23, 24; from memory";
inline constexpr std::string_view s623_factor =
    "ANSI/ASABE S623 plant factor, from memory; height, roots and p are ours";
inline constexpr std::string_view crucifers_note =
    "crucifers row: its footnote names cabbage, cauliflower, broccoli, Brussels sprouts";

}  // namespace crop_rows
}  // namespace v1
}  // namespace noonleaf
