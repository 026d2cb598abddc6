#pragma once

#include <string>

#include "noonleaf/report/today_words.hpp"

namespace noonleaf::cli {

/// The answer as a person reads it standing at the tap, 80 columns wide.
std::string today_text(const TodayView& view);

}  // namespace noonleaf::cli
