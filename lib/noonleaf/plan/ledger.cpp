#include "noonleaf/plan/ledger.hpp"

#include <algorithm>
#include <map>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/plan/bed_water.hpp"
#include "noonleaf/plan/water_account.hpp"
#include "noonleaf/plan/watering.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month;
using std::chrono::year_month_day;

year_month month_of(year_month_day date) { return date.year() / date.month(); }

void add_sum(double& sum, double part) { sum = is_missing(sum) ? part : sum + part; }

void add_run(LedgerLine& line, const Garden& garden, const Bed& bed, const JournalEntry& entry) {
  const ApplicationRate& rate = garden.sprinklers[bed.sprinkler].rate;
  const Watering run = watering_of(garden, bed, entry);
  if (!(run.mean_mm > 0)) return;  // written down as not run
  const double in_bed_l = run.mean_mm * bed.area_m2;
  ++line.runs;
  line.minutes += run.minutes;
  line.depth_mm += run.mean_mm;
  line.in_bed_l += in_bed_l;
  line.from_tap_l += run.from_tap_l;
  line.beside_bed_l += is_known(run.from_tap_l) ? std::max(0.0, run.from_tap_l - in_bed_l) : missing;
  if (rate.off_target_frac > 0)
    add_sum(line.paving_l, run.from_tap_l * (1 - rate.spray_loss_frac) * rate.off_target_frac);
  if (rate.du_lq_frac < ledger_good_du) {
    const double longer =
        run_time_multiplier(rate.du_lq_frac).value / run_time_multiplier(ledger_good_du).value;
    line.uneven_l += (is_known(run.from_tap_l) ? run.from_tap_l : in_bed_l) * (1 - 1 / longer);
  }
}

/// Depth that left the ground of a bed below, by day; empty where nothing grows or no weather tells.
std::map<sys_days, double> drained_by_day(const Garden& garden, std::size_t bed, const Journal& journal,
                                          const Sky& sky, sys_days to) {
  std::map<sys_days, double> drained;
  if (sky.empty() || to < sky.first()) return drained;
  for (const PlantingAccount& account :
       accounts_of_bed(garden, bed, journal, sky, std::min(to, sky.last()))) {
    const double share = garden.beds[bed].plantings[account.planting].share_frac;
    for (const BalanceDetail& day : account.past.days) drained[day.date] += share * day.drainage_mm;
    const BalanceDetail& last = account.dry_ahead.days.front();
    drained[last.date] += share * last.drainage_mm;
  }
  return drained;
}

/// The journal as if nobody had watered.
Journal without_water(Journal journal) {
  std::erase_if(journal, [](const JournalEntry& entry) { return entry.event == JournalEvent::water; });
  return journal;
}

std::vector<LedgerLine> lines_of_bed(const Garden& garden, std::size_t bed, const Journal& journal,
                                     const Sky& sky, year_month_day from, year_month_day to) {
  std::vector<LedgerLine> lines;
  const auto drained = drained_by_day(garden, bed, journal, sky, to);
  const auto by_rain = drained_by_day(garden, bed, without_water(journal), sky, to);
  const BedWaterByDay water(garden, bed, journal);
  for (sys_days date = from; date <= sys_days(to); date += days(1)) {
    const year_month month = month_of(date);
    if (lines.empty() || lines.back().month != month) lines.push_back({.bed = bed, .month = month});
    LedgerLine& line = lines.back();
    ++line.days;
    const SkyDay* const day = sky.find(date);
    const bool in_a_gap = day == nullptr || day->origin == DayOrigin::none;
    if (in_a_gap) ++line.days_without_weather;
    // The journal's gauge may know the rain of a day that no weather file has.
    const double rain_mm = day == nullptr ? missing : water.on(*day).rain_mm;
    if (is_known(rain_mm) && (!in_a_gap || rain_mm > 0)) add_sum(line.rain_mm, rain_mm);
    const auto left = drained.find(date);
    if (left == drained.end() || is_missing(left->second)) {
      ++line.days_without_account;
      continue;
    }
    add_sum(line.drained_mm, left->second);
    const double rain_alone_mm = by_rain.at(date);
    if (is_known(rain_alone_mm)) add_sum(line.drained_by_watering_mm, left->second - rain_alone_mm);
  }
  for (const JournalEntry& entry : journal) {
    const bool counts = entry.event == JournalEvent::water && entry.bed == garden.beds[bed].id;
    if (!counts || entry.date < from || entry.date > to) continue;
    const auto line = std::find_if(lines.begin(), lines.end(), [&](const LedgerLine& each) {
      return each.month == month_of(entry.date);
    });
    add_run(*line, garden, garden.beds[bed], entry);
  }
  return lines;
}

}  // namespace

double billed_l(const LedgerLine& line) {
  return is_known(line.from_tap_l) ? line.from_tap_l : line.in_bed_l;
}

LedgerLine sum_of(const std::vector<LedgerLine>& lines) {
  LedgerLine sum;
  for (const LedgerLine& line : lines) {
    sum.bed = line.bed;
    sum.month = line.month;
    sum.runs += line.runs;
    sum.minutes += line.minutes;
    sum.depth_mm += line.depth_mm;
    sum.in_bed_l += line.in_bed_l;
    sum.from_tap_l += line.from_tap_l;
    sum.beside_bed_l += line.beside_bed_l;
    sum.uneven_l += line.uneven_l;
    if (is_known(line.rain_mm)) add_sum(sum.rain_mm, line.rain_mm);
    if (is_known(line.drained_mm)) add_sum(sum.drained_mm, line.drained_mm);
    if (is_known(line.drained_by_watering_mm))
      add_sum(sum.drained_by_watering_mm, line.drained_by_watering_mm);
    if (is_known(line.paving_l)) add_sum(sum.paving_l, line.paving_l);
    sum.days += line.days;
    sum.days_without_weather += line.days_without_weather;
    sum.days_without_account += line.days_without_account;
  }
  return sum;
}

Ledger water_ledger(const Garden& garden, const Journal& journal, const Sky& sky, year_month_day from,
                    year_month_day to) {
  if (to < from) {
    Problem problem;
    problem.field = "from";
    problem.text = iso_date(from);
    problem.message = "the period begins on " + problem.text + " and ends before, on " + iso_date(to);
    problem.fix = "give the earlier day to --from";
    throw Error(std::move(problem));
  }
  Ledger ledger{.from = from, .to = to};
  ledger.billed_l = 0;
  for (std::size_t bed = 0; bed < garden.beds.size(); ++bed) {
    for (const LedgerLine& line : lines_of_bed(garden, bed, journal, sky, from, to)) {
      ledger.billed_l += billed_l(line);
      ledger.volume_is_least = ledger.volume_is_least || is_missing(line.from_tap_l);
      ledger.lines.push_back(line);
    }
  }
  ledger.cost = ledger.billed_l / 1000 * garden.water.price_per_m3;
  return ledger;
}

}  // namespace v1
}  // namespace noonleaf
