#include "noonleaf/plan/run_slots.hpp"

#include <algorithm>

#include "noonleaf/plan/week_limits.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::minutes;
using std::chrono::year_month_day;

constexpr minutes step{5};        // clock times that a person can keep
constexpr minutes move_hose{5};   // between two runs at one tap
constexpr minutes at_the_tap{5};  // how long a person must still be there to open or to close
constexpr minutes end_of_day{24 * 60};

/// Which of the limits a search keeps.
struct Limits {
  enum class Keep { yes, no };
  Keep allowed_hours = Keep::yes, quiet_hours = Keep::yes, restrictions = Keep::yes, wind = Keep::yes,
       taps = Keep::yes, earliest = Keep::yes, clocks = Keep::yes;
};

struct TakenTap {
  std::size_t tap;
  minutes begin, end;
  bool alone;  ///< needs more than its tap gives while others are open
};

struct Search {
  const Garden& garden;
  year_month_day date;
  minutes earliest;
  std::span<const TakenTap> taken;
  DaySlots clock_change{};  ///< minutes on the clock are no minutes of running there
};

/// When somebody has to be at the tap: for five minutes each.
using TapMoments = std::vector<minutes>;  // when they begin

std::optional<std::size_t> person_at(const Search& search, const TapMoments& moments) {
  const auto& people = search.garden.caretakers;
  for (std::size_t index = 0; index < people.size(); ++index) {
    if (std::all_of(moments.begin(), moments.end(), [&](minutes moment) {
          return on_site(search.garden, people[index], search.date, moment, moment + at_the_tap);
        }))
      return index;
  }
  return std::nullopt;
}

/// Who opens and who closes, all openings of the run; one person for both where that can be, since a
/// hand-over is a chance to forget.
std::optional<RunSlot> attended(const Search& search, const WantedRun& request, minutes begin) {
  const minutes end = begin + request.length;
  TapMoments opening, closing;
  const bool in_one_go = request.openings.empty() || request.openings.back().end != request.length;
  if (in_one_go) {
    opening = {begin};
    closing = {end - at_the_tap};
  } else {
    for (const RunOpening& each : request.openings) {
      opening.push_back(begin + each.begin);
      closing.push_back(begin + each.end - at_the_tap);
    }
  }
  TapMoments all = opening;
  all.insert(all.end(), closing.begin(), closing.end());
  if (const auto both = person_at(search, all)) return RunSlot{begin, end, *both, *both};
  const auto opener = person_at(search, opening), closer = person_at(search, closing);
  if (!opener || !closer) return std::nullopt;
  return RunSlot{begin, end, *opener, *closer};
}

/// Whether a sprinkler needs more than its tap gives while another one is open.
bool runs_alone(const Garden& garden, std::size_t sprinkler) {
  const Sprinkler& which = garden.sprinklers[sprinkler];
  return which.rate.flow_l_min > garden.taps[which.tap].shared_flow_l_min;
}

bool tap_is_free(const Search& search, std::size_t sprinkler, minutes begin, minutes end) {
  const std::size_t tap = search.garden.sprinklers[sprinkler].tap;
  const bool alone = runs_alone(search.garden, sprinkler);
  return std::none_of(search.taken.begin(), search.taken.end(), [&](const TakenTap& run) {
    const bool same_tap = run.tap == tap && begin < run.end + move_hose && run.begin < end + move_hose;
    const bool too_little = (alone || run.alone) && begin < run.end && run.begin < end;
    return same_tap || too_little;
  });
}

std::optional<RunSlot> slot_at(const Search& search, const WantedRun& request, minutes begin,
                               const Limits& limits) {
  const minutes end = begin + request.length;
  const WateringRules& rules = search.garden.rules;
  if (end > end_of_day) return std::nullopt;
  if (limits.allowed_hours == Limits::Keep::yes && !rules.allowed_hours.empty() &&
      !covers(rules.allowed_hours, search.date, begin, end)) {
    return std::nullopt;
  }
  const DaySlots run = slots_touched(begin, end);
  if (limits.quiet_hours == Limits::Keep::yes && (quiet_slots(rules, search.date) & run).any())
    return std::nullopt;
  const WettingKind kind = search.garden.sprinklers[request.sprinkler].kind;
  if (limits.restrictions == Limits::Keep::yes && (run & ~restricted_slots(rules, kind, search.date)).any())
    return std::nullopt;
  if (limits.clocks == Limits::Keep::yes && (run & search.clock_change).any()) return std::nullopt;
  if (limits.wind == Limits::Keep::yes && (run & ~request.calm).any()) return std::nullopt;
  if (limits.taps == Limits::Keep::yes && !tap_is_free(search, request.sprinkler, begin, end))
    return std::nullopt;
  return attended(search, request, begin);
}

std::optional<RunSlot> first_slot(const Search& search, const WantedRun& request, const Limits& limits) {
  const minutes from = limits.earliest == Limits::Keep::yes ? search.earliest : minutes{0};
  const minutes rounded = (from + step - minutes{1}) / step * step;
  for (minutes begin = rounded; begin < end_of_day; begin += step) {
    if (auto slot = slot_at(search, request, begin, limits)) return slot;
  }
  return std::nullopt;
}

/// The longest run that fits, from the length wanted down to the shortest allowed.
std::optional<RunSlot> longest_slot(const Search& search, WantedRun request) {
  const minutes shortest =
      request.shortest > minutes{0} ? std::min(request.shortest, request.length) : request.length;
  while (true) {
    if (auto slot = first_slot(search, request, {})) return slot;
    if (request.length <= shortest) return std::nullopt;
    request.length = std::max(shortest, (request.length - minutes{1}) / step * step);
  }
}

/// Several limits together: somebody is on site all the same.
RunObstacle joint_obstacle(const Search& search, const WantedRun& request) {
  using Keep = Limits::Keep;
  Limits only_time{Keep::no, Keep::no, Keep::no, Keep::no, Keep::no, Keep::yes, Keep::no};
  if (first_slot(search, request, only_time)) {
    const WateringRules& rules = search.garden.rules;
    if (!rules.allowed_hours.empty()) return RunObstacle::allowed_hours;
    return rules.restrictions.empty() ? RunObstacle::quiet_hours : RunObstacle::restriction;
  }
  only_time.earliest = Keep::no;
  return first_slot(search, request, only_time) ? RunObstacle::no_time_left : RunObstacle::nobody_on_site;
}

/// The one limit whose lifting would give the run a slot.
RunObstacle obstacle_of(const Search& search, WantedRun request) {
  using Keep = Limits::Keep;
  if (request.shortest > minutes{0}) request.length = std::min(request.shortest, request.length);
  if (first_slot(search, request, {.allowed_hours = Keep::yes, .quiet_hours = Keep::yes, .taps = Keep::no})) {
    return RunObstacle::tap_taken;
  }
  if (first_slot(search, request, {.quiet_hours = Keep::no})) return RunObstacle::quiet_hours;
  if (first_slot(search, request, {.allowed_hours = Keep::no})) return RunObstacle::allowed_hours;
  if (first_slot(search, request, {.restrictions = Keep::no})) return RunObstacle::restriction;
  if (first_slot(search, request, {.wind = Keep::no})) return RunObstacle::wind;
  if (first_slot(search, request, {.clocks = Keep::no})) return RunObstacle::clock_change;
  if (first_slot(search, request, {.earliest = Keep::no})) return RunObstacle::no_time_left;
  return joint_obstacle(search, request);
}

}  // namespace

std::vector<PlacedRun> place_runs(const Garden& garden, year_month_day date, minutes earliest,
                                  std::span<const WantedRun> requests) {
  std::vector<PlacedRun> placed;
  std::vector<TakenTap> taken;
  const DaySlots clock_change = clock_change_slots(garden, date);
  for (const WantedRun& request : requests) {
    const Search search{garden, date, earliest, taken, clock_change};
    PlacedRun run{.slot = longest_slot(search, request)};
    if (run.slot) {
      taken.push_back({garden.sprinklers[request.sprinkler].tap, run.slot->begin, run.slot->end,
                       runs_alone(garden, request.sprinkler)});
    } else {
      run.obstacle = obstacle_of(search, request);
    }
    placed.push_back(run);
  }
  return placed;
}

std::optional<year_month_day> next_chance(const Garden& garden, year_month_day date,
                                          const WantedRun& request) {
  for (int days = 1; days <= 7; ++days) {
    const year_month_day day{std::chrono::sys_days(date) + std::chrono::days(days)};
    if (longest_slot({garden, day, minutes{0}, {}, clock_change_slots(garden, day)}, request)) return day;
  }
  return std::nullopt;
}

}  // namespace v1
}  // namespace noonleaf
