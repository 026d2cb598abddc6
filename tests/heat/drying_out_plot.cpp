// Draws the drying-out experiment, hour by hour, as SVG on stdout. Colours are never the only sign: lines
// differ in their dashes, wilted hours are hatched.
#include <cstdio>
#include <functional>
#include <string>
#include <vector>

#include "heat/drying_out.hpp"

namespace {

constexpr double left = 62, width = 880, top = 44, panel = 150, gap = 46;

struct Axis {
  double y_px;  ///< of the panel's upper edge
  double low, high;
};

double x_px(double hour, double hours) { return left + width * hour / hours; }
double y_px(const Axis& axis, double value) {
  return axis.y_px + panel * (axis.high - value) / (axis.high - axis.low);
}

void print_text(double x, double y, const char* anchor, const std::string& text) {
  std::printf("<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>\n", x, y, anchor, text.c_str());
}

void print_frame(const Axis& axis, const std::string& title, const std::vector<double>& ticks,
                 const char* format) {
  std::printf("<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"none\" stroke=\"#555\"/>\n",
              left, axis.y_px, width, panel);
  print_text(left, axis.y_px - 8, "start", title);
  for (const double tick : ticks) {
    char label[16];
    std::snprintf(label, sizeof label, format, tick);
    print_text(left - 6, y_px(axis, tick) + 4, "end", label);
    std::printf("<path d=\"M%.1f %.1fh%.1f\" stroke=\"#ddd\"/>\n", left, y_px(axis, tick), width);
  }
}

using HourValue = std::function<double(const noonleaf::WiltHour&)>;

void print_line(const std::vector<noonleaf::WiltDay>& days, const Axis& axis, const char* style,
                const HourValue& value) {
  std::printf("<path fill=\"none\" %s d=\"", style);
  const double hours = 24.0 * static_cast<double>(days.size());
  double at = 0;
  for (const noonleaf::WiltDay& day : days)
    for (const noonleaf::WiltHour& hour : day.hours) {
      std::printf("%c%.1f %.1f", at == 0 ? 'M' : 'L', x_px(at + 0.5, hours), y_px(axis, value(hour)));
      at += 1;
    }
  std::printf("\"/>\n");
}

void print_hanging(const std::vector<noonleaf::WiltDay>& days, const Axis& axis) {
  const double hours = 24.0 * static_cast<double>(days.size());
  double at = 0;
  for (const noonleaf::WiltDay& day : days)
    for (const noonleaf::WiltHour& hour : day.hours) {
      if (hour.hangs)
        std::printf("<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"url(#hangs)\"/>\n",
                    x_px(at, hours), axis.y_px, width / hours, panel);
      at += 1;
    }
}

void print_days(const std::vector<noonleaf::WiltDay>& days, double y) {
  for (std::size_t i = 0; i < days.size(); ++i) {
    const double middle = left + width * (static_cast<double>(i) + 0.5) / static_cast<double>(days.size());
    print_text(middle, y, "middle", std::to_string(i + 1));
    print_text(middle, y + 14, "middle",
               days[i].verdict == noonleaf::WiltVerdict::dry_soil_wilt ? "wilt"
                                                                       : std::string(label(days[i].verdict)));
  }
}

}  // namespace

int main() {
  const std::vector<noonleaf::WiltDay> days = drying_out_days();
  const Axis flow{top, 0, 1.2}, potential{top + panel + gap, -1.2, 0};
  std::printf(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 960 460\" font-family=\"sans-serif\" "
      "font-size=\"11\">\n<rect width=\"960\" height=\"460\" fill=\"#fff\"/>\n<defs><pattern id=\"hangs\" "
      "width=\"4\" height=\"4\" patternUnits=\"userSpaceOnUse\"><path d=\"M0 4L4 0\" stroke=\"#c60\" "
      "stroke-opacity=\"0.5\"/></pattern></defs>\n");
  print_frame(flow, "Demand (solid) and supply (dashed), mm/h; hatched: the leaves hang", {0, 0.4, 0.8, 1.2},
              "%.1f");
  print_hanging(days, flow);
  print_line(days, flow, "stroke=\"#a33\"", [](const auto& hour) { return hour.demand_mm_h; });
  print_line(days, flow, "stroke=\"#146\" stroke-width=\"1.5\" stroke-dasharray=\"5 2\"",
             [](const auto& hour) { return hour.supply_mm_h; });
  print_frame(potential, "Potential of soil (solid) and leaf (dotted), MPa; turgor is lost at -1.0",
              {-1.2, -0.8, -0.4, 0}, "%.1f");
  print_line(days, potential, "stroke=\"#641\" stroke-width=\"1.5\"",
             [](const auto& hour) { return hour.soil_potential_mpa; });
  print_line(days, potential, "stroke=\"#272\" stroke-dasharray=\"2 2\"",
             [](const auto& hour) { return hour.leaf_potential_mpa; });
  const double foot = top + 2 * panel + gap + 16;
  print_days(days, foot);
  print_text(left + width / 2, foot + 36, "middle",
             "day, dawn to dawn; 25 mm of water before dawn of day 15");
  std::printf("</svg>\n");
}
