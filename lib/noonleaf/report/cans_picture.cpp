#include <algorithm>
#include <string>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/report/cans_words.hpp"
#include "noonleaf/report/json_parts.hpp"
#include "noonleaf/report/markup.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double picture_width = 640, margin = 60, widest_height = 640;

void require_places(const CanSheet& sheet) {
  if (sheet.has_places) return;
  Problem problem;
  problem.field = "x_m, y_m";
  problem.message = "a picture needs to know where the cans stood";
  problem.fix = "add the columns x_m and y_m, or x_ft and y_ft, to the sheet";
  throw Error(std::move(problem));
}

/// Sand to deep blue by what the can holds; the number in it says the same.
std::string fill_of(double pct) {
  if (pct < dry_below_pct) return "#e8c98a";
  return pct > wet_above_pct ? "#2f6f9f" : "#9cc8d8";
}

}  // namespace

std::string can_map_svg(const CanSheet& sheet, std::string_view title) {
  require_places(sheet);
  const auto& cans = sheet.test.cans;
  const auto [west, east] = std::minmax_element(
      cans.begin(), cans.end(), [](const CatchCan& a, const CatchCan& b) { return a.x_m < b.x_m; });
  const auto [south, north] = std::minmax_element(
      cans.begin(), cans.end(), [](const CatchCan& a, const CatchCan& b) { return a.y_m < b.y_m; });
  const double wide_m = std::max(0.1, east->x_m - west->x_m), high_m = std::max(0.1, north->y_m - south->y_m);
  const double scale = std::min((picture_width - 2 * margin) / wide_m, widest_height / high_m);
  const double height = high_m * scale + 2 * margin + 40;
  std::string svg = fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {:.0f} {:.0f}\" font-family=\"sans-serif\" "
      "font-size=\"13\" "
      "text-anchor=\"middle\" role=\"img\">\n<title>{}</title>\n<rect width=\"100%\" height=\"100%\" "
      "fill=\"#ffffff\"/>\n"
      "<text x=\"{:.0f}\" y=\"20\">north</text>\n",
      picture_width, height, escaped_text(title), picture_width / 2);
  for (std::size_t can = 0; can < cans.size(); ++can) {
    const double pct = percent_of_mean(sheet, can);
    const double x = margin + (cans[can].x_m - west->x_m) * scale,
                 y = margin + (north->y_m - cans[can].y_m) * scale;
    svg += fmt::format(
        "<circle cx=\"{0:.1f}\" cy=\"{1:.1f}\" r=\"20\" fill=\"{2}\" stroke=\"#333333\"/><text x=\"{0:.1f}\" "
        "y=\"{3:.1f}\" fill=\"{4}\">{5:.0f}</text>\n",
        x, y, fill_of(pct), y + 4.5, pct > wet_above_pct ? "#ffffff" : "#111111", pct);
  }
  return svg + fmt::format(
                   "<text x=\"{:.0f}\" y=\"{:.0f}\">% of the mean; sand: dry, under 75; deep blue: wet, over "
                   "125. DU {:.2f}, CU {:.2f}</text>\n</svg>\n",
                   picture_width / 2, height - 15, sheet.result.du_lq_frac.value, sheet.result.cu_frac.value);
}

std::string can_json(const CanSheet& sheet, std::string_view file) {
  const CanResult& result = sheet.result;
  const bool whole = result.quarter_rule == QuarterRule::whole_cans;
  const bool by_ground = result.weighting == CanWeighting::thiessen_area;
  nlohmann::ordered_json json{{"shape", "noonleaf.cans"},
                              {"version", 1},
                              {"file", file},
                              {"minutes", result.minutes},
                              {"can_count", result.can_count}};
  const auto add = [&](const std::string& name, const CanEstimate& value) {
    json[name] = number_or_null(value.value);
    json[name + "_low"] = number_or_null(value.low);
    json[name + "_high"] = number_or_null(value.high);
  };
  add("rate_mm_h", result.rate_mm_h);
  add("du_lq_frac", result.du_lq_frac);
  add("cu_frac", result.cu_frac);
  json["confidence_frac"] = can_confidence_frac;
  json["mean_depth_mm"] = result.mean_depth_mm;
  json["low_quarter_depth_mm"] = result.low_quarter_depth_mm;
  json["quarter_rule"] = whole ? "whole_cans" : "fractional_quarter";
  json["weighting"] = by_ground ? "thiessen_area" : "equal";
  json["run_time_multiplier"] = run_time_multiplier(std::max(0.05, result.du_lq_frac.value)).value;
  json["cans_needed"] = result.cans_for_quarter_error;
  json["advice"] = can_advice_words(sheet);
  for (std::size_t can = 0; can < sheet.test.cans.size(); ++can) {
    const CatchCan& each = sheet.test.cans[can];
    json["cans"].push_back({{"line", sheet.lines[can]},
                            {"depth_mm", each.depth_mm},
                            {"x_m", number_or_null(each.x_m)},
                            {"y_m", number_or_null(each.y_m)},
                            {"area_share", result.area_share[can]}});
  }
  return json_text(json);
}

}  // namespace v1
}  // namespace noonleaf
