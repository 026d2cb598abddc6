#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

/// The words of the column `event`, in the order of JournalEvent.
inline constexpr std::array<std::string_view, 13> event_words{
    "water", "rain", "sow",   "transplant", "pull", "stage", "amend",
    "mulch", "feel", "probe", "droop",      "note", "undo"};

/// The words of the column `stage`.
inline constexpr std::array<std::string_view, 4> stage_words{"development", "mid_season", "late_season",
                                                             "over"};

/// The words of the column `feel`, in the order of SoilFeel.
inline constexpr std::array<std::string_view, 5> feel_words{"dry", "slightly_moist", "moist", "wet",
                                                            "field_capacity"};

/// The words of the column `recovered`.
inline constexpr std::array<std::string_view, 2> yes_no_words{"no", "yes"};

/// The words of the column `mulch`, in the order of MulchKind.
inline constexpr std::array<std::string_view, 3> mulch_words{"none", "organic", "plastic"};

/// What a column of the journal holds.
enum class JournalColumn {
  id,
  date,
  time,
  event,
  bed,
  crop,
  minutes,
  rain_mm,
  rain_in,
  share_pct,
  stage,
  feel,
  water_pct,
  tension_kpa,
  undoes,
  who,
  note,
  litres,
  gallons,
  recovered,
  mulch,
  covered_pct,
  organic_pct,
  field_capacity_pct,
  wilting_point_pct
};

/// Their headers, in the order of JournalColumn.
inline constexpr std::array<std::string_view, 25> column_names{"id",
                                                               "date",
                                                               "time",
                                                               "event",
                                                               "bed",
                                                               "crop",
                                                               "minutes",
                                                               "rain_mm",
                                                               "rain_in",
                                                               "share_pct",
                                                               "stage",
                                                               "feel",
                                                               "water_pct",
                                                               "tension_kpa",
                                                               "undoes",
                                                               "who",
                                                               "note",
                                                               "litres",
                                                               "gallons",
                                                               "recovered",
                                                               "mulch",
                                                               "covered_pct",
                                                               "organic_pct",
                                                               "field_capacity_pct",
                                                               "wilting_point_pct"};

constexpr std::string_view name_of(JournalColumn column) {
  return column_names[static_cast<std::size_t>(column)];
}

/// A text that a spreadsheet would take for a formula, whatever apostrophes stand before it. Such a text is
/// written with one more apostrophe and between quotes; the reader takes one off again.
constexpr bool looks_like_formula(std::string_view text) {
  const std::size_t first = text.find_first_not_of('\'');
  return first != std::string_view::npos &&
         std::string_view("=+-@").find(text[first]) != std::string_view::npos;
}

/// What `append_to_journal` puts behind a line that somebody did not finish writing, so that its last number
/// is never taken for a whole one.
inline constexpr std::string_view cut_off_mark = "[cut off]";

/// A journal of one entry a minute for a year is a tenth of it.
inline constexpr std::size_t largest_journal_bytes = 256UL * 1024 * 1024;

/// A line that holds no entry: blank, separators only, or a comment.
bool is_blank_line(std::string_view line);

/// What stands between the cells: comma, semicolon or tab, by the header.
char journal_separator(std::string_view text);

}  // namespace v1
}  // namespace noonleaf
