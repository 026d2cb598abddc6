#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "noonleaf/plan/week_search.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t beam_width = 24;
constexpr std::size_t no_parent = std::numeric_limits<std::size_t>::max();

/// One way to have come to a dawn.
struct Label {
  PlanCost cost{};
  std::int64_t dislike = 0;
  std::size_t parent = no_parent;  ///< among the labels of the day before
  std::optional<RunChoice> run{};  ///< of the day before
  BedState state{};
};

/// States to a millionth of a millimetre. Two labels that agree in it have the same future.
std::vector<std::int64_t> state_key(const BedState& state) {
  std::vector<std::int64_t> key;
  key.reserve(state.size() * 4);
  for (const BalanceState& planting : state) {
    for (const double mm : {planting.de_mm, planting.de_rain_mm, planting.dr_mm, planting.lower_mm})
      key.push_back(is_known(mm) ? std::llround(mm * 1e6) : std::numeric_limits<std::int64_t>::min());
  }
  return key;
}

bool cheaper(const Label& a, const Label& b) {
  return a.cost != b.cost ? a.cost < b.cost : a.dislike < b.dislike;
}

double dryness_mm(const BedState& state) {
  double sum = 0;
  for (const BalanceState& planting : state) sum += planting.dr_mm + planting.de_mm;
  return sum;
}

/// Of equal states the cheapest.
void merge_equal(std::vector<Label>& labels) {
  std::vector<std::pair<std::vector<std::int64_t>, std::size_t>> order;
  order.reserve(labels.size());
  for (std::size_t index = 0; index < labels.size(); ++index)
    order.emplace_back(state_key(labels[index].state), index);
  std::sort(order.begin(), order.end(), [&](const auto& a, const auto& b) {
    if (a.first != b.first) return a.first < b.first;
    if (cheaper(labels[a.second], labels[b.second])) return true;
    return !cheaper(labels[b.second], labels[a.second]) && a.second < b.second;
  });
  std::vector<Label> kept;
  for (std::size_t index = 0; index < order.size(); ++index) {
    if (index > 0 && order[index].first == order[index - 1].first) continue;
    kept.push_back(std::move(labels[order[index].second]));
  }
  labels = std::move(kept);
}

/// A few of them, from the driest to the wettest, the cheapest of each kind.
void thin_to_beam(std::vector<Label>& labels) {
  if (labels.size() <= beam_width) return;
  std::stable_sort(labels.begin(), labels.end(),
                   [](const Label& a, const Label& b) { return dryness_mm(a.state) < dryness_mm(b.state); });
  std::vector<Label> kept;
  for (std::size_t kind = 0; kind < beam_width; ++kind) {
    const auto at = [&](std::size_t k) {
      return labels.begin() + static_cast<std::ptrdiff_t>(k * labels.size() / beam_width);
    };
    kept.push_back(std::move(*std::min_element(at(kind), at(kind + 1), cheaper)));
  }
  labels = std::move(kept);
}

class BedSearch {
 public:
  BedSearch(const WeekProblem& problem, std::size_t bed, const FittingRuns& fitting,
            const ForbiddenRuns& forbidden, const DayDislike& dislike)
      : problem_(problem),
        bed_(problem.beds[bed]),
        fitting_(fitting),
        forbidden_(forbidden),
        dislike_(dislike) {}

  enum class Width { beam, all };

  /// Carries all labels through all days.
  void search(Width width) {
    days_.assign(1, {});
    Label first;
    first.state = first_state(bed_);
    days_.front().push_back(std::move(first));
    for (std::size_t day = 0; day < problem_.all_days; ++day) {
      days_.push_back(labels_after(day));
      merge_equal(days_.back());
      if (width == Width::beam) thin_to_beam(days_.back());
      if (width == Width::all) drop_costliest(days_.back());
      for (Label& label : days_[day]) BedState{}.swap(label.state);  // of the past only the runs are wanted
    }
  }

  BedSchedule best() const {
    BedSchedule schedule;
    const auto end = std::min_element(days_.back().begin(), days_.back().end(), cheaper);
    schedule.cost = end->cost;
    const Label* label = &*end;
    for (std::size_t day = days_.size() - 1; day > 0; --day) {
      if (label->run) schedule.runs.push_back(*label->run);
      label = &days_[day - 1][label->parent];
    }
    std::reverse(schedule.runs.begin(), schedule.runs.end());
    return schedule;
  }

  void give_up_above(const PlanCost& cost) { most_ = cost; }
  const std::optional<PlanCost>& dropped() const { return dropped_; }

 private:
  std::vector<Label> labels_after(std::size_t day) {
    std::vector<Label> next;
    for (std::size_t index = 0; index < days_[day].size(); ++index) {
      const Label& label = days_[day][index];
      BedStep dry = step_bed(bed_, label.state, day, nullptr);
      if (day < problem_.plan_days) {
        add_runs(next, index, day, run_choices(bed_, fitting_, label.state, day, DayPart::before_demand));
        add_runs(next, index, day, run_choices(bed_, fitting_, dry.end, day, DayPart::evening));
      }
      add(next, index, day, std::move(dry), std::nullopt);
    }
    return next;
  }

  void add_runs(std::vector<Label>& next, std::size_t index, std::size_t day,
                const std::vector<RunChoice>& choices) {
    for (const RunChoice& choice : choices) {
      if (!forbidden_.contains(choice))
        add(next, index, day, step_bed(bed_, days_[day][index].state, day, &choice), choice);
    }
  }

  void add(std::vector<Label>& next, std::size_t index, std::size_t day, BedStep step,
           const std::optional<RunChoice>& run) {
    const Label& before = days_[day][index];
    Label label;
    label.cost = before.cost + step.cost;
    if (most_ && label.cost > *most_) return;
    label.dislike = before.dislike;
    if (run && !dislike_.empty()) label.dislike += dislike_[day][static_cast<std::size_t>(run->part)];
    label.parent = index;
    label.run = run;
    label.state = std::move(step.end);
    next.push_back(std::move(label));
  }

  void drop_costliest(std::vector<Label>& labels) {
    if (labels.size() <= most_labels) return;
    std::stable_sort(labels.begin(), labels.end(), cheaper);
    const PlanCost& cheapest_dropped = labels[most_labels].cost;
    if (!dropped_ || cheapest_dropped < *dropped_) dropped_ = cheapest_dropped;
    labels.resize(most_labels);
  }

  const WeekProblem& problem_;
  const BedProblem& bed_;
  const FittingRuns& fitting_;
  const ForbiddenRuns& forbidden_;
  const DayDislike& dislike_;
  std::vector<std::vector<Label>> days_{};
  std::optional<PlanCost> most_{}, dropped_{};
};

}  // namespace

bool ForbiddenRuns::contains(const RunChoice& run) const {
  if (minutes.empty()) return false;
  const std::vector<int>& here = minutes[run.day][static_cast<std::size_t>(run.part)];
  return std::find(here.begin(), here.end(), run.minutes) != here.end();
}

BedOptimum best_bed_schedule(const WeekProblem& problem, std::size_t bed, const FittingRuns& fitting,
                             const ForbiddenRuns& forbidden, const DayDislike& dislike) {
  BedOptimum optimum;
  if (problem.beds[bed].plantings.empty()) return optimum;
  BedSearch search(problem, bed, fitting, forbidden, dislike);
  search.search(BedSearch::Width::beam);
  optimum.schedule = search.best();
  search.give_up_above(optimum.schedule.cost);
  search.search(BedSearch::Width::all);
  optimum.schedule = search.best();
  optimum.bound = optimum.schedule.cost;
  if (search.dropped()) optimum.bound = std::min(optimum.bound, *search.dropped());
  return optimum;
}

}  // namespace v1
}  // namespace noonleaf
