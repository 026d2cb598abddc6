#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How much a garden needs a person, the most pressing first.
enum class RoundNeed {
  cannot_tell,    ///< its files are wrong, or hold no weather of the day: somebody has to look at them
  person_needed,  ///< a bed is dry, or will be, before anybody can water there
  run_today,      ///< a bed has to be watered today, and somebody is there for it
  lasts,          ///< every bed lasts to the next chance
  nothing_grows   ///< no bed asks for anything
};

/// One garden in a round of many.
struct RoundEntry {
  RoundNeed need = RoundNeed::nothing_grows;
  std::string garden{};                 ///< its name
  std::string bed{}, letter{}, crop{};  ///< the bed that is worst off, and what grows there
  bool seedbed = false;
  double depletion_mm = missing, limit_mm = missing;  ///< of that bed this morning: Dr and RAW; De and REW
  std::size_t beds = 0, beds_beyond = 0;              ///< in all; beyond their limit by the day's close
  std::optional<std::chrono::year_month_day> beyond_on{};    ///< first day that ends beyond the limit
  std::optional<std::chrono::year_month_day> next_chance{};  ///< first day, this one included, on which
                                                             ///< somebody could water that bed; within a week
  int dry_days = 0;       ///< days beyond the limit before that chance, a week at most
  double litres = 0;      ///< to fill the beds that cannot wait
  std::string problem{};  ///< for cannot_tell
};

/// How a garden stands on one morning: every planting's account, without water and rain, against its limit
/// and the next time that somebody can water. Throws    Error as accounts_of_bed; field "date" when the
/// weather does not reach the day
RoundEntry round_entry(const Garden& garden, const Journal& journal, const Sky& sky,
                       std::chrono::year_month_day date);

/// Whether a person should go to `a` before `b`: by need, by the days that a bed would be dry, by the day on
/// which it begins.
bool goes_before(const RoundEntry& a, const RoundEntry& b);

}  // namespace v1
}  // namespace noonleaf
