#include "today_text.hpp"

#include "noonleaf/report/today_page.hpp"

#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

std::string paragraph_text(const PageParagraph& paragraph) {
  using Weight = PageParagraph::Weight;
  if (paragraph.weight == Weight::plain) return wrapped(paragraph.text, paragraph.indent);
  std::string lines = wrapped(paragraph.text, paragraph.indent);
  lines.pop_back();  // the newline stays outside the bold
  return (paragraph.weight == Weight::heading ? "\n" : "") + bold(lines) + "\n";
}

}  // namespace

std::string today_text(const TodayView& view) {
  std::string text;
  for (const PageParagraph& paragraph : today_page(view)) text += paragraph_text(paragraph);
  return text;
}

}  // namespace noonleaf::cli
