#pragma once

#include "noonleaf/reference/hourly_formula.hpp"
#include "noonleaf/reference/penman_monteith_formula.hpp"

namespace noonleaf {
inline namespace v1 {

/// Coefficients of a surface, for daily steps or for hourly and shorter ones.
/// Throws    Error, field "surface", for a tall surface with FAO-56, which has none
formula::SurfaceCoefficients daily_coefficients(Equation equation, Surface surface);
formula::HourlyCoefficients hourly_coefficients(Equation equation, Surface surface);

}  // namespace v1
}  // namespace noonleaf
