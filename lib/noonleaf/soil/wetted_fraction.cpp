#include "noonleaf/soil/wetted_fraction.hpp"

#include <algorithm>
#include <array>

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::string_view table_20 = "FAO-56 (Allen et al. 1998), Table 20; from memory";

// clang-format off: a table
constexpr std::array<WettedFraction, 10> rows{{
    {WettingKind::rain, "rain", 1, 1, 1, false, table_20, ""},
    {WettingKind::sprinkler, "sprinkler", 1, 1, 1, false, table_20, ""},
    {WettingKind::basin, "basin", 1, 1, 1, false, table_20, ""},
    {WettingKind::border, "border", 1, 1, 1, false, table_20, ""},
    {WettingKind::furrow_narrow_bed, "furrow_narrow_bed", 0.6, 1, 0.8, false, table_20,
     "every furrow, narrow bed"},
    {WettingKind::furrow_wide_bed, "furrow_wide_bed", 0.4, 0.6, 0.5, false, table_20,
     "every furrow, wide bed"},
    {WettingKind::furrow_alternate, "furrow_alternate", 0.3, 0.5, 0.4, false, table_20, "alternated furrows"},
    {WettingKind::drip, "drip", 0.3, 0.4, 0.35, false, table_20, "trickle irrigation"},
    {WettingKind::soaker_hose, "soaker_hose", 0.3, 0.4, 0.35, true, table_20, "surrogate: the trickle row"},
    {WettingKind::hand, "hand", 1, 1, 1, true, table_20,
     "surrogate: the sprinkler row, for a hose or can over the whole bed"},
}};
// clang-format on

}  // namespace

std::span<const WettedFraction> wetted_fraction_table() { return rows; }

const WettedFraction& wetted_fraction(WettingKind kind) {
  return *std::find_if(rows.begin(), rows.end(), [&](const WettedFraction& row) { return row.kind == kind; });
}

}  // namespace v1
}  // namespace noonleaf
