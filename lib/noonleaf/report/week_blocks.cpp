#include "noonleaf/report/week_blocks.hpp"

#include <fmt/format.h>

#include "noonleaf/report/markup.hpp"

namespace noonleaf {
inline namespace v1 {

std::string phrase_html(const WeekView& view, Phrase id) { return markup_text(phrase(view.language, id)); }

double lines_pt(std::string_view text, double width_pt, FontWeight weight) {
  return static_cast<double>(line_count(text, width_pt, text_pt, weight)) * line_pt;
}

std::string section_html(const std::string& title, const std::string& text) {
  return fmt::format("<section><h2>{}:</h2> <p>{}</p></section>\n", markup_text(title), markup_text(text));
}

PageBlock section_block(const std::string& title, const std::string& text) {
  return {section_html(title, text), lines_pt(title + "m: " + text, page_width_pt) + gap_pt};
}

PageBlock title_block(const std::string& title, const std::string& under) {
  constexpr double number_width_pt = 100;  // the page's number stands beside it
  const auto title_lines =
      static_cast<double>(line_count(title, page_width_pt - number_width_pt, title_pt, FontWeight::bold));
  return {fmt::format("<h1>{}</h1>\n<p>{}</p>\n", markup_text(title), markup_text(under)),
          title_lines * title_line_pt + lines_pt(under, page_width_pt)};
}

}  // namespace v1
}  // namespace noonleaf
