#pragma once

#include <span>
#include <string_view>

#include "noonleaf/crop/crop.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The three factors of a landscape coefficient.
enum class LandscapeFactor { species, density, microclimate };

/// One printed level of one factor.
struct LandscapeLevel {
  LandscapeFactor factor = LandscapeFactor::species;  ///< which of the three
  std::string_view id{};                              ///< "moderate"
  double low = missing;                               ///< lower end of the printed range
  double value = missing;                             ///< the one used: its middle
  double high = missing;                              ///< upper end of the printed range
  std::string_view source{};                          ///< publication and provenance
};

/// All levels of the three factors.
std::span<const LandscapeLevel> landscape_table();

/// Throws    Error, field "species", "density" or "microclimate", naming the nearest level
const LandscapeLevel& find_landscape_level(LandscapeFactor factor, std::string_view id);

/// Landscape coefficient of an ornamental planting: used in place of a plant factor, never multiplied by one,
/// and no soil evaporation is added.
///
/// Equation  KL = ks kd kmc
/// Source    Costello et al. (2000), A guide to estimating irrigation water needs of landscape plantings in
///           California, Univ. of California Cooperative Extension and Department of Water Resources; from
///           memory
/// Throws    Error where a factor is outside its printed range: ks 0 to 0.9, kd 0.5 to 1.3, kmc 0.5 to 1.4
double landscape_coefficient(double species, double density, double microclimate);

}  // namespace v1
}  // namespace noonleaf
