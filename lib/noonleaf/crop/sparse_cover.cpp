#include "noonleaf/crop/sparse_cover.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {

double kcb_full_cover(const CropClimate& climate, double height_m) {
  require_within("height_m", height_m, 0.05, 20, "m");
  const double term = climate_term(climate, height_m).kc;
  if (is_missing(term)) return missing;
  return std::min(1.20, 1.0 + 0.1 * height_m) + term;
}

double kcb_of_cover(const PartialCover& stand) {
  require_within("cover_frac", stand.cover_frac, 0, 1, "");
  require_within("effective_cover_frac", stand.effective_cover_frac,
                 is_known(stand.cover_frac) ? stand.cover_frac : 0, 1, "");
  require_within("height_m", stand.height_m, 0.05, 20, "m");
  const double product = stand.kcb_full * stand.cover_frac * stand.effective_cover_frac * stand.height_m;
  if (is_missing(product)) return missing;
  const double share =
      std::min({1.0, 2 * stand.cover_frac, std::pow(stand.effective_cover_frac, 1 / (1 + stand.height_m))});
  return stand.kc_min + (stand.kcb_full - stand.kc_min) * share;
}

double kcb_of_leaf_area(double kcb_full, double leaf_area_index, double kc_min) {
  require_within("leaf_area_index", leaf_area_index, 0, 12, "m2/m2");
  return kc_min + (kcb_full - kc_min) * (1 - std::exp(-0.7 * leaf_area_index));
}

}  // namespace v1
}  // namespace noonleaf
