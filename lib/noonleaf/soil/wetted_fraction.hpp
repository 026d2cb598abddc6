#pragma once

#include <span>
#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Where the water lands.
enum class WettingKind {
  rain,
  sprinkler,
  basin,
  border,
  furrow_narrow_bed,
  furrow_wide_bed,
  furrow_alternate,
  drip,
  soaker_hose,
  hand
};

/// One row of FAO-56 Table 20: the share of the ground that a wetting wets.
struct WettedFraction {
  WettingKind kind = WettingKind::sprinkler;  ///< what wets the ground
  std::string_view id{};                      ///< "drip"
  double low = 1;                             ///< lower end of the printed range
  double high = 1;                            ///< upper end of it
  double value = 1;                           ///< the one used: its middle
  bool surrogate = false;     ///< a kind that the table does not have: that of the one named in `note`
  std::string_view source{};  ///< publication and table
  std::string_view note{};    ///< doubts and choices; empty = none
};

/// All rows, in the order of WettingKind.
std::span<const WettedFraction> wetted_fraction_table();

/// The row of a kind.
const WettedFraction& wetted_fraction(WettingKind kind);

}  // namespace v1
}  // namespace noonleaf
