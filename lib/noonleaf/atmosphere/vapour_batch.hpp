#pragma once

#include <cstddef>
#include <utility>

#include <Eigen/Core>

#include "noonleaf/atmosphere/column.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Saturation vapour pressure of many temperatures: FAO-56 eq. 11, as the scalar door in vapour.hpp.
///
/// Input     t_c  n temperatures [°C]
/// Result    n values [kPa] written to result_kpa, within 1e-14 (relative) of the scalar door; the rows
///           outside -60 to 60 °C, NaN there
/// Missing   NaN in, NaN out, not listed
BadRows saturation_vapour_pressure_kpa(ConstColumn t_c, std::size_t count, MutableColumn result_kpa);

/// Slope of the saturation vapour pressure curve of many temperatures: FAO-56 eq. 13.
/// Input, Result, Missing  as above, [kPa °C⁻¹]
BadRows saturation_slope_kpa_c(ConstColumn t_c, std::size_t count, MutableColumn result_kpa_c);

/// Eigen doors: n values in, n values out. Rows outside the accepted range are NaN and, where a list is
/// given, named in it.
inline Eigen::ArrayXd saturation_vapour_pressure_kpa(const Eigen::Ref<const Eigen::ArrayXd>& t_c,
                                                     BadRows* bad_rows = nullptr) {
  Eigen::ArrayXd result(t_c.size());
  BadRows bad = saturation_vapour_pressure_kpa({t_c.data(), t_c.innerStride()},
                                               static_cast<std::size_t>(t_c.size()), {result.data(), 1});
  if (bad_rows != nullptr) *bad_rows = std::move(bad);
  return result;
}
/// Eigen door of the slope.
inline Eigen::ArrayXd saturation_slope_kpa_c(const Eigen::Ref<const Eigen::ArrayXd>& t_c,
                                             BadRows* bad_rows = nullptr) {
  Eigen::ArrayXd result(t_c.size());
  BadRows bad = saturation_slope_kpa_c({t_c.data(), t_c.innerStride()}, static_cast<std::size_t>(t_c.size()),
                                       {result.data(), 1});
  if (bad_rows != nullptr) *bad_rows = std::move(bad);
  return result;
}

}  // namespace v1
}  // namespace noonleaf
