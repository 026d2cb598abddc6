#pragma once

#include <array>

#include "noonleaf/garden/toml_table.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {

// The units that garden.toml accepts for each kind of quantity, by the suffix of the key.
inline constexpr std::array<UnitSuffix, 2> elevation_units{{{"_m", 1.0}, {"_ft", m_per_foot}}};
inline constexpr std::array<UnitSuffix, 4> length_units{
    {{"_m", 1.0}, {"_cm", 0.01}, {"_ft", m_per_foot}, {"_in", mm_per_inch / 1000.0}}};
inline constexpr std::array<UnitSuffix, 2> area_units{{{"_m2", 1.0}, {"_ft2", m2_per_square_foot}}};
inline constexpr std::array<UnitSuffix, 2> flow_units{{{"_l_min", 1.0}, {"_gal_min", litres_per_gallon}}};
inline constexpr std::array<UnitSuffix, 2> depth_units{{{"_mm", 1.0}, {"_in", mm_per_inch}}};
inline constexpr std::array<UnitSuffix, 2> rate_units{{{"_mm_h", 1.0}, {"_in_h", mm_per_inch}}};
inline constexpr std::array<UnitSuffix, 2> volume_units{{{"_l", 1.0}, {"_gal", litres_per_gallon}}};
inline constexpr std::array<UnitSuffix, 4> wind_units{
    {{"_m_s", 1.0}, {"_km_h", 1 / 3.6}, {"_mph", m_per_mile / 3600}, {"_kn", m_per_nautical_mile / 3600}}};
inline constexpr std::array<UnitSuffix, 2> emitter_flow_units{{{"_l_h", 1.0}, {"_gal_h", litres_per_gallon}}};

inline constexpr std::array<UnitSuffix, 3> price_units{
    {{"_m3", 1.0}, {"_ccf", 1000.0 / litres_per_ccf}, {"_gal", 1000.0 / litres_per_gallon}}};
inline constexpr std::array<UnitSuffix, 4> supply_units{
    {{"_m3", 1000.0}, {"_ccf", litres_per_ccf}, {"_gal", litres_per_gallon}, {"_l", 1.0}}};

}  // namespace v1
}  // namespace noonleaf
