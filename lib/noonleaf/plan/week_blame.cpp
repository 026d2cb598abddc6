#include "noonleaf/plan/week_blame.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::minutes;
using std::chrono::year_month_day;

constexpr double ml_per_l = 1000;
constexpr double longest_run_lifted_min = 240;

/// What is left of the loss: seeds before plants, as the goals say.
struct Loss {
  std::int64_t seed = 0, stress = 0;
  friend auto operator<=>(const Loss&, const Loss&) = default;
};
Loss loss_of(const PlanCost& cost) { return {cost.seed_dryness, cost.stress}; }

/// A limit that is taken away, on all days or on one.
struct Lift {
  WeekLimit limit = WeekLimit::nobody_on_site;
  std::optional<std::size_t> restriction{};
};

struct Lifted {
  Loss loss{};
  BedSchedule schedule{};
  WeekProblem problem{};
};

constexpr std::size_t every_day = std::numeric_limits<std::size_t>::max();

/// What a bed has by itself: its own problem, without the others.
WeekProblem problem_alone(const WeekSetup& setup, std::size_t bed) {
  WeekProblem problem;
  problem.plan_days = setup.problem.plan_days;
  problem.all_days = setup.problem.all_days;
  problem.on_site = setup.problem.on_site;
  problem.beds.push_back(setup.problem.beds[bed]);
  return problem;
}

Lifted solved(WeekProblem problem) {
  Lifted result;
  result.schedule = best_bed_schedule(problem, 0, fitting_runs(problem, 0), {}, {}).schedule;
  result.loss = loss_of(result.schedule.cost);
  result.problem = std::move(problem);
  return result;
}

/// The bed by itself, with one limit lifted on a day or on every one.
Lifted plan_without(const WeekSetup& setup, std::size_t bed, const Lift& lift, std::size_t only_day) {
  WeekProblem problem = problem_alone(setup, bed);
  if (lift.limit == WeekLimit::nobody_on_site) problem.on_site.emplace_back(problem.plan_days, DaySlots{});
  for (std::size_t day = 0; day < problem.plan_days; ++day) {
    if (only_day != every_day && only_day != day) continue;
    if (lift.limit == WeekLimit::nobody_on_site) problem.on_site.back()[day].set();
    std::vector<LimitSlots> left;
    for (const LimitSlots& each : setup.limits[bed][day]) {
      if (each.limit != lift.limit || each.restriction != lift.restriction) left.push_back(each);
    }
    problem.beds.front().water_may_run[day] = open_slots(left);
  }
  return solved(std::move(problem));
}

/// The limits that close anything to the bed, the cheapest to lift first.
std::vector<Lift> limits_in_the_way(const WeekSetup& setup, std::size_t bed) {
  constexpr std::array<WeekLimit, 11> cheapest_first{WeekLimit::no_time_left,  WeekLimit::allowed_hours,
                                                     WeekLimit::quiet_hours,   WeekLimit::restriction,
                                                     WeekLimit::wind,          WeekLimit::reclaimed_children,
                                                     WeekLimit::tap_flow,      WeekLimit::reclaimed_on_food,
                                                     WeekLimit::ground_closed, WeekLimit::frost,
                                                     WeekLimit::clock_change};
  std::vector<Lift> lifts{{WeekLimit::nobody_on_site, {}}};
  for (const WeekLimit limit : cheapest_first) {
    for (const auto& day : setup.limits[bed]) {
      for (const LimitSlots& each : day) {
        const auto same = [&](const Lift& lift) {
          return lift.limit == each.limit && lift.restriction == each.restriction;
        };
        if (each.limit != limit || each.open.all() || std::any_of(lifts.begin(), lifts.end(), same)) continue;
        lifts.push_back({each.limit, each.restriction});
      }
    }
  }
  return lifts;
}

RelaxationKind kind_for(WeekLimit limit) {
  switch (limit) {
    case WeekLimit::nobody_on_site:
      return RelaxationKind::come_then;
    case WeekLimit::allowed_hours:
      return RelaxationKind::allow_hours;
    case WeekLimit::quiet_hours:
      return RelaxationKind::move_quiet_time;
    case WeekLimit::restriction:
      return RelaxationKind::allow_weekday;
    case WeekLimit::wind:
      return RelaxationKind::move_to_drip;
    case WeekLimit::tap_flow:
      return RelaxationKind::smaller_sprinkler;
    case WeekLimit::reclaimed_on_food:
      return RelaxationKind::drinking_water;
    case WeekLimit::reclaimed_children:
      return RelaxationKind::say_children_hours;
    case WeekLimit::tap_taken:
      return RelaxationKind::second_tap;
    case WeekLimit::longest_run:
      return RelaxationKind::longer_run;
    case WeekLimit::frost:
    case WeekLimit::ground_closed:
    case WeekLimit::no_time_left:
    case WeekLimit::clock_change:
    case WeekLimit::already_dry:
      return RelaxationKind::none;
  }
  return RelaxationKind::none;
}

double left_mm(const Loss& loss, double area_m2, bool seedbed) {
  return static_cast<double>(seedbed ? loss.seed : loss.stress) / ml_per_l / area_m2;
}

/// The day on which lifting the limit helps most, and the run that it makes room for.
Relaxation relaxation_for(const WeekSetup& setup, const WeekMiss& miss, const Lift& lift) {
  Relaxation relaxation;
  relaxation.kind = kind_for(lift.limit);
  relaxation.restriction = lift.restriction;
  const double area_m2 = setup.problem.beds[miss.bed].area_m2;
  std::optional<Lifted> best;
  for (std::size_t day = 0; day < setup.problem.plan_days; ++day) {
    Lifted lifted = plan_without(setup, miss.bed, lift, day);
    const auto run = std::find_if(lifted.schedule.runs.begin(), lifted.schedule.runs.end(),
                                  [day](const RunChoice& r) { return r.day == day; });
    if (run == lifted.schedule.runs.end() || (best && !(lifted.loss < best->loss))) continue;
    const std::array<FittingRuns, 1> fitting{fitting_runs(lifted.problem, 0)};
    const std::array<PlacedChoice, 1> wanted{PlacedChoice{0, 0, *run}};
    const auto placed = arrange_day(lifted.problem, fitting, day, wanted);
    if (!placed) continue;
    const int begin = static_cast<int>(placed->front().start_slot) * minutes_per_slot;
    const int span = lifted.problem.beds.front().shapes[static_cast<std::size_t>(run->minutes)].span_min();
    relaxation.date = year_month_day{setup.first + days(static_cast<int>(day))};
    relaxation.begin = minutes(begin);
    relaxation.end = minutes(begin + span);
    relaxation.minutes = run->minutes;
    relaxation.litres = run->depth_mm * area_m2;
    relaxation.stress_left_mm = left_mm(lifted.loss, area_m2, miss.seedbed);
    best = std::move(lifted);
  }
  return relaxation;
}

/// Hand watering, where the restriction leaves it free and the bed has something else.
std::optional<Relaxation> by_hand(const Garden& garden, const WeekMiss& miss, const Lift& lift,
                                  const Relaxation& allowed) {
  if (lift.limit != WeekLimit::restriction) return std::nullopt;
  const WateringRestriction& restriction = garden.rules.restrictions[*lift.restriction];
  const WettingKind kind = garden.sprinklers[garden.beds[miss.bed].sprinkler].kind;
  if (kind == WettingKind::hand || (!restriction.exempt_hand && !restriction.exempt_drip))
    return std::nullopt;
  Relaxation other = allowed;
  other.kind = restriction.exempt_hand ? RelaxationKind::water_by_hand : RelaxationKind::move_to_drip;
  return other;
}

/// A longer run than the sprinkler is allowed.
std::optional<Lifted> with_longer_runs(const WeekSetup& setup, std::size_t bed) {
  WeekSetup longer = setup;
  BedProblem& problem = longer.problem.beds[bed];
  if (problem.limits.longest_min >= longest_run_lifted_min) return std::nullopt;
  for (int length = static_cast<int>(problem.limits.longest_min) + 1; length <= longest_run_lifted_min;
       ++length) {
    RunShape shape;
    if (length % minutes_per_slot == 0) {
      shape.minutes = length;
      shape.openings[0] = {0, length};
    }
    problem.shapes.push_back(shape);
  }
  problem.limits.longest_min = longest_run_lifted_min;
  return solved(problem_alone(longer, bed));
}

struct Verdict {
  Lift lift{};
  Loss loss{};
};

/// The limit whose lifting helps most, if any does.
std::optional<Verdict> culprit(const WeekSetup& setup, const WeekMiss& miss, const Loss& now) {
  std::optional<Verdict> best;
  const auto consider = [&](const Lift& lift, const Loss& loss) {
    if (loss < now && (!best || loss < best->loss)) best = Verdict{lift, loss};
  };
  consider({WeekLimit::tap_taken, {}}, solved(problem_alone(setup, miss.bed)).loss);
  for (const Lift& lift : limits_in_the_way(setup, miss.bed)) {
    consider(lift, plan_without(setup, miss.bed, lift, every_day).loss);
  }
  if (const auto longer = with_longer_runs(setup, miss.bed))
    consider({WeekLimit::longest_run, {}}, longer->loss);
  return best;
}

/// Nothing alone would help: the limit that closes most is named.
WeekLimit tightest(const WeekSetup& setup, std::size_t bed, std::optional<std::size_t>& restriction) {
  std::size_t fewest = 0;
  for (const auto& person : setup.problem.on_site) {
    for (const DaySlots& day : person) fewest += day.count();
  }
  WeekLimit limit = WeekLimit::nobody_on_site;
  for (const Lift& lift : limits_in_the_way(setup, bed)) {
    if (lift.limit == WeekLimit::nobody_on_site) continue;
    std::size_t open = 0;
    for (const auto& day : setup.limits[bed]) {
      DaySlots slots = DaySlots{}.set();
      for (const LimitSlots& each : day) {
        if (each.limit == lift.limit && each.restriction == lift.restriction) slots &= each.open;
      }
      open += slots.count();
    }
    if (open < fewest) {
      fewest = open;
      limit = lift.limit;
      restriction = lift.restriction;
    }
  }
  return limit;
}

bool has_any_run(const WeekSetup& setup, std::size_t bed) {
  const FittingRuns fitting = fitting_runs(setup.problem, bed);
  return std::any_of(fitting.days.begin(), fitting.days.end(), [](const auto& day) {
    return day[0].longest_min.back() > 0 || day[1].longest_min.back() > 0;
  });
}

}  // namespace

void blame(const Garden& garden, const WeekSetup& setup, const PlanCost& cost, WeekMiss& miss) {
  const Loss now = loss_of(cost);
  const auto found = culprit(setup, miss, now);
  if (!found) {
    miss.limit =
        has_any_run(setup, miss.bed) ? WeekLimit::already_dry : tightest(setup, miss.bed, miss.restriction);
    return;
  }
  miss.limit = found->lift.limit;
  miss.restriction = found->lift.restriction;
  if (miss.limit == WeekLimit::tap_taken || miss.limit == WeekLimit::longest_run) {
    miss.relaxation.kind = kind_for(miss.limit);
    miss.relaxation.stress_left_mm = left_mm(found->loss, setup.problem.beds[miss.bed].area_m2, miss.seedbed);
    if (const auto longer = with_longer_runs(setup, miss.bed);
        longer && miss.limit == WeekLimit::longest_run) {
      int longest = 0;
      for (const RunChoice& run : longer->schedule.runs) longest = std::max(longest, run.minutes);
      miss.relaxation.minutes = longest;
    }
    return;
  }
  miss.relaxation = relaxation_for(setup, miss, found->lift);
  miss.or_else = by_hand(garden, miss, found->lift, miss.relaxation);
}

}  // namespace v1
}  // namespace noonleaf
