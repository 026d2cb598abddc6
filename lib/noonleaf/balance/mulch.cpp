#include "noonleaf/balance/mulch.hpp"

#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {

double mulch_evaporation_factor(MulchKind kind, double covered_frac) {
  require_within("covered_frac", covered_frac, 0, 1, "");
  switch (kind) {
    case MulchKind::organic:
      return 1 - 0.5 * covered_frac;
    case MulchKind::plastic:
      return 1 - covered_frac;
    case MulchKind::none:
      break;
  }
  return 1;
}

}  // namespace v1
}  // namespace noonleaf
