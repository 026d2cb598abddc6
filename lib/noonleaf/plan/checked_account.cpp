#include "noonleaf/plan/checked_account.hpp"

#include <algorithm>

#include "noonleaf/plan/water_account.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::sys_days;

/// Whether none of the day's runs that began within these hours came after the check.
bool came_before(const JournalEntry& check, std::span<const JournalEntry> runs, std::chrono::minutes from,
                 std::chrono::minutes to) {
  if (!check.time_of_day) return false;
  return std::none_of(runs.begin(), runs.end(), [&](const JournalEntry& run) {
    const bool within =
        run.date == check.date && run.time_of_day && *run.time_of_day >= from && *run.time_of_day < to;
    return within && *run.time_of_day > *check.time_of_day;
  });
}

/// A day as it was brought and as the account took it.
struct DayOfCheck {
  const BalanceDay& brought;
  const BalanceDetail& account;
};

/// The account at the moment of a check; negative = above field capacity for the day.
double depletion_at(const JournalEntry& check, std::span<const JournalEntry> runs, const DayOfCheck& day) {
  constexpr std::chrono::hours midnight{24};
  const BalanceDetail& account = day.account;
  const bool morning_water = came_before(check, runs, std::chrono::minutes(0), evening_begins);
  const bool evening_water = check.time_of_day && *check.time_of_day >= evening_begins &&
                             came_before(check, runs, evening_begins, midnight);
  const double used_mm = account.transpiration_mm + account.evaporation_mm - account.lower_evaporation_mm;
  const double opening_mm = morning_water ? account.dr_open_mm : account.start.dr_mm + account.root_gain_mm;
  return opening_mm + demand_passed_frac(check.time_of_day) * used_mm -
         (evening_water ? day.brought.evening_irrigation_mm : 0.0);
}

/// What the account rests on since the last check that it agreed with: an error of it grows with one of
/// these.
struct Behind {
  double water_mm = 0, used_mm = 0;

  void add(std::span<const BalanceDetail> days) {
    for (const BalanceDetail& day : days) {
      if (is_missing(day.end.dr_mm)) continue;
      water_mm += day.irrigation_mm;
      used_mm += day.transpiration_mm + day.evaporation_mm;
      // Water in plenty makes the account right again, whatever it was before.
      if (day.dp_mm > 0) *this = {};
    }
  }
};

}  // namespace

CheckedAccount checked_account(const CheckedGround& ground, std::span<const JournalEntry> entries,
                               std::span<const JournalEntry> runs) {
  CheckedAccount result;
  BalanceState state = ground.start;
  std::size_t at = 0;
  double sd_after_mm = missing;
  sys_days last_check{};
  Behind behind;
  const auto run = [&](std::size_t count) {
    return run_balance(state, ground.days.subspan(at, count), ground.growth.subspan(at, count), ground.soil,
                       ground.settings, result.corrections);
  };
  for (const JournalEntry& entry : entries) {
    const auto index =
        static_cast<std::size_t>((sys_days(entry.date) - sys_days(ground.days.front().date)).count());
    if (index > at) {
      const BalanceRun until = run(index - at);
      behind.add(until.days);
      state = until.days.back().end;
      at = index;
    }
    const BalanceDetail day = run(1).days.front();
    const double at_check_mm = depletion_at(entry, runs, {ground.days[index], day});
    const double root_depth_m = day.end.root_depth_m;
    const SoilWater& soil = ground.days[index].soil ? *ground.days[index].soil : ground.soil;
    const FoundDepletion found = depletion_found(entry, soil, root_depth_m);
    if (is_missing(at_check_mm) || is_missing(found.dr_mm)) continue;
    const double days_since = static_cast<double>((sys_days(entry.date) - last_check).count());
    SoilCheck check{.entry_id = entry.id,
                    .date = entry.date,
                    .time_of_day = entry.time_of_day,
                    .method = entry.event,
                    .feel = entry.feel};
    check.before = {std::max(0.0, at_check_mm), account_sd_mm(day.taw_mm, sd_after_mm, days_since)};
    check.found = found;
    check.after = weighted(check.before, found);
    check.water_behind_mm = behind.water_mm + day.irrigation_mm;
    check.used_behind_mm = behind.used_mm;
    const double kept =
        check.after.sd_mm * check.after.sd_mm / (check.before.sd_mm * check.before.sd_mm);  // 1 - w
    // Of this day the next stretch counts the water again.
    behind = {check.water_behind_mm * kept - day.irrigation_mm, behind.used_mm * kept};
    const double move_mm = check.after.dr_mm == check.before.dr_mm ? 0.0 : check.after.dr_mm - at_check_mm;
    const double highest_mm = std::max(day.start.dr_mm, taw_mm(soil, day.start.root_depth_m));
    const double dawn_mm = std::clamp(day.start.dr_mm + move_mm, 0.0, highest_mm);
    result.corrections.push_back({.date = entry.date, .dr_mm = dawn_mm});
    result.moves.push_back({.date = entry.date, .dr_mm = dawn_mm - day.start.dr_mm});
    sd_after_mm = check.after.sd_mm;
    last_check = sys_days(entry.date);
    result.checks.push_back(check);
  }
  return result;
}

}  // namespace v1
}  // namespace noonleaf
