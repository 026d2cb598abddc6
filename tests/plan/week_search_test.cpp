#include "noonleaf/plan/week_search.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <tuple>

#include <boost/test/unit_test.hpp>

#include "plan/random_week.hpp"

using noonleaf::BedProblem;
using noonleaf::BedSchedule;
using noonleaf::BedState;
using noonleaf::DayPart;
using noonleaf::FittingRuns;
using noonleaf::PlacedChoice;
using noonleaf::PlanCost;
using noonleaf::RunChoice;
using noonleaf::RunShape;
using noonleaf::WeekProblem;
using noonleaf::WeekSolution;

namespace {

// The rules once more, minute by minute, without anything that the search uses.

bool person_there(const WeekProblem& problem, std::size_t person, std::size_t day, int begin, int end) {
  for (int minute = begin; minute < end; ++minute) {
    if (minute >= 24 * 60 || !problem.on_site[person][day].test(static_cast<std::size_t>(minute / 5)))
      return false;
  }
  return true;
}

bool may_run_at(const WeekProblem& problem, std::size_t bed, const RunChoice& run, int begin) {
  const BedProblem& where = problem.beds[bed];
  const RunShape& shape = where.shapes[static_cast<std::size_t>(run.minutes)];
  if ((begin >= 18 * 60) != (run.part == DayPart::evening)) return false;
  const int last = begin + shape.openings[static_cast<std::size_t>(shape.n_openings - 1)].end_min;
  for (int minute = begin; minute < last; ++minute) {
    if (minute >= 24 * 60 || !where.water_may_run[run.day].test(static_cast<std::size_t>(minute / 5)))
      return false;
  }
  bool opener = false, closer = false;
  for (std::size_t person = 0; person < problem.on_site.size(); ++person) {
    bool opens = true, closes = true;
    for (int index = 0; index < shape.n_openings; ++index) {
      const auto& opening = shape.openings[static_cast<std::size_t>(index)];
      const int on = begin + opening.begin_min, off = begin + opening.end_min;
      opens = opens && person_there(problem, person, run.day, on, on + 5);
      closes = closes && person_there(problem, person, run.day, off - 5, off);
    }
    opener = opener || opens;
    closer = closer || closes;
  }
  return opener && closer;
}

struct Taken {
  std::size_t tap;
  int begin, end;
};

/// A run with every minute at which it may begin.
struct Startable {
  std::size_t tap;
  int span;
  std::vector<int> begins;
};

Startable startable(const WeekProblem& problem, std::size_t bed, const RunChoice& run) {
  const RunShape& shape = problem.beds[bed].shapes[static_cast<std::size_t>(run.minutes)];
  Startable result{
      problem.beds[bed].tap, shape.openings[static_cast<std::size_t>(shape.n_openings - 1)].end_min, {}};
  for (int begin = 0; begin < 24 * 60; begin += 5) {
    if (may_run_at(problem, bed, run, begin)) result.begins.push_back(begin);
  }
  return result;
}

bool all_fit(const std::vector<Startable>& runs, std::size_t next, std::vector<Taken>& taken) {
  if (next == runs.size()) return true;
  const Startable& run = runs[next];
  for (const int begin : run.begins) {
    const int end = begin + run.span;
    const bool clash = std::any_of(taken.begin(), taken.end(), [&](const Taken& other) {
      return other.tap == run.tap && begin < other.end + 5 && other.begin < end + 5;
    });
    if (clash) continue;
    taken.push_back({run.tap, begin, end});
    if (all_fit(runs, next + 1, taken)) return true;
    taken.pop_back();
  }
  return false;
}

/// Every schedule that a bed may have.
void all_schedules(const WeekProblem& problem, std::size_t bed, const FittingRuns& fitting,
                   const BedState& dawn, std::size_t day, const BedSchedule& begun,
                   std::vector<BedSchedule>& schedules) {
  if (day == problem.all_days) {
    schedules.push_back(begun);
    return;
  }
  const auto go_on = [&](const noonleaf::BedStep& step, const RunChoice* run) {
    BedSchedule further = begun;
    further.cost += step.cost;
    if (run != nullptr) further.runs.push_back(*run);
    all_schedules(problem, bed, fitting, step.end, day + 1, further, schedules);
  };
  const auto dry = step_bed(problem.beds[bed], dawn, day, nullptr);
  go_on(dry, nullptr);
  if (day >= problem.plan_days) return;
  for (const DayPart part : {DayPart::before_demand, DayPart::evening}) {
    const BedState& state = part == DayPart::evening ? dry.end : dawn;
    for (const RunChoice& choice : run_choices(problem.beds[bed], fitting, state, day, part))
      go_on(step_bed(problem.beds[bed], dawn, day, &choice), &choice);
  }
}

class Exhaustive {
 public:
  explicit Exhaustive(const WeekProblem& problem) : problem_(problem) {
    for (std::size_t bed = 0; bed < problem.beds.size(); ++bed) {
      schedules_.emplace_back();
      all_schedules(problem, bed, noonleaf::fitting_runs(problem, bed), first_state(problem.beds[bed]), 0, {},
                    schedules_.back());
    }
  }

  PlanCost best() {
    std::vector<const BedSchedule*> chosen;
    search(0, {}, chosen);
    return *best_;
  }

  bool fits(const std::vector<const BedSchedule*>& chosen) {
    for (std::size_t day = 0; day < problem_.plan_days; ++day) {
      std::vector<std::pair<std::size_t, RunChoice>> runs;
      std::vector<int> key{static_cast<int>(day)};
      for (std::size_t bed = 0; bed < chosen.size(); ++bed) {
        for (const RunChoice& run : chosen[bed]->runs) {
          if (run.day != day) continue;
          runs.emplace_back(bed, run);
          key.insert(key.end(), {static_cast<int>(bed), run.minutes, static_cast<int>(run.part)});
        }
      }
      if (runs.empty()) continue;
      const auto known = known_.find(key);
      if (known == known_.end()) {
        std::vector<Startable> wanted;
        for (const auto& [bed, run] : runs) wanted.push_back(startable(problem_, bed, run));
        std::vector<Taken> taken;
        known_[key] = all_fit(wanted, 0, taken);
      }
      if (!known_[key]) return false;
    }
    return true;
  }

 private:
  void search(std::size_t bed, const PlanCost& cost, std::vector<const BedSchedule*>& chosen) {
    if (best_ && cost >= *best_) return;
    if (bed == schedules_.size()) {
      if (fits(chosen)) best_ = cost;
      return;
    }
    for (const BedSchedule& schedule : schedules_[bed]) {
      chosen.push_back(&schedule);
      search(bed + 1, cost + schedule.cost, chosen);
      chosen.pop_back();
    }
  }

  const WeekProblem& problem_;
  std::vector<std::vector<BedSchedule>> schedules_{};
  std::map<std::vector<int>, bool> known_{};
  std::optional<PlanCost> best_{};
};

RandomWeekSize size_of(std::uint32_t number) {
  RandomWeekSize size;
  const bool three_beds = number % 3 == 0;
  size.beds = three_beds ? 3 : 2;
  size.days = three_beds ? 2 + number % 2 : 3 + number % 2;
  size.tail_days = number % 4;
  size.taps = number % 5 == 0 ? 2 : 1;
  size.people = 1 + number % 2;
  size.window_slots = 6 + number % 7;
  return size;
}

}  // namespace

namespace noonleaf {
inline namespace v1 {
std::ostream& operator<<(std::ostream& out, const PlanCost& cost) {
  return out << "seeds " << cost.seed_dryness << " stress " << cost.stress << " runs " << cost.runs
             << " water " << cost.water;
}
}  // namespace v1
}  // namespace noonleaf

BOOST_AUTO_TEST_SUITE(week_search)

BOOST_AUTO_TEST_CASE(never_worse_than_trying_everything) {
  std::size_t crowded = 0, stressed = 0;
  for (std::uint32_t number = 1; number <= 2000; ++number) {
    const WeekProblem problem = RandomWeek(number).problem(size_of(number));
    const WeekSolution solution = noonleaf::solve_week(problem, 100'000);
    Exhaustive exhaustive(problem);
    const PlanCost best = exhaustive.best();
    BOOST_TEST_CONTEXT("case " << number) {
      BOOST_REQUIRE(solution.is_optimal());
      BOOST_REQUIRE_EQUAL(solution.cost, best);
      PlanCost summed;
      std::vector<const BedSchedule*> chosen;
      for (std::size_t bed = 0; bed < problem.beds.size(); ++bed) {
        summed += cost_of(problem.beds[bed], solution.beds[bed].runs);
        chosen.push_back(&solution.beds[bed]);
      }
      BOOST_REQUIRE_EQUAL(summed, solution.cost);
      BOOST_REQUIRE(exhaustive.fits(chosen));
    }
    crowded += solution.steps > 2 * problem.beds.size() ? 1 : 0;
    stressed += best.stress > 0 || best.seed_dryness > 0 ? 1 : 0;
  }
  // The cases are worth something only while many of them need the branching, and many suffer.
  BOOST_TEST(crowded > 50U);
  BOOST_TEST(stressed > 500U);
}

BOOST_AUTO_TEST_CASE(every_day_is_arranged_within_the_rules) {
  std::size_t days_with_two = 0;
  for (std::uint32_t number = 1; number <= 300; ++number) {
    const WeekProblem problem = RandomWeek(number).problem(size_of(number));
    const WeekSolution solution = noonleaf::solve_week(problem, 100'000);
    std::vector<FittingRuns> fitting;
    for (std::size_t bed = 0; bed < problem.beds.size(); ++bed)
      fitting.push_back(noonleaf::fitting_runs(problem, bed));
    for (std::size_t day = 0; day < problem.plan_days; ++day) {
      std::vector<PlacedChoice> runs;
      for (std::size_t bed = 0; bed < problem.beds.size(); ++bed) {
        for (const RunChoice& run : solution.beds[bed].runs) {
          if (run.day == day) runs.push_back({bed, 0, run});
        }
      }
      const auto placed = arrange_day(problem, fitting, day, runs);
      BOOST_REQUIRE(placed.has_value());
      days_with_two += placed->size() > 1 ? 1 : 0;
      for (const PlacedChoice& run : *placed) {
        const int begin = static_cast<int>(run.start_slot) * 5;
        BOOST_TEST(may_run_at(problem, run.bed, run.run, begin));
        for (const PlacedChoice& other : *placed) {
          if (&other == &run || problem.beds[other.bed].tap != problem.beds[run.bed].tap) continue;
          const auto end_of = [&](const PlacedChoice& r) {
            return static_cast<int>(r.start_slot) * 5 +
                   problem.beds[r.bed].shapes[static_cast<std::size_t>(r.run.minutes)].span_min();
          };
          const bool apart =
              begin >= end_of(other) + 5 || static_cast<int>(other.start_slot) * 5 >= end_of(run) + 5;
          BOOST_TEST(apart);
        }
      }
    }
  }
  BOOST_TEST(days_with_two > 20U);
}

BOOST_AUTO_TEST_CASE(the_arrangement_has_the_least_discomfort) {
  // Two runs at one tap on one day: every pair of starts is tried.
  std::size_t compared = 0;
  for (std::uint32_t number = 1; number <= 400; ++number) {
    RandomWeekSize size;
    size.days = 1;
    size.window_slots = 14;
    const WeekProblem problem = RandomWeek(number).problem(size);
    std::vector<FittingRuns> fitting{noonleaf::fitting_runs(problem, 0), noonleaf::fitting_runs(problem, 1)};
    std::vector<PlacedChoice> runs;
    for (std::size_t bed = 0; bed < 2; ++bed) {
      const auto choices = run_choices(problem.beds[bed], fitting[bed], first_state(problem.beds[bed]), 0,
                                       DayPart::before_demand);
      if (!choices.empty()) runs.push_back({bed, 0, choices.back()});
    }
    if (runs.size() < 2) continue;
    const auto discomfort = [&](const PlacedChoice& run, int begin) {
      const auto& bed = problem.beds[run.bed];
      const int span = bed.shapes[static_cast<std::size_t>(run.run.minutes)].span_min();
      int sum = 0;
      for (int slot = begin / 5; slot * 5 < begin + span; ++slot)
        sum += bed.discomfort[0][static_cast<std::size_t>(slot)];
      return sum;
    };
    std::optional<int> least;
    for (int first = 0; first < 24 * 60; first += 5) {
      if (!may_run_at(problem, 0, runs[0].run, first)) continue;
      const int first_end =
          first + problem.beds[0].shapes[static_cast<std::size_t>(runs[0].run.minutes)].span_min();
      for (int second = 0; second < 24 * 60; second += 5) {
        if (!may_run_at(problem, 1, runs[1].run, second)) continue;
        const int second_end =
            second + problem.beds[1].shapes[static_cast<std::size_t>(runs[1].run.minutes)].span_min();
        if (first < second_end + 5 && second < first_end + 5) continue;
        const int sum = discomfort(runs[0], first) + discomfort(runs[1], second);
        if (!least || sum < *least) least = sum;
      }
    }
    const auto placed = arrange_day(problem, fitting, 0, runs);
    BOOST_REQUIRE_EQUAL(placed.has_value(), least.has_value());
    BOOST_REQUIRE_EQUAL(day_is_feasible(problem, fitting, 0, runs), least.has_value());
    if (!placed) continue;
    ++compared;
    int sum = 0;
    for (const PlacedChoice& run : *placed) sum += discomfort(run, static_cast<int>(run.start_slot) * 5);
    BOOST_REQUIRE_EQUAL(sum, *least);
  }
  BOOST_TEST(compared > 100U);
}

BOOST_AUTO_TEST_CASE(net_depth_never_exceeds_the_depletion) {
  for (std::uint32_t number = 1; number <= 200; ++number) {
    const WeekProblem problem = RandomWeek(number).problem(size_of(number));
    const WeekSolution solution = noonleaf::solve_week(problem, 100'000);
    for (std::size_t bed = 0; bed < problem.beds.size(); ++bed) {
      BedState state = first_state(problem.beds[bed]);
      for (std::size_t day = 0; day < problem.plan_days; ++day) {
        const auto& runs = solution.beds[bed].runs;
        const auto run =
            std::find_if(runs.begin(), runs.end(), [day](const RunChoice& r) { return r.day == day; });
        if (run != runs.end()) {
          BedState before = state;
          if (run->part == DayPart::evening) before = step_bed(problem.beds[bed], state, day, nullptr).end;
          double most_mm = 0;
          for (std::size_t planting = 0; planting < before.size(); ++planting) {
            const bool seeds =
                problem.beds[bed].plantings[planting].needs[day] == noonleaf::PlantingNeed::seed_zone;
            most_mm = std::max(most_mm, seeds ? before[planting].de_mm : before[planting].dr_mm);
          }
          BOOST_TEST(run->net_mm <= most_mm);
        }
        state = step_bed(problem.beds[bed], state, day, run == runs.end() ? nullptr : &*run).end;
      }
    }
  }
}

BOOST_AUTO_TEST_CASE(a_search_that_stops_early_states_a_bound) {
  RandomWeekSize size;
  size.beds = 4;
  size.days = 4;
  size.window_slots = 8;
  std::size_t stopped = 0;
  for (std::uint32_t number = 1; number <= 20; ++number) {
    const WeekProblem problem = RandomWeek(number).problem(size);
    const WeekSolution quick = noonleaf::solve_week(problem, 9);
    const WeekSolution whole = noonleaf::solve_week(problem, 400);
    BOOST_TEST(quick.bound <= whole.cost);
    BOOST_TEST(quick.bound <= quick.cost);
    BOOST_TEST(whole.cost <= quick.cost);
    stopped += quick.is_optimal() ? 0 : 1;
  }
  BOOST_TEST(stopped > 3U);
}

BOOST_AUTO_TEST_SUITE_END()
