#include "noonleaf/report/week_table.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <fmt/format.h>

#include "noonleaf/report/markup.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double two_line_row_pt = 2 * line_pt + 2, band_padding_pt = 3;
constexpr double table_width_pt = 274;
constexpr double cell_padding_pt = 5;  // left and right together, with a border

/// Runs of one day and half of the day (on the 12-hour clock) with the same people.
std::vector<RunGroup> bands_of(const WeekView& view) {
  const LocalText text = view.text();
  std::vector<RunGroup> bands;
  for (const RunGroup& group : run_groups(view.plan)) {
    std::string half;
    for (std::size_t index = 0; index < group.runs.size(); ++index) {
      const std::string now = text.half_day(group.runs[index]->cycles.front().begin);
      if (index == 0 || now != half) bands.push_back({group.date, {}});
      half = now;
      bands.back().runs.push_back(group.runs[index]);
    }
  }
  return bands;
}

/// A time under its band: what the band says of the half of the day is not said again.
std::string clock_cell(const WeekView& view, std::chrono::minutes time, const std::string& half) {
  constexpr std::chrono::hours noon{12};
  const LocalText text = view.text();
  const bool plain = text.half_day(time) == half && (half.empty() || time % std::chrono::hours(24) != noon);
  return plain ? text.clock_face(time) : text.clock(time);
}

RunTableRow table_row(const WeekView& view, const WeekRun& run, std::size_t band) {
  const LocalText text = view.text();
  const std::string half = text.half_day(run.cycles.front().begin);
  RunTableRow row{.band = band,
                  .minutes = text.number(run.minutes, 0),
                  .rain = is_known(run.skip_rain_mm) ? text.gauge_mark(run.skip_rain_mm) : "\u2013",
                  .letter = bed_letter(view, run.bed)};
  std::string open, close;
  std::size_t lines = run.cycles.size();
  for (const WeekCycle& cycle : run.cycles) {
    const std::string begin = clock_cell(view, cycle.begin, half), end = clock_cell(view, cycle.end, half);
    open += (open.empty() ? "" : "<br>") + markup_text(begin);
    close += (close.empty() ? "" : "<br>") + markup_text(end);
    row.open = std::max(row.open, begin.substr(0, begin.find(' ')));
    row.close = std::max(row.close, end.substr(0, end.find(' ')));
    if (begin.find(' ') != std::string::npos || end.find(' ') != std::string::npos) ++lines;
  }
  const double height = lines == 1 ? row_pt : two_line_row_pt + (static_cast<double>(lines) - 2) * line_pt;
  row.block = {fmt::format("<tr><th scope=\"row\" class=\"bed\">{}</th><td class=\"clock\">{}</td>"
                           "<td class=\"clock\">{}</td><td class=\"minutes\">{}</td><td>{}</td>"
                           "<td></td><td></td></tr>\n",
                           markup_text(row.letter), open, close, row.minutes, row.rain),
               height};
  const std::string by_hand = by_hand_words(view, run);
  if (by_hand.empty()) return row;
  row.block.html += fmt::format("<tr><td colspan=\"7\">{}</td></tr>\n", markup_text(by_hand));
  row.block.height_pt += std::max(row_pt, lines_pt(by_hand, table_width_pt - 8) + band_padding_pt);
  return row;
}

PageBlock band_block(const WeekView& view, const RunGroup& band) {
  const std::string half = view.text().half_day(band.runs.front()->cycles.front().begin);
  const std::string day = view.text().weekday_heading(band.date) + (half.empty() ? "" : ", " + half),
                    people = people_words(view, *band.runs.front());
  const double bolder =
      text_width_pt(day, text_pt, FontWeight::bold) - text_width_pt(day, text_pt, FontWeight::regular);
  return {fmt::format("<tr><th scope=\"rowgroup\" colspan=\"7\"><b>{}:</b> {}</th></tr>\n", markup_text(day),
                      markup_text(people)),
          lines_pt(day + ": " + people, table_width_pt - 8 - bolder) + band_padding_pt};
}

std::string table_head(const WeekView& view, const std::vector<RunTableRow>& rows) {
  constexpr std::array<std::pair<Phrase, std::string RunTableRow::*>, 5> printed{
      {{Phrase::column_bed, &RunTableRow::letter},
       {Phrase::column_open, &RunTableRow::open},
       {Phrase::column_close, &RunTableRow::close},
       {Phrase::column_minutes, &RunTableRow::minutes},
       {Phrase::column_rain, &RunTableRow::rain}}};
  std::string widths, names;
  double left_pt = table_width_pt;
  for (const auto& [id, cell] : printed) {
    const bool is_letter = id == Phrase::column_bed;
    double width = text_width_pt(phrase(view.language, id), text_pt, FontWeight::bold);
    for (const RunTableRow& row : rows)
      width = std::max(width, text_width_pt(row.*cell, is_letter ? title_pt : text_pt, FontWeight::bold));
    width = std::ceil(width) + cell_padding_pt;
    left_pt -= width;
    widths += fmt::format("<col style=\"width:{}pt\">", points(width));
    names += fmt::format("<th scope=\"col\">{}</th>", phrase_html(view, id));
  }
  for (const Phrase id : {Phrase::column_ran, Phrase::column_by}) {
    widths += fmt::format("<col style=\"width:{}pt\">", points(left_pt / 2));
    names += fmt::format("<th scope=\"col\">{}</th>", phrase_html(view, id));
  }
  return fmt::format("<table><colgroup>{}</colgroup>\n<thead><tr>{}</tr></thead>\n", widths, names);
}

/// As many rows from `begin` on as go into a height.
TablePart table_part(const RunTable& table, std::size_t begin, double height_pt) {
  TablePart part{begin, {table.head, row_pt}};
  for (; part.end < table.rows.size(); ++part.end) {
    const RunTableRow& row = table.rows[part.end];
    const bool new_band = part.end == begin || table.rows[part.end - 1].band != row.band;
    const PageBlock& band = table.bands[row.band];
    const double more = row.block.height_pt + (new_band ? band.height_pt : 0);
    if (part.block.height_pt + more > height_pt) break;
    if (new_band) {
      if (part.end > begin) part.block.html += "</tbody>\n";
      part.block.html += "<tbody class=\"day\">\n" + band.html;
    }
    part.block.html += row.block.html;
    part.block.height_pt += more;
  }
  part.block.html += "</tbody></table>\n";
  return part;
}

}  // namespace

RunTable run_table(const WeekView& view) {
  RunTable table;
  for (const RunGroup& band : bands_of(view)) {
    for (const WeekRun* run : band.runs) table.rows.push_back(table_row(view, *run, table.bands.size()));
    table.bands.push_back(band_block(view, band));
  }
  table.head = table_head(view, table.rows);
  return table;
}

TablePart two_columns(const RunTable& table, std::size_t begin, double height_pt) {
  constexpr double step_pt = 2;
  TablePart left, right;
  for (double height = row_pt;; height += step_pt) {
    height = std::min(height, height_pt);
    left = table_part(table, begin, height);
    if (left.end == begin && height < height_pt) continue;
    right = table_part(table, left.end, height);
    if (right.end == table.rows.size() || height >= height_pt) break;
  }
  if (left.end == begin) return {begin, {}};
  const bool one = right.end == left.end;
  return {right.end,
          {"<div class=\"runs\">" + left.block.html + (one ? "" : right.block.html) + "</div>\n",
           std::max(left.block.height_pt, one ? 0 : right.block.height_pt) + gap_pt}};
}

}  // namespace v1
}  // namespace noonleaf
