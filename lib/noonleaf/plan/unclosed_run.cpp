#include "noonleaf/plan/unclosed_run.hpp"

#include <algorithm>

#include "noonleaf/garden/zone.hpp"
#include "noonleaf/plan/week_limits.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::minutes;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr int longest_wait_d = 7;

/// The first slot, from `from` on, in which this person comes on site; nothing on that date.
std::optional<std::size_t> arrival(const DaySlots& there, std::size_t from) {
  for (std::size_t slot = from; slot < slots_per_day; ++slot) {
    const bool was_there = slot > 0 && there.test(slot - 1);
    if (there.test(slot) && !was_there) return slot;
  }
  return std::nullopt;
}

/// The first slot, from `from` on, in which this person is on site.
std::optional<std::size_t> presence(const DaySlots& there, std::size_t from) {
  for (std::size_t slot = from; slot < slots_per_day; ++slot) {
    if (there.test(slot)) return slot;
  }
  return std::nullopt;
}

struct Arrival {
  year_month_day date;
  minutes time_of_day;
  std::size_t person;
};

/// Who is next by the tap, after the run should have been closed.
std::optional<Arrival> next_arrival(const Garden& garden, const WeekRun& run) {
  const minutes end = run.cycles.back().end;
  for (int ahead = 0; ahead <= longest_wait_d; ++ahead) {
    const year_month_day date{sys_days(run.date) + days(ahead)};
    const auto from =
        ahead == 0 ? static_cast<std::size_t>((end.count() + minutes_per_slot - 1) / minutes_per_slot) : 0;
    std::optional<Arrival> first;
    for (std::size_t person = 0; person < garden.caretakers.size(); ++person) {
      const DaySlots there = presence_on(garden, garden.caretakers[person], date);
      // Who closes is the one who forgets, and finds it at the next coming; anybody else by being there.
      const auto slot = person == run.closer ? arrival(there, from) : presence(there, from);
      if (!slot) continue;
      const minutes time{static_cast<int>(*slot) * minutes_per_slot};
      if (!first || time < first->time_of_day) first = Arrival{date, time, person};
    }
    if (first) return first;
  }
  return std::nullopt;
}

}  // namespace

UnclosedRun unclosed_cost(const Garden& garden, const WeekRun& run) {
  UnclosedRun cost;
  const minutes end = run.cycles.back().end;
  const auto found = next_arrival(garden, run);
  cost.until_date = found ? found->date : year_month_day{sys_days(run.date) + days(longest_wait_d)};
  cost.until = found ? found->time_of_day : end;
  if (found) cost.finder = found->person;
  const minutes extra = elapsed(garden.site.zone, {run.date, end}, {cost.until_date, cost.until});
  const auto extra_min = static_cast<double>(extra.count());
  cost.extra_hours = extra_min / 60;
  const ApplicationRate& rate = garden.sprinklers[run.sprinkler].rate;
  const double an_hour_mm = infiltrated_depth_mm(rate, 60).mean_mm;
  cost.extra_depth_mm = an_hour_mm * cost.extra_hours;
  cost.extra_l = is_known(rate.flow_l_min) ? rate.flow_l_min * extra_min
                                           : cost.extra_depth_mm * garden.beds[run.bed].area_m2;
  cost.percolation_mm = std::max(0.0, run.depth_mm + cost.extra_depth_mm - run.depletion_before_mm);
  return cost;
}

std::optional<std::size_t> backup_for(const Garden& garden, const WeekRun& run) {
  const auto closing = static_cast<std::size_t>((run.cycles.back().end.count() - 1) / minutes_per_slot);
  std::optional<std::size_t> next;
  std::size_t next_slot = slots_per_day;
  for (std::size_t person = 0; person < garden.caretakers.size(); ++person) {
    if (person == run.closer) continue;
    const DaySlots there = presence_on(garden, garden.caretakers[person], run.date);
    if (there.test(closing)) return person;
    const auto slot = arrival(there, closing);
    if (slot && *slot < next_slot) {
      next_slot = *slot;
      next = person;
    }
  }
  return next;
}

}  // namespace v1
}  // namespace noonleaf
