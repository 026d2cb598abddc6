#pragma once

#include <string>

#include "noonleaf/report/today_words.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The answer of `today` for programs: one JSON object, shape "noonleaf.today" version 1 (docs/json.md).
/// SI units, named in the keys; a missing number is null.
std::string today_json(const TodayView& view);

}  // namespace v1
}  // namespace noonleaf
