#pragma once

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/plan/member_sky.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How much a garden needs a person, the most pressing first.
enum class RoundNeed {
  cannot_tell,    ///< its files are wrong, or hold no weather of the day: somebody has to look at them
  person_needed,  ///< a bed is dry, or will be, before anybody can water there
  run_today,      ///< a bed has to be watered today, and somebody is there for it
  lasts,          ///< every bed lasts to the next chance, or has had what `today` asks of it
  nothing_grows   ///< no bed asks for anything
};

/// Members of one garden in a round of many: a share of them is right to 5 of 100, one standard deviation.
inline constexpr std::size_t round_members = 100;

/// How likely a bed is to leave its range before somebody can water it.
struct RoundBed {
  std::string bed{};                                    ///< its id
  std::string letter{};                                 ///< on the sheet
  std::optional<std::chrono::year_month_day> before{};  ///< day of that chance; of the next one, where one is
                                                        ///< today; nothing = none within a week
  double leaves_range_frac =
      missing;  ///< share of members with Dr beyond RAW at the close of some day before
                ///< it, of the planting that is worst off; missing = not tried (seed)
};

/// One garden in a round of many.
struct RoundEntry {
  RoundNeed need = RoundNeed::nothing_grows;               ///< how much it needs a person
  std::string garden{};                                    ///< its name
  std::string bed{};                                       ///< id of the bed that is worst off
  std::string letter{};                                    ///< of that bed, on the sheet
  std::string crop{};                                      ///< what grows there
  bool seedbed = false;                                    ///< that bed is sown and not up
  double depletion_mm = missing;                           ///< of that bed this morning: Dr; of a seedbed De
  double limit_mm = missing;                               ///< of that bed: RAW; of a seedbed REW
  std::size_t beds = 0;                                    ///< in all
  std::size_t beds_beyond = 0;                             ///< beyond their limit by the day's close
  std::optional<std::chrono::year_month_day> beyond_on{};  ///< first day that ends beyond the limit
  std::optional<std::chrono::year_month_day> next_chance{};  ///< first day, this one included, on which
                                                             ///< somebody could water that bed; within a week
  int dry_days = 0;                     ///< days beyond the limit before that chance, a week at most
  double litres = 0;                    ///< to fill the beds that cannot wait
  std::size_t members = 0;              ///< that were tried; 0 = none
  std::vector<RoundBed> likelihoods{};  ///< of the beds in which something grows, as in the garden file
  std::string problem{};                ///< for cannot_tell
  bool done_today = false;  ///< for lasts: that bed has had today's run, and today asks for no more
};

/// How a garden stands on one morning: every planting's account, without water and rain, against its limit
/// and the next time that somebody can water.
///
/// Rule      A bed that was watered on that day is asked for no more than plan_today asks of it.
/// Note      The likelihoods are of the balance alone (likelihood.hpp), without water, but with the rain that
///           may come. They do not change the need or the order.
/// Throws    Error as accounts_of_bed; field "date" when the weather does not reach the day
RoundEntry round_entry(const Garden& garden, const Journal& journal, const Sky& sky,
                       std::chrono::year_month_day date,
                       const MemberOptions& options = {.members = round_members});

/// The likelihood of the bed that is worst off; nothing where none was tried.
const RoundBed* worst_of_round(const RoundEntry& entry);

/// Whether a person should go to `a` before `b`: by need, by the days that a bed would be dry, by the day on
/// which it begins.
bool goes_before(const RoundEntry& a, const RoundEntry& b);

}  // namespace v1
}  // namespace noonleaf
