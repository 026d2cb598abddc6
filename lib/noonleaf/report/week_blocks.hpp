#pragma once

#include <string>
#include <string_view>

#include "noonleaf/report/text_width.hpp"
#include "noonleaf/report/week_view.hpp"

namespace noonleaf {
inline namespace v1 {

// What the printed week is made of: pieces of pages that know how high they are.

// A page has to fit on Letter and on A4: the width of A4 and the height of Letter, less 0.25 in on every
// side, which office printers leave white anyway.
inline constexpr double page_width_pt = 595.2 - 36, page_height_pt = 792 - 36;
inline constexpr double text_pt = 14, line_pt = 15.5, title_pt = 18, title_line_pt = 21, gap_pt = 2;
inline constexpr double row_pt = 19;  ///< of a table, its head too

/// A piece of a page that is not broken, and the height it takes.
struct PageBlock {
  std::string html{};
  double height_pt = 0;
};

/// A phrase as markup.
std::string phrase_html(const WeekView& view, Phrase id);

/// How high a paragraph is.
double lines_pt(std::string_view text, double width_pt, FontWeight weight = FontWeight::regular);

/// "Call: the day custodian": a section whose title stands in the line.
std::string section_html(const std::string& title, const std::string& text);
/// The same with its height, over the width of the page.
PageBlock section_block(const std::string& title, const std::string& text);

/// The head of a page: a title, and a paragraph under it.
PageBlock title_block(const std::string& title, const std::string& under);

}  // namespace v1
}  // namespace noonleaf
