#include "noonleaf/reference/surface.hpp"

#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {

formula::SurfaceCoefficients daily_coefficients(Equation equation, Surface surface) {
  if (equation == Equation::fao56 && surface == Surface::tall_crop) {
    throw Error({.field = "surface",
                 .text = "tall",
                 .message = "FAO-56 defines the short surface only",
                 .fix = "use the ASCE equation for the tall surface, or the short surface"});
  }
  return surface == Surface::tall_crop ? formula::tall_daily : formula::short_daily;
}

}  // namespace v1
}  // namespace noonleaf
