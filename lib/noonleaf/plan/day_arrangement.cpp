#include <algorithm>
#include <cstdint>
#include <limits>

#include "noonleaf/plan/week_problem.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t never = std::numeric_limits<std::size_t>::max();

/// A run as the tap sees it: where it may begin, and how long it keeps the tap.
struct TapJob {
  std::size_t run;  ///< index into the runs of the day
  DaySlots starts;
  std::size_t first_start;  ///< slots_per_day where there is none
  std::size_t slots;        ///< until the tap is free for the next one
  std::size_t water_slots;  ///< of it, until the water is off
};

std::size_t next_start(const DaySlots& starts, std::size_t from) {
  while (from < slots_per_day && !starts.test(from)) ++from;
  return from;
}

std::vector<std::vector<TapJob>> jobs_by_tap(const WeekProblem& problem, std::span<const FittingRuns> fitting,
                                             std::size_t day, std::span<const PlacedChoice> runs) {
  std::vector<std::vector<TapJob>> taps;
  for (std::size_t index = 0; index < runs.size(); ++index) {
    const PlacedChoice& run = runs[index];
    const BedProblem& bed = problem.beds[run.bed];
    const RunShape& shape = bed.shapes[static_cast<std::size_t>(run.run.minutes)];
    const auto slots = [](int minutes) {
      return static_cast<std::size_t>((minutes + minutes_per_slot - 1) / minutes_per_slot);
    };
    if (taps.size() <= bed.tap) taps.resize(bed.tap + 1);
    const FittingRuns::Part& hours = fitting[run.bed].days[day][static_cast<std::size_t>(run.run.part)];
    const DaySlots& starts = hours.starts[static_cast<std::size_t>(run.run.minutes)];
    taps[bed.tap].push_back({index, starts, next_start(starts, 0),
                             slots(shape.span_min() + pause_between_runs_min), slots(shape.span_min())});
  }
  return taps;
}

/// Earliest slot at which the tap is free again after every set of its runs.
bool tap_is_feasible(const std::vector<TapJob>& jobs) {
  const std::size_t n_sets = std::size_t{1} << jobs.size();
  std::vector<std::size_t> free_from(n_sets, never);
  free_from[0] = 0;
  for (std::size_t done = 0; done < n_sets; ++done) {
    if (free_from[done] == never) continue;
    for (std::size_t job = 0; job < jobs.size(); ++job) {
      const std::size_t with = done | (std::size_t{1} << job);
      if (with == done) continue;
      const std::size_t start =
          next_start(jobs[job].starts, std::max(free_from[done], jobs[job].first_start));
      if (start < slots_per_day) free_from[with] = std::min(free_from[with], start + jobs[job].slots);
    }
  }
  return free_from[n_sets - 1] != never;
}

/// Least discomfort with which every set of runs is done and the tap free at every slot.
class TapTable {
 public:
  TapTable(const WeekProblem& problem, std::size_t day, std::span<const PlacedChoice> runs,
           const std::vector<TapJob>& jobs)
      : jobs_(jobs), n_sets_(std::size_t{1} << jobs.size()), least_(rows * n_sets_, unreachable) {
    for (const TapJob& job : jobs) {
      const auto& discomfort = problem.beds[runs[job.run].bed].discomfort[day];
      std::vector<std::int64_t> costs(slots_per_day, unreachable);
      for (std::size_t start = 0; start < slots_per_day; ++start) {
        if (!job.starts.test(start)) continue;
        costs[start] = 0;
        for (std::size_t slot = start; slot < start + job.water_slots && slot < slots_per_day; ++slot)
          costs[start] += discomfort[slot];
      }
      costs_.push_back(std::move(costs));
    }
    fill();
  }

  /// The starts of all runs; nothing when some have no place.
  std::optional<std::vector<std::size_t>> starts() const {
    std::size_t row = rows - 1, done = n_sets_ - 1;
    if (at(row, done) >= unreachable) return std::nullopt;
    std::vector<std::size_t> starts(jobs_.size(), 0);
    while (done != 0) {
      if (row > 0 && at(row - 1, done) == at(row, done)) {  // the earlier end of equals
        --row;
        continue;
      }
      for (std::size_t job = 0; job < jobs_.size(); ++job) {
        const std::size_t without = done & ~(std::size_t{1} << job);
        if (without == done || row < jobs_[job].slots) continue;
        const std::size_t start = row - jobs_[job].slots;
        if (start >= slots_per_day || costs_[job][start] >= unreachable) continue;
        if (at(start, without) + costs_[job][start] != at(row, done)) continue;
        starts[job] = start;
        row = start;
        done = without;
        break;
      }
    }
    return starts;
  }

 private:
  static constexpr std::int64_t unreachable = std::numeric_limits<std::int64_t>::max() / 4;
  static constexpr std::size_t rows =
      slots_per_day + 2;  // the pause after the last run may end past midnight

  std::int64_t at(std::size_t row, std::size_t done) const { return least_[row * n_sets_ + done]; }

  void fill() {
    for (std::size_t row = 0; row < rows; ++row) {
      for (std::size_t done = 0; done < n_sets_; ++done) {
        std::int64_t least = done == 0 ? 0 : unreachable;
        if (row > 0) least = std::min(least, at(row - 1, done));
        for (std::size_t job = 0; job < jobs_.size(); ++job) {
          const std::size_t without = done & ~(std::size_t{1} << job);
          if (without == done || row < jobs_[job].slots) continue;
          const std::size_t start = row - jobs_[job].slots;
          if (start < slots_per_day) least = std::min(least, at(start, without) + costs_[job][start]);
        }
        least_[row * n_sets_ + done] = std::min(least, unreachable);
      }
    }
  }

  const std::vector<TapJob>& jobs_;
  std::size_t n_sets_;
  std::vector<std::int64_t> least_;
  std::vector<std::vector<std::int64_t>> costs_;
};

}  // namespace

bool day_is_feasible(const WeekProblem& problem, std::span<const FittingRuns> fitting, std::size_t day,
                     std::span<const PlacedChoice> runs) {
  const auto taps = jobs_by_tap(problem, fitting, day, runs);
  return std::all_of(taps.begin(), taps.end(), tap_is_feasible);
}

std::optional<std::vector<PlacedChoice>> arrange_day(const WeekProblem& problem,
                                                     std::span<const FittingRuns> fitting, std::size_t day,
                                                     std::span<const PlacedChoice> runs) {
  std::vector<PlacedChoice> placed(runs.begin(), runs.end());
  for (const std::vector<TapJob>& jobs : jobs_by_tap(problem, fitting, day, runs)) {
    const auto starts = TapTable(problem, day, runs, jobs).starts();
    if (!starts) return std::nullopt;
    for (std::size_t job = 0; job < jobs.size(); ++job) placed[jobs[job].run].start_slot = (*starts)[job];
  }
  return placed;
}

}  // namespace v1
}  // namespace noonleaf
