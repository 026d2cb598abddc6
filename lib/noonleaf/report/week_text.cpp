#include "noonleaf/report/week_text.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "noonleaf/report/wrapped_text.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr TextColumn body{.indent = 2, .hanging = 0};
constexpr TextColumn item{.indent = 2, .hanging = 2};

/// Text with spaces behind it up to a width, at least one.
std::string padded(const std::string& text, std::size_t width) {
  const std::size_t length = character_count(text);
  return text + std::string(length < width ? width - length : 1, ' ');
}

std::string row(const std::vector<std::string>& cells) {
  constexpr std::array<std::size_t, 5> widths{6, 12, 12, 6, 8};
  std::string line = "  ";
  for (std::size_t index = 0; index < cells.size(); ++index) line += padded(cells[index], widths[index]);
  return line;
}

std::string run_rows(const WeekView& view, const WeekRun& run) {
  const LocalText text = view.text();
  std::string lines;
  for (std::size_t index = 0; index < run.cycles.size(); ++index) {
    const WeekCycle& cycle = run.cycles[index];
    const bool first = index == 0;
    const std::string rain = is_known(run.skip_rain_mm) ? text.gauge_mark(run.skip_rain_mm) : "-";
    lines += row({first ? bed_letter(view, run.bed) : "", text.clock(cycle.begin), text.clock(cycle.end),
                  first ? text.number(run.minutes, 0) : "", first ? rain : ""}) +
             (first ? "_______   _______" : "") + "\n";
  }
  const std::string by_hand = by_hand_words(view, run);
  if (!by_hand.empty()) lines += wrapped_text(by_hand, {.indent = 8, .hanging = 0});
  return lines;
}

std::string table(const WeekView& view) {
  const auto word = [&](Phrase id) { return std::string(phrase(view.language, id)); };
  std::string lines;
  std::chrono::year_month_day day{};
  for (const RunGroup& group : run_groups(view.plan)) {
    if (group.date != day) lines += "\n" + view.text().day_heading(group.date) + "\n";
    day = group.date;
    lines += wrapped_text(people_words(view, *group.runs.front()), body);
    for (const WeekRun* run : group.runs) lines += run_rows(view, *run);
  }
  if (lines.empty()) return "\n" + wrapped_text(total_words(view), {});
  const std::string head =
      row({word(Phrase::column_bed), word(Phrase::column_open), word(Phrase::column_close),
           word(Phrase::column_minutes), word(Phrase::column_rain)}) +
      padded(word(Phrase::column_ran), 10) + word(Phrase::column_by) + "\n";
  return "\n" + head + lines + "\n" + wrapped_text(total_words(view), {});
}

std::string section_text(const SheetSection& section) {
  if (section.title.empty()) return {};
  std::string text = "\n" + section.title + "\n";
  for (const std::string& line : section.lines)
    text +=
        wrapped_text(section.lines.size() > 1 ? "- " + line : line, section.lines.size() > 1 ? item : body);
  return text;
}

std::string lasts_text(const WeekView& view) {
  std::string text;
  for (const WeekBed& bed : view.plan.beds) {
    const std::string range = sure_range_words(view, bed.bed);
    text += wrapped_text(fmt::format("{} {}: {}{}{}", bed_letter(view, bed.bed), bed_name(view, bed.bed),
                                     lasts_words(view, bed), range.empty() ? "" : "; ", range),
                         item);
  }
  return text;
}

/// A table for each week of the plan, so that it stays within 80 columns.
std::string sure_text(const WeekView& view) {
  constexpr std::size_t letter_width = 6, day_width = 9, days_in_a_row = 7;
  const auto table = sure_table(view);
  if (!table) return {};
  std::string text = "\n" + table->title + "\n";
  for (const std::string& note : table->notes) text += wrapped_text(note, item);
  for (std::size_t begin = 0; begin < table->days.size(); begin += days_in_a_row) {
    const std::size_t end = std::min(begin + days_in_a_row, table->days.size());
    const auto line = [&](const std::string& first, const std::vector<std::string>& cells) {
      std::string row = "  " + padded(first, letter_width);
      for (std::size_t index = begin; index < end; ++index) row += padded(cells[index], day_width);
      return row.substr(0, row.find_last_not_of(' ') + 1) + "\n";
    };
    text += "\n" + line(std::string(phrase(view.language, Phrase::column_bed)), table->days);
    for (const SureTable::Row& row : table->rows) text += line(row.letter, row.cells);
  }
  return text;
}

}  // namespace

std::string week_text(const WeekView& view) {
  std::string text =
      wrapped_text(plain_text(view.garden.site.name), {}) +
      wrapped_text(std::string(phrase(view.language, Phrase::sheet_title)) + ": " + dates_words(view), {}) +
      wrapped_text(valid_words(view) + " " + made_words(view), {});
  if (view.garden.site.demo_date)
    text += wrapped_text(std::string(phrase(view.language, Phrase::demo_note)), {});
  text += section_text(changed_section(view)) + table(view) + section_text(skip_section(view)) +
          wrapped_text(std::string(phrase(view.language, Phrase::write_codes)), body);
  for (const SheetSection& section : help_sections(view)) text += section_text(section);
  text += section_text(where_section(view));
  text += "\n" + std::string(phrase(view.language, Phrase::educator_title)) + "\n";
  SheetSection missed = missed_section(view);
  for (const std::string& line : missed.lines) text += wrapped_text(line, item);
  SheetSection alerts = alert_section(view);
  text += lasts_text(view);
  if (!alerts.title.empty()) text += "\n" + alerts.title + "\n";
  for (const std::string& line : alerts.lines) text += wrapped_text("- " + line, item);
  return text + sure_text(view);
}

}  // namespace v1
}  // namespace noonleaf
