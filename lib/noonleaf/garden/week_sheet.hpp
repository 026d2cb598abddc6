#pragma once

#include <chrono>
#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One row of a week's sheet that came back.
struct FilledRun {
  std::chrono::year_month_day date{};             ///< printed on the row
  std::string bed{};                              ///< id
  std::string run{};                              ///< which of that bed and date, as printed
  std::optional<std::chrono::minutes> open_at{};  ///< as printed
  double planned_minutes = missing;               ///< as printed
  double actual_minutes = missing;                ///< written by hand; missing = nothing was written there
  std::string who{};                              ///< initials
  std::string not_done_because{};                 ///< written by hand; empty = nothing
  std::size_t line = 0;                           ///< in the file
};

/// Reads a filled-in sheet: CSV with the columns of week_sheet_columns, in any order; others are left
/// alone.
///
/// Input     text  the whole file; garden  whose beds the rows may name. A spreadsheet's 7/16/2025 is read
///           as month/day/year in a garden of US units, as day/month/year in a metric one; it is refused,
///           once, where a date does not exist like that or the dates lie more than 14 days apart
/// Throws    Error with every problem: a column that is missing (date, bed and actual_minutes must be
///           there) or nearly one of them, a date that does not exist, a bed that does not, minutes that
///           are no number, no letter of the sheet (R rain, W wind, M moist, F frost, O other; L, V, M, H, O
///           on the Spanish one) or outside 0 to 1440, a row both run and not done
std::vector<FilledRun> parse_week_sheet(std::string_view text, std::string_view shown_name,
                                        const Garden& garden);

/// Reads the file of that name.
std::vector<FilledRun> read_week_sheet(const std::filesystem::path& file, std::string_view shown_name,
                                       const Garden& garden);

/// Why a row of a sheet gives no entry.
enum class RowLeftOut {
  nothing_written,     ///< unknown: neither done nor undone
  initials_only,       ///< somebody signed and left the minutes open: unknown as well
  already_brought_in,  ///< the same row is in the journal
  already_logged       ///< the journal has water for that bed and day from elsewhere
};

/// A row that gives no entry.
struct LeftRow {
  FilledRun row{};                                  ///< as it came back
  RowLeftOut reason = RowLeftOut::nothing_written;  ///< why it gives no entry
  std::string entry_id{};                           ///< the entry that is there already
};

/// What a sheet brings to a journal.
struct SheetEntries {
  std::vector<JournalEntry> entries{};  ///< ready to be appended
  std::vector<FilledRun> rows{};        ///< the row of each entry
  std::vector<LeftRow> left_out{};      ///< rows that give none
};

/// The entries that a filled-in sheet adds to a journal, each only once.
///
/// Rule      Minutes written: `water` with them. A reason and no minutes: `water` of 0 minutes with the
///           reason, so that it is known as not run. Nothing written: no entry, since that is unknown. A
///           row is known again by its note ("week sheet, run 3") with bed and day; where the journal has
///           other water for that bed and day, the row is left to a person: the same run written down twice
///           must not count twice.
SheetEntries entries_of_sheet(const std::vector<FilledRun>& rows, const Journal& journal);

}  // namespace v1
}  // namespace noonleaf
