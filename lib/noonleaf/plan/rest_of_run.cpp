#include "noonleaf/plan/rest_of_run.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/plan/watering.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

bool is_run_on(const JournalEntry& entry, std::chrono::year_month_day date) {
  return entry.event == JournalEvent::water && entry.date == date;
}

/// Litres that somebody carried: how long that took, and which tap, nobody wrote down.
bool is_poured(const Garden& garden, const Bed& bed, const JournalEntry& entry) {
  return garden.sprinklers[bed.sprinkler].kind == WettingKind::hand && is_known(entry.litres) &&
         is_missing(entry.minutes);
}

/// The share of a run: every depth and volume is in proportion to its minutes.
RunPlan part_of(RunPlan run, double minutes) {
  const double share = minutes / run.minutes;
  for (double RunPlan::*const amount :
       {&RunPlan::net_depth_mm, &RunPlan::depth_in_bed_mm, &RunPlan::gross_depth_mm, &RunPlan::exact_min,
        &RunPlan::mean_depth_mm, &RunPlan::low_quarter_depth_mm, &RunPlan::litres_in_bed,
        &RunPlan::litres_from_tap}) {
    run.*amount *= share;
  }
  run.minutes = minutes;
  return run;
}

/// Why the rest is asked for, by what the account says now: the water of this morning is in it.
BedReason reason_for_rest(const BedToday& now, const PlantingToday& urgent) {
  const bool short_before_chance =
      urgent.limit_day && (!now.next_chance || *urgent.limit_day < *now.next_chance);
  if (urgent.in_seed_zone) return short_before_chance ? BedReason::seed_zone_dry : BedReason::rest_of_run;
  if (urgent.dr_mm > urgent.raw_mm) return BedReason::beyond_limit;
  return short_before_chance ? BedReason::limit_before_chance : BedReason::rest_of_run;
}

/// Minutes of the planned run that are left; 0 where the rest is not worth a walk.
double rest_min(const BedToday& planned, const BedToday& now, double can_l) {
  const double left_min = std::round(planned.run.minutes - now.minutes_run_today);
  if (is_missing(can_l) || is_missing(planned.run.litres_in_bed))
    return left_min < RunLimits{}.shortest_min ? 0 : left_min;
  // A person counts cans: those that were asked for are the run, more or less of a whole one is not.
  const double left_l = whole_cans(planned.run.litres_in_bed, can_l) * can_l - now.litres_run_today;
  return left_l <= can_l / 2 ? 0 : std::max(left_min, RunLimits{}.shortest_min);
}

}  // namespace

void ask_for_rest(const BedToday& planned, BedToday& now, double can_l) {
  if (!planned.driver) return;
  now.planned_minutes = planned.run.minutes;
  now.planned_litres = planned.run.litres_in_bed;
  const double minutes = rest_min(planned, now, can_l);
  if (minutes <= 0) {
    now.driver.reset();
    now.urgent.reset();
    now.reason = BedReason::lasts;
    return;
  }
  now.driver = planned.driver;
  now.urgent = planned.urgent;
  now.reason = reason_for_rest(now, now.plantings[*planned.urgent]);
  now.run = part_of(planned.run, minutes);
  for (const std::size_t index : {*now.driver, *now.urgent}) {
    PlantingToday& planting = now.plantings[index];
    planting.net_need_mm =
        std::min(now.run.net_depth_mm, planting.in_seed_zone ? planting.top_layer_mm : planting.dr_mm);
  }
}

std::chrono::minutes last_run_end(const Garden& garden, const Journal& journal,
                                  std::chrono::year_month_day date) {
  std::chrono::minutes last{0};
  for (const JournalEntry& entry : journal) {
    const Bed* bed = find_bed(garden, entry.bed);
    if (!is_run_on(entry, date) || !entry.time_of_day || bed == nullptr || is_poured(garden, *bed, entry))
      continue;
    const double ran = watering_of(garden, *bed, entry).minutes;
    if (is_known(ran)) last = std::max(last, *entry.time_of_day + std::chrono::minutes(std::lround(ran)));
  }
  return std::min(last, std::chrono::minutes(std::chrono::hours(24)));
}

Journal before_water_of(Journal journal, const std::string& bed, std::chrono::year_month_day date) {
  std::erase_if(journal,
                [&](const JournalEntry& entry) { return is_run_on(entry, date) && entry.bed == bed; });
  return journal;
}

}  // namespace v1
}  // namespace noonleaf
