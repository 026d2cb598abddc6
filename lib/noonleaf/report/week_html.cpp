#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "noonleaf/report/markup.hpp"
#include "noonleaf/report/text_width.hpp"
#include "noonleaf/report/week_pictures.hpp"
#include "noonleaf/report/week_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

// A page has to fit on Letter and on A4: the width of A4 and the height of Letter, less 0.25 in on every
// side, which office printers leave white anyway.
constexpr double page_width_pt = 595.2 - 36, page_height_pt = 792 - 36;
constexpr double spare_pt = 8;  // for rounding of the browser
constexpr double text_pt = 14, line_pt = 15.5, title_pt = 18, title_line_pt = 21, gap_pt = 2;
constexpr double head_row_pt = 19, row_pt = 19, two_line_row_pt = 2 * line_pt + 2, band_padding_pt = 3;
constexpr double table_width_pt = 274;
constexpr double cell_padding_pt = 5;                    // left and right together, with a border
constexpr double writing_width_pt = page_width_pt - 10;  // a box has a border and a padding
constexpr double sketch_width_pt = 170, sketch_height_pt = 84, chart_gap_pt = 12;

constexpr std::string_view style = R"(
@page{margin:0.25in}
*{box-sizing:border-box}
html{font:14pt/15.5pt Arial,Helvetica,"Liberation Sans",sans-serif;color:#000;background:#fff}
body{margin:0}
.page{width:559.2pt;margin:0 auto;break-after:page}
.page:last-child{break-after:auto}
h1,.title{font-size:18pt;line-height:21pt;font-weight:bold;margin:0}
h2,h3,p,ul,figure{font-size:14pt;line-height:15.5pt;margin:0}
.number{float:right;font-weight:bold;margin-left:12pt;line-height:21pt}
section section,.box,table,figure{margin-top:2pt}
section section h2,section section p,.box h2,.box p{display:inline}
.box{border:2pt solid #000;padding:2pt 4pt}
.runs{display:flex;justify-content:space-between;align-items:flex-start;padding:0 1.3pt}
table{border-collapse:collapse;table-layout:fixed;width:274pt;flex:none}
th,td{border:1pt solid #000;padding:0 2pt;text-align:center;font-weight:normal;height:19pt;vertical-align:middle}
thead th{font-weight:bold}
tbody.day>tr:first-child>th{height:auto;padding:1pt 3pt;border-top-width:2.5pt;text-align:left}
.bed{font-size:18pt;line-height:18pt;font-weight:bold}
.clock,.minutes{font-weight:bold}
.sure{width:559.2pt}
.sketch{float:right;margin:2pt 0 0 10pt}
svg{display:block;flex:none}
svg text{font-family:Arial,Helvetica,"Liberation Sans",sans-serif}
.pair{display:flex;gap:12pt;break-inside:avoid}
.pair>figure{width:273.6pt;flex:none}
@media screen{body{padding:12pt}.page{border-bottom:1pt dashed #000;padding-bottom:12pt;margin-bottom:12pt}}
)";

/// A piece of a page that is not broken, and the height it takes.
struct Block {
  std::string html{};
  double height_pt = 0;
};

/// What one page holds below its head.
struct Page {
  std::string rows{};   ///< of the table of runs
  std::string below{};  ///< after the table
};

std::string word(const WeekView& view, Phrase id) { return markup_text(phrase(view.language, id)); }

double lines_pt(std::string_view text, double width_pt, FontWeight weight = FontWeight::regular) {
  return static_cast<double>(line_count(text, width_pt, text_pt, weight)) * line_pt;
}

/// "a; b; c." or one sentence after the other: the lines of a section in one paragraph.
std::string run_in(const SheetSection& section, std::string_view between) {
  std::string text;
  for (const std::string& line : section.lines) text += (text.empty() ? "" : std::string(between)) + line;
  return text;
}

std::string section_html(const std::string& title, const std::string& text) {
  return fmt::format("<section><h2>{}:</h2> <p>{}</p></section>\n", markup_text(title), markup_text(text));
}

Block section_block(const std::string& title, const std::string& text) {
  return {section_html(title, text), lines_pt(title + "m: " + text, page_width_pt) + gap_pt};
}

// ---- the head of a page -----------------------------------------------------------------------------------

Block head_block(const WeekView& view) {
  const std::string title =
      std::string(phrase(view.language, Phrase::sheet_title)) + ": " + plain_text(view.garden.site.name);
  const std::string total = view.plan.runs.empty() ? "" : total_words(view) + " ";
  const std::string under = total + valid_words(view) + " " + made_words(view);
  const double title_lines =
      static_cast<double>(line_count(title, page_width_pt - 100, title_pt, FontWeight::bold));
  return {fmt::format("<h1>{}</h1>\n<p>{}</p>\n", markup_text(title), markup_text(under)),
          title_lines * title_line_pt + lines_pt(under, page_width_pt)};
}

Block skip_block(const WeekView& view) {
  const SheetSection section = skip_section(view);
  const std::string text =
      run_in(section, "; ") + ". " + std::string(phrase(view.language, Phrase::write_codes));
  return {fmt::format("<section class=\"box\"><h2>{}:</h2> <p>{}</p></section>\n", markup_text(section.title),
                      markup_text(text)),
          lines_pt(section.title + "mm: " + text, writing_width_pt) + 8 + gap_pt};
}

// ---- the table of runs ------------------------------------------------------------------------------------

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

/// A row of the table, with the band that it stands under.
struct TableRow {
  std::size_t band = 0;
  Block block{};
  std::string open{}, close{}, minutes{}, rain{}, letter{};
};

TableRow table_row(const WeekView& view, const WeekRun& run, std::size_t band) {
  const LocalText text = view.text();
  const std::string half = text.half_day(run.cycles.front().begin);
  TableRow row{.band = band,
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
  return row;
}

Block band_block(const WeekView& view, const RunGroup& band) {
  const std::string half = view.text().half_day(band.runs.front()->cycles.front().begin);
  const std::string day = view.text().weekday_heading(band.date) + (half.empty() ? "" : ", " + half),
                    people = people_words(view, *band.runs.front());
  const double bolder =
      text_width_pt(day, text_pt, FontWeight::bold) - text_width_pt(day, text_pt, FontWeight::regular);
  return {fmt::format("<tr><th scope=\"rowgroup\" colspan=\"7\"><b>{}:</b> {}</th></tr>\n", markup_text(day),
                      markup_text(people)),
          lines_pt(day + ": " + people, table_width_pt - 8 - bolder) + band_padding_pt};
}

/// All rows with their bands, and the head of a table that is as narrow as they allow, so that the boxes to
/// write in are wide.
struct RunTable {
  std::vector<TableRow> rows{};
  std::vector<Block> bands{};
  std::string head{};
};

std::string table_head(const WeekView& view, const std::vector<TableRow>& rows) {
  constexpr std::array<std::pair<Phrase, std::string TableRow::*>, 5> printed{
      {{Phrase::column_bed, &TableRow::letter},
       {Phrase::column_open, &TableRow::open},
       {Phrase::column_close, &TableRow::close},
       {Phrase::column_minutes, &TableRow::minutes},
       {Phrase::column_rain, &TableRow::rain}}};
  std::string widths, names;
  double left_pt = table_width_pt;
  for (const auto& [id, cell] : printed) {
    const bool is_letter = id == Phrase::column_bed;
    double width = text_width_pt(phrase(view.language, id), text_pt, FontWeight::bold);
    for (const TableRow& row : rows)
      width = std::max(width, text_width_pt(row.*cell, is_letter ? title_pt : text_pt, FontWeight::bold));
    width = std::ceil(width) + cell_padding_pt;
    left_pt -= width;
    widths += fmt::format("<col style=\"width:{}pt\">", points(width));
    names += fmt::format("<th scope=\"col\">{}</th>", word(view, id));
  }
  for (const Phrase id : {Phrase::column_ran, Phrase::column_by}) {
    widths += fmt::format("<col style=\"width:{}pt\">", points(left_pt / 2));
    names += fmt::format("<th scope=\"col\">{}</th>", word(view, id));
  }
  return fmt::format("<table><colgroup>{}</colgroup>\n<thead><tr>{}</tr></thead>\n", widths, names);
}

RunTable run_table(const WeekView& view) {
  RunTable table;
  for (const RunGroup& band : bands_of(view)) {
    for (const WeekRun* run : band.runs) table.rows.push_back(table_row(view, *run, table.bands.size()));
    table.bands.push_back(band_block(view, band));
  }
  table.head = table_head(view, table.rows);
  return table;
}

/// A part of the table that stands in one column.
struct TablePart {
  std::size_t end = 0;  ///< row behind the last one
  Block block{};
};

/// As many rows from `begin` on as go into a height.
TablePart table_part(const RunTable& table, std::size_t begin, double height_pt) {
  TablePart part{begin, {table.head, head_row_pt}};
  for (; part.end < table.rows.size(); ++part.end) {
    const TableRow& row = table.rows[part.end];
    const bool new_band = part.end == begin || table.rows[part.end - 1].band != row.band;
    const Block& band = table.bands[row.band];
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

/// Two columns, the left one read first: as even as they can be, or as full as the height allows.
TablePart two_columns(const RunTable& table, std::size_t begin, double height_pt) {
  constexpr double step_pt = 2;
  TablePart left, right;
  for (double height = head_row_pt;; height += step_pt) {
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

// ---- from blocks to pages ---------------------------------------------------------------------------------

/// Fills pages from top to bottom. The first page and every page with runs begin with head and skip rules.
class PageFlow {
 public:
  PageFlow(const WeekView& view, double head_pt, double skip_pt, double first_page_extra_pt)
      : view_(view), head_pt_(head_pt), skip_pt_(skip_pt) {
    new_page();
    free_pt_ -= skip_pt_ + first_page_extra_pt;
  }

  void add_runs() {
    const RunTable table = run_table(view_);
    for (std::size_t row = 0; row < table.rows.size();) {
      const TablePart part = two_columns(table, row, free_pt_ - line_pt - gap_pt);  // a line: more follows
      pages_.back().rows = part.block.html;
      free_pt_ -= part.block.height_pt;
      row = part.end;
      if (row == table.rows.size()) break;
      new_page();
      free_pt_ -= skip_pt_;
    }
  }

  void add_below(const Block& block) {
    if (block.height_pt > free_pt_) new_page();
    pages_.back().below += block.html;
    free_pt_ -= block.height_pt;
  }

  /// Sections one below the other, the first ones beside a picture that stands on the right.
  void add_sections_beside(const SheetPicture& picture, const std::vector<SheetSection>& sections) {
    double beside_pt = 0;
    if (!picture.svg.empty()) {
      if (picture.height_pt + gap_pt > free_pt_) new_page();
      pages_.back().below += "<div class=\"sketch\">" + picture.svg + "</div>\n";
      beside_pt = picture.height_pt + gap_pt;
    }
    for (const SheetSection& section : sections) {
      const std::string text = run_in(section, "; "), all = section.title + "m: " + text;
      const NarrowLines narrow{static_cast<std::size_t>(std::ceil(beside_pt / line_pt)),
                               picture.width_pt + 10};
      double height =
          static_cast<double>(line_count_beside(all, page_width_pt, text_pt, narrow)) * line_pt + gap_pt;
      if (std::max(height, beside_pt) > free_pt_) {
        new_page();
        beside_pt = 0;
        height = lines_pt(all, page_width_pt) + gap_pt;
      }
      pages_.back().below += section_html(section.title, text);
      free_pt_ -= height;
      beside_pt = std::max(0.0, beside_pt - height);
    }
  }

  std::size_t page_count() const { return pages_.size(); }
  const std::vector<Page>& pages() const { return pages_; }

 private:
  void new_page() {
    pages_.emplace_back();
    free_pt_ = page_height_pt - spare_pt - head_pt_;
  }

  const WeekView& view_;
  double head_pt_, skip_pt_, free_pt_ = 0;
  std::vector<Page> pages_{};
};

std::string page_number(const WeekView& view, std::size_t page, std::size_t pages) {
  return markup_text(fill(view.language, Phrase::page_of,
                          {{"page", std::to_string(page)}, {"pages", std::to_string(pages)}}));
}

/// `kind` is a class beside "page".
std::string page_html(std::string_view kind, const std::string& name, const std::string& number,
                      const std::string& head, const std::string& inside) {
  return fmt::format(
      "<section class=\"page {}\" aria-label=\"{}, {}\">\n<p class=\"number\">{}</p>\n{}{}</section>\n", kind,
      name, number, number, head, inside);
}

/// Where the beds are, then what to do when something is different.
std::vector<SheetSection> all_sections(const WeekView& view) {
  std::vector<SheetSection> sections{where_section(view)};
  for (SheetSection& section : help_sections(view)) sections.push_back(std::move(section));
  return sections;
}

std::string sheet_pages(const WeekView& view) {
  const Block head = head_block(view), skip = skip_block(view);
  const SheetSection changed = changed_section(view);
  const Block new_since =
      changed.title.empty() ? Block{} : section_block(changed.title, run_in(changed, "; ") + ".");
  PageFlow flow(view, head.height_pt, skip.height_pt, new_since.height_pt);
  flow.add_runs();
  const bool two_parts = std::any_of(view.plan.runs.begin(), view.plan.runs.end(),
                                     [](const WeekRun& run) { return run.cycles.size() > 1; });
  const std::string note = view.plan.runs.empty() ? total_words(view)
                           : two_parts            ? std::string(phrase(view.language, Phrase::two_parts))
                                                  : std::string{};
  if (!note.empty())
    flow.add_below({fmt::format("<p>{}</p>\n", markup_text(note)), lines_pt(note, page_width_pt)});
  flow.add_sections_beside(garden_sketch(view, sketch_width_pt, sketch_height_pt), all_sections(view));
  std::string html;
  const std::vector<Page>& pages = flow.pages();
  for (std::size_t index = 0; index < pages.size(); ++index) {
    const Page& page = pages[index];
    const bool has_runs = !page.rows.empty(),
               more = index + 1 < pages.size() && !pages[index + 1].rows.empty();
    std::string inside = (index == 0 ? new_since.html : "") + (has_runs || index == 0 ? skip.html : "");
    if (has_runs) inside += page.rows;
    if (more) inside += fmt::format("<p>{}</p>\n", word(view, Phrase::more_on_next_page));
    html += page_html("sheet", word(view, Phrase::sheet_title), page_number(view, index + 1, pages.size()),
                      head.html, inside + page.below);
  }
  return html;
}

// ---- for the educator -------------------------------------------------------------------------------------

std::string legend_words(const WeekView& view) {
  const bool us = view.garden.site.units == UnitSystem::us;
  const std::string_view unit = !us ? "mm" : view.language == Language::en ? "in" : "pulg.";
  const auto say = [&](Phrase id) { return std::string(phrase(view.language, id)); };
  return say(Phrase::educator_note) + " " + fill(view.language, Phrase::chart_missing, {{"unit", unit}}) +
         " " + say(Phrase::chart_limit) + " " + say(Phrase::chart_run) + " " + say(Phrase::chart_rain) + " " +
         fill(view.language, Phrase::chart_risk,
              {{"droops", say(Phrase::risk_droops)},
               {"dry", say(Phrase::risk_dry)},
               {"wilts", say(Phrase::risk_wilts)}});
}

Block chart_block(const WeekView& view, const WeekBed& bed) {
  constexpr double width = (page_width_pt - chart_gap_pt) / 2;
  const SheetPicture chart = bed_chart(view, bed, width);
  const std::string name = bed_letter(view, bed.bed) + " " + bed_name(view, bed.bed),
                    range = sure_range_words(view, bed.bed),
                    lasts = lasts_words(view, bed) + (range.empty() ? "" : "; ") + range;
  return {fmt::format("<figure><figcaption><b>{}</b>: {}</figcaption>{}</figure>", markup_text(name),
                      markup_text(lasts), chart.svg),
          lines_pt(name + "m: " + lasts, width - 4) + chart.height_pt + gap_pt};
}

/// One alert a block, so that many of them go on to the next page; the title stands before the first.
void add_alerts(const WeekView& view, PageFlow& flow) {
  const SheetSection alerts = alert_section(view);
  for (std::size_t index = 0; index < alerts.lines.size(); ++index) {
    const std::string& line = alerts.lines[index];
    flow.add_below(index == 0
                       ? section_block(alerts.title, line)
                       : Block{fmt::format("<p>{}</p>\n", markup_text(line)), lines_pt(line, page_width_pt)});
  }
}

/// Rows of the table of likelihoods, the days of one week.
Block sure_rows(const WeekView& view, const SureTable& table, std::size_t first_day, std::size_t first_row,
                std::size_t rows) {
  constexpr std::size_t week_d = 7;
  const std::size_t end = std::min(first_day + week_d, table.days.size());
  std::string html = fmt::format("<table class=\"sure\"><thead><tr><th scope=\"col\">{}</th>",
                                 word(view, Phrase::column_bed));
  for (std::size_t day = first_day; day < end; ++day)
    html += fmt::format("<th scope=\"col\">{}</th>", markup_text(table.days[day]));
  html += "</tr></thead>\n<tbody>";
  for (std::size_t index = first_row; index < first_row + rows; ++index) {
    const SureTable::Row& row = table.rows[index];
    html += fmt::format("<tr><th scope=\"row\">{}</th>", markup_text(row.letter));
    for (std::size_t day = first_day; day < end; ++day)
      html += fmt::format("<td>{}</td>", markup_text(row.cells[day]));
    html += "</tr>\n";
  }
  return {html + "</tbody></table>\n", head_row_pt + static_cast<double>(rows) * row_pt + gap_pt + 1};
}

/// The title stands on the page of the first rows.
void add_sure_table(const WeekView& view, PageFlow& flow) {
  constexpr std::size_t week_d = 7, rows_at_once = 12;
  const auto table = sure_table(view);
  if (!table) return;
  Block block = section_block(table->title, run_in({{}, table->notes}, " "));
  for (std::size_t day = 0; day < table->days.size(); day += week_d)
    for (std::size_t row = 0; row < table->rows.size(); row += rows_at_once) {
      const Block rows = sure_rows(view, *table, day, row, std::min(rows_at_once, table->rows.size() - row));
      flow.add_below({block.html + rows.html, block.height_pt + rows.height_pt});
      block = {};
    }
}

Block educator_head(const WeekView& view) {
  const std::string title =
      std::string(phrase(view.language, Phrase::educator_title)) + ": " + plain_text(view.garden.site.name);
  const std::string under = dates_words(view) + ". " + made_words(view);
  return {fmt::format("<h1>{}</h1>\n<p>{}</p>\n", markup_text(title), markup_text(under)),
          static_cast<double>(line_count(title, page_width_pt - 100, title_pt, FontWeight::bold)) *
                  title_line_pt +
              lines_pt(under, page_width_pt)};
}

std::string educator_pages(const WeekView& view) {
  const Block head = educator_head(view);
  PageFlow flow(view, head.height_pt, 0, 0);
  add_alerts(view, flow);
  const SheetSection missed = missed_section(view);
  flow.add_below(section_block(missed.title, run_in(missed, " ")));
  add_sure_table(view, flow);
  const std::string legend = legend_words(view);
  flow.add_below({fmt::format("<p>{}</p>\n", markup_text(legend)), lines_pt(legend, page_width_pt)});
  if (view.plan.skip.forecast_rain)
    flow.add_below({fmt::format("<p>{}</p>\n", word(view, Phrase::forecast_rain)), line_pt});
  const std::vector<WeekBed>& beds = view.plan.beds;
  for (std::size_t index = 0; index < beds.size(); index += 2) {
    const Block left = chart_block(view, beds[index]);
    const Block right = index + 1 < beds.size() ? chart_block(view, beds[index + 1]) : Block{};
    flow.add_below({fmt::format("<div class=\"pair\">{}{}</div>\n", left.html, right.html),
                    std::max(left.height_pt, right.height_pt)});
  }
  std::string html;
  for (std::size_t index = 0; index < flow.page_count(); ++index) {
    html += page_html("educator", word(view, Phrase::educator_title),
                      page_number(view, index + 1, flow.page_count()), head.html, flow.pages()[index].below);
  }
  return html;
}

}  // namespace

std::string week_html(const WeekView& view) {
  const std::string title = std::string(phrase(view.language, Phrase::sheet_title)) + ": " +
                            plain_text(view.garden.site.name) + ", " + dates_words(view);
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta name=\"viewport\" "
      "content=\"width=device-width\">\n<title>{}</title>\n<style>{}</style>\n</head>\n"
      "<body>\n<main>\n{}{}</main>\n</body>\n</html>\n",
      code(view.language), markup_text(title), style, sheet_pages(view), educator_pages(view));
}

}  // namespace v1
}  // namespace noonleaf
