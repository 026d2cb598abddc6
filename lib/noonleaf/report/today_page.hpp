#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "noonleaf/report/today_words.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One paragraph of a page for a terminal.
struct PageParagraph {
  /// How a paragraph stands out.
  enum class Weight {
    plain,   ///< as all text
    strong,  ///< in bold, where there is bold
    heading  ///< in bold, an empty line before it
  };
  std::string text{};             ///< one line, however long: the terminal breaks it
  std::size_t indent = 0;         ///< columns before every line
  Weight weight = Weight::plain;  ///< how it stands out
};

/// The answer as a person reads it standing at the tap, in the view's language: what to open, what to look at
/// first, what has no run, what to leave alone, alerts, how sure, what was not measured, cautions.
std::vector<PageParagraph> today_page(const TodayView& view);

}  // namespace v1
}  // namespace noonleaf
