#include "noonleaf/plan/watering.hpp"

#include "noonleaf/sprinkler/run_time.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// Litres that all landed in the bed.
Watering poured(const ApplicationRate& rate, double area_m2, const JournalEntry& entry) {
  Watering result{.minutes = entry.minutes, .mean_mm = entry.litres / area_m2, .from_tap_l = entry.litres};
  result.low_quarter_mm = rate.du_lq_frac * result.mean_mm;
  if (is_missing(result.minutes))
    result.minutes = 60 * result.mean_mm / (rate.rate_mm_h * delivered_frac(rate));
  return result;
}

}  // namespace

Watering watering_of(const Garden& garden, const Bed& bed, const JournalEntry& entry) {
  const Sprinkler& sprinkler = garden.sprinklers[bed.sprinkler];
  const ApplicationRate& rate = sprinkler.rate;
  const bool by_hand = sprinkler.kind == WettingKind::hand;
  if (is_known(entry.litres) && (by_hand || is_missing(rate.flow_l_min)))
    return poured(rate, bed.area_m2, entry);
  const double minutes = is_known(entry.litres) ? entry.litres / rate.flow_l_min : entry.minutes;
  const InfiltratedDepth depth = infiltrated_depth_mm(rate, minutes);
  return {.minutes = minutes,
          .mean_mm = depth.mean_mm,
          .low_quarter_mm = depth.low_quarter_mm,
          .from_tap_l = is_known(entry.litres) ? entry.litres : rate.flow_l_min * minutes};
}

}  // namespace v1
}  // namespace noonleaf
