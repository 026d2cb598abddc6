#include "noonleaf/plan/round.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>
#include <tuple>
#include <utility>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/plan/bed_likelihood.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/plan/limit_of_day.hpp"
#include "noonleaf/plan/required_weather.hpp"
#include "noonleaf/plan/run_slots.hpp"
#include "noonleaf/plan/today.hpp"
#include "noonleaf/plan/water_account.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/plan/week_setup.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr std::size_t week_d = 7;
constexpr std::chrono::minutes usual_run{30}, shortest_run{5};  // to ask when somebody could water

/// One planting on the morning.
struct Standing {
  bool grows = false, seedbed = false;
  double depletion_mm = 0, limit_mm = 1;
  std::optional<std::size_t> beyond_on{};  ///< days from the morning
};

Standing standing_of(const BedPlanting& planting, const PlantingAccount& account) {
  Standing standing;
  const auto needs = needs_ahead(planting, account);
  const BalanceDetail& morning = account.dry_ahead.days.front();
  if (needs.front() == PlantingNeed::nothing || morning.ground != GroundState::open) return standing;
  standing.grows = true;
  standing.seedbed = needs.front() == PlantingNeed::seed_zone;
  standing.depletion_mm = standing.seedbed ? morning.de_wet_mm : morning.dr_wet_mm;
  standing.limit_mm = limit_mm(morning, standing.seedbed);
  for (std::size_t day = 0; day < account.dry_ahead.days.size() && !standing.beyond_on; ++day) {
    const BalanceDetail& here = account.dry_ahead.days[day];
    const bool seeds = needs[day] == PlantingNeed::seed_zone;
    if (needs[day] != PlantingNeed::nothing && is_beyond_limit(here, seeds)) standing.beyond_on = day;
  }
  return standing;
}

/// The next two times that somebody could water a bed, in days from the morning; a week = not within it.
struct Chances {
  std::size_t first_d, second_d;
};

RoundNeed need_of(const Standing& standing, const Chances& chances) {
  if (!standing.beyond_on) return RoundNeed::lasts;
  if (*standing.beyond_on < chances.first_d) return RoundNeed::person_needed;
  return chances.first_d == 0 && *standing.beyond_on < chances.second_d ? RoundNeed::run_today
                                                                        : RoundNeed::lasts;
}

Chances chances_of(const Garden& garden, const Bed& bed, year_month_day date) {
  const auto in_days = [&](year_month_day after) {
    const auto chance = next_chance(garden, after, {bed.sprinkler, usual_run, shortest_run});
    return chance ? static_cast<std::size_t>((sys_days(*chance) - sys_days(date)).count()) : week_d;
  };
  const std::size_t first_d = in_days(year_month_day{sys_days(date) - days(1)});
  return {first_d, first_d == 0 ? in_days(date) : week_d};
}

/// The days from the morning on which a bed has to last: up to its next chance, or where one is today up to
/// the one after it.
std::size_t days_to_last(const Chances& chances) {
  return chances.first_d == 0 ? chances.second_d : chances.first_d;
}

RoundBed round_bed(const Bed& bed, const std::string& letter, const BedLikelihood& tried, year_month_day date,
                   std::size_t lasting_d) {
  RoundBed result{.bed = bed.id, .letter = letter};
  if (lasting_d < week_d) result.before = year_month_day{sys_days(date) + days(static_cast<int>(lasting_d))};
  for (const PlantingLikelihood& planting : tried.plantings) {
    const double share = planting.days[lasting_d - 1].left_frac;
    result.leaves_range_frac = std::fmax(result.leaves_range_frac, share);  // fmax drops NaN
  }
  return result;
}

/// What one planting of a bed makes of the garden's entry.
RoundEntry entry_of(const RoundEntry& garden, const Bed& bed, const BedPlanting& planting,
                    const Standing& standing, const Chances& chances, year_month_day date) {
  const std::size_t chance_d = chances.first_d;
  const auto in_days = [&](std::size_t ahead) {
    return year_month_day{sys_days(date) + days(static_cast<int>(ahead))};
  };
  RoundEntry entry = garden;
  entry.need = need_of(standing, chances);
  entry.bed = bed.id;
  entry.crop = find_crop(planting.crop).name_en;
  entry.seedbed = standing.seedbed;
  entry.depletion_mm = standing.depletion_mm;
  entry.limit_mm = standing.limit_mm;
  if (chance_d < week_d) entry.next_chance = in_days(chance_d);
  if (!standing.beyond_on) return entry;
  entry.beyond_on = in_days(*standing.beyond_on);
  if (*standing.beyond_on < chance_d) entry.dry_days = static_cast<int>(chance_d - *standing.beyond_on);
  return entry;
}

/// One bed on the morning: its planting that is worst off, and what would fill it if it cannot wait.
struct BedStanding {
  std::optional<RoundEntry> entry{};  ///< nothing = nothing grows
  double deepest_mm = 0;
};

BedStanding bed_standing(const RoundEntry& garden, const Bed& bed, const Chances& chances,
                         std::span<const PlantingAccount> accounts, year_month_day date) {
  BedStanding result;
  for (const PlantingAccount& account : accounts) {
    const BedPlanting& planting = bed.plantings[account.planting];
    const Standing standing = standing_of(planting, account);
    if (!standing.grows) continue;
    RoundEntry entry = entry_of(garden, bed, planting, standing, chances, date);
    if (entry.need <= RoundNeed::run_today)
      result.deepest_mm = std::max(result.deepest_mm, standing.depletion_mm);
    if (!result.entry || goes_before(entry, *result.entry)) result.entry = std::move(entry);
  }
  return result;
}

bool was_watered_on(const Journal& journal, const Bed& bed, year_month_day date) {
  return std::any_of(journal.begin(), journal.end(), [&](const JournalEntry& entry) {
    return entry.event == JournalEvent::water && entry.bed == bed.id && entry.date == date &&
           (entry.minutes > 0 || entry.litres > 0);
  });
}

/// A bed that has been watered on the day: no more is asked of it than `today` does.
void leave_if_done(const Today& today, std::size_t index, BedStanding& bed) {
  const BedToday& by_today = today.beds[index];
  if (by_today.driver || by_today.reason != BedReason::lasts) return;
  bed.entry->need = RoundNeed::lasts;
  bed.entry->done_today = true;
  bed.deepest_mm = 0;
}

}  // namespace

bool goes_before(const RoundEntry& a, const RoundEntry& b) {
  const auto key = [](const RoundEntry& entry) {
    const year_month_day never{std::chrono::year(9999), std::chrono::January, std::chrono::day(1)};
    const double share = is_known(entry.limit_mm) ? entry.depletion_mm / entry.limit_mm : 0;
    return std::tuple(entry.need, -entry.dry_days, entry.beyond_on.value_or(never), -share);
  };
  return key(a) < key(b);
}

const RoundBed* worst_of_round(const RoundEntry& entry) {
  const auto found = std::find_if(entry.likelihoods.begin(), entry.likelihoods.end(),
                                  [&](const RoundBed& bed) { return bed.letter == entry.letter; });
  const bool tried = found != entry.likelihoods.end() && is_known(found->leaves_range_frac);
  return tried ? &*found : nullptr;
}

RoundEntry round_entry(const Garden& garden, const Journal& journal, const Sky& sky, year_month_day date,
                       const MemberOptions& options) {
  require_weather(sky, date);
  RoundEntry bare;
  bare.garden = garden.site.name;
  bare.beds = garden.beds.size();
  RoundEntry worst = bare;
  std::size_t beyond = 0;
  double litres = 0;
  std::vector<RoundBed> likelihoods;
  std::optional<MemberSky> members;  // once for all beds
  std::optional<Today> today;        // likewise, and only where somebody watered
  const auto letters = bed_letters(garden);
  for (std::size_t index = 0; index < garden.beds.size(); ++index) {
    const Bed& bed = garden.beds[index];
    const Chances chances = chances_of(garden, bed, date);
    const auto accounts = accounts_of_bed(garden, index, journal, sky, date, week_d + 1);
    bare.letter = letters[index];
    BedStanding here = bed_standing(bare, bed, chances, accounts, date);
    if (!here.entry) continue;
    if (here.entry->need == RoundNeed::run_today && was_watered_on(journal, bed, date)) {
      if (!today)
        today = plan_today(garden, journal, sky, {.date = date, .wilt = TodayQuestion::Wilt::left_out});
      leave_if_done(*today, index, here);
    }
    if (here.entry->beyond_on && *here.entry->beyond_on == date) ++beyond;
    litres += here.deepest_mm * bed.area_m2;
    if (worst.bed.empty() || goes_before(*here.entry, worst)) worst = *here.entry;
    if (options.members == 0) continue;
    if (!members) members = member_sky(garden.site, sky, date, week_d + 1, options);
    const auto tried = bed_likelihood(garden, index, journal, sky, {*members, accounts}, options,
                                      LikelihoodScope::balance_alone);
    likelihoods.push_back(round_bed(bed, letters[index], tried, date, days_to_last(chances)));
  }
  worst.beds_beyond = beyond;
  worst.litres = litres;
  worst.members = likelihoods.empty() ? 0 : options.members;
  worst.likelihoods = std::move(likelihoods);
  return worst;
}

}  // namespace v1
}  // namespace noonleaf
