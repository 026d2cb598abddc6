#include "noonleaf/plan/checked_account.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "noonleaf/plan/bed_water.hpp"
#include "noonleaf/plan/unlogged_runs.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::sys_days;

constexpr double silent_sd_frac = 0.5;  // ours: full or not at all, each as likely

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

/// Whether a run of that day is written down, be it as not run.
bool is_spoken_of(std::span<const JournalEntry> runs, std::chrono::year_month_day date) {
  return std::any_of(runs.begin(), runs.end(), [&](const JournalEntry& run) { return run.date == date; });
}

/// What the account rests on since the last check that it agreed with: an error of it grows with one of
/// these.
struct Behind {
  double water_mm = 0, used_mm = 0;
  std::optional<sys_days> silent{};  ///< last day on which a run was due and nobody wrote a word

  void add(std::span<const BalanceDetail> days, std::span<const JournalEntry> runs) {
    for (const BalanceDetail& day : days) {
      if (is_missing(day.end.dr_mm)) continue;
      water_mm += day.irrigation_mm;
      used_mm += day.transpiration_mm + day.evaporation_mm;
      // Water in plenty makes the account right again, whatever it was before.
      if (day.dp_mm > 0) *this = {};
      if (day.end.dr_mm > day.raw_mm && !is_spoken_of(runs, day.date)) silent = sys_days(day.date);
    }
  }

  /// How sure the account is of its depletion.
  double sd_mm(double settled_sd_mm, double dr_mm, sys_days date) const {
    const bool in_doubt = silent && date - *silent <= std::chrono::days(doubted_days);
    return in_doubt ? std::hypot(settled_sd_mm, silent_sd_frac * dr_mm) : settled_sd_mm;
  }

  /// What a check leaves of it. The water of its own day is counted again with the stretch that follows.
  Behind after(const SoilCheck& check, double water_of_day_mm) const {
    const double left =
        check.after.sd_mm * check.after.sd_mm / (check.before.sd_mm * check.before.sd_mm);  // 1 - w
    return {check.water_behind_mm * left - water_of_day_mm, used_mm * left, std::nullopt};
  }
};

/// The account while it goes from check to check.
class AccountWalk {
 public:
  AccountWalk(const CheckedGround& ground, std::span<const JournalEntry> runs)
      : ground_(ground), runs_(runs), state_(ground.start) {}

  void weigh(const JournalEntry& entry) {
    const auto index =
        static_cast<std::size_t>((sys_days(entry.date) - sys_days(ground_.days.front().date)).count());
    go_to(index);
    const BalanceDetail day = run(1).days.front();
    const double account_mm = depletion_at(entry, runs_, {ground_.days[index], day});
    const SoilWater& soil = ground_.days[index].soil ? *ground_.days[index].soil : ground_.soil;
    const FoundDepletion found = depletion_found(entry, soil, day.end.root_depth_m);
    if (is_missing(account_mm) || is_missing(found.dr_mm)) return;
    SoilCheck check{.entry_id = entry.id,
                    .date = entry.date,
                    .time_of_day = entry.time_of_day,
                    .method = entry.event,
                    .feel = entry.feel};
    const double days_since = static_cast<double>((sys_days(entry.date) - last_check_).count());
    check.before.dr_mm = std::max(0.0, account_mm);
    check.before.sd_mm =
        behind_.sd_mm(account_sd_mm(day.taw_mm, sd_after_mm_, days_since), check.before.dr_mm, entry.date);
    check.found = found;
    check.after = weighted(check.before, found);
    check.water_behind_mm = behind_.water_mm + day.irrigation_mm;
    check.used_behind_mm = behind_.used_mm;
    behind_ = behind_.after(check, day.irrigation_mm);
    move_dawn(day, soil, check.after.dr_mm == check.before.dr_mm ? 0.0 : check.after.dr_mm - account_mm);
    sd_after_mm_ = check.after.sd_mm;
    last_check_ = sys_days(entry.date);
    result_.checks.push_back(check);
  }

  CheckedAccount result() && { return std::move(result_); }

 private:
  BalanceRun run(std::size_t count) const {
    return run_balance(state_, ground_.days.subspan(at_, count), ground_.growth.subspan(at_, count),
                       ground_.soil, ground_.settings, result_.corrections);
  }

  void go_to(std::size_t index) {
    if (index <= at_) return;
    const BalanceRun until = run(index - at_);
    behind_.add(until.days, runs_);
    state_ = until.days.back().end;
    at_ = index;
  }

  void move_dawn(const BalanceDetail& day, const SoilWater& soil, double move_mm) {
    const double highest_mm = std::max(day.start.dr_mm, taw_mm(soil, day.start.root_depth_m));
    const double dawn_mm = std::clamp(day.start.dr_mm + move_mm, 0.0, highest_mm);
    result_.corrections.push_back({.date = day.date, .dr_mm = dawn_mm});
    result_.moves.push_back({.date = day.date, .dr_mm = dawn_mm - day.start.dr_mm});
  }

  const CheckedGround& ground_;
  std::span<const JournalEntry> runs_;
  BalanceState state_;
  std::size_t at_ = 0;
  Behind behind_;
  double sd_after_mm_ = missing;
  sys_days last_check_{};
  CheckedAccount result_;
};

}  // namespace

CheckedAccount checked_account(const CheckedGround& ground, std::span<const JournalEntry> entries,
                               std::span<const JournalEntry> runs) {
  AccountWalk walk(ground, runs);
  for (const JournalEntry& entry : entries) walk.weigh(entry);
  return std::move(walk).result();
}

}  // namespace v1
}  // namespace noonleaf
