#pragma once

#include <span>
#include <string_view>

#include "noonleaf/soil/soil_water.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A printed range.
struct Range {
  double low = missing, high = missing;
  /// The mean of both ends.
  constexpr double middle() const { return (low + high) / 2; }
};

/// One of the twelve texture classes of the USDA triangle, with the row of FAO-56 Table 19 where it has one.
struct TextureClass {
  std::string_view id{}, name_en{}, name_es{};    ///< "sandy_loam"
  double sand_pct = missing, clay_pct = missing;  ///< typical of the class: Saxton & Rawls 2006, Table 3
  Range field_capacity_m3_m3{}, wilting_point_m3_m3{}, available_m3_m3{}, rew_mm{},
      tew_mm{};            ///< tew: Ze 0.10 m
  bool surrogate = false;  ///< Table 19 has no such row: that of the class named in `note`
  std::string_view source{}, note{};
};

/// The twelve classes from sand to clay.
std::span<const TextureClass> texture_table();

/// Throws    Error, field "texture", naming the nearest class
const TextureClass& find_texture(std::string_view id);

/// Middle of the FAO-56 Table 19 ranges.
/// Note      TEW follows from eq. 73 with these middles; it lies within the printed range (tests).
///           Saturation and conductivity are not in Table 19: those of Saxton & Rawls 2006 Table 3's
///           typical soil of the class with 2.5 % organic matter are given, and `source` says so.
SoilWater soil_of(const TextureClass& texture);

/// The class of a soil in the USDA texture triangle.
///
/// Source    USDA Soil Survey Manual (2017), ch. 3, the class limits as printed
/// Throws    Error where sand + clay exceed 100 % or are negative
const TextureClass& classify_texture(double sand_pct, double clay_pct);

}  // namespace v1
}  // namespace noonleaf
