#pragma once

#include <chrono>
#include <cstddef>
#include <vector>

#include "noonleaf/balance/run.hpp"
#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/salt.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/soil_check.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The soil water of one planting up to a morning, and what would follow without water.
struct PlantingAccount {
  std::size_t planting = 0;              ///< index into Bed::plantings
  SoilWater soil{};                      ///< of the bed on that morning
  BalanceRun past{};                     ///< from account_start to the day before the morning
  BalanceState dawn{};                   ///< as the morning finds it, before a check of that day
  std::vector<SoilCheck> soil_checks{};  ///< looks into the soil up to and on the morning's day, oldest first
  BalanceRun dry_ahead{};           ///< days from the morning on: what was watered on the first, then nothing
  SaltOfPlanting salt{};            ///< what salt does to it
  std::chrono::sys_days seed_up{};  ///< first day on which it is no seed any more (seed_up_day)
  double start_doubt_mm = 0;        ///< how much drier this morning would be from a dry start of the account
  BalanceRun low_past{};            ///< the same in the driest quarter of the bed (low_quarter_run)
  BalanceRun low_ahead{};           ///< the same ahead, there
  // What `dry_ahead` was made from, so that a plan can put its own water into the same days.
  std::vector<BalanceDay> days_to_come{};   ///< weather of the days ahead, without rain
  std::vector<GrowthDay> growth_to_come{};  ///< the crop on them
  BalanceSettings settings{};               ///< of the account
};

/// How far an account looks ahead where nobody asks for more.
inline constexpr std::size_t days_ahead = 10;

/// Where the account of a morning starts: the first day of the sky, or the day after the last gap before
/// the morning that could not be bridged.
std::chrono::sys_days account_start(const Sky& sky, std::chrono::year_month_day date);

/// The same for one bed: its known wet morning, where that is later.
std::chrono::sys_days account_start_of_bed(const Bed& bed, const Sky& sky, std::chrono::year_month_day date);

/// The account of every planting that is in the ground on the morning of `date`.
///
/// Method    The account starts with soil at field capacity, on a known wet morning or by assumption, or half
///           full (AccountOptions); start_doubt_mm says how much that still matters, and `today` prints it.
///           The bed has its own sun and rain catch, its mulch and its amendments day by day, its salt. Each
///           planting keeps its own root zone. Days ahead that no file covers have the mean ET0 of the last
///           three that one does (ours). Snow and frozen ground stop the account (ground_state). A feel or
///           probe entry sets the root zone right at the beginning of its day, so that the account passes
///           through the weighted mean of both at the time of the check. A droop never changes it.
/// Input     date   a day of the sky; look_ahead_d  days of dry_ahead, 1 or more
/// Throws    Error, field "date", when that day has no temperature and no neighbours to bridge it
std::vector<PlantingAccount> accounts_of_bed(const Garden& garden, std::size_t bed, const Journal& journal,
                                             const Sky& sky, std::chrono::year_month_day date,
                                             std::size_t look_ahead_d = days_ahead);

}  // namespace v1
}  // namespace noonleaf
