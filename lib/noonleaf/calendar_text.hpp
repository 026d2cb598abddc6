#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// "2025-07-16"
std::string iso_date(std::chrono::year_month_day date);

/// Reads "2025-07-16"; nothing when the text is not written so or the day does not exist.
std::optional<std::chrono::year_month_day> parse_iso_date(std::string_view text);

/// "06:30"; midnight at the end of the day is "24:00".
std::string clock_text(std::chrono::minutes time_of_day);

/// Reads "06:30", from "00:00" to "24:00"; nothing when the text is not written so.
std::optional<std::chrono::minutes> parse_clock_text(std::string_view text);

}  // namespace v1
}  // namespace noonleaf
