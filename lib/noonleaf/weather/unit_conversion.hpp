#pragma once

#include <cstddef>

#include "noonleaf/weather/quantity.hpp"

namespace noonleaf {
inline namespace v1 {

/// value in the library's unit = (value in the file - subtract) * multiply / divide: the algebra of
/// noonleaf/units.hpp as data, so that a column's conversion is chosen once.
struct UnitConversion {
  double subtract = 0.0, multiply = 1.0, divide = 1.0;

  double to_library(double value) const { return (value - subtract) * multiply / divide; }
  double to_file(double value) const { return value * divide / multiply + subtract; }
  bool changes() const { return subtract != 0.0 || multiply != 1.0 || divide != 1.0; }
};

/// Conversion of the canonical column weather_columns()[index]. A mean of rs_w_m2 becomes MJ/m2 per day;
/// hours divide that by 24.
UnitConversion unit_conversion(std::size_t index);

}  // namespace v1
}  // namespace noonleaf
