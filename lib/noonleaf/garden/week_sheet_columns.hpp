#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What a column of the week's watering sheet holds. The sheet that is printed, its CSV and the filled-in
/// sheet that `log --from` brings back have these columns, in this order.
enum class WeekSheetColumn {
  date,              ///< 2025-07-16
  bed,               ///< id of the bed
  run,               ///< number of the run on the sheet, from 1
  open_at,           ///< 06:00; planned, and corrected by hand if it was opened at another time
  close_at,          ///< 06:25; not read back: the minutes count
  planned_minutes,   ///< what the sheet asked for
  actual_minutes,    ///< what was run: written by hand. 0 = not run
  who,               ///< initials or a role: written by hand
  not_done_because,  ///< why it was not run: written by hand
};

/// Their headers, in the order of WeekSheetColumn.
inline constexpr std::array<std::string_view, 9> week_sheet_columns{
    "date",           "bed",      "run",
    "open_at",        "close_at", "planned_minutes",
    "actual_minutes", "who",      "not_done_because"};

/// Its header.
constexpr std::string_view name_of(WeekSheetColumn column) {
  return week_sheet_columns[static_cast<std::size_t>(column)];
}

}  // namespace v1
}  // namespace noonleaf
