#pragma once

#include <initializer_list>
#include <string>
#include <vector>

#include "noonleaf/report/week_view.hpp"

namespace noonleaf {
inline namespace v1 {

// What the sections of the sheet have in common.

inline std::string say(const WeekView& view, Phrase id, std::initializer_list<Filling> fillings = {}) {
  return fill(view.language, id, fillings);
}

/// "bed C", "beds A, B and E"
std::string beds_words(const WeekView& view, const std::vector<std::string>& letters);

/// What to take care of: hoses, slips, cords, thunder, bees, reclaimed water, heat, rules.
SheetSection care_section(const WeekView& view);

}  // namespace v1
}  // namespace noonleaf
