#include "noonleaf/report/text_width.hpp"

#include <array>

namespace noonleaf {
inline namespace v1 {
namespace {

// From space to tilde, in thousandths of the size; the widths that Arial, Helvetica and Liberation Sans
// share.
constexpr std::array<int, 95> advance{
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333,  278, 278, 556, 556, 556,
    556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667,
    611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667,  611, 722, 667, 944, 667,
    667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278,  556, 556, 222, 222, 500,
    222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500,  500, 334, 260, 334, 584};
constexpr int accented_letter = 556, wide_character = 833, quotation_mark = 333;
constexpr double bold_factor = 1.08;

std::size_t lines_of(std::string_view text, double width_pt, const NarrowLines& narrow, double size_pt,
                     FontWeight weight) {
  const double space = text_width_pt(" ", size_pt, weight);
  std::size_t lines = 1;
  double filled = 0;
  const auto width = [&] { return lines <= narrow.count ? width_pt - narrow.narrower_pt : width_pt; };
  while (!text.empty()) {
    const std::size_t end = text.find(' ');
    const double word = text_width_pt(text.substr(0, end), size_pt, weight);
    if (filled > 0 && filled + space + word > width()) {
      ++lines;
      filled = 0;
    }
    filled += (filled > 0 ? space : 0) + word;
    for (; filled > width() && width() > size_pt; filled -= width()) ++lines;  // a word wider than the line
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  return lines;
}

}  // namespace

double text_width_pt(std::string_view text, double size_pt, FontWeight weight) {
  int thousandths = 0;
  for (std::size_t place = 0; place < text.size(); ++place) {
    const auto code = static_cast<unsigned char>(text[place]);
    if (code >= 0x20 && code < 0x7F) {
      thousandths += advance[code - 0x20U];
    } else if (text.substr(place, 2) == "\u00A0") {
      thousandths += advance[0];
    } else if (text.substr(place, 2) == "í") {
      thousandths += advance['i' - 0x20];
    } else if (text.substr(place, 3) == "“" || text.substr(place, 3) == "”") {
      thousandths += quotation_mark;
    } else if (code >= 0xC0) {  // the first byte of a character of several
      thousandths += code < 0xE0 ? accented_letter : wide_character;
    }
  }
  return thousandths * size_pt / 1000 * (weight == FontWeight::bold ? bold_factor : 1.0);
}

std::size_t line_count(std::string_view text, double width_pt, double size_pt, FontWeight weight) {
  return lines_of(text, width_pt, {}, size_pt, weight);
}

std::size_t line_count_beside(std::string_view text, double width_pt, double size_pt,
                              const NarrowLines& narrow) {
  return lines_of(text, width_pt, narrow, size_pt, FontWeight::regular);
}

}  // namespace v1
}  // namespace noonleaf
