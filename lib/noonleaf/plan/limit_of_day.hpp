#pragma once

#include "noonleaf/balance/daily_step.hpp"

namespace noonleaf {
inline namespace v1 {

// The layer that counts on a day, and its limit: of a seedbed the top one, De and REW; else the root zone, Dr
// and RAW.

inline double close_mm(const BalanceDetail& day, bool seedbed) {
  return seedbed ? day.end.de_mm : day.end.dr_mm;
}
inline double limit_mm(const BalanceDetail& day, bool seedbed) { return seedbed ? day.rew_mm : day.raw_mm; }

/// Whether the day ends beyond it.
inline bool is_beyond_limit(const BalanceDetail& day, bool seedbed) {
  return close_mm(day, seedbed) > limit_mm(day, seedbed);
}

}  // namespace v1
}  // namespace noonleaf
