#pragma once

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The sky as a bed gets it: under eaves, trees or in a courtyard only a share of the sun arrives.
///
/// Method    Rs times Bed::sun_frac in FAO-56 eq. 6; the net longwave loss shrinks with it, since what hides
///           the sun hides the cold sky too (eq. 39 takes shade for cloud). Air, wind and rain stay the
///           station's. A day whose ET0 is the mean of its neighbours has the mean of the shaded ones. Ours.
/// Result    the same sky where the bed has the whole sun
Sky sky_over_bed(const Site& site, const Bed& bed, const Sky& sky);

}  // namespace v1
}  // namespace noonleaf
