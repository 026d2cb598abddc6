#pragma once

#include <cstddef>
#include <string_view>

namespace noonleaf {
inline namespace v1 {

enum class FontWeight { regular, bold };

/// How wide a text is in a plain sans-serif face, points.
///
/// Method    Advance widths of the usual sans-serif face for ASCII (thousandths of the size); letters with
///           accents like "a", other characters like "m". Bold is taken 8 % wider. It decides where a
///           page ends, not how a line is broken: the browser breaks lines.
double text_width_pt(std::string_view text, double size_pt, FontWeight weight = FontWeight::regular);

/// Lines that a paragraph fills when broken at spaces, 1 at least.
std::size_t line_count(std::string_view text, double width_pt, double size_pt,
                       FontWeight weight = FontWeight::regular);

/// The same beside a picture: the first lines are narrower.
struct NarrowLines {
  std::size_t count = 0;
  double narrower_pt = 0;
};
std::size_t line_count_beside(std::string_view text, double width_pt, double size_pt,
                              const NarrowLines& narrow);

}  // namespace v1
}  // namespace noonleaf
