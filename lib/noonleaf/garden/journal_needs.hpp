#pragma once

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/garden/line_problems.hpp"

namespace noonleaf {
inline namespace v1 {

/// What an event cannot be without, and what it must not have: a problem of the line for each.
/// Input     garden  whose sprinklers tell a depth by their flow; null = that is not checked
void check_needs(const JournalEntry& entry, const Garden* garden, LineProblems& problems);

}  // namespace v1
}  // namespace noonleaf
