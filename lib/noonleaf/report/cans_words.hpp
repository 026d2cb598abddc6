#pragma once

#include <string>
#include <vector>

#include "noonleaf/report/cans_file.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The numbers of a can test, a line each: rate, DU, CU with their confidence, how the quarter was cut, what
/// it means for a run.
std::vector<std::string> can_result_words(const CanSheet& sheet);

/// What to do about the uneven places, in plain words. Never empty.
///
/// Rule      An edge is dry when the cans in the outer third on that side hold less than three quarters of
///           the mean and less than the opposite side; a can is odd when it holds less than half of the mean
///           or more than twice. DU under 0.50 says to mend before running longer. All ours.
std::vector<std::string> can_advice_words(const CanSheet& sheet);

/// A drawn map of the cans, north up, each in percent of the mean: "(40" is dry (under 75), "140)" wet (over
/// 125). Empty without places.
std::string can_map_text(const CanSheet& sheet);

/// The same as a picture of its own (SVG 1.1), readable without colour.
/// Throws    Error, field "x_m, y_m", without places
std::string can_map_svg(const CanSheet& sheet, std::string_view title);

/// For programs: shape "noonleaf.cans" version 1 (docs/json.md).
std::string can_json(const CanSheet& sheet, std::string_view file);

/// What a can holds of the mean, %.
double percent_of_mean(const CanSheet& sheet, std::size_t can);

inline constexpr double dry_below_pct = 75;   ///< of the mean: a can below it is called dry
inline constexpr double wet_above_pct = 125;  ///< of the mean: a can above it is called wet

}  // namespace v1
}  // namespace noonleaf
