#pragma once

#include "noonleaf/crop/coefficients.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Kcb of a tall, well watered stand that covers the ground fully: where the tables have no row.
///
/// Equation  Kcb full = Kcb,h + [0.04 (u2 - 2) - 0.004 (RHmin - 45)] (h / 3)^0.3,
///           Kcb,h = 1.0 + 0.1 h, not above 1.20
/// Source    FAO-56 (Allen et al. 1998), ch. 9, eq. 99 to 101; from memory
/// Valid     the source: areas larger than a few hectares; a garden bed is smaller and windier
/// Input     height_m  0.05 to 20
/// Missing   NaN in, NaN out
/// Throws    Error, fields as climate_term
double kcb_full_cover(const CropClimate& climate, double height_m);

/// Kcb mid of a stand that covers the ground in part, from what the leaves cover.
///
/// Equation  Kcb mid = Kc min + (Kcb full - Kc min) min{1, 2 fc, fc eff^(1 / (1 + h))}
/// Source    FAO-56, ch. 9, eq. 98; from memory
/// Input     cover_frac  fc, seen from above, 0 to 1; effective_cover_frac  fc eff, the shade at noon of the
///           growing season, not below fc; kcb_full  kcb_full_cover; height_m  0.05 to 20
/// Missing   NaN in, NaN out
/// Throws    Error, field "cover_frac", "effective_cover_frac" or "height_m"
struct PartialCover {
  double kcb_full = missing;              ///< of the same crop where it covers the ground: kcb_full_cover
  double cover_frac = missing;            ///< fc, seen from above
  double effective_cover_frac = missing;  ///< fc eff, the shade at noon; not below fc
  double height_m = missing;              ///< of the stand
  double kc_min = kc_min_bare;            ///< of bare ground
};
/// Equation, input, result: see PartialCover.
double kcb_of_cover(const PartialCover& stand);

/// The same from the leaf area index.
///
/// Equation  Kcb mid = Kc min + (Kcb full - Kc min) (1 - exp(-0.7 LAI))
/// Source    FAO-56, ch. 9, eq. 97; from memory
/// Input     leaf_area_index [m2 m-2], 0 to 12
/// Throws    Error, field "leaf_area_index"
double kcb_of_leaf_area(double kcb_full, double leaf_area_index, double kc_min = kc_min_bare);

}  // namespace v1
}  // namespace noonleaf
