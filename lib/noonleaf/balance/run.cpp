#include "noonleaf/balance/run.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "noonleaf/balance/potential_transpiration.hpp"
#include "noonleaf/balance/profile.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

[[noreturn]] void refuse(const char* field, std::string text, std::string message, std::string fix) {
  Problem problem;
  problem.field = field;
  problem.text = std::move(text);
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

void require_series(std::span<const BalanceDay> days, std::span<const GrowthDay> growth) {
  if (days.size() != growth.size())
    refuse("growth", std::to_string(growth.size()),
           std::to_string(growth.size()) + " days of growth for " + std::to_string(days.size()) +
               " days of weather",
           "give one of each for every day");
  for (std::size_t i = 1; i < days.size(); ++i) {
    const auto step = std::chrono::sys_days{days[i].date} - std::chrono::sys_days{days[i - 1].date};
    if (step != std::chrono::days{1})
      refuse("date", std::to_string(i), "day " + std::to_string(i + 1) + " does not follow the day before",
             "give every day once, in order; what is missing as missing");
  }
}

/// After a gap an observation begins the account anew: below the roots the ground is taken as dry as in them.
void restart(BalanceState& state, const SoilWater& soil, double dr_mm) {
  const double depleted = std::min(1.0, dr_mm / taw_mm(soil, state.root_depth_m));
  state.lower_mm = depleted * taw_mm(soil, state.profile_depth_m - state.root_depth_m);
}

/// Applies what was found in the ground on this day and says by how much it changed the root zone.
double correct(BalanceState& state, const SoilWater& soil, std::chrono::year_month_day date,
               std::span<const Correction> corrections) {
  double change = 0;
  for (const Correction& found : corrections) {
    if (found.date != date) continue;
    if (is_known(found.dr_mm)) {
      require_within("dr_mm", found.dr_mm, 0, root_zone_limits(soil, state.root_depth_m).evaporation_mm,
                     "mm");
      if (is_missing(state.dr_mm) || is_missing(state.lower_mm))
        restart(state, soil, found.dr_mm);
      else
        change += found.dr_mm - state.dr_mm;
      state.dr_mm = found.dr_mm;
      if (found.dr_mm == 0) state.de_mm = state.de_rain_mm = 0;
    }
    if (is_known(found.de_mm)) {
      require_within("de_mm", found.de_mm, 0, tew_mm(soil), "mm");
      state.de_mm = state.de_rain_mm = found.de_mm;
    }
  }
  return change;
}

double stored_mm(const BalanceState& state) { return -(state.dr_mm + state.lower_mm); }

/// Water in the profile from the flows alone, relative to field capacity. After a gap it starts anew.
class FlowAccount {
 public:
  explicit FlowAccount(const BalanceState& start) : water_mm_(stored_mm(start)) {}

  void add(const BalanceDetail& day) {
    if (is_missing(day.end.dr_mm)) {
      water_mm_ = missing;
      return;
    }
    if (is_missing(water_mm_))
      water_mm_ = stored_mm(day.start);
    else
      water_mm_ -= day.correction_mm + day.amended_mm;
    water_mm_ += day.rain_mm - day.runoff_mm + day.irrigation_mm - day.transpiration_mm - day.evaporation_mm -
                 day.drainage_mm;
    const double apart = water_mm_ - stored_mm(day.end);
    if (std::abs(apart) > 1e-9)
      refuse("closure_mm", number_text(apart),
             "water does not add up over the run: the flows and the layers differ by " + number_text(apart) +
                 " mm",
             "this is a fault of the program: please report it with the run's numbers");
  }

 private:
  double water_mm_;
};

void add_totals(BalanceRun& run, const BalanceDetail& day) {
  if (is_missing(day.end.dr_mm)) return;
  run.rain_mm += day.rain_mm;
  run.runoff_mm += day.runoff_mm;
  run.irrigation_mm += day.irrigation_mm;
  run.transpiration_mm += day.transpiration_mm;
  run.evaporation_mm += day.evaporation_mm;
  run.drainage_mm += day.drainage_mm;
  run.correction_mm += day.correction_mm;
  run.stress_mm += lost_transpiration_mm(day);
}

}  // namespace

BalanceState initial_state(const SoilWater& soil, double root_depth_m, double profile_depth_m,
                           double depleted_frac) {
  require_complete(soil);
  require_within("root_depth_m", root_depth_m, 0.01, 10, "m");
  require_within("profile_depth_m", profile_depth_m, std::max(root_depth_m, soil.evaporation_depth_m), 10,
                 "m");
  require_within("depleted_frac", depleted_frac, 0, 1, "");
  BalanceState state;
  state.root_depth_m = root_depth_m;
  state.profile_depth_m = profile_depth_m;
  state.dr_mm = depleted_frac * taw_mm(soil, root_depth_m);
  state.lower_mm = depleted_frac * taw_mm(soil, profile_depth_m - root_depth_m);
  state.de_mm = state.de_rain_mm = depleted_frac * taw_mm(soil, soil.evaporation_depth_m);
  return state;
}

AmendedState state_in_other_soil(const BalanceState& state, const SoilWater& before, const SoilWater& after) {
  require_complete(before);
  require_complete(after);
  const double richer_mm_m = 1000 * (after.field_capacity_m3_m3 - before.field_capacity_m3_m3);
  AmendedState out{state, 0};
  const auto retell = [&](double& depletion_mm, double thickness_m) {
    depletion_mm += richer_mm_m * thickness_m;
    if (depletion_mm >= 0) return;
    out.drained_mm -= depletion_mm;
    depletion_mm = 0;
  };
  retell(out.state.dr_mm, state.root_depth_m);
  retell(out.state.lower_mm, state.profile_depth_m - state.root_depth_m);
  const double scale = tew_mm(after) / tew_mm(before);
  out.state.de_mm *= scale;
  out.state.de_rain_mm *= scale;
  return out;
}

BalanceRun run_balance(const BalanceState& start, std::span<const BalanceDay> days,
                       std::span<const GrowthDay> growth, const SoilWater& soil,
                       const BalanceSettings& settings, std::span<const Correction> corrections) {
  require_series(days, growth);
  BalanceRun run;
  run.days.reserve(days.size());
  BalanceState state = start;
  FlowAccount account(start);
  for (std::size_t i = 0; i < days.size(); ++i) {
    const SoilWater& soil_today = days[i].soil ? *days[i].soil : soil;
    const AmendedState amended = days[i].soil_before
                                     ? state_in_other_soil(state, *days[i].soil_before, soil_today)
                                     : AmendedState{state, 0};
    const double amended_mm = stored_mm(state) - stored_mm(amended.state);
    state = amended.state;
    const double change = correct(state, soil_today, days[i].date, corrections);
    run.days.push_back(daily_step(state, days[i], growth[i], soil, settings));
    run.days.back().correction_mm = change;
    if (days[i].soil_before) {
      run.days.back().amended_mm = amended_mm;
      run.days.back().amended_drained_mm = amended.drained_mm;
    }
    account.add(run.days.back());
    add_totals(run, run.days.back());
    state = run.days.back().end;
  }
  return run;
}

double net_refill_mm(const BalanceState& state) {
  return is_missing(state.dr_mm) ? missing : std::max(0.0, state.dr_mm);
}

std::optional<std::size_t> first_day_beyond_raw(std::span<const BalanceDetail> days) {
  for (std::size_t i = 0; i < days.size(); ++i)
    if (days[i].end.dr_mm > days[i].raw_mm) return i;
  return std::nullopt;
}

double depletion_within_day_mm(const BalanceDetail& day, double demand_share) {
  require_within("demand_share", demand_share, 0, 1, "");
  const double from_roots = day.transpiration_mm + day.evaporation_mm - day.lower_evaporation_mm;
  const double depletion = day.dr_open_mm + demand_share * from_roots;
  return is_missing(depletion) ? missing : std::max(0.0, depletion);
}

}  // namespace v1
}  // namespace noonleaf
