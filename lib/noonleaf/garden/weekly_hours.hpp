#pragma once

#include <bitset>
#include <chrono>
#include <optional>
#include <span>
#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Hours that come back every week on some weekdays: "mon-fri 06:00-14:30". End is not included; an end of
/// 24:00 is midnight. Hours do not run past midnight: write two entries.
struct WeeklyHours {
  std::bitset<7> weekdays{};       ///< bit 0 = Sunday, as std::chrono::weekday::c_encoding
  std::chrono::minutes begin{0};   ///< since midnight
  std::chrono::minutes end{1440};  ///< since midnight
};

/// Reads "mon-fri 06:00-14:30", "sat,sun 08:00-12:00" or "daily 05:00-09:00".
/// Result    nothing when the text is none of these
std::optional<WeeklyHours> parse_weekly_hours(std::string_view text);

/// True when `begin` to `end` on `date` lies within one of the hours.
bool covers(std::span<const WeeklyHours> hours, std::chrono::year_month_day date, std::chrono::minutes begin,
            std::chrono::minutes end);

/// True when `begin` to `end` on `date` touches any of the hours.
bool overlaps(std::span<const WeeklyHours> hours, std::chrono::year_month_day date,
              std::chrono::minutes begin, std::chrono::minutes end);

}  // namespace v1
}  // namespace noonleaf
