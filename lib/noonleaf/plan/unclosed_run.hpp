#pragma once

#include "noonleaf/plan/week.hpp"

namespace noonleaf {
inline namespace v1 {

/// What it costs if nobody closes `run`; its date, cycles, depths and bed must be filled in.
UnclosedRun unclosed_cost(const Garden& garden, const WeekRun& run);

/// Another person than the closer, on site when the run has to be closed; else the next to come that day.
std::optional<std::size_t> backup_for(const Garden& garden, const WeekRun& run);

}  // namespace v1
}  // namespace noonleaf
