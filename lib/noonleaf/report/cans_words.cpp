#include "noonleaf/report/cans_words.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include <fmt/format.h>

#include "noonleaf/sprinkler/run_time.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double low_du = 0.50;
constexpr double odd_low_pct = 50, odd_high_pct = 200;
constexpr std::size_t sensible_cans = 8;
constexpr std::size_t most_map_columns = 12, most_map_rows = 24;

std::string depth_text(const CanSheet& sheet, double mm) {
  return sheet.units == UnitSystem::us ? fmt::format("{:.2f} in", inches_from_mm(mm))
                                       : fmt::format("{:.1f} mm", mm);
}

std::string interval_text(const CanEstimate& value, double scale, const char* unit) {
  if (is_missing(value.low) || is_missing(value.high)) return "too few cans to say how sure";
  return fmt::format("{:.2f} to {:.2f}{}", value.low * scale, value.high * scale, unit);
}

/// Mean of the cans on one side, % of the mean of all.
struct Side {
  const char* name;
  double pct;
};

std::vector<Side> sides_of(const CanSheet& sheet) {
  const auto& cans = sheet.test.cans;
  const auto mean_where = [&](auto inside) {
    double sum = 0;
    int count = 0;
    for (std::size_t can = 0; can < cans.size(); ++can) {
      if (!inside(cans[can])) continue;
      sum += percent_of_mean(sheet, can);
      ++count;
    }
    return count == 0 ? missing : sum / count;
  };
  const auto [west, east] = std::minmax_element(
      cans.begin(), cans.end(), [](const CatchCan& a, const CatchCan& b) { return a.x_m < b.x_m; });
  const auto [south, north] = std::minmax_element(
      cans.begin(), cans.end(), [](const CatchCan& a, const CatchCan& b) { return a.y_m < b.y_m; });
  const double east_m = east->x_m, west_m = west->x_m, north_m = north->y_m, south_m = south->y_m;
  const double third_x = (east_m - west_m) / 3, third_y = (north_m - south_m) / 3;
  std::vector<Side> sides;
  if (third_y > 0) {
    sides.push_back({"north", mean_where([&](const CatchCan& can) { return can.y_m > north_m - third_y; })});
    sides.push_back({"south", mean_where([&](const CatchCan& can) { return can.y_m < south_m + third_y; })});
  }
  if (third_x > 0) {
    sides.push_back({"east", mean_where([&](const CatchCan& can) { return can.x_m > east_m - third_x; })});
    sides.push_back({"west", mean_where([&](const CatchCan& can) { return can.x_m < west_m + third_x; })});
  }
  return sides;
}

std::string share_words(double pct) {
  if (pct < 58 && pct > 42) return "about half of the mean";
  return fmt::format("{:.0f} % of the mean", pct);
}

void advise_sides(const CanSheet& sheet, std::vector<std::string>& advice) {
  const std::vector<Side> sides = sides_of(sheet);
  for (std::size_t index = 0; index < sides.size(); ++index) {
    const Side& opposite = sides[index % 2 == 0 ? index + 1 : index - 1];
    if (sides[index].pct >= dry_below_pct || sides[index].pct >= opposite.pct) continue;
    advice.push_back(
        fmt::format("Turn or move the sprinkler to the {0}: the {0} edge gets {1}, the {2} edge {3:.0f} %.",
                    sides[index].name, share_words(sides[index].pct), opposite.name, opposite.pct));
  }
}

void advise_odd_cans(const CanSheet& sheet, std::vector<std::string>& advice) {
  for (std::size_t can = 0; can < sheet.test.cans.size(); ++can) {
    const double pct = percent_of_mean(sheet, can);
    if (pct >= odd_low_pct && pct <= odd_high_pct) continue;
    advice.push_back(fmt::format(
        "Look at can {} (line {}): it holds {:.0f} % of the mean. {}", can + 1, sheet.lines[can], pct,
        pct < odd_low_pct ? "Did leaves shade it, did it tip over, or is that spot dry?"
                          : "Does the sprinkler drip there?"));
    if (advice.size() > 6) return;  // a list that nobody reads helps nobody
  }
}

/// The place of a value among the distinct values; scaled where there are too many of them.
std::map<double, std::size_t> places_of(const std::set<double>& values, std::size_t most) {
  std::map<double, std::size_t> places;
  const double low = *values.begin(), high = *values.rbegin();
  std::size_t rank = 0;
  for (const double value : values) {
    const auto scaled =
        static_cast<std::size_t>(std::lround((value - low) / (high - low) * static_cast<double>(most - 1)));
    places[value] = values.size() <= most ? rank++ : scaled;
  }
  return places;
}

std::string map_cell(double pct) {
  if (is_missing(pct)) return "     .";
  const std::string text = fmt::format("{:.0f}", pct);
  if (pct < dry_below_pct) return fmt::format("{:>6}", "(" + text);
  if (pct > wet_above_pct) return fmt::format("{:>6}", text + ")");
  return fmt::format("{:>6}", text);
}

}  // namespace

double percent_of_mean(const CanSheet& sheet, std::size_t can) {
  return 100 * sheet.test.cans[can].depth_mm / sheet.result.mean_depth_mm;
}

std::vector<std::string> can_result_words(const CanSheet& sheet) {
  const CanResult& result = sheet.result;
  const double unit = sheet.units == UnitSystem::us ? 1 / mm_per_inch : 1.0;
  const char* const unit_word = sheet.units == UnitSystem::us ? " in" : " mm";
  const RunTimeMultiplier multiplier = run_time_multiplier(std::max(0.05, result.du_lq_frac.value));
  std::vector<std::string> lines;
  lines.push_back(fmt::format("{} cans, {:g} minutes, {} on average.", result.can_count, result.minutes,
                              depth_text(sheet, result.mean_depth_mm)));
  lines.push_back(fmt::format("Rate {} an hour; 90 % sure: {}.", depth_text(sheet, result.rate_mm_h.value),
                              interval_text(result.rate_mm_h, unit, unit_word)));
  lines.push_back(fmt::format("DU of the low quarter {:.2f} ({}); 90 % sure: {}.", result.du_lq_frac.value,
                              result.quarter_rule == QuarterRule::whole_cans
                                  ? "the driest quarter of the cans"
                                  : "cans up to a quarter of the ground, the last in part",
                              interval_text(result.du_lq_frac, 1, "")));
  lines.push_back(
      fmt::format("CU {:.2f}; 90 % sure: {}.", result.cu_frac.value, interval_text(result.cu_frac, 1, "")));
  if (result.weighting == CanWeighting::thiessen_area)
    lines.push_back("Each can counts for the ground nearest to it.");
  lines.push_back(
      fmt::format("A run takes {:.2f} times as long as under an even sprinkler{}.", multiplier.value,
                  multiplier.rule == MultiplierRule::lower_half_capped
                      ? fmt::format(" (capped: {:.2f} by the rule; mend it first)", multiplier.before_cap)
                      : std::string{}));
  return lines;
}

std::vector<std::string> can_advice_words(const CanSheet& sheet) {
  const CanResult& result = sheet.result;
  std::vector<std::string> advice;
  if (sheet.has_places) advise_sides(sheet, advice);
  advise_odd_cans(sheet, advice);
  if (result.du_lq_frac.value < low_du) {
    advice.push_back(
        "Very uneven: clean or mend the sprinkler, check pressure and wind, and test again before running it "
        "longer.");
  }
  if (result.can_count < std::max(sensible_cans, result.cans_for_quarter_error)) {
    advice.push_back(
        fmt::format("Set out {} cans or more next time: so few say little, and they flatter the sprinkler.",
                    std::max(sensible_cans, result.cans_for_quarter_error)));
  }
  if (!sheet.has_places)
    advice.push_back("Add x_m and y_m (or x_ft, y_ft) to the sheet to see where the dry spots are.");
  if (advice.empty()) advice.push_back("No edge and no can stands out: leave the sprinkler where it is.");
  return advice;
}

std::string can_map_text(const CanSheet& sheet) {
  if (!sheet.has_places) return {};
  std::set<double> xs, ys;
  for (const CatchCan& can : sheet.test.cans) {
    xs.insert(can.x_m);
    ys.insert(can.y_m);
  }
  const auto columns = places_of(xs, most_map_columns), rows = places_of(ys, most_map_rows);
  const std::size_t n_columns = std::min(xs.size(), most_map_columns),
                    n_rows = std::min(ys.size(), most_map_rows);
  std::vector<std::vector<double>> sums(n_rows, std::vector<double>(n_columns, 0)), counts = sums;
  for (std::size_t can = 0; can < sheet.test.cans.size(); ++can) {
    const std::size_t row = rows.at(sheet.test.cans[can].y_m), column = columns.at(sheet.test.cans[can].x_m);
    sums[row][column] += percent_of_mean(sheet, can);
    counts[row][column] += 1;
  }
  std::string map = "        north\n";
  for (std::size_t row = n_rows; row-- > 0;) {
    map += "  ";
    for (std::size_t column = 0; column < n_columns; ++column) {
      map += map_cell(counts[row][column] == 0 ? missing : sums[row][column] / counts[row][column]);
    }
    map += "\n";
  }
  return map + "  % of the mean; (dry under 75, wet) over 125\n";
}

}  // namespace v1
}  // namespace noonleaf
