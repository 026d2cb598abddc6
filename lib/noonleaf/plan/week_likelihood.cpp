#include <algorithm>
#include <iterator>

#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/bed_water.hpp"
#include "noonleaf/plan/week.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::sys_days;

/// The journal as each bed's plan has it: with the runs that nobody wrote down where these are taken as done.
Journal journal_of_plan(const Garden& garden, const Journal& journal, const WeekPlan& plan) {
  const auto takes_as_done = [&](const JournalEntry& run) {
    return std::any_of(plan.beds.begin(), plan.beds.end(), [&](const WeekBed& bed) {
      return bed.open_question && garden.beds[bed.bed].id == run.bed;
    });
  };
  Journal result = journal;
  // They stand behind the journal's own lines.
  const Journal& if_done = plan.unlogged.if_done;
  const auto own = static_cast<std::ptrdiff_t>(std::min(journal.size(), if_done.size()));
  std::copy_if(if_done.begin() + own, if_done.end(), std::back_inserter(result), takes_as_done);
  return result;
}

}  // namespace

Likelihood likelihood_of_week(const Garden& garden, const Journal& journal, const Sky& sky,
                              const WeekPlan& plan, const MemberOptions& options) {
  LikelihoodQuestion question{.date = plan.first, .options = options};
  question.n_days = static_cast<std::size_t>((sys_days(plan.last) - sys_days(plan.first)).count()) + 1;
  for (const WeekRun& run : plan.runs) {
    const auto day = static_cast<std::size_t>((sys_days(run.date) - sys_days(plan.first)).count());
    question.planned.push_back({run.bed, day, run.depth_mm, run.cycles.front().begin >= evening_begins});
  }
  return likelihood_of(garden, journal_of_plan(garden, journal, plan), sky, question);
}

}  // namespace v1
}  // namespace noonleaf
