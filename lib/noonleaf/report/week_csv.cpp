#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/journal_columns.hpp"
#include "noonleaf/garden/week_sheet_columns.hpp"
#include "noonleaf/report/week_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// A cell as journal.csv has it, so that what a spreadsheet saves reads back the same.
std::string csv_cell(std::string_view text) {
  std::string plain = plain_text(text);
  const bool formula = looks_like_formula(plain);
  if (!formula && plain.find_first_of("\"#,;") == std::string::npos) return plain;
  std::string result = formula ? "\"'" : "\"";
  for (const char letter : plain) result += letter == '"' ? std::string("\"\"") : std::string(1, letter);
  return result + "\"";
}

std::string cell_of(const WeekView& view, const WeekRun& run, WeekSheetColumn column) {
  switch (column) {
    case WeekSheetColumn::date:
      return iso_date(run.date);
    case WeekSheetColumn::bed:
      return csv_cell(view.garden.beds[run.bed].id);
    case WeekSheetColumn::run:
      return std::to_string(run.number);
    case WeekSheetColumn::open_at:
      return clock_text(run.cycles.front().begin);
    case WeekSheetColumn::close_at:
      return clock_text(run.cycles.back().end);
    case WeekSheetColumn::planned_minutes:
      return number_text(run.minutes);
    case WeekSheetColumn::actual_minutes:
    case WeekSheetColumn::who:
    case WeekSheetColumn::not_done_because:
      break;  // written by hand
  }
  return {};
}

/// Behind the columns that are read back: when the tap is closed in between, for the water to soak in.
constexpr std::string_view pause_column = "closed_between";

/// And the water to carry, where the amount counts.
constexpr std::string_view by_hand_column = "by_hand";

std::string pause_of(const WeekRun& run) {
  if (run.cycles.size() < 2) return {};
  return clock_text(run.cycles.front().end) + "-" + clock_text(run.cycles.back().begin);
}

}  // namespace

std::string week_csv(const WeekView& view) {
  std::string text;
  for (const std::string_view name : week_sheet_columns)
    text += (text.empty() ? "" : ",") + std::string(name);
  text += "," + std::string(pause_column) + "," + std::string(by_hand_column) + "\n";
  for (const WeekRun& run : view.plan.runs) {
    for (std::size_t index = 0; index < week_sheet_columns.size(); ++index) {
      if (index > 0) text += ",";
      text += cell_of(view, run, static_cast<WeekSheetColumn>(index));
    }
    text += "," + pause_of(run) + "," + csv_cell(by_hand_words(view, run)) + "\n";
  }
  return text;
}

}  // namespace v1
}  // namespace noonleaf
