#include "noonleaf/report/bar_chart.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "noonleaf/report/markup.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double width = 720, height = 300, left = 56, right = 16, top = 56, bottom = 40;
constexpr std::size_t most_names = 9;
constexpr double narrowest_labelled = 22;  // px; numbers above narrower bars would overlap
constexpr std::array<const char*, 4> fills{"#1f4e79", "url(#dots)", "url(#lines)", "#ffffff"};

/// 1, 2 or 5 times a power of ten that gives about five steps.
double step_of(double highest) {
  const double rough = highest / 5;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  const double share = rough / power;
  return power * (share <= 1 ? 1 : share <= 2 ? 2 : share <= 5 ? 5 : 10);
}

double highest_of(const BarChart& chart) {
  double highest = is_known(chart.limit) ? chart.limit : 0.0;
  for (const BarSeries& series : chart.series) {
    for (const double value : series.values) {
      if (is_known(value)) highest = std::max(highest, value);
    }
  }
  return highest > 0 ? highest : 1.0;
}

/// The place of a value on the page.
class Scale {
 public:
  explicit Scale(double highest)
      : step_(step_of(highest)), steps_(static_cast<int>(std::ceil(highest / step_))) {}
  double step() const { return step_; }
  int steps() const { return steps_; }
  double y(double value) const {
    return height - bottom - value / (step_ * steps_) * (height - bottom - top);
  }

 private:
  double step_;
  int steps_;  ///< from 0 to the top
};

std::string axis_svg(const BarChart& chart, const Scale& scale) {
  std::string svg;
  const int digits = scale.step() < 1 ? static_cast<int>(std::ceil(-std::log10(scale.step()))) : 0;
  for (int i = 0; i <= scale.steps(); ++i) {
    const double value = i * scale.step();
    svg += fmt::format("<line x1='{}' x2='{}' y1='{:.1f}' y2='{:.1f}' stroke='#bbb' stroke-width='{}'/>",
                       left, width - right, scale.y(value), scale.y(value), value == 0 ? 1.5 : 0.5);
    svg += fmt::format("<text x='{}' y='{:.1f}' text-anchor='end'>{:.{}f}</text>", left - 6,
                       scale.y(value) + 4, value, digits);
  }
  return svg + fmt::format("<text x='{}' y='{}' text-anchor='end'>{}</text>", left - 6, top - 14,
                           escaped_text(chart.unit));
}

std::string legend_svg(const BarChart& chart) {
  std::string svg;
  double x = left;
  for (std::size_t index = 0; index < chart.series.size(); ++index) {
    svg += fmt::format("<rect x='{:.0f}' y='28' width='14' height='12' fill='{}' stroke='#222'/>", x,
                       fills[index]);
    svg += fmt::format("<text x='{:.0f}' y='38'>{}</text>", x + 20, escaped_text(chart.series[index].name));
    x += 40 + 7.5 * static_cast<double>(chart.series[index].name.size());
  }
  return svg;
}

std::string bars_svg(const BarChart& chart, const Scale& scale) {
  std::string svg;
  const double room =
      (width - left - right) / static_cast<double>(std::max<std::size_t>(1, chart.groups.size()));
  const double bar =
      std::min(48.0, 0.8 * room / static_cast<double>(std::max<std::size_t>(1, chart.series.size())));
  const std::size_t named = chart.groups.size() / most_names + 1;  // names side by side must not overlap
  for (std::size_t group = 0; group < chart.groups.size(); ++group) {
    const double middle = left + room * (static_cast<double>(group) + 0.5);
    double x = middle - bar * static_cast<double>(chart.series.size()) / 2;
    for (std::size_t index = 0; index < chart.series.size(); ++index, x += bar) {
      const double value = chart.series[index].values[group];
      const double shown = is_known(value) ? value : 0.0;
      svg +=
          fmt::format("<rect x='{:.1f}' y='{:.1f}' width='{:.1f}' height='{:.1f}' fill='{}' stroke='#222'/>",
                      x, scale.y(shown), bar * 0.9, scale.y(0) - scale.y(shown), fills[index]);
      if (bar < narrowest_labelled) continue;
      const std::string label = is_known(value) ? fmt::format("{:.{}f}", value, chart.digits) : "?";
      svg += fmt::format("<text x='{:.1f}' y='{:.1f}' text-anchor='middle' font-size='11'>{}</text>",
                         x + bar * 0.45, scale.y(shown) - 4, label);
    }
    if (group % named != 0) continue;
    svg += fmt::format("<text x='{:.1f}' y='{}' text-anchor='middle'>{}</text>", middle, height - bottom + 18,
                       escaped_text(chart.groups[group]));
  }
  return svg;
}

std::string limit_svg(const BarChart& chart, const Scale& scale) {
  if (is_missing(chart.limit)) return {};
  return fmt::format(
      "<line x1='{}' x2='{}' y1='{:.1f}' y2='{:.1f}' stroke='#b00020' stroke-width='2' stroke-dasharray='8 "
      "4'/><text x='{}' y='{:.1f}' text-anchor='end'>{}</text>",
      left, width - right, scale.y(chart.limit), scale.y(chart.limit), width - right,
      scale.y(chart.limit) - 5, escaped_text(chart.limit_name));
}

std::string description(const BarChart& chart) {
  std::string text;
  for (std::size_t group = 0; group < chart.groups.size(); ++group) {
    text += chart.groups[group] + ":";
    for (const BarSeries& series : chart.series) {
      const double value = series.values[group];
      text += is_known(value) ? fmt::format(" {} {:.{}f} {};", series.name, value, chart.digits, chart.unit)
                              : fmt::format(" {} not known;", series.name);
    }
    text += " ";
  }
  return text;
}

}  // namespace

std::string bar_chart_svg(const BarChart& chart) {
  const Scale scale(highest_of(chart));
  return fmt::format(
             "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 {} {}' role='img' "
             "font-family='sans-serif' font-size='13'><title>{}</title><desc>{}</desc><defs><pattern "
             "id='dots' width='6' height='6' patternUnits='userSpaceOnUse'><rect width='6' height='6' "
             "fill='#fff'/><circle cx='3' cy='3' r='1.6' fill='#2a7f9e'/></pattern><pattern id='lines' "
             "width='6' height='6' patternUnits='userSpaceOnUse' patternTransform='rotate(45)'><rect "
             "width='6' height='6' fill='#fff'/><rect width='2.5' height='6' "
             "fill='#b5651d'/></pattern></defs><text x='{}' y='16' font-weight='bold'>{}</text>",
             width, height, escaped_text(chart.title), escaped_text(description(chart)), left,
             escaped_text(chart.title)) +
         legend_svg(chart) + axis_svg(chart, scale) + bars_svg(chart, scale) + limit_svg(chart, scale) +
         "</svg>\n";
}

}  // namespace v1
}  // namespace noonleaf
