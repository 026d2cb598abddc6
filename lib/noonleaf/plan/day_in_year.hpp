#pragma once

#include <chrono>

namespace noonleaf {
inline namespace v1 {

/// The same day of another year; the 28th for 29 February where that year has none.
inline std::chrono::year_month_day day_in_year(std::chrono::year_month_day date, std::chrono::year year) {
  const std::chrono::year_month_day moved = year / date.month() / date.day();
  return moved.ok() ? moved : year / date.month() / 28;
}

}  // namespace v1
}  // namespace noonleaf
