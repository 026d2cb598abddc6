#pragma once

#include <span>

#include "noonleaf/plan/today.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Where runs are neither known as done nor as not done: the run that is right in both cases.
///
/// Rule      Thirst is judged without the unlogged runs, the depth by the depletion that is left if they
///           were done: so no plant waits for a word, and no bed is watered twice. Where less than 1 mm
///           fits in then, the bed is opened only after a look into the soil (BedReason::look_first).
/// Input     if_done  the bed as it is if all of them were run; open  those of this bed; bed  as it is if
///           none was
/// Result    bed.open_question, unless the two differ by less than 2 mm: then nothing is asked
void take_smaller_run(const Garden& garden, const BedToday& if_done, std::span<const UnloggedRun> open,
                      BedToday& bed);

}  // namespace v1
}  // namespace noonleaf
