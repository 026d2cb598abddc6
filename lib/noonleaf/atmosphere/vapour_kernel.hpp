#pragma once

#include <cstddef>

namespace noonleaf {
inline namespace v1 {
namespace kernel {

/// One block of temperatures to e° (FAO-56 eq. 11) or its slope (eq. 13); NaN where outside the accepted
/// range. Result    how many rows were outside
void saturation_vapour_pressure(const double* t_c, std::size_t count, double* e_kpa, double* outside);
void saturation_slope(const double* t_c, std::size_t count, double* delta_kpa_c, double* outside);

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
