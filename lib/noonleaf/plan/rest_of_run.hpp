#pragma once

#include "noonleaf/plan/today.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Asks for the rest of a run of which a part has been run today.
///
/// Rule      The rest is what was planned this morning less what the journal says ran since, in whole
///           minutes. It is not worked out anew from the depletion: the multiplier for unevenness belongs
///           to the whole run. A rest below the shortest sensible run is none; then the bed is left alone
///           until the next chance, also where the longest run left something over. Where the morning
///           planned nothing, the account decides alone. The reason is that of the bed as it is now.
///           Where cans are carried, a rest of half a can or less is none either.
/// Input     planned  the bed as the morning saw it; now  the same with what was run since; can_l  what the
///           can holds, missing = none is carried
void ask_for_rest(const BedToday& planned, BedToday& now, double can_l = missing);

/// The minute of the day at which the last run ended that the journal has for it; 0 where there was none.
/// Litres poured by hand are no run here: their minutes would be invented, and they hold no tap.
std::chrono::minutes last_run_end(const Garden& garden, const Journal& journal,
                                  std::chrono::year_month_day date);

/// The journal as it stood before a bed was watered on that day.
Journal before_water_of(Journal journal, const std::string& bed, std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
