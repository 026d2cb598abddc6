#pragma once

#include <chrono>
#include <string>

namespace noonleaf {
inline namespace v1 {

/// "2025-07-16"
std::string iso_date(std::chrono::year_month_day date);

/// "Wednesday 16 July 2025"
std::string long_date(std::chrono::year_month_day date);

/// "06:30"; hours past midnight count on ("24:10")
std::string clock_text(std::chrono::minutes time_of_day);

}  // namespace v1
}  // namespace noonleaf
