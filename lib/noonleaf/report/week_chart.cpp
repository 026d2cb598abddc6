#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "noonleaf/report/markup.hpp"
#include "noonleaf/report/text_width.hpp"
#include "noonleaf/report/week_pictures.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double text_pt = 14, axis_pt = 34, plot_height_pt = 96, days_height_pt = 36, top_pt = 8;

/// Where a day and a depth lie in the picture. Depth grows downwards: lower is drier.
struct Frame {
  double width_pt = 0, day_pt = 0, mm_pt = 0;

  double x(std::size_t day) const { return axis_pt + static_cast<double>(day) * day_pt; }
  double y(double mm) const { return top_pt + mm * mm_pt; }
};

double deepest_mm(const WeekBed& bed) {
  double deepest = 1;
  for (const BedDay& day : bed.days) {
    for (const double mm :
         {day.depletion_dawn_mm, day.depletion_close_mm, day.raw_mm, day.irrigation_mm, day.rain_mm}) {
      if (is_known(mm)) deepest = std::max(deepest, mm);
    }
  }
  return deepest * 1.08;
}

std::string line_svg(const Frame& frame, const WeekBed& bed) {
  std::string path;
  bool drawing = false;
  for (std::size_t index = 0; index < bed.days.size(); ++index) {
    const BedDay& day = bed.days[index];
    if (is_missing(day.depletion_dawn_mm)) {
      drawing = false;
      continue;
    }
    path += fmt::format("{}{},{}", drawing ? "L" : "M", points(frame.x(index)),
                        points(frame.y(day.depletion_dawn_mm)));
    drawing = true;
    if (is_known(day.depletion_close_mm))
      path += fmt::format("L{},{}", points(frame.x(index + 1)), points(frame.y(day.depletion_close_mm)));
  }
  return fmt::format("<path d=\"{}\" fill=\"none\" stroke=\"#000\" stroke-width=\"2\"/>", path);
}

std::string limit_svg(const Frame& frame, const WeekBed& bed) {
  std::string path;
  for (std::size_t index = 0; index < bed.days.size(); ++index) {
    if (is_missing(bed.days[index].raw_mm)) continue;
    path += fmt::format("M{},{}H{}", points(frame.x(index)), points(frame.y(bed.days[index].raw_mm)),
                        points(frame.x(index + 1)));
  }
  return fmt::format(
      "<path d=\"{}\" fill=\"none\" stroke=\"#000\" stroke-width=\"1.5\" stroke-dasharray=\"5 3\"/>", path);
}

std::string bar_svg(const Frame& frame, double left_pt, double mm, const char* fill) {
  if (!(mm > 0)) return {};
  return fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"{}\" stroke=\"#000\"/>",
                     points(left_pt), points(frame.y(0)), points(frame.day_pt * 0.26),
                     points(std::max(1.0, mm * frame.mm_pt)), fill);
}

std::string bars_svg(const Frame& frame, const WeekBed& bed) {
  std::string bars;
  for (std::size_t index = 0; index < bed.days.size(); ++index) {
    const double left = frame.x(index);
    bars += bar_svg(frame, left + frame.day_pt * 0.16, bed.days[index].irrigation_mm, "#555");
    bars += bar_svg(frame, left + frame.day_pt * 0.56, bed.days[index].rain_mm, "#fff");
  }
  return bars;
}

std::string_view risk_letter(const WeekView& view, DayRisk risk) {
  switch (risk) {
    case DayRisk::droops:
      return phrase(view.language, Phrase::risk_droops);
    case DayRisk::dry:
      return phrase(view.language, Phrase::risk_dry);
    case DayRisk::wilts:
      return phrase(view.language, Phrase::risk_wilts);
    default:
      return {};
  }
}

std::string text_svg(double x_pt, double y_pt, const char* anchor, std::string_view words) {
  return fmt::format("<text x=\"{}\" y=\"{}\" text-anchor=\"{}\">{}</text>", points(x_pt), points(y_pt),
                     anchor, markup_text(words));
}

/// The day of the month below each day, every second one where they would touch; under it the risk.
std::string days_svg(const WeekView& view, const Frame& frame, const WeekBed& bed) {
  const double base = top_pt + plot_height_pt + text_pt + 1;
  const std::size_t step = frame.day_pt < text_width_pt("00 ", text_pt) ? 2 : 1;
  std::string words;
  for (std::size_t index = 0; index < bed.days.size(); ++index) {
    const double middle = frame.x(index) + frame.day_pt / 2;
    if (index % step == 0)
      words +=
          text_svg(middle, base, "middle", std::to_string(static_cast<unsigned>(bed.days[index].date.day())));
    words += text_svg(middle, base + text_pt + 3, "middle", risk_letter(view, bed.days[index].risk));
  }
  return words;
}

std::string axis_svg(const WeekView& view, const Frame& frame, double deepest) {
  const bool us = view.garden.site.units == UnitSystem::us;
  const double label_mm = us ? mm_from_inches(std::max(0.1, std::floor(inches_from_mm(deepest) * 10) / 10))
                             : std::max(1.0, std::floor(deepest));
  const std::string deep =
      us ? view.text().number(inches_from_mm(label_mm), 1) : view.text().number(label_mm, 0);
  return fmt::format("<path d=\"M{},{}V{}H{}\" fill=\"none\" stroke=\"#000\"/>", points(axis_pt),
                     points(top_pt), points(top_pt + plot_height_pt), points(frame.width_pt)) +
         fmt::format("<path d=\"M{},{}H{}\" stroke=\"#000\" stroke-width=\"0.75\"/>", points(axis_pt),
                     points(top_pt), points(frame.width_pt)) +
         text_svg(axis_pt - 4, top_pt + 6, "end", "0") +
         text_svg(axis_pt - 4, frame.y(label_mm) + 4, "end", deep);
}

}  // namespace

SheetPicture bed_chart(const WeekView& view, const WeekBed& bed, double width_pt) {
  if (bed.days.empty()) return {};
  const double deepest = deepest_mm(bed), height = top_pt + plot_height_pt + days_height_pt;
  const Frame frame{width_pt, (width_pt - axis_pt - 2) / static_cast<double>(bed.days.size()),
                    plot_height_pt / deepest};
  const std::string title =
      markup_text(fill(view.language, Phrase::chart_alt, {{"bed", bed_letter(view, bed.bed)}}));
  const std::string drawn = axis_svg(view, frame, deepest) + bars_svg(frame, bed) + limit_svg(frame, bed) +
                            line_svg(frame, bed) + days_svg(view, frame, bed);
  return {fmt::format(
              "<svg role=\"img\" aria-label=\"{}\" viewBox=\"0 0 {} {}\" style=\"width:{}pt;height:{}pt\" "
              "font-size=\"14\">{}</svg>",
              title, points(width_pt), points(height), points(width_pt), points(height), drawn),
          width_pt, height};
}

}  // namespace v1
}  // namespace noonleaf
