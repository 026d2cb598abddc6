#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What a quality check means for the values it finds.
enum class Verdict {
  set_aside,  ///< cannot be true: taken as missing
  doubtful    ///< used, and said
};

/// One quality check: what it looks for, and who says so.
struct QualityCheck {
  std::string_view name;     ///< as given to --accept: "tmin_above_tmax"
  std::string_view finds;    ///< one sentence, with its thresholds
  std::string_view verdict;  ///< what happens to the value, in words
  std::string_view source;   ///< publication and place, or "ours" with the reason
};

/// Every quality check, in the order of the manual.
std::span<const QualityCheck> quality_checks();

/// What a check found in a file.
struct Finding {
  std::string_view check{};             ///< name of the check; points into the static table
  Verdict verdict = Verdict::doubtful;  ///< what was done with the value
  Problem problem{};                    ///< file, line, column, field, text, what is wrong, one thing to do
};

/// The problems alone, for printing with describe().
std::vector<Problem> problems_of(std::span<const Finding> findings);

}  // namespace v1
}  // namespace noonleaf
