#pragma once

#include <array>
#include <span>
#include <string_view>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Days from sowing to emergence at nine soil temperatures; missing = not tested or does not come up.
struct EmergenceRow {
  std::string_view seed{};       ///< as the table names it
  std::array<double, 9> days{};  ///< at 0, 5, 10 … 40 °C (printed 32, 41, 50 … 104 °F)
  std::string_view source{};     ///< publication and table
};

/// All rows, in the order of the printed table.
std::span<const EmergenceRow> emergence_table();

/// Days from sowing to emergence, seed 13 mm (half an inch) deep in moist soil.
///
/// Source    Harrington & Minges, vegetable seed germination, Univ. of California (Oregon State Univ.
///           Extension reprint): cells from memory, those marked in the table as read checked against a
///           reprint
/// Method    between two printed temperatures linear in 1 / days, the rate of emergence (ours)
/// Input     crop_id  of the crop table; soil_c  mean temperature of the top soil [°C], -5 to 50
/// Result    [d]; missing where the crop is not in the table, or where a neighbouring temperature has no
///           count
double days_to_emergence(std::string_view crop_id, double soil_c);

}  // namespace v1
}  // namespace noonleaf
