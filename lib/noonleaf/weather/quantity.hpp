#pragma once

#include <array>
#include <bitset>
#include <cstddef>
#include <span>
#include <string_view>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What a weather column can hold. Daily files may have all of them; of an hourly row the extremes
/// (t_max, t_min, rh_max, rh_min) are never set and t_mean, rh_mean are the period's means.
enum class WeatherQuantity {
  t_max,
  t_min,
  t_mean,
  rh_max,
  rh_min,
  rh_mean,
  t_dew,
  ea,
  wind,
  rs,
  sunshine,
  pressure,
  rain
};

inline constexpr std::size_t weather_quantity_count = 13;  ///< of the enum above

/// A set of quantities: which values of an hour were interpolated, for example.
using WeatherQuantities = std::bitset<weather_quantity_count>;

/// One header that a weather file may use as it is, and what its numbers mean.
struct WeatherColumn {
  std::string_view name;     ///< as written in the header: "tmax_f"
  WeatherQuantity quantity;  ///< what it holds
  std::string_view unit;     ///< as printed: "°F"
  std::string_view meaning;  ///< one phrase for lists: "highest air temperature"
};

/// All canonical value columns, in the order of the manual (docs/weather.md). The key columns `date`, `time`,
/// `time_begin`, `time_end` are not among them.
std::span<const WeatherColumn> weather_columns();

/// The canonical name in SI units of a quantity: t_max is "tmax_c", rs is "rs_mj_m2".
std::string_view canonical_name(WeatherQuantity quantity);

}  // namespace v1
}  // namespace noonleaf
