#pragma once

#include <cstddef>

namespace noonleaf {
inline namespace v1 {
namespace kernel {

/// One block of temperatures to e° (FAO-56 eq. 11) or its slope (eq. 13), whatever the temperature.
/// Result    whether a temperature may be outside its accepted range: then the caller looks for it
bool saturation_vapour_pressure(const double* t_c, std::size_t count, double* e_kpa);
bool saturation_slope(const double* t_c, std::size_t count, double* delta_kpa_c);

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
