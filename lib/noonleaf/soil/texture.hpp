#pragma once

#include <span>
#include <string_view>

#include "noonleaf/soil/soil_water.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A printed range.
struct Range {
  double low = missing;   ///< lower end
  double high = missing;  ///< upper end
  /// The mean of both ends.
  constexpr double middle() const { return (low + high) / 2; }
};

/// One of the twelve texture classes of the USDA triangle, with the row of FAO-56 Table 19 where it has one.
struct TextureClass {
  std::string_view id{};         ///< "sandy_loam"
  std::string_view name_en{};    ///< for people
  std::string_view name_es{};    ///< for people, in Spanish
  double sand_pct = missing;     ///< typical of the class: Saxton & Rawls 2006, Table 3
  double clay_pct = missing;     ///< likewise
  Range field_capacity_m3_m3{};  ///< FAO-56 Table 19
  Range wilting_point_m3_m3{};   ///< FAO-56 Table 19
  Range available_m3_m3{};       ///< FAO-56 Table 19
  Range rew_mm{};                ///< readily evaporable water, FAO-56 Table 19
  Range tew_mm{};                ///< tew: Ze 0.10 m
  bool surrogate = false;        ///< Table 19 has no such row: that of the class named in `note`
  std::string_view source{};     ///< publication, table, provenance
  std::string_view note{};       ///< doubts and choices; empty = none
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
