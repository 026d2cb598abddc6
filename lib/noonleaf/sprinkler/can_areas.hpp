#pragma once

#include <span>
#include <vector>

namespace noonleaf {
inline namespace v1 {

/// A point on the ground, metres from any corner.
struct GroundPoint {
  double x_m = 0.0, y_m = 0.0;
};

/// Share of the ground that lies nearer to each point than to any other (Thiessen polygons).
///
/// Method    The points' rectangle, widened on each side by half the median distance between nearest
///           neighbours (ours), cut by the bisectors with all other points
/// Source    Thiessen 1911, Monthly Weather Review 39
/// Result    shares in the order given, summing to 1; a regular grid gives equal shares
/// Input     two points or more, all different, known and finite
std::vector<double> thiessen_shares(std::span<const GroundPoint> points);

}  // namespace v1
}  // namespace noonleaf
