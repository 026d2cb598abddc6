#include "noonleaf/plan/today.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/plan/bed_cycles.hpp"
#include "noonleaf/plan/bed_sky.hpp"
#include "noonleaf/plan/bed_water.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/plan/planting_wilt.hpp"
#include "noonleaf/plan/required_weather.hpp"
#include "noonleaf/plan/rest_of_run.hpp"
#include "noonleaf/plan/smaller_run.hpp"
#include "noonleaf/plan/watering.hpp"
#include "noonleaf/plan/week_limits.hpp"
#include "noonleaf/plan/week_problem.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr std::chrono::minutes usual_run{30};    // to ask when somebody could water next
constexpr std::chrono::minutes shortest_cut{5};  // a run is not cut below this
constexpr double largest_net_mm = 300;           // more than the longest run of any sprinkler brings
constexpr int heat_days_ahead = 5;

/// What would happen by the close of each day ahead, without water and without rain.
struct Ahead {
  const BalanceRun& run;
  std::size_t days_to_chance;
};

/// What the bed knows besides its plantings' accounts.
struct BedHour {
  std::size_t days_to_chance;
  double evening_water_mm;  ///< already run this evening: in the account from tomorrow on, off the need now
  std::optional<Seedbed> seedbed;  ///< of the planting
};

/// The first day at whose close the seed zone is drier than seed bears, without water.
std::optional<year_month_day> first_dry_seed_day(const Seedbed& seedbed, const BalanceRun& run) {
  double depletion_mm = seedbed.close_mm;
  for (const BalanceDetail& day : run.days) {
    if (day.date != run.days.front().date)
      depletion_mm = seed_zone_depletion_mm(seedbed.zone, depletion_mm, 0, std::max(0.0, day.et0_mm_d));
    if (depletion_mm > seedbed.zone.damp_mm) return day.date;
  }
  return std::nullopt;
}

std::optional<year_month_day> first_day_beyond(const PlantingToday& planting, const BalanceRun& run) {
  if (planting.seedbed) return first_dry_seed_day(*planting.seedbed, run);
  for (const BalanceDetail& day : run.days) {
    if (day.end.dr_mm > day.raw_mm) return day.date;
  }
  return std::nullopt;
}

double need_mm(const PlantingToday& planting, const Ahead& ahead) {
  if (planting.stage == Stage::over || ahead.run.days.front().ground != GroundState::open) return 0.0;
  const auto days_to_limit = [&] {
    return static_cast<std::size_t>(
        (sys_days(*planting.limit_day) - sys_days(ahead.run.days.front().date)).count());
  };
  const bool needed = planting.limit_day && days_to_limit() < ahead.days_to_chance;
  const double room_mm = planting.in_seed_zone ? planting.top_layer_mm : planting.dr_mm;
  if (!needed || room_mm < smallest_net_mm) return 0.0;
  return planting.in_seed_zone ? room_mm : room_mm / (1 - planting.salt.leaching_frac);
}

PlantingToday planting_today(const BedPlanting& planting, const PlantingAccount& account, const Sky& sky,
                             const BedHour& hour) {
  const BalanceDetail& today = account.dry_ahead.days.front();
  PlantingToday result;
  result.planting = account.planting;
  result.crop = &find_crop(planting.crop);
  result.share_frac = planting.share_frac;
  result.stage = today.growth.stage;
  result.seedbed = hour.seedbed;
  result.in_seed_zone = result.seedbed.has_value();
  result.salt = account.salt;
  result.start_doubt_mm = account.start_doubt_mm;
  result.dr_mm = std::max(0.0, today.dr_wet_mm - hour.evening_water_mm);
  result.raw_mm = today.raw_mm;
  result.taw_mm = today.taw_mm;
  result.top_layer_mm = std::max(0.0, today.de_wet_mm - hour.evening_water_mm);
  result.top_layer_limit_mm = today.rew_mm;
  if (is_missing(today.de_wet_mm) && result.seedbed) {  // the single coefficient knows of no surface
    result.top_layer_mm = result.seedbed->depletion_mm;
    result.top_layer_limit_mm = result.seedbed->zone.damp_mm;
  }
  result.root_depth_m = today.end.root_depth_m;
  result.field_capacity_m3_m3 = account.soil.field_capacity_m3_m3;
  if (is_known(today.fc)) result.cover_frac = today.fc;
  result.etc_mm_d = today.etc_mm_d;
  result.soil_checks = account.soil_checks;
  result.dr_close_mm = today.end.dr_mm;
  result.limit_day = first_day_beyond(result, account.dry_ahead);
  result.net_need_mm = need_mm(result, {account.dry_ahead, hour.days_to_chance});
  std::vector<HeatDay> heat_days;
  for (int ahead = 0; ahead < heat_days_ahead; ++ahead) {
    const SkyDay* day = sky.find(sys_days(today.date) + days(ahead));
    if (day != nullptr) heat_days.push_back({day->weather.date, day->weather.t_max_c, day->weather.t_min_c});
  }
  result.heat = crop_heat_findings(result.crop->id, heat_days);
  return result;
}

/// How far a planting is on the way to its limit; seedbeds before all.
double urgency(const PlantingToday& planting) {
  if (planting.net_need_mm <= 0) return 0;
  if (planting.in_seed_zone) return 1e3 + planting.top_layer_mm / planting.top_layer_limit_mm;
  return planting.dr_mm / planting.raw_mm;
}

std::optional<std::size_t> driver_of(const std::vector<PlantingToday>& plantings) {
  std::optional<std::size_t> driver;
  for (std::size_t index = 0; index < plantings.size(); ++index) {
    const bool more = !driver || plantings[index].net_need_mm > plantings[*driver].net_need_mm;
    if (plantings[index].net_need_mm > 0 && more) driver = index;
  }
  return driver;
}

std::optional<std::size_t> most_urgent(const std::vector<PlantingToday>& plantings) {
  std::optional<std::size_t> urgent;
  for (std::size_t index = 0; index < plantings.size(); ++index) {
    if (urgency(plantings[index]) > (urgent ? urgency(plantings[*urgent]) : 0.0)) urgent = index;
  }
  return urgent;
}

BedReason reason_to_open(const PlantingToday& urgent) {
  if (urgent.in_seed_zone) return BedReason::seed_zone_dry;
  return urgent.dr_mm > urgent.raw_mm ? BedReason::beyond_limit : BedReason::limit_before_chance;
}

BedReason reason_to_leave(const BedToday& bed, GroundState ground) {
  if (bed.plantings.empty()) return BedReason::nothing_grows;
  return ground == GroundState::open ? BedReason::lasts : BedReason::ground_closed;
}

/// A slot for a run of its own, beside the plan of the day.
std::optional<RunSlot> slot_for(const Garden& garden, const BedToday& bed, const TodayQuestion& question,
                                double minutes) {
  const auto length = std::chrono::minutes(std::lround(minutes));
  const std::array<WantedRun, 1> run{WantedRun{garden.beds[bed.bed].sprinkler, length, shortest_cut}};
  return place_runs(garden, question.date, question.from, run).front().slot;
}

/// For a bed without a run that will hang: a slot after the hour at which to look again, if there is one.
std::optional<RunSlot> slot_after_looking(const Garden& garden, const BedToday& bed, year_month_day date) {
  double look_again_h = 0, depletion_mm = 0;
  for (const PlantingToday& planting : bed.plantings) {
    if (planting.wilt.verdict != WiltVerdict::droop) continue;
    look_again_h = std::max(look_again_h, planting.wilt.look_again_h);
    depletion_mm = std::max(depletion_mm, planting.dr_mm);
  }
  if (!(look_again_h > 0) || look_again_h >= 24 || depletion_mm < smallest_net_mm) return std::nullopt;
  const Bed& where = garden.beds[bed.bed];
  const auto length = std::chrono::minutes(std::lround(bed_run(garden, where, depletion_mm).minutes));
  const std::array<WantedRun, 1> run{WantedRun{where.sprinkler, length}};
  return place_runs(garden, date, std::chrono::minutes(std::lround(look_again_h * 60)), run).front().slot;
}

/// What a bed had on a day, by the journal.
struct WaterHad {
  double minutes = 0, litres = 0;
};

WaterHad water_had_on(const Garden& garden, const Bed& bed, const Journal& journal, year_month_day date) {
  WaterHad had;
  for (const JournalEntry& entry : journal) {
    if (entry.event != JournalEvent::water || entry.bed != bed.id || entry.date != date) continue;
    const Watering water = watering_of(garden, bed, entry);
    if (is_known(water.minutes)) had.minutes += water.minutes;
    if (is_known(water.mean_mm)) had.litres += water.mean_mm * bed.area_m2;
  }
  return had;
}

/// The driest quarter of a bed as an account of its own.
PlantingAccount low_quarter_of(const PlantingAccount& account) {
  PlantingAccount low = account;
  low.past = account.low_past;
  low.dry_ahead = account.low_ahead;
  return low;
}

void add_wilt(const PlantingPlace& place, const PlantingAccount& account, const Sky& sky, year_month_day date,
              PlantingToday& planting) {
  const PlantingAccount low = low_quarter_of(account);
  planting.low_quarter_dr_mm = low.dry_ahead.days.front().dr_wet_mm;
  if (account.dry_ahead.days.front().ground != GroundState::open || planting.stage == Stage::over) return;
  planting.wilt = wilt_of_planting(place, account, sky, date);
  planting.low_quarter_wilt = wilt_of_planting(place, low, sky, date);
}

/// A bed with what its plantings want, before it has a run.
BedToday bed_by_account(const Garden& garden, std::size_t index, const Journal& journal, const Sky& sky,
                        const TodayQuestion& question) {
  const Bed& bed = garden.beds[index];
  BedToday result;
  result.bed = index;
  result.next_chance = next_chance(garden, question.date, {bed.sprinkler, usual_run, shortest_cut});
  const auto days_to_chance = static_cast<std::size_t>(
      result.next_chance ? (sys_days(*result.next_chance) - sys_days(question.date)).count() : 7);
  const double evening_mm =
      water_on(garden, index, journal, *sky.find(sys_days(question.date))).evening_irrigation_mm;
  const Sky bed_sky = sky_over_bed(garden.site, bed, sky);
  GroundState ground = GroundState::open;
  for (const PlantingAccount& account : accounts_of_bed(garden, index, journal, sky, question.date)) {
    const BedPlanting& planting = bed.plantings[account.planting];
    const auto seedbed = seedbed_on(garden, index, planting, journal, bed_sky, question.date);
    result.plantings.push_back(planting_today(planting, account, sky, {days_to_chance, evening_mm, seedbed}));
    if (seedbed && is_known(seedbed->light.depth_mm))
      result.plantings.back().light_min = bed_run(garden, bed, seedbed->light.depth_mm).minutes;
    ground = account.dry_ahead.days.front().ground;
    if (question.wilt == TodayQuestion::Wilt::told)
      add_wilt({garden, bed, planting, journal}, account, sky, question.date, result.plantings.back());
  }
  const WaterHad had = water_had_on(garden, bed, journal, question.date);
  result.minutes_run_today = had.minutes;
  result.litres_run_today = had.litres;
  result.driver = driver_of(result.plantings);
  result.urgent = most_urgent(result.plantings);
  if (result.driver) {
    result.reason = reason_to_open(result.plantings[*result.urgent]);
    result.run = bed_run(garden, bed, result.plantings[*result.driver].net_need_mm);
  } else {
    result.reason = reason_to_leave(result, ground);
    result.later_slot = slot_after_looking(garden, result, question.date);
  }
  return result;
}

/// A journal as it stands, and with what may have been run besides.
struct TwoJournals {
  const Journal& written;
  const UnloggedRuns& unlogged;
};

/// The bed without its unlogged runs, with a run that is right also if they were done.
BedToday bed_in_doubt(const Garden& garden, std::size_t index, const TwoJournals& journals, const Sky& sky,
                      const TodayQuestion& question) {
  BedToday bed = bed_by_account(garden, index, journals.written, sky, question);
  std::vector<UnloggedRun> open;
  for (const UnloggedRun& run : journals.unlogged.runs) {
    if (run.bed == index) open.push_back(run);
  }
  if (open.empty() || bed.plantings.empty()) return bed;
  const TodayQuestion without_wilt{question.date, question.from, TodayQuestion::Wilt::left_out};
  take_smaller_run(garden, bed_by_account(garden, index, journals.unlogged.if_done, sky, without_wilt), open,
                   bed);
  if (bed.reason == BedReason::look_first)
    bed.later_slot = slot_for(garden, bed, question, bed.open_question->run_if_not_done.minutes);
  return bed;
}

BedToday bed_today(const Garden& garden, std::size_t index, const TwoJournals& journals, const Sky& sky,
                   const TodayQuestion& question) {
  BedToday now = bed_in_doubt(garden, index, journals, sky, question);
  if (now.minutes_run_today <= 0) return now;
  const std::string& bed = garden.beds[index].id;
  const Journal this_morning = before_water_of(journals.written, bed, question.date);
  UnloggedRuns unlogged = journals.unlogged;
  unlogged.if_done = before_water_of(unlogged.if_done, bed, question.date);
  const TodayQuestion without_wilt{question.date, question.from, TodayQuestion::Wilt::left_out};
  ask_for_rest(bed_in_doubt(garden, index, {this_morning, unlogged}, sky, without_wilt), now,
               garden.sprinklers[garden.beds[index].sprinkler].can_l);
  return now;
}

/// Splits the run where it would run off.
void set_cycles(const Garden& garden, BedToday& bed) {
  bed.cycles = bed_cycles(garden, bed, bed.run.minutes);
  bed.openings = openings_of_run(bed.cycles, bed.run.minutes);
}

/// The same, and cuts it to what the cycles bring.
void split_run(const Garden& garden, BedToday& bed) {
  set_cycles(garden, bed);
  if (!bed.cycles || bed.cycles->left_out_min <= 0) return;
  bed.run = bed_run(garden, garden.beds[bed.bed], bed.run.net_depth_mm, running_min(*bed.cycles));
  bed.openings = openings_of_run(bed.cycles, bed.run.minutes);
}

/// From opening to the last closing.
std::chrono::minutes length_of(const BedToday& bed) {
  return bed.openings.empty() ? std::chrono::minutes{0} : bed.openings.back().end;
}

/// The run as far as it fits into a slot that is shorter than it.
void cut_run(const Garden& garden, std::chrono::minutes length, BedToday& bed) {
  const double net_mm = bed.run.net_depth_mm;
  for (auto minutes = length; minutes > std::chrono::minutes{0}; minutes -= std::chrono::minutes{1}) {
    bed.run = bed_run(garden, garden.beds[bed.bed], net_mm, static_cast<double>(minutes.count()));
    set_cycles(garden, bed);
    if (length_of(bed) <= length) return;
  }
}

/// What shuts the tap for this bed on the whole day, if anything does. Sets the hours calm enough for it.
std::optional<RunObstacle> closed_all_day(const Garden& garden, const Today& today, const Sky& sky,
                                          const Bed& bed, WantedRun& run) {
  if (today.sky.estimate.t_min_c <= garden.rules.frost_lockout_c) return RunObstacle::frost;
  for (const LimitSlots& limit : limits_on(garden, bed, sky, today.date, std::chrono::minutes(0))) {
    if (limit.limit == WeekLimit::wind) run.calm = limit.open;
    if (limit.limit == WeekLimit::tap_flow) return RunObstacle::tap_flow;
    if (limit.limit == WeekLimit::reclaimed_on_food || limit.limit == WeekLimit::reclaimed_children)
      return RunObstacle::reclaimed;
  }
  return std::nullopt;
}

/// The runs that nothing closes get their slots, in order; the others what closes them.
std::vector<PlacedRun> place_open_runs(const Garden& garden, const Today& today,
                                       std::span<const WantedRun> runs,
                                       std::span<const std::optional<RunObstacle>> closed) {
  std::vector<WantedRun> open;
  for (std::size_t index = 0; index < runs.size(); ++index) {
    if (!closed[index]) open.push_back(runs[index]);
  }
  const auto slots = place_runs(garden, today.date, today.from, open);
  std::vector<PlacedRun> placed;
  std::size_t next = 0;
  for (const auto& obstacle : closed)
    placed.push_back(obstacle ? PlacedRun{.obstacle = *obstacle} : slots[next++]);
  return placed;
}

void place(const Garden& garden, const Sky& sky, Today& today) {
  std::vector<std::size_t> wanting;
  for (std::size_t index = 0; index < today.beds.size(); ++index) {
    if (today.beds[index].driver) wanting.push_back(index);
  }
  const auto urgency_of = [&](std::size_t bed) {
    return urgency(today.beds[bed].plantings[*today.beds[bed].urgent]);
  };
  std::stable_sort(wanting.begin(), wanting.end(),
                   [&](std::size_t a, std::size_t b) { return urgency_of(a) > urgency_of(b); });
  std::vector<WantedRun> runs;
  std::vector<std::optional<RunObstacle>> closed;
  for (const std::size_t bed : wanting) {
    split_run(garden, today.beds[bed]);
    runs.push_back({garden.beds[today.beds[bed].bed].sprinkler, length_of(today.beds[bed]), shortest_cut});
    runs.back().openings = today.beds[bed].openings;
    closed.push_back(closed_all_day(garden, today, sky, garden.beds[today.beds[bed].bed], runs.back()));
  }
  const auto placed = place_open_runs(garden, today, runs, closed);
  for (std::size_t index = 0; index < wanting.size(); ++index) {
    BedToday& bed = today.beds[wanting[index]];
    bed.action = placed[index].slot ? BedAction::open : BedAction::blocked;
    bed.slot = placed[index].slot;
    bed.obstacle = placed[index].obstacle;
    if (!bed.slot) continue;
    const auto length = bed.slot->end - bed.slot->begin;
    if (length < runs[index].length) {
      cut_run(garden, length, bed);
      bed.slot->end = bed.slot->begin + length_of(bed);
    }
    today.opening_order.push_back(wanting[index]);
  }
  std::stable_sort(today.opening_order.begin(), today.opening_order.end(), [&](std::size_t a, std::size_t b) {
    return today.beds[a].slot->begin < today.beds[b].slot->begin;
  });
}

}  // namespace

RunPlan bed_run(const Garden& garden, const Bed& bed, double net_depth_mm, double longest_min) {
  const Sprinkler& sprinkler = garden.sprinklers[bed.sprinkler];
  RunRequest request{.net_depth_mm = std::min(net_depth_mm, largest_net_mm),
                     .bed_area_m2 = bed.area_m2,
                     .sprinkler = sprinkler.rate};
  if (is_known(sprinkler.longest_run_min)) request.limits.longest_min = std::floor(sprinkler.longest_run_min);
  if (is_known(longest_min)) request.limits.longest_min = std::min(request.limits.longest_min, longest_min);
  request.limits.shortest_min = std::min(request.limits.shortest_min, request.limits.longest_min);
  return run_plan(request);
}

std::vector<ShareOutcome> outcomes_of_run(const BedToday& bed) {
  if (!bed.driver || is_missing(bed.run.mean_depth_mm)) return {};
  std::vector<BedShare> shares;
  for (const PlantingToday& planting : bed.plantings)
    shares.push_back({planting.share_frac, planting.dr_mm, planting.raw_mm, planting.taw_mm});
  return outcomes_of_depth(shares, bed.run.mean_depth_mm);
}

std::vector<AskedRun> runs_asked_for(const Garden& garden, const Journal& journal, const Sky& sky,
                                     year_month_day date) {
  require_weather(sky, date);
  Today day;
  day.date = date;
  day.sky = *sky.find(sys_days(date));
  const TodayQuestion question{date, std::chrono::minutes(0), TodayQuestion::Wilt::left_out};
  for (std::size_t index = 0; index < garden.beds.size(); ++index) {
    day.beds.push_back(bed_by_account(garden, index, journal, sky, question));
  }
  place(garden, sky, day);
  std::vector<AskedRun> runs;
  for (const std::size_t index : day.opening_order) {
    runs.push_back({day.beds[index].bed, day.beds[index].run.minutes, day.beds[index].slot->begin});
  }
  return runs;
}

Today plan_today(const Garden& garden, const Journal& journal, const Sky& sky,
                 const TodayQuestion& question) {
  require_weather(sky, question.date);
  return plan_today(garden, journal, sky, question, unlogged_runs(garden, journal, sky, question.date));
}

Today plan_today(const Garden& garden, const Journal& journal, const Sky& sky, const TodayQuestion& question,
                 const UnloggedRuns& unlogged) {
  require_weather(sky, question.date);
  Today today;
  today.date = question.date;
  today.from = std::max(question.from, last_run_end(garden, journal, question.date));
  today.sky = *sky.find(sys_days(question.date));
  if (const SkyDay* next = sky.find(sys_days(question.date) + days(1)))
    today.t_min_next_c = next->estimate.t_min_c;
  today.people = people_day(hours_over(garden.site, sky, question.date));
  for (std::size_t index = 0; index < garden.beds.size(); ++index) {
    today.beds.push_back(bed_today(garden, index, {journal, unlogged}, sky, question));
  }
  place(garden, sky, today);
  today.estimates = estimates_behind(garden, journal, sky, question.date);
  return today;
}

Likelihood likelihood_of_today(const Garden& garden, const Journal& journal, const Sky& sky,
                               const Today& today, const MemberOptions& options) {
  LikelihoodQuestion question{.date = today.date, .options = options};
  for (const BedToday& bed : today.beds) {
    if (!bed.driver || bed.plantings[*bed.driver].in_seed_zone || !(bed.run.exact_min > 0)) continue;
    // By hand the amount counts, and the minutes would be those of a rate that nobody knows.
    if (garden.sprinklers[garden.beds[bed.bed].sprinkler].kind == WettingKind::hand) continue;
    question.runs.push_back(
        {bed.bed, bed.plantings[*bed.driver].planting, bed.run.exact_min, bed.run.net_depth_mm});
  }
  return likelihood_of(garden, journal, sky, question);
}

Likelihood likelihood_of_alerts(const Garden& garden, const Journal& journal, const Sky& sky,
                                const Today& today, const MemberOptions& options) {
  return likelihood_of(garden, journal, sky, {.date = today.date, .options = options, .follow_days = 1});
}

}  // namespace v1
}  // namespace noonleaf
