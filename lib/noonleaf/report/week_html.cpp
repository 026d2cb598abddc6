#include <algorithm>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "noonleaf/report/markup.hpp"
#include "noonleaf/report/sentences.hpp"
#include "noonleaf/report/week_blocks.hpp"
#include "noonleaf/report/week_pictures.hpp"
#include "noonleaf/report/week_table.hpp"
#include "noonleaf/report/week_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double spare_pt = 8;                           // for rounding of the browser
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

/// What one page holds below its head.
struct Page {
  std::string rows{};   ///< of the table of runs
  std::string below{};  ///< after the table
};

PageBlock head_block(const WeekView& view) {
  const std::string title =
      std::string(phrase(view.language, Phrase::sheet_title)) + ": " + plain_text(view.garden.site.name);
  const std::string total = view.plan.runs.empty() ? "" : total_words(view) + " ";
  const std::string under = total + valid_words(view) + " " + made_words(view);
  return title_block(title, under);
}

PageBlock skip_block(const WeekView& view) {
  const SheetSection section = skip_section(view);
  const std::string text =
      joined(section.lines, "; ") + ". " + std::string(phrase(view.language, Phrase::write_codes));
  return {fmt::format("<section class=\"box\"><h2>{}:</h2> <p>{}</p></section>\n", markup_text(section.title),
                      markup_text(text)),
          lines_pt(section.title + "mm: " + text, writing_width_pt) + 8 + gap_pt};
}

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

  void add_below(const PageBlock& block) {
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
      const std::string text = joined(section.lines, "; "), all = section.title + "m: " + text;
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
  const PageBlock head = head_block(view), skip = skip_block(view);
  const SheetSection changed = changed_section(view);
  const PageBlock new_since =
      changed.title.empty() ? PageBlock{} : section_block(changed.title, joined(changed.lines, "; ") + ".");
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
    if (more) inside += fmt::format("<p>{}</p>\n", phrase_html(view, Phrase::more_on_next_page));
    html += page_html("sheet", phrase_html(view, Phrase::sheet_title),
                      page_number(view, index + 1, pages.size()), head.html, inside + page.below);
  }
  return html;
}

// ---- for the educator

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

PageBlock chart_block(const WeekView& view, const WeekBed& bed) {
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
    flow.add_below(
        index == 0 ? section_block(alerts.title, line)
                   : PageBlock{fmt::format("<p>{}</p>\n", markup_text(line)), lines_pt(line, page_width_pt)});
  }
}

/// Rows of the table of likelihoods, the days of one week.
PageBlock sure_rows(const WeekView& view, const SureTable& table, std::size_t first_day,
                    std::size_t first_row, std::size_t rows) {
  constexpr std::size_t week_d = 7;
  const std::size_t end = std::min(first_day + week_d, table.days.size());
  std::string html = fmt::format("<table class=\"sure\"><thead><tr><th scope=\"col\">{}</th>",
                                 phrase_html(view, Phrase::column_bed));
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
  return {html + "</tbody></table>\n", row_pt + static_cast<double>(rows) * row_pt + gap_pt + 1};
}

/// The title stands on the page of the first rows.
void add_sure_table(const WeekView& view, PageFlow& flow) {
  constexpr std::size_t week_d = 7, rows_at_once = 12;
  const auto table = sure_table(view);
  if (!table) return;
  PageBlock block = section_block(table->title, joined(table->notes, " "));
  for (std::size_t day = 0; day < table->days.size(); day += week_d)
    for (std::size_t row = 0; row < table->rows.size(); row += rows_at_once) {
      const PageBlock rows =
          sure_rows(view, *table, day, row, std::min(rows_at_once, table->rows.size() - row));
      flow.add_below({block.html + rows.html, block.height_pt + rows.height_pt});
      block = {};
    }
}

PageBlock educator_head(const WeekView& view) {
  const std::string title =
      std::string(phrase(view.language, Phrase::educator_title)) + ": " + plain_text(view.garden.site.name);
  const std::string under = dates_words(view) + ". " + made_words(view);
  return title_block(title, under);
}

std::string educator_pages(const WeekView& view) {
  const PageBlock head = educator_head(view);
  PageFlow flow(view, head.height_pt, 0, 0);
  add_alerts(view, flow);
  const SheetSection missed = missed_section(view);
  flow.add_below(section_block(missed.title, joined(missed.lines, " ")));
  add_sure_table(view, flow);
  const std::string legend = legend_words(view);
  flow.add_below({fmt::format("<p>{}</p>\n", markup_text(legend)), lines_pt(legend, page_width_pt)});
  if (view.plan.skip.forecast_rain)
    flow.add_below({fmt::format("<p>{}</p>\n", phrase_html(view, Phrase::forecast_rain)), line_pt});
  const std::vector<WeekBed>& beds = view.plan.beds;
  for (std::size_t index = 0; index < beds.size(); index += 2) {
    const PageBlock left = chart_block(view, beds[index]);
    const PageBlock right = index + 1 < beds.size() ? chart_block(view, beds[index + 1]) : PageBlock{};
    flow.add_below({fmt::format("<div class=\"pair\">{}{}</div>\n", left.html, right.html),
                    std::max(left.height_pt, right.height_pt)});
  }
  std::string html;
  for (std::size_t index = 0; index < flow.page_count(); ++index) {
    html += page_html("educator", phrase_html(view, Phrase::educator_title),
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
