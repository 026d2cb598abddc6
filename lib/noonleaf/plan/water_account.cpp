#include "noonleaf/plan/water_account.hpp"

#include <algorithm>
#include <span>
#include <utility>

#include "noonleaf/balance/ground_state.hpp"
#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/journal_of_bed.hpp"
#include "noonleaf/plan/bed_sky.hpp"
#include "noonleaf/plan/bed_water.hpp"
#include "noonleaf/plan/checked_account.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/plan/ground_history.hpp"
#include "noonleaf/plan/low_quarter.hpp"
#include "noonleaf/plan/salt.hpp"
#include "noonleaf/plan/seedbed.hpp"
#include "noonleaf/plan/wetting_pattern.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

constexpr double profile_below_roots_m = 0.5;  // lower layer that takes and gives water as roots grow
constexpr double deepest_profile_m = 3.0;
constexpr int days_of_habit = 3;  // behind the end of the weather, the mean of as many days goes on

void refuse_gap(const SkyDay& day) {
  Problem problem;
  problem.field = "date";
  problem.message =
      "the weather of " + iso_date(day.weather.date) + " has no temperature, nor has any day near it";
  problem.fix = "add a file with these days to the weather folder, of a station nearby if need be";
  throw Error(std::move(problem));
}

/// The days of an account in a row, with the state of the ground carried from one to the next.
class DayMaker {
 public:
  DayMaker(const Garden& garden, std::size_t bed, const Journal& journal)
      : garden_(garden),
        bed_(bed),
        water_(garden, bed, journal),
        mulches_(entries_of_bed(garden.beds[bed].id, journal, JournalEvent::mulch)),
        wetted_frac_(settings_of_bed(garden, garden.beds[bed]).irrigated_frac),
        soil_(std::make_shared<const SoilWater>(soil_of_bed(garden.beds[bed]))),
        amendments_(amendments_of_bed(garden.beds[bed], journal)) {}

  /// A day that has come: with the water that it brought.
  BalanceDay watered(const SkyDay& day) {
    const BedWater water = water_.on(day);
    BalanceDay result = dry(day);
    result.rain_mm = water.rain_mm;
    result.irrigation_mm = water.irrigation_mm;
    result.evening_irrigation_mm = water.evening_irrigation_mm;
    return result;
  }

  /// A day to come: no water.
  BalanceDay dry(const SkyDay& day) {
    ground_ = ground_state(ground_, day.weather.t_max_c, day.weather.t_min_c, day.weather.rain_mm);
    BalanceDay result;
    result.date = day.weather.date;
    // Below zero under a clear low sun (FAO-56 eq. 6: dew); it brings the bed no water that counts (ours).
    result.et0_mm_d = day.et0_mm_d < 0 ? 0 : day.et0_mm_d;
    if (is_known(day.estimate.u2_m_s)) result.u2_m_s = day.estimate.u2_m_s;
    if (is_known(day.estimate.rh_min_pct)) result.rh_min_pct = day.estimate.rh_min_pct;
    result.irrigation_fw = wetted_frac_;
    result.evaporation_factor = mulch_factor_on(garden_.beds[bed_], mulches_, sys_days(day.weather.date));
    put_soil(result);
    result.ground = ground_;
    return result;
  }

 private:
  /// The soil of the day; on the day of digging what it was before, but on the account's first day.
  void put_soil(BalanceDay& day) {
    if (amendments_.empty()) return;
    std::shared_ptr<const SoilWater> before = soil_;
    day.soil = soil_;
    for (const DatedSoil& each : amendments_) {
      if (each.from > sys_days(day.date)) break;
      if (each.from < sys_days(day.date)) before = each.soil;
      day.soil = each.soil;
    }
    if (!is_first_ && before != day.soil) day.soil_before = before;
    is_first_ = false;
  }

  const Garden& garden_;
  std::size_t bed_;
  BedWaterByDay water_;
  Journal mulches_;
  double wetted_frac_;
  std::shared_ptr<const SoilWater> soil_;
  std::vector<DatedSoil> amendments_;
  bool is_first_ = true;
  GroundState ground_ = GroundState::open;
};

double habit_mm_d(const Sky& sky, std::size_t end) {
  double sum = 0;
  int count = 0;
  for (std::size_t index = end; index > 0 && count < days_of_habit; --index) {
    if (sky.days[index - 1].et0_from == Et0From::none) continue;
    sum += sky.days[index - 1].et0_mm_d;
    ++count;
  }
  return sum / count;
}

/// The sky from `first` on: its own days, and behind its end or in a gap days by habit.
std::vector<SkyDay> sky_ahead(const Sky& sky, std::size_t first, std::size_t n_days) {
  std::vector<SkyDay> ahead;
  for (std::size_t index = first; index < first + n_days; ++index) {
    const bool known = index < sky.days.size() && sky.days[index].et0_from != Et0From::none;
    if (known) {
      ahead.push_back(sky.days[index]);
      continue;
    }
    SkyDay day;
    day.weather.date = sky.first() + days(static_cast<int>(index));
    day.et0_mm_d = habit_mm_d(sky, std::min(index, sky.days.size()));
    ahead.push_back(day);
  }
  return ahead;
}

double profile_depth_m(const std::vector<GrowthDay>& growth) {
  double deepest = 0;
  for (const GrowthDay& day : growth) deepest = std::max(deepest, day.root_depth_m);
  return std::min(deepest + profile_below_roots_m, std::max(deepest, deepest_profile_m));
}

/// The feel and probe entries of a planting within the known days, oldest first.
std::vector<JournalEntry> checks_of(const Journal& journal, const Bed& bed, const BedPlanting& planting,
                                    sys_days first, std::size_t days_known) {
  std::vector<JournalEntry> checks;
  for (const JournalEntry& entry : journal) {
    const bool is_check = entry.event == JournalEvent::feel || entry.event == JournalEvent::probe;
    const bool here = entry.bed == bed.id && (entry.crop.empty() || entry.crop == planting.crop);
    const sys_days date(entry.date);
    const bool known =
        date >= first && date < first + days(static_cast<int>(days_known)) && grows_on(planting, date);
    if (is_check && here && known) checks.push_back(entry);
  }
  std::stable_sort(checks.begin(), checks.end(), [](const JournalEntry& a, const JournalEntry& b) {
    return std::pair(a.date, a.time_of_day) < std::pair(b.date, b.time_of_day);
  });
  return checks;
}

std::vector<BalanceDay> joined(std::vector<BalanceDay> past, const std::vector<BalanceDay>& ahead) {
  past.insert(past.end(), ahead.begin(), ahead.end());
  return past;
}

/// What the driest quarter has in place of the whole bed.
struct LowQuarter {
  std::size_t past_days;
  double water_frac;
  std::span<const AccountMove> moves;
};

void add_low_quarter(PlantingAccount& account, const CheckedGround& ground, std::vector<BalanceDay> watered,
                     const LowQuarter& quarter) {
  for (BalanceDay& day : watered) {
    day.irrigation_mm *= quarter.water_frac;
    day.evening_irrigation_mm *= quarter.water_frac;
  }
  BalanceRun whole =
      low_quarter_run({ground.start, watered, ground.growth, ground.soil, ground.settings}, quarter.moves);
  const auto morning = whole.days.begin() + static_cast<std::ptrdiff_t>(quarter.past_days);
  account.low_past.days.assign(whole.days.begin(), morning);
  account.low_ahead.days.assign(morning, whole.days.end());
}

/// Which planting, from which morning, how far ahead.
struct AccountPlace {
  std::size_t bed, planting;
  sys_days morning;
  std::size_t look_ahead_d;
};

PlantingAccount account_of(const Garden& garden, const Journal& journal, const Sky& sky,
                           const AccountPlace& place) {
  const Bed& bed = garden.beds[place.bed];
  const sys_days morning = place.morning;
  PlantingAccount account;
  account.planting = place.planting;
  account.soil = soil_of_bed_on(bed, journal, morning);
  account.salt = salt_of_planting(garden, bed, find_crop(bed.plantings[place.planting].crop));
  account.seed_up = seed_up_day(bed.plantings[place.planting], sky);
  account.settings = settings_of_bed(garden, bed);
  account.settings.salt_stress = account.salt.stress;
  const sys_days start = account_start_of_bed(bed, sky, morning);
  const SoilWater start_soil = soil_of_bed_on(bed, journal, start);
  const auto past_days = static_cast<std::size_t>((morning - start).count());
  const auto growth =
      growth_on_ground(bed, planting_in_account(garden, place.bed, place.planting, journal, sky), sky,
                       garden.site.location.latitude_deg, start, past_days + place.look_ahead_d);
  const std::span<const GrowthDay> all_growth(growth);
  DayMaker maker(garden, place.bed, journal);
  std::vector<BalanceDay> past;
  std::vector<BalanceDay>& ahead = account.days_to_come;
  for (std::size_t index = 0; index < past_days; ++index) {
    past.push_back(maker.watered(*sky.find(start + days(static_cast<int>(index)))));
  }
  for (const SkyDay& day :
       sky_ahead(sky, static_cast<std::size_t>((morning - sky.first()).count()), place.look_ahead_d)) {
    ahead.push_back(ahead.empty() ? maker.watered(day) : maker.dry(day));
  }
  const bool start_known = bed.known_wet && start == sys_days(*bed.known_wet);
  const double depleted_frac = start_known || garden.account.start == SoilAtStart::full ? 0.0 : 0.5;
  const auto start_from = [&](double frac) {
    return initial_state(start_soil, growth.front().root_depth_m, profile_depth_m(growth), frac);
  };
  const BalanceState full = start_from(depleted_frac);
  std::vector<BalanceDay> known = past;
  known.push_back(ahead.front());
  const CheckedGround checked_ground{full, known, all_growth.first(known.size()), start_soil,
                                     account.settings};
  const CheckedAccount checked = checked_account(
      checked_ground, checks_of(journal, bed, bed.plantings[place.planting], start, known.size()),
      entries_of_bed(bed.id, journal, JournalEvent::water));
  account.soil_checks = checked.checks;
  const auto run_past = [&](const BalanceState& from) {
    return run_balance(from, past, all_growth.first(past_days), start_soil, account.settings,
                       checked.corrections);
  };
  account.past = run_past(full);
  account.dawn = account.past.days.empty() ? full : account.past.days.back().end;
  account.growth_to_come.assign(growth.begin() + static_cast<std::ptrdiff_t>(past_days), growth.end());
  account.dry_ahead = run_balance(account.dawn, ahead, account.growth_to_come, start_soil, account.settings,
                                  checked.corrections);
  if (!start_known) {
    const BalanceState dry = start_from(1.0);
    const BalanceRun from_dry = run_past(dry);
    const BalanceState& dawn = from_dry.days.empty() ? dry : from_dry.days.back().end;
    account.start_doubt_mm = std::max(0.0, dawn.dr_mm - account.dawn.dr_mm);
  }
  add_low_quarter(account, {full, {}, growth, start_soil, account.settings}, joined(past, ahead),
                  {past_days, garden.sprinklers[bed.sprinkler].rate.du_lq_frac, checked.moves});
  return account;
}

}  // namespace

sys_days account_start(const Sky& sky, std::chrono::year_month_day date) {
  sys_days start = sky.first();
  for (const SkyDay& day : sky.days) {
    const sys_days when(day.weather.date);
    if (when < sys_days(date) && day.et0_from == Et0From::none) start = when + days(1);
  }
  return start;
}

sys_days account_start_of_bed(const Bed& bed, const Sky& sky, std::chrono::year_month_day date) {
  const sys_days start = account_start(sky, date);
  const bool later =
      bed.known_wet && sys_days(*bed.known_wet) > start && sys_days(*bed.known_wet) <= sys_days(date);
  return later ? sys_days(*bed.known_wet) : start;
}

std::vector<PlantingAccount> accounts_of_bed(const Garden& garden, std::size_t bed, const Journal& journal,
                                             const Sky& open_sky, std::chrono::year_month_day date,
                                             std::size_t look_ahead_d) {
  const sys_days morning(date);
  const Sky sky = sky_over_bed(garden.site, garden.beds[bed], open_sky);
  if (sky.find(morning)->et0_from == Et0From::none) refuse_gap(*sky.find(morning));
  std::vector<PlantingAccount> accounts;
  const auto& plantings = garden.beds[bed].plantings;
  const Journal of_bed = journal_of_bed(garden.beds[bed].id, journal);
  for (std::size_t index = 0; index < plantings.size(); ++index) {
    if (!grows_on(plantings[index], morning)) continue;
    accounts.push_back(account_of(garden, of_bed, sky, {bed, index, morning, look_ahead_d}));
  }
  return accounts;
}

}  // namespace v1
}  // namespace noonleaf
