#pragma once

#include <bitset>
#include <chrono>
#include <cstddef>

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The planner's clock ticks in fives: clock times that a person can keep.
inline constexpr int minutes_per_slot = 5;
/// Ticks of a day.
inline constexpr std::size_t slots_per_day = 24 * 60 / minutes_per_slot;

/// A day in slots of five minutes by the wall clock; slot i runs from 5 i to 5 i + 5 minutes after midnight.
using DaySlots = std::bitset<slots_per_day>;

/// The slots that lie wholly within `begin` to `end`.
inline DaySlots slots_within(std::chrono::minutes begin, std::chrono::minutes end) {
  DaySlots slots;
  const auto first = (begin.count() + minutes_per_slot - 1) / minutes_per_slot;
  for (auto slot = first; (slot + 1) * minutes_per_slot <= end.count(); ++slot) {
    slots.set(static_cast<std::size_t>(slot));
  }
  return slots;
}

/// The slots that `begin` to `end` touches.
inline DaySlots slots_touched(std::chrono::minutes begin, std::chrono::minutes end) {
  DaySlots slots;
  for (auto slot = begin.count() / minutes_per_slot; slot * minutes_per_slot < end.count(); ++slot) {
    slots.set(static_cast<std::size_t>(slot));
  }
  return slots;
}

}  // namespace v1
}  // namespace noonleaf
