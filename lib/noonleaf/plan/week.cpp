#include "noonleaf/plan/week.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/balance/potential_transpiration.hpp"
#include "noonleaf/plan/limit_of_day.hpp"
#include "noonleaf/plan/planting_wilt.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/unclosed_run.hpp"
#include "noonleaf/plan/week_blame.hpp"
#include "noonleaf/plan/week_search.hpp"
#include "noonleaf/plan/week_setup.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::minutes;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr minutes evening_on_leaves_from{17 * 60};
constexpr double ml_per_l = 1000, dl_per_l = 10;

/// A bed's plantings day by day under one set of runs.
using BedTrace = std::vector<BalanceRun>;  // [planting in the ground]

BedTrace trace_of(const std::vector<PlantingAccount>& accounts, std::span<const RunChoice> runs) {
  BedTrace trace;
  for (const PlantingAccount& account : accounts) {
    std::vector<BalanceDay> water = account.days_to_come;
    for (const RunChoice& run : runs) {
      (run.part == DayPart::evening ? water[run.day].evening_irrigation_mm : water[run.day].irrigation_mm) +=
          run.depth_mm;
    }
    trace.push_back(run_balance(account.dry_ahead.days.front().start, water, account.growth_to_come,
                                account.soil, account.settings));
  }
  return trace;
}

bool is_seedbed(const BedProblem& bed, std::size_t planting, std::size_t day) {
  return bed.plantings[planting].needs[day] == PlantingNeed::seed_zone;
}

double dawn_mm(const BalanceDetail& day, bool seedbed) {
  return seedbed ? day.start.de_mm : day.start.dr_mm + day.root_gain_mm;
}

class WeekMaker {
 public:
  WeekMaker(const Garden& garden, const Journal& journal, const Sky& sky, const WeekQuestion& question)
      : garden_(garden),
        journal_(journal),
        sky_(sky),
        question_(question),
        setup_(set_up_week(garden, journal, sky, question)),
        solution_(solve_week(setup_.problem, question.most_steps)) {}

  WeekPlan plan() {
    WeekPlan plan;
    plan.first = question_.first;
    plan.last = date_of(setup_.problem.plan_days - 1);
    plan.from = question_.from;
    plan.looks_to = date_of(setup_.problem.all_days - 1);
    for (std::size_t day = 0; day < setup_.problem.plan_days; ++day) {
      if (const SkyDay* sky_day = sky_.find(setup_.first + days(static_cast<int>(day))))
        plan.sky.push_back(*sky_day);
    }
    add_first_day();
    for (std::size_t bed = 0; bed < garden_.beds.size(); ++bed) {
      traces_.push_back(trace_of(setup_.accounts[bed], solution_.beds[bed].runs));
      dry_traces_.push_back(trace_of(setup_.accounts[bed], {}));
    }
    add_runs(plan);
    for (std::size_t bed = 0; bed < garden_.beds.size(); ++bed) {
      plan.beds.push_back(week_bed(bed));
      add_misses(plan, bed);
    }
    plan.skip = skip_rules(plan);
    plan.unlogged = setup_.first_day.unlogged;
    plan.proof = proof();
    plan.estimates = estimates_behind(garden_, journal_, sky_, question_.first);
    return plan;
  }

 private:
  year_month_day date_of(std::size_t day) const { return setup_.first + days(static_cast<int>(day)); }

  /// The runs of the first day are those of `today`. The limits of a bed that it could not water are open to
  /// blame again.
  void add_first_day() {
    for (std::size_t bed = 0; bed < garden_.beds.size(); ++bed) {
      const auto& run = setup_.first_day.runs[bed];
      if (run) {
        auto& schedule = solution_.beds[bed];
        schedule.runs.insert(schedule.runs.begin(), *run);
        solution_.cost.runs += 1;
        solution_.bound.runs += 1;
        const std::int64_t water = std::llround(run->depth_mm * garden_.beds[bed].area_m2 * dl_per_l);
        solution_.cost.water += water;
        solution_.bound.water += water;
      }
      if (setup_.first_day.today.beds[bed].action == BedAction::blocked)
        setup_.problem.beds[bed].water_may_run.front() = open_slots(setup_.limits[bed].front());
    }
  }

  void add_runs(WeekPlan& plan) {
    for (const std::size_t index : setup_.first_day.today.opening_order)
      plan.runs.push_back(first_day_run(setup_.first_day.today.beds[index]));
    std::vector<FittingRuns> fitting;
    for (std::size_t bed = 0; bed < garden_.beds.size(); ++bed)
      fitting.push_back(fitting_runs(setup_.problem, bed));
    for (std::size_t day = 1; day < setup_.problem.plan_days; ++day) {
      std::vector<PlacedChoice> wanted;
      for (std::size_t bed = 0; bed < solution_.beds.size(); ++bed) {
        for (const RunChoice& run : solution_.beds[bed].runs) {
          if (run.day == day) wanted.push_back({bed, 0, run});
        }
      }
      const auto placed = arrange_day(setup_.problem, fitting, day, wanted);
      for (const PlacedChoice& choice : placed.value_or(std::vector<PlacedChoice>{}))
        plan.runs.push_back(week_run(choice));
    }
    std::stable_sort(plan.runs.begin(), plan.runs.end(), [](const WeekRun& a, const WeekRun& b) {
      return std::pair(a.date, a.cycles.front().begin) < std::pair(b.date, b.cycles.front().begin);
    });
    for (std::size_t index = 0; index < plan.runs.size(); ++index)
      plan.runs[index].number = static_cast<int>(index) + 1;
  }

  WeekRun first_day_run(const BedToday& bed) const {
    const RunChoice& choice = *setup_.first_day.runs[bed.bed];
    WeekRun run;
    for (const RunOpening& opening : bed.openings)
      run.cycles.push_back({bed.slot->begin + opening.begin, bed.slot->begin + opening.end});
    run.opener = bed.slot->opener;
    run.closer = bed.slot->closer;
    if (bed.cycles) run.intake_left_out_min = bed.cycles->left_out_min;
    run.plan = bed.run;
    complete_run(bed.bed, choice, run);
    return run;
  }

  WeekRun week_run(const PlacedChoice& choice) const {
    const RunShape& shape =
        setup_.problem.beds[choice.bed].shapes[static_cast<std::size_t>(choice.run.minutes)];
    WeekRun run;
    const minutes begin{static_cast<int>(choice.start_slot) * minutes_per_slot};
    for (int index = 0; index < shape.n_openings; ++index) {
      const auto& opening = shape.openings[static_cast<std::size_t>(index)];
      run.cycles.push_back({begin + minutes(opening.begin_min), begin + minutes(opening.end_min)});
    }
    const auto people = attendants(setup_.problem, choice.run.day, shape, choice.start_slot);
    run.opener = people->opener;  // a start slot without both is none
    run.closer = people->closer;
    run.plan = bed_run(garden_, garden_.beds[choice.bed], choice.run.net_mm, choice.run.minutes);
    complete_run(choice.bed, choice.run, run);
    return run;
  }

  /// What follows from the choice, the clock times and the people.
  void complete_run(std::size_t bed_index, const RunChoice& choice, WeekRun& run) const {
    const Bed& bed = garden_.beds[bed_index];
    const PlantingAccount& account = setup_.accounts[bed_index][choice.planting];
    run.date = date_of(choice.day);
    run.bed = bed_index;
    run.sprinkler = bed.sprinkler;
    run.tap = garden_.sprinklers[bed.sprinkler].tap;
    run.backup = backup_for(garden_, run);
    run.minutes = choice.minutes;
    run.net_depth_mm = choice.net_mm;
    run.depth_mm = choice.depth_mm;
    run.volume_l = is_known(run.plan.litres_from_tap) ? run.plan.litres_from_tap : run.plan.litres_in_bed;
    run.size = size_of(choice);
    run.planting = account.planting;
    run.evening_on_leaves = run.cycles.back().end > evening_on_leaves_from &&
                            is_overhead(garden_.sprinklers[bed.sprinkler].kind) &&
                            leaves_suffer_at_night(bed, run.date);
    const BalanceDetail& day = traces_[bed_index][choice.planting].days[choice.day];
    const bool seedbed = is_seedbed(setup_.problem.beds[bed_index], choice.planting, choice.day);
    const double given_mm = account.days_to_come[choice.day].irrigation_mm;
    // In the evening the water comes after the day's demand: what stands at its close is with the water.
    run.depletion_before_mm =
        choice.part == DayPart::evening ? choice.net_mm : std::max(0.0, dawn_mm(day, seedbed) - given_mm);
    if (choice.part == DayPart::evening && choice.level == RunLevel::half_refill)
      run.depletion_before_mm *= 2;
    run.depletion_after_mm = std::max(0.0, run.depletion_before_mm - choice.depth_mm);
    if (bed.rain_catch_frac > 0) run.skip_rain_mm = run.net_depth_mm / bed.rain_catch_frac;
    run.unclosed = unclosed_cost(garden_, run);
  }

  static RunSize size_of(const RunChoice& run) {
    if (run.cut) return RunSize::cut_to_limits;
    return run.level == RunLevel::half_refill ? RunSize::part : RunSize::refill;
  }

  WeekBed week_bed(std::size_t bed) const {
    WeekBed result;
    result.bed = bed;
    result.open_question = setup_.first_day.today.beds[bed].open_question;
    const auto planting = neediest(bed);
    result.nothing_grows = !planting;
    if (!planting) return result;
    const BalanceRun& with = traces_[bed][*planting];
    const BalanceRun& without = dry_traces_[bed][*planting];
    for (std::size_t day = 0; day < setup_.problem.plan_days; ++day)
      result.days.push_back(bed_day(bed, *planting, with, without, day));
    std::size_t lasts = 0;
    while (lasts < without.days.size() && !any_beyond(bed, lasts)) ++lasts;
    if (lasts > 0) result.lasts_to = date_of(lasts - 1);
    return result;
  }

  bool any_beyond(std::size_t bed, std::size_t day) const {
    const auto& plantings = setup_.problem.beds[bed].plantings;
    for (std::size_t planting = 0; planting < plantings.size(); ++planting) {
      if (plantings[planting].needs[day] == PlantingNeed::nothing) continue;
      const bool seedbed = is_seedbed(setup_.problem.beds[bed], planting, day);
      if (is_beyond_limit(dry_traces_[bed][planting].days[day], seedbed)) return true;
    }
    return false;
  }

  /// The planting that would be worst off without water: it stands for the bed on all days.
  std::optional<std::size_t> neediest(std::size_t bed) const {
    std::optional<std::size_t> found;
    double worst = -1;
    const auto& plantings = setup_.problem.beds[bed].plantings;
    for (std::size_t planting = 0; planting < plantings.size(); ++planting) {
      for (std::size_t day = 0; day < setup_.problem.plan_days; ++day) {
        if (plantings[planting].needs[day] == PlantingNeed::nothing) continue;
        const bool seedbed = is_seedbed(setup_.problem.beds[bed], planting, day);
        const BalanceDetail& detail = dry_traces_[bed][planting].days[day];
        const double share = close_mm(detail, seedbed) / limit_mm(detail, seedbed);
        if (share > worst) {
          worst = share;
          found = planting;
        }
      }
    }
    return found;
  }

  BedDay bed_day(std::size_t bed, std::size_t planting, const BalanceRun& with, const BalanceRun& without,
                 std::size_t day) const {
    const BalanceDetail& detail = with.days[day];
    const BalanceDetail& dry = without.days[day];
    const bool seedbed = is_seedbed(setup_.problem.beds[bed], planting, day);
    BedDay result;
    result.date = date_of(day);
    result.planting = setup_.accounts[bed][planting].planting;
    result.seedbed = seedbed;
    result.depletion_dawn_mm = dawn_mm(detail, seedbed);
    result.depletion_dawn_dry_mm = dawn_mm(dry, seedbed);
    result.depletion_close_mm = close_mm(detail, seedbed);
    result.depletion_close_dry_mm = close_mm(dry, seedbed);
    result.raw_mm = limit_mm(detail, seedbed);
    result.taw_mm = seedbed ? detail.tew_mm : detail.taw_mm;
    if (const SkyDay* sky_day = sky_.find(sys_days(result.date))) result.rain_mm = sky_day->weather.rain_mm;
    result.irrigation_mm = detail.irrigation_mm;
    result.rain_counted_mm = detail.rain_mm - detail.runoff_mm;
    result.drained_mm = seedbed ? detail.dpe_mm : detail.dp_mm;
    result.et_mm = seedbed ? result.depletion_close_mm - result.depletion_dawn_mm + result.rain_counted_mm +
                                 result.irrigation_mm - result.drained_mm
                           : detail.etc_adj_mm_d;
    result.lost_mm = lost_transpiration_mm(detail);
    result.risk = risk_on(bed, planting, with, day);
    result.risk_dry = risk_on(bed, planting, without, day);
    return result;
  }

  DayRisk risk_on(std::size_t bed, std::size_t planting, const BalanceRun& trace, std::size_t day) const {
    const BalanceDetail& detail = trace.days[day];
    const PlantingNeed need = setup_.problem.beds[bed].plantings[planting].needs[day];
    if (detail.ground != GroundState::open || is_missing(detail.end.dr_mm)) return DayRisk::not_known;
    if (need == PlantingNeed::nothing) return DayRisk::comfortable;
    const bool seedbed = need == PlantingNeed::seed_zone;
    const bool is_beyond = is_beyond_limit(detail, seedbed);
    if (seedbed) return is_beyond ? DayRisk::dry : DayRisk::comfortable;
    PlantingAccount account = setup_.accounts[bed][planting];
    account.past.days.insert(account.past.days.end(), trace.days.begin(),
                             trace.days.begin() + static_cast<std::ptrdiff_t>(day));
    account.dry_ahead.days.assign(1, detail);
    const Bed& where = garden_.beds[bed];
    const WiltDay wilt = wilt_of_planting({garden_, where, where.plantings[account.planting], journal_},
                                          account, sky_, detail.date);
    if (wilt.verdict == WiltVerdict::dry_soil_wilt) return DayRisk::wilts;
    if (is_beyond || wilt.verdict == WiltVerdict::stress) return DayRisk::dry;
    return wilt.verdict == WiltVerdict::droop ? DayRisk::droops : DayRisk::comfortable;
  }

  /// The planting that loses most, on the days on which it does.
  void add_misses(WeekPlan& plan, std::size_t bed) const {
    const PlanCost& cost = solution_.beds[bed].cost;
    if (cost.seed_dryness == 0 && cost.stress == 0) return;
    WeekMiss miss;
    miss.bed = bed;
    miss.seedbed = cost.seed_dryness > 0;
    miss.stress_mm = 0;
    const auto& plantings = setup_.problem.beds[bed].plantings;
    for (std::size_t planting = 0; planting < plantings.size(); ++planting) {
      WeekMiss own = miss;
      own.planting = setup_.accounts[bed][planting].planting;
      bool any = false;
      for (std::size_t day = 0; day < setup_.problem.all_days; ++day) {
        const double lost_mm = loss_on(bed, planting, day, miss.seedbed);
        if (lost_mm <= 0) continue;
        if (!any) own.first = date_of(day);
        any = true;
        own.last = date_of(day);
        own.stress_mm += lost_mm;
      }
      if (any && own.stress_mm > miss.stress_mm) miss = own;
    }
    blame(garden_, setup_, cost, miss);
    plan.misses.push_back(miss);
  }

  double loss_on(std::size_t bed, std::size_t planting, std::size_t day, bool of_seeds) const {
    const PlantingNeed need = setup_.problem.beds[bed].plantings[planting].needs[day];
    const BalanceDetail& detail = traces_[bed][planting].days[day];
    if (need == PlantingNeed::nothing || (need == PlantingNeed::seed_zone) != of_seeds) return 0;
    if (of_seeds) {
      const double mm = detail.end.de_mm - detail.rew_mm;
      return mm < counted_seed_dryness_mm ? 0 : mm;
    }
    const double mm = lost_transpiration_mm(detail);
    return mm < counted_stress_mm ? 0 : mm;
  }

  SkipRules skip_rules(const WeekPlan& plan) const {
    SkipRules skip;
    for (const WeekRun& run : plan.runs) {
      skip.rain_mm = std::fmax(skip.rain_mm, run.skip_rain_mm);
      if (is_overhead(garden_.sprinklers[run.sprinkler].kind)) skip.wind_m_s = garden_.rules.wind_limit_m_s;
    }
    skip.frost_c = garden_.rules.frost_lockout_c;
    skip.forecast_rain = std::any_of(plan.sky.begin(), plan.sky.end(),
                                     [](const SkyDay& day) { return day.weather.rain_mm > 0; });
    return skip;
  }

  PlanProof proof() const {
    PlanProof proof;
    proof.optimal = solution_.is_optimal();
    proof.stress_l = static_cast<double>(solution_.cost.stress) / ml_per_l;
    proof.bound_stress_l = static_cast<double>(solution_.bound.stress) / ml_per_l;
    proof.visits = static_cast<int>(solution_.cost.runs);
    proof.bound_visits = static_cast<int>(solution_.bound.runs);
    proof.water_l = static_cast<double>(solution_.cost.water) / dl_per_l;
    proof.steps = solution_.steps;
    return proof;
  }

  const Garden& garden_;
  const Journal& journal_;
  const Sky& sky_;
  const WeekQuestion& question_;
  WeekSetup setup_;
  WeekSolution solution_;
  std::vector<BedTrace> traces_{}, dry_traces_{};
};

}  // namespace

WeekPlan plan_week(const Garden& garden, const Journal& journal, const Sky& sky,
                   const WeekQuestion& question) {
  return WeekMaker(garden, journal, sky, question).plan();
}

}  // namespace v1
}  // namespace noonleaf
