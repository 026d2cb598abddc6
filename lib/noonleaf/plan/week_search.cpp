#include "noonleaf/plan/week_search.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <memory>
#include <numeric>
#include <queue>
#include <utility>

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::int64_t new_day_dislike = 1;     // one more day on which somebody has to come
constexpr std::int64_t full_tap_dislike = 100;  // a plan that does not fit has to be made again
constexpr std::size_t nodes_a_step = 30;        // a node whose beds are known already costs this much less

using Optimum = std::shared_ptr<const BedOptimum>;

/// What one branch forbids.
struct Ban {
  std::size_t bed, day;
  DayPart part;
  std::vector<int> minutes;
};

/// A day on which a tap's runs do not fit.
struct Crowd {
  std::size_t day, tap;

  friend auto operator<=>(const Crowd&, const Crowd&) = default;
};

/// A node of the search: its parent's bans and one more.
struct Node {
  std::shared_ptr<const Node> parent{};
  std::optional<Ban> ban{};
  std::vector<Optimum> beds{};
  PlanCost cost{}, bound{};
  std::vector<Crowd> crowds{};  ///< in the order of days and taps
  std::size_t serial = 0;
};

struct LaterNode {
  bool operator()(const std::shared_ptr<Node>& a, const std::shared_ptr<Node>& b) const {
    if (a->bound != b->bound) return a->bound > b->bound;
    if (a->crowds.size() != b->crowds.size()) return a->crowds.size() > b->crowds.size();
    return a->serial < b->serial;  // the newest of equals: down before across
  }
};

class WeekSearch {
 public:
  WeekSearch(const WeekProblem& problem, std::size_t most_steps)
      : problem_(problem), most_steps_(most_steps) {
    for (std::size_t bed = 0; bed < problem.beds.size(); ++bed)
      fitting_.push_back(fitting_runs(problem, bed));
  }

  WeekSolution solve() {
    WeekSolution solution;
    auto root = root_node();
    std::vector<BedSchedule> best = fill_bed_by_bed(*root);
    solution.cost = total(best);
    if (root->crowds.empty() && root->cost < solution.cost) best = schedules(*root);
    solution.cost = total(best);
    solution.bound = solution.cost;
    if (root->bound < solution.cost) solution.bound = branch(std::move(root), best);
    solution.cost = total(best);
    solution.bound = std::min(solution.bound, solution.cost);
    solution.beds = std::move(best);
    solution.steps = steps_;
    return solution;
  }

 private:
  static PlanCost total(const std::vector<BedSchedule>& beds) {
    PlanCost cost;
    for (const BedSchedule& bed : beds) cost += bed.cost;
    return cost;
  }

  static std::vector<BedSchedule> schedules(const Node& node) {
    std::vector<BedSchedule> beds;
    for (const Optimum& bed : node.beds) beds.push_back(bed->schedule);
    return beds;
  }

  Optimum solve_bed(std::size_t bed, const ForbiddenRuns& forbidden, const std::vector<Optimum>& others) {
    ++steps_;
    return std::make_shared<BedOptimum>(
        best_bed_schedule(problem_, bed, fitting_[bed], forbidden, dislike(bed, others)));
  }

  /// Branches differ in the bans of one bed each: the others come again and again, and are solved once.
  Optimum solve_banned(std::size_t bed, ForbiddenRuns forbidden, const std::vector<Optimum>& others) {
    for (auto& day : forbidden.minutes) {
      for (std::vector<int>& minutes : day) {
        std::sort(minutes.begin(), minutes.end());
        minutes.erase(std::unique(minutes.begin(), minutes.end()), minutes.end());
      }
    }
    Optimum& known = solved_[{bed, forbidden.minutes}];
    if (!known) known = solve_bed(bed, forbidden, others);
    return known;
  }

  /// Among equally good plans: days on which others water too, and taps with time left.
  DayDislike dislike(std::size_t bed, const std::vector<Optimum>& others) const {
    DayDislike dislike(problem_.plan_days, {new_day_dislike, new_day_dislike});
    std::vector<std::array<std::size_t, 2>> busy(problem_.plan_days, {0, 0});
    for (std::size_t other = 0; other < others.size(); ++other) {
      if (!others[other] || other == bed) continue;
      for (const RunChoice& run : others[other]->schedule.runs) {
        dislike[run.day] = {0, 0};
        if (problem_.beds[other].tap != problem_.beds[bed].tap) continue;
        busy[run.day][static_cast<std::size_t>(run.part)] +=
            static_cast<std::size_t>(run.minutes + pause_between_runs_min) / minutes_per_slot;
      }
    }
    for (std::size_t day = 0; day < problem_.plan_days; ++day) {
      for (std::size_t part = 0; part < 2; ++part) {
        if (busy[day][part] == 0) continue;
        const std::size_t open = problem_.beds[bed].water_may_run[day].count();
        dislike[day][part] += busy[day][part] * 2 > open ? full_tap_dislike : 0;
      }
    }
    return dislike;
  }

  std::shared_ptr<Node> root_node() {
    auto root = std::make_shared<Node>();
    root->beds.resize(problem_.beds.size());
    for (std::size_t bed = 0; bed < problem_.beds.size(); ++bed) {
      root->beds[bed] = solve_bed(bed, {}, root->beds);
      root->cost += root->beds[bed]->schedule.cost;
      root->bound += root->beds[bed]->bound;
    }
    for (std::size_t day = 0; day < problem_.plan_days; ++day)
      for (std::size_t tap = 0; tap < n_taps(); ++tap)
        if (is_crowded(*root, {day, tap})) root->crowds.push_back({day, tap});
    return root;
  }

  std::vector<PlacedChoice> runs_on(const std::vector<Optimum>& beds, std::size_t day,
                                    std::size_t tap) const {
    std::vector<PlacedChoice> runs;
    for (std::size_t bed = 0; bed < beds.size(); ++bed) {
      if (!beds[bed] || problem_.beds[bed].tap != tap) continue;
      for (const RunChoice& run : beds[bed]->schedule.runs) {
        if (run.day == day) runs.push_back({bed, 0, run});
      }
    }
    return runs;
  }

  std::size_t n_taps() const {
    std::size_t taps = 0;
    for (const BedProblem& bed : problem_.beds) taps = std::max(taps, bed.tap + 1);
    return taps;
  }

  bool is_crowded(const Node& node, const Crowd& at) const {
    const auto runs = runs_on(node.beds, at.day, at.tap);
    return runs.size() > 1 && !day_is_feasible(problem_, fitting_, at.day, runs);
  }

  /// Of a child that differs from its parent in one bed: only that bed's days are looked at again.
  std::vector<Crowd> crowds_of_child(const Node& child, std::size_t bed) const {
    const std::size_t tap = problem_.beds[bed].tap;
    const auto lengths = [&](const Node& node, std::size_t day) {
      std::vector<std::pair<DayPart, int>> out;
      for (const RunChoice& run : node.beds[bed]->schedule.runs)
        if (run.day == day) out.emplace_back(run.part, run.minutes);
      return out;
    };
    std::vector<Crowd> crowds;
    for (std::size_t day = 0; day < problem_.plan_days; ++day) {
      const bool changed = lengths(child, day) != lengths(*child.parent, day);
      if (changed && is_crowded(child, {day, tap})) crowds.push_back({day, tap});
      for (const Crowd& crowd : child.parent->crowds)
        if (crowd.day == day && (crowd.tap != tap || !changed)) crowds.push_back(crowd);
    }
    std::sort(crowds.begin(), crowds.end());
    return crowds;
  }

  /// A smallest set of the day's runs that does not fit: none of them can be left out of it.
  std::vector<PlacedChoice> smallest_crowd(const Node& node, const Crowd& crowd) const {
    std::vector<PlacedChoice> runs = runs_on(node.beds, crowd.day, crowd.tap);
    for (std::size_t index = 0; index < runs.size();) {
      std::vector<PlacedChoice> without = runs;
      without.erase(without.begin() + static_cast<std::ptrdiff_t>(index));
      if (day_is_feasible(problem_, fitting_, crowd.day, without)) {
        ++index;
      } else {
        runs = std::move(without);
      }
    }
    return runs;
  }

  /// The run itself; and where a shorter one may begin wherever a longer one may, all longer ones.
  std::vector<int> banned_lengths(const PlacedChoice& run) const {
    const auto& part = fitting_[run.bed].days[run.run.day][static_cast<std::size_t>(run.run.part)];
    std::vector<int> minutes{run.run.minutes};
    if (!part.shorter_fits_too) return minutes;
    for (std::size_t longer = static_cast<std::size_t>(run.run.minutes) + 1; longer < part.starts.size();
         ++longer) {
      if (part.starts[longer].any()) minutes.push_back(static_cast<int>(longer));
    }
    return minutes;
  }

  ForbiddenRuns forbidden_for(const Node& leaf, std::size_t bed) const {
    ForbiddenRuns forbidden;
    forbidden.minutes.resize(problem_.plan_days);
    for (const Node* node = &leaf; node != nullptr; node = node->parent.get()) {
      if (!node->ban || node->ban->bed != bed) continue;
      auto& here = forbidden.minutes[node->ban->day][static_cast<std::size_t>(node->ban->part)];
      here.insert(here.end(), node->ban->minutes.begin(), node->ban->minutes.end());
    }
    return forbidden;
  }

  std::shared_ptr<Node> child_of(const std::shared_ptr<const Node>& parent, const PlacedChoice& run) {
    auto child = std::make_shared<Node>();
    child->parent = parent;
    child->ban = Ban{run.bed, run.run.day, run.run.part, banned_lengths(run)};
    child->beds = parent->beds;
    child->beds[run.bed] = solve_banned(run.bed, forbidden_for(*child, run.bed), parent->beds);
    for (const Optimum& bed : child->beds) {
      child->cost += bed->schedule.cost;
      child->bound += bed->bound;
    }
    child->crowds = crowds_of_child(*child, run.bed);
    child->serial = ++serial_;
    return child;
  }

  /// Best first. Gives the bound; `best` gets the best plan found.
  PlanCost branch(std::shared_ptr<Node> root, std::vector<BedSchedule>& best) {
    std::priority_queue<std::shared_ptr<Node>, std::vector<std::shared_ptr<Node>>, LaterNode> open;
    open.push(std::move(root));
    solved_.clear();  // what was liked among equals while the taps were filled is not what helps here
    PlanCost best_cost = total(best);
    std::optional<PlanCost> loose;  // of plans whose own bed was not solved to the end
    while (!open.empty()) {
      const std::shared_ptr<Node> node = open.top();
      if (node->bound >= best_cost) break;
      if (steps_ >= most_steps_ || serial_ >= nodes_a_step * most_steps_)
        return loose ? std::min(*loose, node->bound) : node->bound;
      open.pop();
      if (node->crowds.empty()) {
        if (node->cost < best_cost) {
          best = schedules(*node);
          best_cost = node->cost;
        }
        if (node->bound < node->cost) loose = loose ? std::min(*loose, node->bound) : node->bound;
        continue;
      }
      for (const PlacedChoice& run : smallest_crowd(*node, node->crowds.front())) {
        auto child = child_of(node, run);
        if (child->bound < best_cost) open.push(std::move(child));
      }
    }
    return loose ? std::min(*loose, best_cost) : best_cost;
  }

  /// A plan that fits for certain: one bed after the other takes what those before it have left. Then two
  /// beds at a time give up their runs and choose again, in either order, as long as the plan gets better.
  std::vector<BedSchedule> fill_bed_by_bed(const Node& root) {
    std::vector<std::size_t> order(problem_.beds.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::vector<PlanCost> dry;
    for (const BedProblem& bed : problem_.beds) dry.push_back(cost_of(bed, {}));
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return dry[a] > dry[b]; });
    std::vector<Optimum> placed(problem_.beds.size());
    for (const std::size_t bed : order) placed[bed] = solve_banned(bed, no_room_for(bed, placed), placed);
    if (root.bound < total(placed)) choose_again(placed);
    std::vector<BedSchedule> beds;
    beds.reserve(placed.size());
    for (const Optimum& bed : placed) beds.push_back(bed->schedule);
    return beds;
  }

  static PlanCost total(const std::vector<Optimum>& beds) {
    PlanCost cost;
    for (const Optimum& bed : beds) cost += bed->schedule.cost;
    return cost;
  }

  void choose_again(std::vector<Optimum>& placed) {
    for (bool better = true; better;) {
      better = false;
      for (std::size_t first = 0; first < placed.size(); ++first) {
        for (std::size_t second = 0; second < placed.size(); ++second) {
          if (first == second || problem_.beds[first].tap != problem_.beds[second].tap) continue;
          if (steps_ >= most_steps_) return;
          std::vector<Optimum> again = placed;
          again[first] = again[second] = nullptr;
          for (const std::size_t bed : {first, second})
            again[bed] = solve_banned(bed, no_room_for(bed, again), again);
          if (!(total(again) < total(placed))) continue;
          placed = std::move(again);
          better = true;
        }
      }
    }
  }

  /// The lengths of the last run with which the day's runs do not fit any more.
  std::vector<int> lengths_without_room(std::size_t day, std::vector<PlacedChoice>& runs) const {
    PlacedChoice& last = runs.back();
    const auto& hours = fitting_[last.bed].days[day][static_cast<std::size_t>(last.run.part)];
    std::vector<int> lengths, without_room;
    for (std::size_t minutes = 1; minutes < hours.starts.size(); ++minutes)
      if (hours.starts[minutes].any()) lengths.push_back(static_cast<int>(minutes));
    const auto fits = [&](int minutes) {
      last.run.minutes = minutes;
      return day_is_feasible(problem_, fitting_, day, runs);
    };
    if (hours.shorter_fits_too)
      return {std::partition_point(lengths.begin(), lengths.end(), fits), lengths.end()};
    std::copy_if(lengths.begin(), lengths.end(), std::back_inserter(without_room),
                 [&](int minutes) { return !fits(minutes); });
    return without_room;
  }

  ForbiddenRuns no_room_for(std::size_t bed, const std::vector<Optimum>& placed) const {
    ForbiddenRuns forbidden;
    forbidden.minutes.resize(problem_.plan_days);
    for (std::size_t day = 0; day < problem_.plan_days; ++day) {
      std::vector<PlacedChoice> runs = runs_on(placed, day, problem_.beds[bed].tap);
      if (runs.empty()) continue;
      runs.push_back({bed, 0, {.day = day}});
      for (const DayPart part : {DayPart::before_demand, DayPart::evening}) {
        runs.back().run.part = part;
        forbidden.minutes[day][static_cast<std::size_t>(part)] = lengths_without_room(day, runs);
      }
    }
    return forbidden;
  }

  const WeekProblem& problem_;
  std::size_t most_steps_;
  std::vector<FittingRuns> fitting_{};
  std::map<std::pair<std::size_t, decltype(ForbiddenRuns::minutes)>, Optimum> solved_{};
  std::size_t steps_ = 0, serial_ = 0;
};

}  // namespace

WeekSolution solve_week(const WeekProblem& problem, std::size_t most_steps) {
  return WeekSearch(problem, most_steps).solve();
}

}  // namespace v1
}  // namespace noonleaf
