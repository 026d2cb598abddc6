#include "noonleaf/plan/water_account.hpp"

#include <algorithm>
#include <span>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

constexpr std::chrono::hours gauge_tells_of_yesterday_before{10};
constexpr std::chrono::hours evening_begins{18};
constexpr double profile_below_roots_m = 0.5;  // lower layer that takes and gives water as roots grow
constexpr double deepest_profile_m = 3.0;

sys_days gauge_day(const JournalEntry& entry) {
  const bool morning = entry.time_of_day && *entry.time_of_day < gauge_tells_of_yesterday_before;
  return sys_days(entry.date) - days(morning ? 1 : 0);
}

double station_rain_mm(const SkyDay& day, RainCounted counted) {
  if (is_missing(day.weather.rain_mm)) return 0;
  const bool measured = day.origin == DayOrigin::measured || day.origin == DayOrigin::mixed;
  return measured || counted == RainCounted::with_forecast ? day.weather.rain_mm : 0;
}

BalanceDay balance_day(const Garden& garden, std::size_t bed, const Journal& journal, const SkyDay& day,
                       RainCounted counted) {
  const BedWater water = water_on(garden, bed, journal, day, counted);
  BalanceDay result;
  result.date = day.weather.date;
  result.et0_mm_d = day.et0_mm_d;
  if (is_known(day.estimate.u2_m_s)) result.u2_m_s = day.estimate.u2_m_s;
  if (is_known(day.estimate.rh_min_pct)) result.rh_min_pct = day.estimate.rh_min_pct;
  result.rain_mm = water.rain_mm;
  result.irrigation_mm = water.irrigation_mm;
  result.evening_irrigation_mm = water.evening_irrigation_mm;
  return result;
}

void refuse_gap(const SkyDay& day) {
  Problem problem;
  problem.field = "date";
  problem.message = "the weather has a gap of more than " + std::to_string(longest_bridged_gap_d) +
                    " days without temperature, at " + iso_date(day.weather.date);
  problem.fix = "add a file with these days to the weather folder, of a station nearby if need be";
  throw Error(std::move(problem));
}

std::vector<BalanceDay> balance_days(const Garden& garden, std::size_t bed, const Journal& journal,
                                     std::span<const SkyDay> sky, RainCounted counted) {
  const double wetted_frac = settings_of_bed(garden, garden.beds[bed]).irrigated_frac;
  std::vector<BalanceDay> result;
  for (const SkyDay& day : sky) {
    if (day.et0_from == Et0From::none) refuse_gap(day);
    result.push_back(balance_day(garden, bed, journal, day, counted));
    result.back().irrigation_fw = wetted_frac;
  }
  return result;
}

double profile_depth_m(const std::vector<GrowthDay>& growth) {
  double deepest = 0;
  for (const GrowthDay& day : growth) deepest = std::max(deepest, day.root_depth_m);
  return std::min(deepest + profile_below_roots_m, std::max(deepest, deepest_profile_m));
}

PlantingAccount account_of(const Garden& garden, std::size_t bed_index, std::size_t planting_index,
                           const Journal& journal, const Sky& sky, std::size_t morning) {
  const Bed& bed = garden.beds[bed_index];
  PlantingAccount account;
  account.planting = planting_index;
  account.soil = soil_of_bed(bed);
  const BalanceSettings settings = settings_of_bed(garden, bed);
  const auto growth = growth_on_ground(bed, bed.plantings[planting_index], sky, garden.site.location.latitude_deg,
                                       sky.first(), sky.days.size());
  const std::span<const GrowthDay> all_growth(growth);
  const std::span<const SkyDay> all_days(sky.days);
  const BalanceState start =
      initial_state(account.soil, growth.front().root_depth_m, profile_depth_m(growth), 0.0);
  const auto past_days = balance_days(garden, bed_index, journal, all_days.first(morning), RainCounted::with_forecast);
  account.past = run_balance(start, past_days, all_growth.first(morning), account.soil, settings);
  account.dawn = account.past.days.empty() ? start : account.past.days.back().end;
  const auto ahead = [&](RainCounted counted) {
    const auto days_ahead = balance_days(garden, bed_index, journal, all_days.subspan(morning), counted);
    return run_balance(account.dawn, days_ahead, all_growth.subspan(morning), account.soil, settings);
  };
  account.dry_ahead = ahead(RainCounted::measured_only);
  account.likely_ahead = ahead(RainCounted::with_forecast);
  return account;
}

}  // namespace

BedWater water_on(const Garden& garden, std::size_t bed, const Journal& journal, const SkyDay& day,
                  RainCounted counted) {
  const sys_days date(day.weather.date);
  BedWater water{.rain_mm = station_rain_mm(day, counted)};
  double gauge_mm = missing;
  for (const JournalEntry& entry : journal) {
    if (entry.event == JournalEvent::rain && gauge_day(entry) == date && is_known(entry.rain_mm)) {
      gauge_mm = (is_known(gauge_mm) ? gauge_mm : 0) + entry.rain_mm;
    }
    const bool watered = entry.event == JournalEvent::water && entry.bed == garden.beds[bed].id && sys_days(entry.date) == date;
    if (!watered || is_missing(entry.minutes)) continue;
    const double depth_mm =
        infiltrated_depth_mm(garden.sprinklers[garden.beds[bed].sprinkler].rate, entry.minutes).mean_mm;
    const bool evening = entry.time_of_day && *entry.time_of_day >= evening_begins;
    (evening ? water.evening_irrigation_mm : water.irrigation_mm) += depth_mm;
  }
  if (is_known(gauge_mm)) water.rain_mm = gauge_mm;
  return water;
}

std::vector<PlantingAccount> accounts_of_bed(const Garden& garden, std::size_t bed, const Journal& journal,
                                             const Sky& sky, std::chrono::year_month_day date) {
  const sys_days morning(date);
  std::vector<PlantingAccount> accounts;
  const auto morning_index = static_cast<std::size_t>((morning - sky.first()).count());
  const auto& plantings = garden.beds[bed].plantings;
  for (std::size_t index = 0; index < plantings.size(); ++index) {
    if (!grows_on(plantings[index], morning)) continue;
    accounts.push_back(account_of(garden, bed, index, journal, sky, morning_index));
  }
  return accounts;
}

}  // namespace v1
}  // namespace noonleaf
