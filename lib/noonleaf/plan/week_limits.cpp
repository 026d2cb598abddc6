#include "noonleaf/plan/week_limits.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/garden/zone.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/plan/planting_wilt.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::minutes;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr minutes midnight{24 * 60};

constexpr std::array<CropGroup, 5> not_eaten{CropGroup::fibre, CropGroup::turf, CropGroup::ornamental,
                                             CropGroup::cover_crop, CropGroup::bare_soil};
constexpr std::array<CropGroup, 5> wet_night_groups{CropGroup::small_vegetable, CropGroup::solanum,
                                                    CropGroup::cucumber, CropGroup::legume, CropGroup::berry};

template <std::size_t n>
bool any_grows(const Bed& bed, year_month_day date, const std::array<CropGroup, n>& groups, bool in_group) {
  return std::any_of(bed.plantings.begin(), bed.plantings.end(), [&](const BedPlanting& planting) {
    if (!grows_on(planting, sys_days(date))) return false;
    const CropGroup group = find_crop(planting.crop).group;
    return (std::find(groups.begin(), groups.end(), group) != groups.end()) == in_group;
  });
}

DaySlots all_slots() { return DaySlots{}.set(); }

/// Slots within the hours of that weekday; hours that meet are one.
DaySlots slots_in(std::span<const WeeklyHours> hours, year_month_day date) {
  DaySlots slots;
  for (const WeeklyHours& each : hours) {
    if (covers({&each, 1}, date, each.begin, each.end)) slots |= slots_within(each.begin, each.end);
  }
  return slots;
}

bool is_exempt(const WateringRestriction& restriction, WettingKind kind) {
  if (kind == WettingKind::hand) return restriction.exempt_hand;
  const bool at_the_ground = kind == WettingKind::drip || kind == WettingKind::soaker_hose;
  return at_the_ground && restriction.exempt_drip;
}

DaySlots restricted_to(const WateringRestriction& restriction, year_month_day date) {
  if (!allows_date(restriction, date)) return {};
  return restriction.hours.empty() ? all_slots() : slots_in(restriction.hours, date);
}

DaySlots calm_slots(const Garden& garden, const Sky& sky, year_month_day date) {
  const WeatherHours hours = hours_over(garden.site, sky, date);
  DaySlots calm;
  for (std::size_t slot = 0; slot < slots_per_day; ++slot) {
    const double u2 = hours[slot * minutes_per_slot / 60].u2_m_s;
    calm.set(slot, !(u2 > garden.rules.wind_limit_m_s));  // unknown wind: the sheet's own rule decides
  }
  return calm;
}

bool is_frosty(const Garden& garden, const Sky& sky, year_month_day date) {
  const SkyDay* day = sky.find(sys_days(date));
  return day != nullptr && day->weather.t_min_c <= garden.rules.frost_lockout_c;
}

bool draws_too_much(const Garden& garden, const Sprinkler& sprinkler) {
  constexpr double reading_slack = 1.01;  // two readings of one flow differ
  const double tap = garden.taps[sprinkler.tap].flow_l_min;
  return is_known(tap) && is_known(sprinkler.rate.flow_l_min) &&
         sprinkler.rate.flow_l_min > tap * reading_slack;
}

}  // namespace

DaySlots quiet_slots(const WateringRules& rules, year_month_day date) {
  DaySlots quiet;
  for (const WeeklyHours& each : rules.quiet_hours) {
    if (holiday_on(rules, date) == nullptr && covers({&each, 1}, date, each.begin, each.end))
      quiet |= slots_touched(each.begin, each.end);
  }
  for (const DatedHours& each : rules.quiet_dates) {
    if (each.date == date) quiet |= slots_touched(each.begin, each.end);
  }
  return quiet;
}

DaySlots restricted_slots(const WateringRules& rules, WettingKind kind, year_month_day date) {
  DaySlots open = all_slots();
  for (const WateringRestriction& restriction : rules.restrictions) {
    if (!is_exempt(restriction, kind) && in_force(restriction, date, rules.drought_level))
      open &= restricted_to(restriction, date);
  }
  return open;
}

DaySlots clock_change_slots(const Garden& garden, year_month_day date) {
  if (garden.site.zone.empty()) return {};
  const auto change = clock_change_on(garden.site.zone, date);
  return change ? slots_touched(change->begin, change->end) : DaySlots{};
}

bool is_overhead(WettingKind kind) { return kind == WettingKind::sprinkler; }

bool holds_food(const Bed& bed, year_month_day date) { return any_grows(bed, date, not_eaten, false); }

bool leaves_suffer_at_night(const Bed& bed, year_month_day date) {
  return any_grows(bed, date, wet_night_groups, true);
}

std::vector<LimitSlots> limits_on(const Garden& garden, const Bed& bed, const Sky& sky, year_month_day date,
                                  minutes from) {
  std::vector<LimitSlots> limits;
  const WateringRules& rules = garden.rules;
  const Sprinkler& sprinkler = garden.sprinklers[bed.sprinkler];
  const auto add = [&](WeekLimit limit, const DaySlots& open) { limits.push_back({limit, {}, open}); };
  const DaySlots change = clock_change_slots(garden, date);
  if (change.any()) add(WeekLimit::clock_change, ~change);
  if (from > minutes{0}) add(WeekLimit::no_time_left, slots_within(from, midnight));
  if (!rules.allowed_hours.empty()) add(WeekLimit::allowed_hours, slots_in(rules.allowed_hours, date));
  const DaySlots quiet = quiet_slots(rules, date);
  if (quiet.any()) add(WeekLimit::quiet_hours, ~quiet);
  for (std::size_t index = 0; index < rules.restrictions.size(); ++index) {
    const WateringRestriction& restriction = rules.restrictions[index];
    if (is_exempt(restriction, sprinkler.kind) || !in_force(restriction, date, rules.drought_level)) continue;
    limits.push_back({WeekLimit::restriction, index, restricted_to(restriction, date)});
  }
  if (is_overhead(sprinkler.kind)) add(WeekLimit::wind, calm_slots(garden, sky, date));
  if (is_frosty(garden, sky, date)) add(WeekLimit::frost, {});
  if (draws_too_much(garden, sprinkler)) add(WeekLimit::tap_flow, {});
  const bool sprays = is_overhead(sprinkler.kind) || sprinkler.kind == WettingKind::hand;
  if (garden.taps[sprinkler.tap].reclaimed && sprays) {
    // Over food it is refused whatever the children do: that is the reason to name.
    if (holds_food(bed, date))
      add(WeekLimit::reclaimed_on_food, {});
    else if (rules.quiet_hours.empty() && rules.quiet_dates.empty())
      add(WeekLimit::reclaimed_children, {});
  }
  return limits;
}

DaySlots open_slots(std::span<const LimitSlots> limits) {
  DaySlots open = all_slots();
  for (const LimitSlots& limit : limits) open &= limit.open;
  return open;
}

DaySlots presence_on(const Garden& garden, const Caretaker& caretaker, year_month_day date) {
  DaySlots slots;
  for (const WeeklyHours& each : caretaker.hours) {
    if (on_site(garden, caretaker, date, each.begin, each.end) &&
        covers({&each, 1}, date, each.begin, each.end))
      slots |= slots_within(each.begin, each.end);
  }
  return slots;
}

}  // namespace v1
}  // namespace noonleaf
