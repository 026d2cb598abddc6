#include "noonleaf/reference/surface.hpp"

#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

void require_defined(Equation equation, Surface surface) {
  if (equation == Equation::asce || surface == Surface::short_crop) return;
  throw Error({.field = "surface",
               .text = "tall",
               .message = "FAO-56 defines the short surface only",
               .fix = "use the ASCE equation for the tall surface, or the short surface"});
}

}  // namespace

formula::SurfaceCoefficients daily_coefficients(Equation equation, Surface surface) {
  require_defined(equation, surface);
  return surface == Surface::tall_crop ? formula::tall_daily : formula::short_daily;
}

formula::HourlyCoefficients hourly_coefficients(Equation equation, Surface surface) {
  require_defined(equation, surface);
  if (equation == Equation::fao56) return formula::fao56_hourly;
  return surface == Surface::tall_crop ? formula::asce_tall_hourly : formula::asce_short_hourly;
}

}  // namespace v1
}  // namespace noonleaf
