#include "noonleaf/plan/week_problem.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/balance/potential_transpiration.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

std::size_t slots_of(int minutes) {
  return static_cast<std::size_t>((minutes + minutes_per_slot - 1) / minutes_per_slot);
}

double counted(double value, double unit) { return value < unit ? 0.0 : value; }

std::int64_t millilitres(double litres) { return std::llround(litres * 1000); }

/// Depletion that a run may fill, of one planting.
double room_mm(const PlantingProblem& planting, const BalanceState& state, std::size_t day, DayPart part) {
  const PlantingNeed need = planting.needs[day];
  if (need == PlantingNeed::nothing) return 0;
  const double depletion_mm = need == PlantingNeed::seed_zone ? state.de_mm : state.dr_mm;
  // Water that the day has had already, by the journal, is not in the state of its dawn yet.
  const double given_mm = part == DayPart::before_demand ? planting.days[day].irrigation_mm : 0;
  return std::max(0.0, depletion_mm - given_mm);
}

PlanCost loss_of(const PlantingProblem& planting, const BalanceDetail& day, PlantingNeed need) {
  PlanCost cost;
  if (need == PlantingNeed::nothing || day.ground != GroundState::open) return cost;
  if (need == PlantingNeed::seed_zone) {
    const double beyond_mm = counted(day.end.de_mm - day.rew_mm, counted_seed_dryness_mm);
    cost.seed_dryness = millilitres(beyond_mm * planting.area_m2);
  } else {
    const double lost_mm = counted(lost_transpiration_mm(day), counted_stress_mm);
    cost.stress = millilitres(lost_mm * planting.area_m2);
  }
  return cost;
}

bool same_run(const RunChoice& a, const RunChoice& b) { return a.minutes == b.minutes; }

RunChoice choice_for(const BedProblem& bed, const FittingRuns::Part& fitting, double net_mm) {
  RunChoice choice;
  choice.net_mm = net_mm;
  const RunPlan wanted = run_plan({.net_depth_mm = std::min(net_mm, 300.0),
                                   .bed_area_m2 = bed.area_m2,
                                   .sprinkler = bed.rate,
                                   .limits = bed.limits});
  const auto minutes = static_cast<std::size_t>(std::lround(wanted.minutes));
  if (minutes >= fitting.longest_min.size()) return choice;
  choice.minutes = fitting.longest_min[minutes];
  choice.cut = wanted.limit == RunLimit::cut_to_longest || choice.minutes < static_cast<int>(minutes);
  choice.depth_mm = infiltrated_depth_mm(bed.rate, choice.minutes).mean_mm;
  return choice;
}

}  // namespace

PlanCost& PlanCost::operator+=(const PlanCost& other) {
  seed_dryness += other.seed_dryness;
  stress += other.stress;
  runs += other.runs;
  water += other.water;
  return *this;
}

PlanCost operator+(PlanCost left, const PlanCost& right) { return left += right; }

BedState first_state(const BedProblem& bed) {
  BedState state;
  for (const PlantingProblem& planting : bed.plantings) state.push_back(planting.dawn);
  return state;
}

BedStep step_bed(const BedProblem& bed, const BedState& dawn, std::size_t day, const RunChoice* run) {
  BedStep step;
  step.end.reserve(dawn.size());
  for (std::size_t index = 0; index < bed.plantings.size(); ++index) {
    const PlantingProblem& planting = bed.plantings[index];
    BalanceDay water = planting.days[day];
    if (run != nullptr && run->part == DayPart::before_demand) water.irrigation_mm += run->depth_mm;
    if (run != nullptr && run->part == DayPart::evening) {
      // The day's losses are those before the evening's water: it comes too late for them.
      const BalanceDetail dry =
          daily_step(dawn[index], water, planting.growth[day], planting.soil, planting.settings);
      step.cost += loss_of(planting, dry, planting.needs[day]);
      water.evening_irrigation_mm += run->depth_mm;
    }
    const BalanceDetail detail =
        daily_step(dawn[index], water, planting.growth[day], planting.soil, planting.settings);
    if (run == nullptr || run->part == DayPart::before_demand)
      step.cost += loss_of(planting, detail, planting.needs[day]);
    step.end.push_back(detail.end);
  }
  if (run != nullptr) {
    step.cost.runs += 1;
    step.cost.water += std::llround(run->depth_mm * bed.area_m2 * 10);
  }
  return step;
}

DaySlots start_slots(const WeekProblem& problem, std::size_t bed, std::size_t day, DayPart part,
                     const RunShape& shape) {
  DaySlots starts;
  const DaySlots& runs = problem.beds[bed].water_may_run[day];
  const std::size_t span = slots_of(shape.span_min());
  if (span == 0) return starts;
  const std::size_t first = part == DayPart::evening ? evening_slot : 0;
  const std::size_t last = part == DayPart::evening ? slots_per_day : evening_slot;
  std::size_t free_before = 0;  // slots in a row, up to this one, in which water may run
  for (std::size_t slot = 0; slot < slots_per_day; ++slot) {
    free_before = runs.test(slot) ? free_before + 1 : 0;
    if (free_before < span) continue;
    const std::size_t start = slot + 1 - span;
    if (start < first || start >= last) continue;
    if (attendants(problem, day, shape, start)) starts.set(start);
  }
  return starts;
}

std::optional<Attendants> attendants(const WeekProblem& problem, std::size_t day, const RunShape& shape,
                                     std::size_t start_slot) {
  std::optional<std::size_t> opener, closer;
  for (std::size_t person = 0; person < problem.on_site.size(); ++person) {
    const DaySlots& there = problem.on_site[person][day];
    bool opens = true, closes = true;
    for (int index = 0; index < shape.n_openings; ++index) {
      const auto& opening = shape.openings[static_cast<std::size_t>(index)];
      const std::size_t begin = start_slot + static_cast<std::size_t>(opening.begin_min) / minutes_per_slot;
      // Whole minutes: the last five of a run may touch two slots.
      const std::size_t end_min = start_slot * minutes_per_slot + static_cast<std::size_t>(opening.end_min);
      const std::size_t last = (end_min - 1) / minutes_per_slot;
      const std::size_t before_last =
          end_min < minutes_per_slot ? 0 : (end_min - minutes_per_slot) / minutes_per_slot;
      opens = opens && begin < slots_per_day && there.test(begin);
      closes = closes && last < slots_per_day && there.test(last) && there.test(before_last);
    }
    if (opens && closes) return Attendants{person, person};  // a hand-over is a chance to forget
    if (opens && !opener) opener = person;
    if (closes && !closer) closer = person;
  }
  if (!opener || !closer) return std::nullopt;
  return Attendants{*opener, *closer};
}

FittingRuns fitting_runs(const WeekProblem& problem, std::size_t bed) {
  FittingRuns fitting;
  const std::vector<RunShape>& shapes = problem.beds[bed].shapes;
  fitting.days.resize(problem.plan_days);
  for (std::size_t day = 0; day < problem.plan_days; ++day) {
    for (const DayPart part : {DayPart::before_demand, DayPart::evening}) {
      FittingRuns::Part& here = fitting.days[day][static_cast<std::size_t>(part)];
      here.longest_min.assign(shapes.size(), 0);
      here.starts.resize(shapes.size());
      const DaySlots* shorter = nullptr;
      int shorter_span = 0;
      for (std::size_t minutes = 1; minutes < shapes.size(); ++minutes) {
        here.longest_min[minutes] = here.longest_min[minutes - 1];
        const RunShape& shape = shapes[minutes];
        if (shape.minutes == 0) continue;  // no run is ever as long as this
        here.starts[minutes] = start_slots(problem, bed, day, part, shape);
        if (here.starts[minutes].any()) here.longest_min[minutes] = static_cast<int>(minutes);
        const bool inside = shorter == nullptr ||
                            ((here.starts[minutes] & ~*shorter).none() && shape.span_min() >= shorter_span);
        here.shorter_fits_too = here.shorter_fits_too && inside;
        shorter = &here.starts[minutes];
        shorter_span = shape.span_min();
      }
    }
  }
  return fitting;
}

std::vector<RunChoice> run_choices(const BedProblem& bed, const FittingRuns& fitting, const BedState& state,
                                   std::size_t day, DayPart part) {
  std::vector<RunChoice> choices;
  const FittingRuns::Part& hours = fitting.days[day][static_cast<std::size_t>(part)];
  if (hours.longest_min.empty() || hours.longest_min.back() == 0) return choices;
  const auto add = [&](std::size_t planting, double net_mm, RunLevel level) {
    if (net_mm < smallest_net_mm) return;
    RunChoice choice = choice_for(bed, hours, net_mm);
    choice.day = day;
    choice.part = part;
    choice.level = level;
    choice.planting = planting;
    const auto same = [&](const RunChoice& other) { return same_run(other, choice); };
    if (choice.minutes > 0 && std::none_of(choices.begin(), choices.end(), same)) choices.push_back(choice);
  };
  std::size_t neediest = 0;
  double most_mm = 0;
  for (std::size_t index = 0; index < bed.plantings.size(); ++index) {
    const double mm = room_mm(bed.plantings[index], state[index], day, part);
    if (mm > most_mm) {
      most_mm = mm;
      neediest = index;
    }
  }
  add(neediest, most_mm, RunLevel::refill);
  for (std::size_t index = 0; index < bed.plantings.size(); ++index) {
    if (index != neediest)
      add(index, room_mm(bed.plantings[index], state[index], day, part), RunLevel::refill);
  }
  add(neediest, most_mm / 2, RunLevel::half_refill);
  return choices;
}

PlanCost cost_of(const BedProblem& bed, std::span<const RunChoice> runs) {
  PlanCost cost;
  BedState state = first_state(bed);
  const std::size_t n_days = bed.plantings.empty() ? 0 : bed.plantings.front().days.size();
  for (std::size_t day = 0; day < n_days; ++day) {
    const auto run =
        std::find_if(runs.begin(), runs.end(), [day](const RunChoice& r) { return r.day == day; });
    BedStep step = step_bed(bed, state, day, run == runs.end() ? nullptr : &*run);
    cost += step.cost;
    state = std::move(step.end);
  }
  return cost;
}

}  // namespace v1
}  // namespace noonleaf
