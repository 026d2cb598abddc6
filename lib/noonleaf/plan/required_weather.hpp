#pragma once

#include <chrono>

#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace v1 {

/// Throws    Error, field "date", naming what the files hold, when the sky does not reach the day
void require_weather(const Sky& sky, std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
