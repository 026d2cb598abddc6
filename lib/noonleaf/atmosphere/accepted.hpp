#pragma once

#include <bit>
#include <cstdint>
#include <string_view>

#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {

/// The ranges that the public doors accept: ours, not the sources'. Wide enough for any inhabited place,
/// narrow enough to stop a value in the wrong unit.
namespace accepted {

struct Range {
  double low, high;
};

inline constexpr Range temperature_c{-60, 60};
inline constexpr Range elevation_m{-500, 9000};
inline constexpr Range latitude_deg{-90, 90};
inline constexpr Range longitude_deg{-180, 180};
inline constexpr Range pressure_kpa{30, 110};
inline constexpr Range vapour_pressure_kpa{0, 20};
inline constexpr Range wind_m_s{0, 60};
inline constexpr Range anemometer_height_m{0.5, 200};
inline constexpr Range radiation_mj_m2_d{0, 60};
inline constexpr Range radiation_mj_m2_h{0, 6};
inline constexpr Range period_s{60, 3600};  ///< length of the periods of the hourly equations
inline constexpr Range soil_heat_mj_m2_d{-30, 30};
inline constexpr Range relative_humidity_pct{0, 100};

/// Bits whose sign is set where a value is outside a range, for loops that must stay free of comparisons:
/// many of those keep a compiler from good vector code. A NaN or a -0.0 may set it too, so a marked block
/// needs a second look with is_outside.
[[gnu::always_inline]] inline std::uint64_t outside_bits(double value, Range range) {
  const double above_low = range.low == 0.0 ? value : value - range.low;
  return std::bit_cast<std::uint64_t>(above_low) | std::bit_cast<std::uint64_t>(range.high - value);
}

[[gnu::always_inline]] inline bool sign_of(std::uint64_t bits) { return (bits >> 63) != 0; }

inline bool is_outside(double value, Range range) { return value < range.low || value > range.high; }

}  // namespace accepted

inline void require_within(std::string_view field, double value, accepted::Range range,
                           std::string_view unit) {
  require_within(field, value, range.low, range.high, unit);
}

/// Guard: the higher of two readings must not be the lower one. A missing one passes.
/// Throws    Error, field = `high_field`, naming both values
void require_ordered(std::string_view high_field, double high, std::string_view low_field, double low,
                     std::string_view unit);

}  // namespace v1
}  // namespace noonleaf
