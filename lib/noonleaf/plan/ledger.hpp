#pragma once

#include <chrono>
#include <cstddef>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The water of one bed in one month, or a sum of such. Runs are what the journal has: what nobody wrote
/// down is not in here.
struct LedgerLine {
  std::size_t bed = 0;              ///< index into Garden::beds
  std::chrono::year_month month{};  ///< of a sum: that of its last line
  std::size_t runs = 0;             ///< entries of the journal that put water on it
  double minutes = 0;               ///< of running in all
  double depth_mm = 0;              ///< mean depth on the bed
  double in_bed_l = 0;              ///< the same as a volume
  double from_tap_l = 0;  ///< what the tap gave; missing where the flow of a sprinkler that ran is not known
  double beside_bed_l = 0;  ///< tap less bed: paving, neighbours, spray that never lands; missing likewise
  double paving_l =
      missing;  ///< part of it that landed, by the sprinkler's stated off-target share; missing without
  double rain_mm = missing;     ///< on the days that the weather covers
  double drained_mm = missing;  ///< below the reach of the roots, of rain and watering together, on
                                ///< the days that the account covers
  double drained_by_watering_mm = missing;  ///< part of it that would not have drained without the watering
  double uneven_l = 0;                   ///< what an even sprinkler (ledger_good_du) would have saved of it
  std::size_t days = 0;                  ///< of the period
  std::size_t days_without_weather = 0;  ///< of them: no weather file has anything of these
  std::size_t days_without_account = 0;  ///< of them: drainage says nothing of these
};

/// A uniformity of the low quarter that a well-kept sprinkler reaches. Ours: audits call 0.70 to 0.80 good.
inline constexpr double ledger_good_du = 0.75;

/// The water of a period.
struct Ledger {
  std::chrono::year_month_day from{};  ///< included
  std::chrono::year_month_day to{};    ///< included
  std::vector<LedgerLine> lines{};     ///< by bed, then by month; every month of the period
  double billed_l = missing;           ///< sum from the tap; what is in the beds where a flow is not known
  bool volume_is_least = false;        ///< some sprinkler's flow is not known: the true volume is higher
  double cost = missing;               ///< billed volume by price; missing without a price
};

/// What a period took, by bed and month.
///
/// Method    Runs by watering_of; bed volume is depth by area; tap volume is what the meter counted, else
///           flow by minutes; paving its stated share of what landed. Drained by watering: the account's
///           drainage less what it would have been without any watering. Saved by evenness: tap (else bed)
///           volume times 1 - M(good DU) / M(DU), M as run_time_multiplier. Rain as water_on; drainage out
///           of the profile of the plantings that are in the ground at the end of the period, by their
///           shares.
/// Input     from not after to
/// Throws    Error, field "from", when to lies before; as accounts_of_bed
Ledger water_ledger(const Garden& garden, const Journal& journal, const Sky& sky,
                    std::chrono::year_month_day from, std::chrono::year_month_day to);

/// The volume that counts against price and allowance: from the tap, or where that is not known what is in
/// the bed.
double billed_l(const LedgerLine& line);

/// Sum of lines; a missing part makes the sum missing, except for rain and drainage, which only lines of
/// one bed share.
LedgerLine sum_of(const std::vector<LedgerLine>& lines);

}  // namespace v1
}  // namespace noonleaf
