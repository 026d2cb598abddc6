#pragma once

#include <cstddef>

#include "noonleaf/weather/quantity.hpp"

namespace noonleaf {
inline namespace v1 {

/// value in the library's unit = (value in the file - subtract) * multiply / divide. Two whole factors
/// instead of one rounded one, so that 50 °F is 10 °C and 1 in is 25.4 mm to the last bit.
struct UnitConversion {
  double subtract = 0.0, multiply = 1.0, divide = 1.0;

  double to_library(double value) const { return (value - subtract) * multiply / divide; }
  double to_file(double value) const { return value * divide / multiply + subtract; }
  bool changes() const { return subtract != 0.0 || multiply != 1.0 || divide != 1.0; }
};

/// Conversion of a canonical column. Means over a day of rs_w_m2 become MJ/m2 per day; see hourly_unit for
/// hours.
UnitConversion unit_conversion(std::size_t weather_column);

inline constexpr UnitConversion fahrenheit{32.0, 5.0, 9.0};
inline constexpr UnitConversion miles_per_hour{0.0, 0.44704, 1.0};  ///< exact by definition of the mile
inline constexpr UnitConversion kilometres_per_hour{0.0, 1.0, 3.6};
inline constexpr UnitConversion knots{0.0, 1852.0, 3600.0};  ///< exact: nautical mile per hour
inline constexpr UnitConversion inches{0.0, 25.4, 1.0};      ///< to mm, exact
inline constexpr UnitConversion hectopascals{0.0, 1.0, 10.0};
/// Inch of mercury at 0 °C: 25.4 mm of the conventional millimetre of mercury, 133.322 387 415 Pa
/// (NIST Special Publication 811, 2008, appendix B.8; from memory).
inline constexpr UnitConversion inches_of_mercury{0.0, 25.4 * 133.322387415, 1000.0};
inline constexpr UnitConversion watts_per_day{0.0, 0.0864, 1.0};  ///< W/m2, mean of 86 400 s, to MJ/m2

}  // namespace v1
}  // namespace noonleaf
