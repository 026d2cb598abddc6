#include "noonleaf/plan/low_quarter.hpp"

#include <algorithm>
#include <vector>

namespace noonleaf {
inline namespace v1 {

BalanceRun low_quarter_run(const CheckedGround& ground, std::span<const AccountMove> moves) {
  std::vector<Correction> corrections;
  const auto first = std::chrono::sys_days(ground.days.front().date);
  for (const AccountMove& move : moves) {
    // Only the days up to the check are run anew: of those the corrections so far are known.
    const auto count = static_cast<std::size_t>((std::chrono::sys_days(move.date) - first).count()) + 1;
    if (count > ground.days.size()) continue;
    const BalanceRun until = run_balance(ground.start, ground.days.first(count), ground.growth.first(count),
                                         ground.soil, ground.settings, corrections);
    const BalanceDetail& day = until.days.back();
    if (is_missing(day.start.dr_mm)) continue;
    const double highest_mm = std::max(day.start.dr_mm, day.taw_mm);
    corrections.push_back(
        {.date = move.date, .dr_mm = std::clamp(day.start.dr_mm + move.dr_mm, 0.0, highest_mm)});
  }
  return run_balance(ground.start, ground.days, ground.growth, ground.soil, ground.settings, corrections);
}

}  // namespace v1
}  // namespace noonleaf
