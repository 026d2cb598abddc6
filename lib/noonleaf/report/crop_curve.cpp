#include "noonleaf/report/crop_curve.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <vector>

#include <fmt/format.h>

#include "noonleaf/crop/coefficients.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/report/markup.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::array<std::string_view, 4> stage_names{"initial", "development", "mid-season", "late"};

struct Curves {
  KcCurve kc, kcb;
  std::array<int, 4> lengths{};
  int days = 0;
  double top = 0;  ///< of the axis
};

Curves curves_of(const Crop& crop, const StageLengths& stages) {
  Curves curves;
  curves.lengths = {stages.l_ini_d, stages.l_dev_d, stages.l_mid_d, stages.l_late_d};
  for (const int length : curves.lengths) curves.days += length;
  const auto curve = [&](double ini, double mid, double end) {
    return KcCurve{ini,
                   mid,
                   end,
                   static_cast<double>(stages.l_ini_d),
                   static_cast<double>(stages.l_dev_d),
                   static_cast<double>(stages.l_mid_d),
                   static_cast<double>(stages.l_late_d)};
  };
  curves.kc = curve(crop.kc_ini, crop.kc_mid, crop.kc_end);
  curves.kcb = curve(crop.kcb_ini, crop.kcb_mid, crop.kcb_end);
  curves.top = 0.1 * std::ceil(10 * std::max({crop.kc_ini, crop.kc_mid, crop.kc_end}) - 1e-9);
  return curves;
}

/// Day of the season under a column, the first and the last day at the ends.
double day_at(const Curves& curves, int column, int columns) {
  return 1 + (curves.days - 1) * static_cast<double>(column) / (columns - 1);
}

int column_of(const Curves& curves, int day, int columns) {
  return static_cast<int>(std::lround(static_cast<double>(day) * (columns - 1) / curves.days));
}

constexpr int columns = 70;

std::string axis_lines(const Curves& curves) {
  std::string marks(columns, '-'), days(columns + 8, ' '), names(columns + 8, ' ');
  int day = 0;
  const auto put = [](std::string& line, int at, const std::string& text) {
    const auto place = static_cast<std::size_t>(at);
    if (place + text.size() <= line.size()) line.replace(place, text.size(), text);
  };
  int free_from = 0;
  for (std::size_t stage = 0; stage <= stage_names.size(); ++stage) {
    const int at = column_of(curves, day, columns);
    marks[static_cast<std::size_t>(at)] = '+';
    const std::string label = std::to_string(day);
    if (at >= free_from) {
      put(days, at, label);
      free_from = at + static_cast<int>(label.size()) + 1;
    }
    if (stage == stage_names.size()) break;
    const int until = column_of(curves, day + curves.lengths[stage], columns);
    const std::string_view name =
        stage_names[stage].substr(0, static_cast<std::size_t>(std::max(0, until - at - 2)));
    put(names, at + 1, std::string(name));
    day += curves.lengths[stage];
  }
  const auto without_tail = [](const std::string& line) {
    return line.substr(0, line.find_last_not_of(' ') + 1);
  };
  return "      +" + marks.substr(1) + "\n" + "days  " + without_tail(days) + "\n      " +
         without_tail(names) + "\n";
}

[[noreturn]] void refuse_no_stages(const Crop& crop) {
  Problem problem;
  problem.field = "crop";
  problem.text = crop.id;
  problem.message = std::string(crop.name_en) + " has no stages: its coefficient is the same on every day";
  problem.fix = "ask for the text: noonleaf crops " + std::string(crop.id);
  throw Error(std::move(problem));
}

}  // namespace

const StageLengths* curve_stages(const Crop& crop, std::string_view region) {
  if (crop.stages.empty()) return nullptr;
  if (region.empty()) return &crop.stages.front();
  using namespace std::chrono_literals;
  const Planting planting{.start = 2025y / std::chrono::January / 1, .region = std::string(region)};
  return season_calendar(crop, planting, planting.start).lengths;
}

std::string crop_curve_text(const Crop& crop, const StageLengths* stages) {
  if (stages == nullptr) return {};
  const Curves curves = curves_of(crop, *stages);
  const int rows = static_cast<int>(std::lround(curves.top * 10));
  std::vector<std::string> canvas(static_cast<std::size_t>(rows) + 1, std::string(columns, ' '));
  const auto plot = [&](const KcCurve& curve, char mark) {
    for (int column = 0; column < columns; ++column) {
      const double value = kc_on_day(curve, day_at(curves, column, columns));
      if (is_missing(value)) continue;
      const long row = std::clamp(std::lround(value * 10), 0L, static_cast<long>(rows));
      canvas[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)] = mark;
    }
  };
  plot(curves.kc, 'o');
  plot(curves.kcb, '#');
  std::string text;
  for (int row = rows; row >= 1; --row) {
    const std::string& line = canvas[static_cast<std::size_t>(row)];
    const std::size_t end = line.find_last_not_of(' ');
    text +=
        fmt::format(" {:3.1f}  |{}\n", row / 10.0, end == std::string::npos ? "" : line.substr(0, end + 1));
  }
  return text + axis_lines(curves);
}

std::string crop_curve_svg(const Crop& crop, const StageLengths* stages) {
  if (stages == nullptr) refuse_no_stages(crop);
  const Curves curves = curves_of(crop, *stages);
  constexpr double left = 60, top = 50, width = 640, height = 260;
  const auto x = [&](double day) { return left + width * day / curves.days; };
  const auto y = [&](double value) { return top + height * (1 - value / curves.top); };
  std::string svg = fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 760 400\" font-family=\"sans-serif\" "
      "font-size=\"13\" role=\"img\">\n<title>{0}: crop coefficients</title>\n<rect width=\"100%\" "
      "height=\"100%\" fill=\"#ffffff\"/>\n<text x=\"{1}\" y=\"28\" font-size=\"17\">{0}: Kc and Kcb over "
      "the season</text>\n",
      escaped_text(crop.name_en), left);
  for (int tenth = 0; tenth <= std::lround(curves.top * 10); tenth += 2) {
    svg += fmt::format(
        "<line x1=\"{0}\" x2=\"{1}\" y1=\"{2:.1f}\" y2=\"{2:.1f}\" stroke=\"#dddddd\"/><text x=\"{3}\" "
        "y=\"{4:.1f}\" text-anchor=\"end\">{5:.1f}</text>\n",
        left, left + width, y(tenth / 10.0), left - 8, y(tenth / 10.0) + 4.5, tenth / 10.0);
  }
  int day = 0;
  for (std::size_t stage = 0; stage <= stage_names.size(); ++stage) {
    svg += fmt::format(
        "<line x1=\"{0:.1f}\" x2=\"{0:.1f}\" y1=\"{1}\" y2=\"{2}\" stroke=\"#999999\" stroke-dasharray=\"2 "
        "3\"/><text x=\"{0:.1f}\" y=\"{3}\" text-anchor=\"middle\">{4}</text>\n",
        x(day), top, top + height, top + height + 18, day);
    if (stage == stage_names.size()) break;
    svg += fmt::format("<text x=\"{:.1f}\" y=\"{}\" text-anchor=\"middle\">{}</text>\n",
                       x(day + curves.lengths[stage] / 2.0), top + height + 38, stage_names[stage]);
    day += curves.lengths[stage];
  }
  const auto line = [&](const KcCurve& curve, std::string_view style) {
    std::string points;
    for (int each = 0; each <= curves.days; ++each)
      points += fmt::format("{:.1f},{:.1f} ", x(each), y(kc_on_day(curve, std::max(1, each))));
    svg += fmt::format("<polyline fill=\"none\" stroke-width=\"2.5\" {} points=\"{}\"/>\n", style, points);
  };
  line(curves.kc, "stroke=\"#8a5a00\" stroke-dasharray=\"8 5\"");
  line(curves.kcb, "stroke=\"#1f6b2a\"");
  return svg + fmt::format(
                   "<text x=\"{}\" y=\"{}\">dashed: Kc (plant and soil); solid: Kcb (plant alone). Days from "
                   "the start; {}, {}.</text>\n</svg>\n",
                   left, top + height + 68, escaped_text(stages->planted), escaped_text(stages->region));
}

}  // namespace v1
}  // namespace noonleaf
