#pragma once

#include <string>
#include <vector>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One row of bars, the same thing for each group.
struct BarSeries {
  std::string name{};            ///< in the legend
  std::vector<double> values{};  ///< one a group, in the unit shown; missing = no bar, a question mark
};

/// Bars side by side, in groups, over one axis that begins at 0.
struct BarChart {
  std::string title{};                ///< above it: "Water by month"
  std::string unit{};                 ///< of the axis: "gal"
  std::vector<std::string> groups{};  ///< below the axis
  std::vector<BarSeries> series{};    ///< at most 4; told apart by pattern as well as by shade, for a copier
  double limit = missing;             ///< a line across; missing = none
  std::string limit_name{};           ///< of the line across the bars; empty = no line
  int digits = 0;                     ///< behind the point, in the numbers above the bars
};

/// The chart as a self-contained SVG element with a title and a description for those who cannot see it.
std::string bar_chart_svg(const BarChart& chart);

}  // namespace v1
}  // namespace noonleaf
