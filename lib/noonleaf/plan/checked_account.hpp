#pragma once

#include <chrono>
#include <span>
#include <vector>

#include "noonleaf/balance/run.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/soil_check.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The ground of one planting and what came upon it, day by day.
struct CheckedGround {
  const BalanceState& start;          ///< state at the beginning of the first day
  std::span<const BalanceDay> days;   ///< weather and water, one for each day
  std::span<const GrowthDay> growth;  ///< of the same days
  const SoilWater& soil;              ///< of the bed
  const BalanceSettings& settings;    ///< of the account
};

/// By how much a check moved the root zone at the dawn of its day.
struct AccountMove {
  std::chrono::year_month_day date{};  ///< whose dawn it is
  double dr_mm = 0;                    ///< positive = drier
};

/// What looks into the soil change.
struct CheckedAccount {
  std::vector<SoilCheck> checks{};        ///< oldest first
  std::vector<Correction> corrections{};  ///< for run_balance
  std::vector<AccountMove> moves{};       ///< the same as changes
};

/// Weighs each check against the account at its time of day.
///
/// Method    The account runs to the check: Dr of the dawn, the day's water if that came before the check,
///           and the share of the day's ET that has passed. The weighted mean is what the account shall
///           show then, so the dawn of that day is moved by the difference, between 0 and TAW. Where a run
///           was due in the 14 days before (Dr beyond RAW at the close) and the journal has no `water`
///           entry of that day, the account is less sure: half its Dr more, root of the squares (ours).
/// Input     entries  feel and probe entries of this planting within the days, oldest first; runs  the
///           water entries of its bed, evening ones included. A check without a time was made before the
///           day's water; rain counts as fallen before a check that has a time
CheckedAccount checked_account(const CheckedGround& ground, std::span<const JournalEntry> entries,
                               std::span<const JournalEntry> runs);

}  // namespace v1
}  // namespace noonleaf
