#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/plan/day_slots.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/week.hpp"

namespace noonleaf {
inline namespace v1 {

// What stands in the way of water on one day, each limit by itself, so that a plan can ask what would be
// without it.

/// The slots that one limit leaves open.
struct LimitSlots {
  WeekLimit limit = WeekLimit::allowed_hours;
  std::optional<std::size_t> restriction{};  ///< index into rules.restrictions
  DaySlots open{};
};

/// Water that flies: it wets leaves, drifts in the wind, and touches who stands by.
bool is_overhead(WettingKind kind);

/// Whether what grows in the bed on that date is eaten; and whether its leaves suffer when they stay wet over
/// night.
/// Source    by crop group, common practice, from memory: nightshades, cucurbits, beans and peas, berries and
///           leafy vegetables take leaf diseases from wet nights
bool holds_food(const Bed& bed, std::chrono::year_month_day date);
bool leaves_suffer_at_night(const Bed& bed, std::chrono::year_month_day date);

/// All limits of a bed on a date but people, taps and snow. `from`: no run starts earlier.
std::vector<LimitSlots> limits_on(const Garden& garden, const Bed& bed, const Sky& sky,
                                  std::chrono::year_month_day date, std::chrono::minutes from);

/// The quiet slots of a date; and those that all restrictions in force leave to a kind of sprinkler.
DaySlots quiet_slots(const WateringRules& rules, std::chrono::year_month_day date);
DaySlots restricted_slots(const WateringRules& rules, WettingKind kind, std::chrono::year_month_day date);

/// The slots of a date in which the clocks change: no run begins, goes on or ends in them, so that minutes
/// on the clock are minutes of running.
DaySlots clock_change_slots(const Garden& garden, std::chrono::year_month_day date);

/// The slots that all of them leave open.
DaySlots open_slots(std::span<const LimitSlots> limits);

/// The slots of a date in which a caretaker is on site.
DaySlots presence_on(const Garden& garden, const Caretaker& caretaker, std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
