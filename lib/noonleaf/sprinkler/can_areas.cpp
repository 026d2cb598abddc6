#include "noonleaf/sprinkler/can_areas.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace noonleaf {
inline namespace v1 {
namespace {

using Polygon = std::vector<GroundPoint>;

double squared_distance(GroundPoint a, GroundPoint b) {
  const double dx = a.x_m - b.x_m;
  const double dy = a.y_m - b.y_m;
  return dx * dx + dy * dy;
}

double median_neighbour_distance_m(std::span<const GroundPoint> points) {
  std::vector<double> nearest;
  nearest.reserve(points.size());
  for (std::size_t i = 0; i < points.size(); ++i) {
    double best = std::numeric_limits<double>::infinity();
    for (std::size_t j = 0; j < points.size(); ++j)
      if (j != i) best = std::min(best, squared_distance(points[i], points[j]));
    nearest.push_back(std::sqrt(best));
  }
  const auto middle = nearest.begin() + static_cast<std::ptrdiff_t>(nearest.size() / 2);
  std::nth_element(nearest.begin(), middle, nearest.end());
  return *middle;
}

Polygon widened_rectangle(std::span<const GroundPoint> points) {
  const double margin = 0.5 * median_neighbour_distance_m(points);
  GroundPoint low = points.front();
  GroundPoint high = points.front();
  for (const GroundPoint& point : points) {
    low = {std::min(low.x_m, point.x_m), std::min(low.y_m, point.y_m)};
    high = {std::max(high.x_m, point.x_m), std::max(high.y_m, point.y_m)};
  }
  low = {low.x_m - margin, low.y_m - margin};
  high = {high.x_m + margin, high.y_m + margin};
  return {low, {high.x_m, low.y_m}, high, {low.x_m, high.y_m}};
}

// What of a convex polygon lies nearer to `own` than to `other` (Sutherland and Hodgman's clip).
Polygon nearer_part(const Polygon& polygon, GroundPoint own, GroundPoint other) {
  Polygon kept;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const GroundPoint a = polygon[i];
    const GroundPoint b = polygon[(i + 1) % polygon.size()];
    const double at_a = squared_distance(a, other) - squared_distance(a, own);  // linear along an edge
    const double at_b = squared_distance(b, other) - squared_distance(b, own);
    if (at_a >= 0.0) kept.push_back(a);
    if ((at_a >= 0.0) != (at_b >= 0.0)) {
      const double part = at_a / (at_a - at_b);
      kept.push_back({a.x_m + part * (b.x_m - a.x_m), a.y_m + part * (b.y_m - a.y_m)});
    }
  }
  return kept;
}

double area_m2(const Polygon& polygon) {
  double twice = 0.0;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const GroundPoint a = polygon[i];
    const GroundPoint b = polygon[(i + 1) % polygon.size()];
    twice += a.x_m * b.y_m - b.x_m * a.y_m;
  }
  return 0.5 * std::abs(twice);
}

}  // namespace

std::vector<double> thiessen_shares(std::span<const GroundPoint> points) {
  const Polygon ground = widened_rectangle(points);
  std::vector<double> shares;
  shares.reserve(points.size());
  double total = 0.0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    Polygon cell = ground;
    for (std::size_t j = 0; j < points.size(); ++j)
      if (j != i) cell = nearer_part(cell, points[i], points[j]);
    shares.push_back(area_m2(cell));
    total += shares.back();
  }
  for (double& share : shares) share /= total;
  return shares;
}

}  // namespace v1
}  // namespace noonleaf
