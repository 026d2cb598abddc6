#include "noonleaf/plan/unlogged_runs.hpp"

#include <algorithm>

#include "noonleaf/plan/today.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

bool is_spoken_of(const Journal& journal, const std::string& bed, year_month_day date) {
  return std::any_of(journal.begin(), journal.end(), [&](const JournalEntry& entry) {
    return entry.event == JournalEvent::water && entry.bed == bed && entry.date == date;
  });
}

/// The last day before `date` on which somebody looked into the soil of the bed.
sys_days last_look(const Journal& journal, const std::string& bed, sys_days date) {
  sys_days last{};
  for (const JournalEntry& entry : journal) {
    const bool look =
        (entry.event == JournalEvent::feel || entry.event == JournalEvent::probe) && entry.bed == bed;
    if (look && sys_days(entry.date) <= date) last = std::max(last, sys_days(entry.date));
  }
  return last;
}

}  // namespace

UnloggedRuns unlogged_runs(const Garden& garden, const Journal& journal, const Sky& sky,
                           year_month_day date) {
  UnloggedRuns result{.if_done = journal};
  std::vector<sys_days> looked;
  for (const Bed& bed : garden.beds) looked.push_back(last_look(journal, bed.id, date));
  const sys_days first = std::max(account_start(sky, date), sys_days(date) - days(doubted_days));
  for (sys_days day = first; day < sys_days(date); day += days(1)) {
    std::vector<JournalEntry> assumed;
    for (const AskedRun& run : runs_asked_for(garden, result.if_done, sky, day)) {
      const std::string& bed = garden.beds[run.bed].id;
      if (day <= looked[run.bed] || is_spoken_of(journal, bed, day)) continue;
      result.runs.push_back({run.bed, day, run.minutes});
      assumed.push_back({.date = day,
                         .time_of_day = run.begin,
                         .event = JournalEvent::water,
                         .bed = bed,
                         .minutes = run.minutes});
    }
    // Only now: the runs of one day are asked for together, on the state of its morning.
    result.if_done.insert(result.if_done.end(), assumed.begin(), assumed.end());
  }
  return result;
}

}  // namespace v1
}  // namespace noonleaf
