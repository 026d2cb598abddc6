#pragma once

#include <chrono>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A run that a day asked for, and of which the journal says neither that it was run nor that it was not.
struct UnloggedRun {
  std::size_t bed = 0;                 ///< index into Garden::beds
  std::chrono::year_month_day date{};  ///< on which it was asked for
  double minutes = missing;            ///< that were asked for
};

/// What may have been run, and the journal as it would be if all of it had.
struct UnloggedRuns {
  std::vector<UnloggedRun> runs{};  ///< oldest first
  Journal if_done{};                ///< the journal with all of them run as asked
};

/// How far back a run without a word is doubted. Ours: two weekly sheets. Older ones the account takes as
/// not run.
inline constexpr int doubted_days = 14;

/// The runs of the days before `date` that nobody wrote down.
///
/// Method    The days are gone through one by one: each is asked for its runs (runs_asked_for) as if all runs
///           of the days before had been done, since that is what the sheet of that day would have said to
///           somebody who trusted it. A run of a bed for which the journal has no `water` entry on that day
///           is unlogged. A `water` entry of any length speaks, also of 0 minutes: then it was not run. Begin
///           `doubted_days` back, or the day after the last look into the soil of that bed: it settles what
///           was before
UnloggedRuns unlogged_runs(const Garden& garden, const Journal& journal, const Sky& sky,
                           std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
