// Compiled with -ffp-contract=off: the same answer on every processor.
#include "noonleaf/plan/likelihood.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/garden/zone.hpp"
#include "noonleaf/heat/wilt_members.hpp"
#include "noonleaf/plan/bed_likelihood.hpp"
#include "noonleaf/plan/bed_members.hpp"
#include "noonleaf/plan/bed_sky.hpp"
#include "noonleaf/plan/measure_next.hpp"
#include "noonleaf/plan/planting_wilt.hpp"
#include "noonleaf/plan/quantile.hpp"
#include "noonleaf/plan/seedbed.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

/// Whether a planting has leaves and an account that moves.
bool takes_part(const BedPlanting& planting, const PlantingAccount& account, sys_days morning) {
  const BalanceDetail& today = account.dry_ahead.days.front();
  return find_crop(planting.crop).basis != CropBasis::bare_soil && today.ground == GroundState::open &&
         today.growth.stage != Stage::over && morning >= account.seed_up && is_known(today.start.dr_mm);
}

/// ET0 over the bed as a share of that over the garden, by day; on days without weather the mean of the
/// others.
std::vector<double> bed_shares(const Garden& garden, std::size_t bed, const Sky& sky,
                               const MemberSky& members) {
  if (garden.beds[bed].sun_frac == 1) return std::vector<double>(members.days, 1.0);
  const Sky over_bed = sky_over_bed(garden.site, garden.beds[bed], sky);
  double open_mm = 0, bed_mm = 0;
  for (std::size_t i = 0; i < sky.days.size(); ++i) {
    if (sky.days[i].et0_from != Et0From::weather) continue;
    open_mm += sky.days[i].et0_mm_d;
    bed_mm += over_bed.days[i].et0_mm_d;
  }
  std::vector<double> out;
  for (std::size_t day = 0; day < members.days; ++day) {
    const sys_days when = members.first + days(static_cast<int>(day));
    const SkyDay* open = sky.find(when);
    const bool own = open != nullptr && open->et0_from == Et0From::weather && open->et0_mm_d > 0;
    out.push_back(own ? over_bed.find(when)->et0_mm_d / open->et0_mm_d : bed_mm / open_mm);
  }
  return out;
}

/// What the plantings of a bed have in common.
struct BedOfMembers {
  const Garden& garden;
  std::size_t bed;
  const Journal& journal;
  const MemberSky& sky;
  const BedDraws& draws;
  std::vector<double> share;    ///< bed_shares
  std::vector<double> rain;     ///< rain_to_come
  std::vector<double> planned;  ///< planned_by_day, mornings
  std::size_t count_from = 0;

  /// Numbers in a row of the traces: the members and the one without error.
  std::size_t row() const { return sky.members + 1; }
};

/// One trace of one planting on its way through the days.
struct Followed {
  const PlantingAccount* account;
  BedTrace which;
  PlantingMembersTrace trace;
  std::vector<DayLikelihood> days;
  std::vector<double> leaf_deficit, left, wilted, halved;  ///< by member; the last three 0 or 1
};

Followed followed(const PlantingInBed& in, BedTrace which) {
  const std::vector<double> none(in.sky.members, 0.0);
  return {&in.account, which, members_of_planting(in, which), {}, none, none, none, none};
}

std::span<const double> day_of(const std::vector<double>& column, const MemberSky& sky, std::size_t day) {
  return std::span(column).subspan(day * sky.members, sky.members);
}

double share_where(const std::vector<double>& values, double limit) {
  double count = 0, known = 0;
  for (const double value : values) {
    if (is_missing(value)) continue;
    ++known;
    count += value > limit ? 1 : 0;
  }
  return known > 0 ? count / known : missing;
}

/// Marks the members above a limit and those marked before; the share of all that are marked.
double mark(std::vector<double>& marked, const std::vector<double>& values, double limit) {
  for (std::size_t m = 0; m < values.size(); ++m)
    if (is_missing(values[m]))
      marked[m] = missing;
    else if (values[m] > limit && marked[m] == 0)
      marked[m] = 1;
  return share_where(marked, 0);
}

/// What each member's roots have on a day, after the water of its morning, and what the plant asks for.
struct MorningNumbers {
  std::vector<double> taw, raw, dr, demand;
};

MorningNumbers morning_numbers(const BedOfMembers& bed, const Followed& one, std::size_t day) {
  const BalanceDetail& detail = one.account->dry_ahead.days[day];
  const double zr = one.account->growth_to_come[day].root_depth_m;
  const double kc =
      is_missing(detail.kcb) ? detail.kc : detail.kcb;  // a plant factor, or the single coefficient
  const double watered = bed.planned[day] + (day == 0 ? one.account->days_to_come.front().irrigation_mm : 0);
  MorningNumbers out;
  for (std::size_t m = 0; m < bed.sky.members; ++m) {
    const double taw = bed.draws.available_mm_m[m] * zr;
    const double dawn = day == 0 ? one.trace.dr_dawn_mm[m] : one.trace.dr_mm[(day - 1) * bed.row() + m];
    const double evenness = one.which == BedTrace::low_quarter ? bed.draws.du_lq[m] : 1;
    const double fallen = bed.rain[day * bed.row() + m] + watered * bed.draws.rate[m] * evenness;
    out.taw.push_back(taw);
    out.raw.push_back(std::min(one.trace.raw_mm[day * bed.row() + m], taw));
    out.dr.push_back(std::clamp(dawn - fallen, 0.0, taw));
    out.demand.push_back(kc * bed.sky.et0_mm_d[day * bed.sky.members + m] * bed.share[day]);
  }
  return out;
}

void follow_balance(const BedOfMembers& bed, Followed& one, const MorningNumbers& morning, std::size_t day) {
  const auto at = static_cast<std::ptrdiff_t>(day * bed.row());
  const auto n = static_cast<std::ptrdiff_t>(bed.sky.members);
  const auto part = [&](const std::vector<double>& trace) {
    return std::vector<double>(trace.begin() + at, trace.begin() + at + n);
  };
  const std::vector<double> dr = part(one.trace.dr_mm), beyond = part(one.trace.beyond_mm);
  DayLikelihood out;
  out.date = bed.sky.first + days(static_cast<int>(day));
  out.from = bed.sky.from[day];
  out.beyond_frac = share_where(beyond, 0);
  out.left_frac = day < bed.count_from ? 0.0 : mark(one.left, beyond, 0);
  // Ks of FAO-56 eq. 84 below one half: Dr beyond the middle between RAW and TAW, in the morning as in daily_step.
  std::vector<double> beyond_half(dr.size());
  for (std::size_t m = 0; m < dr.size(); ++m)
    beyond_half[m] = morning.dr[m] - (morning.raw[m] + morning.taw[m]) / 2;
  out.half_frac = share_where(beyond_half, 0);
  out.halved_frac = day < bed.count_from ? 0.0 : mark(one.halved, beyond_half, 0);
  out.dr10_mm = quantile(dr, 0.1);
  out.dr50_mm = quantile(dr, 0.5);
  out.dr90_mm = quantile(dr, 0.9);
  one.days.push_back(out);
}

void tell_wilt(Followed& one, WiltMembers& result, bool counts) {
  DayLikelihood& out = one.days.back();
  double known = 0, droop = 0, stress = 0, wilt = 0;
  for (std::size_t m = 0; m < result.verdict.size(); ++m) {
    const WiltVerdict verdict = result.verdict[m];
    if (verdict == WiltVerdict::unknown) continue;
    ++known;
    droop += result.droop_hours[m] > 0 ? 1 : 0;
    stress += verdict == WiltVerdict::stress || verdict == WiltVerdict::dry_soil_wilt ? 1 : 0;
    wilt += verdict == WiltVerdict::dry_soil_wilt ? 1 : 0;
  }
  if (known == 0) return;
  out.droop_frac = droop / known;
  out.stress_frac = stress / known;
  out.wilt_frac = wilt / known;
  out.wilted_frac = counts ? mark(one.wilted, result.leaf_deficit_mm, 0) : 0.0;
  one.leaf_deficit = std::move(result.leaf_deficit_mm);
}

void follow_hours(const BedOfMembers& bed, std::vector<Followed>& all,
                  const std::vector<MorningNumbers>& mornings, std::size_t day) {
  const MemberSky& sky = bed.sky;
  const auto column = [&](const std::vector<double>& values, std::size_t of) {
    return day_of(values, sky, of);
  };
  std::vector<double> rs(sky.members);
  for (std::size_t m = 0; m < sky.members; ++m)
    rs[m] = sky.rs_mj_m2_d[day * sky.members + m] * bed.garden.beds[bed.bed].sun_frac;
  DayMembers weather{column(sky.t_max_c, day),
                     column(sky.t_min_c, day),
                     column(sky.ea_kpa, day),
                     rs,
                     column(sky.u2_m_s, day),
                     {},
                     {}};
  if (day > 0) weather.t_max_before_c = column(sky.t_max_c, day - 1);
  // The column may go on behind the days that are followed.
  if ((day + 1) * sky.members < sky.t_min_c.size()) weather.t_min_after_c = column(sky.t_min_c, day + 1);
  std::vector<PlantingMembers> plantings;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Bed& where = bed.garden.beds[bed.bed];
    const PlantingAccount& account = *all[i].account;
    const PlantingPlace place{bed.garden, where, where.plantings[account.planting], bed.journal};
    plantings.push_back({wilt_planting(place, account.soil, account.dry_ahead.days[day]),
                         std::span(bed.draws.field_capacity).first(sky.members),
                         std::span(bed.draws.wilting_point).first(sky.members), mornings[i].taw,
                         mornings[i].raw, mornings[i].dr, mornings[i].demand, all[i].leaf_deficit});
  }
  const sys_days date = sky.first + days(static_cast<int>(day));
  const DaySite site{date, bed.garden.site.location, utc_offset_h(bed.garden.site.zone, date)};
  auto results = wilt_members(site, weather, plantings);
  for (std::size_t i = 0; i < all.size(); ++i) tell_wilt(all[i], results[i], day >= bed.count_from);
}

/// What all beds have in common.
struct GardenOfMembers {
  const Garden& garden;
  const Journal& journal;
  const Sky& sky;
  const MemberSky& members;
  const LikelihoodQuestion& question;
};

/// A run of this planting that is in doubt, if there is one.
const RunInDoubt* run_of(const LikelihoodQuestion& question, std::size_t bed, std::size_t planting) {
  for (const RunInDoubt& run : question.runs)
    if (run.bed == bed && run.planting == planting) return &run;
  return nullptr;
}

DoubtedRun doubted(const RunInDoubt& run, const Followed& mean, const BedDraws& draws) {
  const auto& dawn = mean.trace.dr_dawn_mm;
  return {run, minutes_of(run, mean.trace, draws), std::vector<double>(dawn.begin(), dawn.end() - 1),
          draws.available_mm_m.back() * mean.account->growth_to_come.front().root_depth_m, &draws};
}

BedLikelihood followed_bed(const GardenOfMembers& all, std::size_t index, const BedDraws& draws,
                           std::span<const PlantingAccount> accounts, std::vector<DoubtedRun>& runs) {
  BedLikelihood out{.bed = index};
  BedOfMembers bed{all.garden,
                   index,
                   all.journal,
                   all.members,
                   draws,
                   bed_shares(all.garden, index, all.sky, all.members),
                   {},
                   planned_by_day(all.question.planned, index, all.members.days, false),
                   all.question.count_from};
  const bool whole = all.question.scope == LikelihoodScope::hours_and_driest_quarter;
  std::vector<Followed> traces;  // mean and, where it is asked for, low quarter of each planting in turn
  for (const PlantingAccount& account : accounts) {
    if (!takes_part(all.garden.beds[index].plantings[account.planting], account, sys_days(all.question.date)))
      continue;
    const PlantingInBed in{all.garden,          index,     all.journal, account,
                           all.members,         bed.share, draws,       all.question.options,
                           all.question.planned};
    if (bed.rain.empty()) bed.rain = rain_to_come(in);
    traces.push_back(followed(in, BedTrace::mean));
    if (whole) traces.push_back(followed(in, BedTrace::low_quarter));
  }
  const bool has_hours = whole && std::abs(all.garden.site.location.latitude_deg) <= highest_latitude_deg;
  for (std::size_t day = 0; day < all.members.days && !traces.empty(); ++day) {
    std::vector<MorningNumbers> mornings;
    mornings.reserve(traces.size());
    for (const Followed& one : traces) mornings.push_back(morning_numbers(bed, one, day));
    for (std::size_t i = 0; i < traces.size(); ++i) follow_balance(bed, traces[i], mornings[i], day);
    if (has_hours) follow_hours(bed, traces, mornings, day);
  }
  for (std::size_t i = 0; i < traces.size(); i += whole ? 2 : 1) {
    const std::size_t planting = traces[i].account->planting;
    out.plantings.push_back({planting, std::move(traces[i].days), {}});
    if (whole) out.plantings.back().low_quarter_days = std::move(traces[i + 1].days);
    const RunInDoubt* run = run_of(all.question, index, planting);
    if (run != nullptr && traces[i].trace.dr_dawn_mm.back() > 0)
      runs.push_back(doubted(*run, traces[i], draws));
  }
  return out;
}

Likelihood head_of(const MemberSky& members, const LikelihoodQuestion& question) {
  Likelihood out;
  out.members = members.members;
  out.seed = question.options.seed;
  out.past_years = members.past_years;
  out.forecast_to = question.date;
  for (std::size_t day = 0; day < members.days; ++day) {
    const bool covered =
        members.from[day] == MemberDayFrom::measured || members.from[day] == MemberDayFrom::forecast;
    if (covered) out.forecast_to = members.first + days(static_cast<int>(day));
  }
  out.behind_forecast = members.past_years > 0 ? MemberDayFrom::past_years
                        : members.traces > 0   ? MemberDayFrom::this_year
                                               : MemberDayFrom::last_days;
  return out;
}

}  // namespace

BedLikelihood bed_likelihood(const Garden& garden, std::size_t bed, const Journal& journal, const Sky& sky,
                             const MembersOfBed& made, const MemberOptions& options, LikelihoodScope scope) {
  if (made.accounts.empty()) return {.bed = bed};
  const LikelihoodQuestion question{
      .date = made.sky.first, .n_days = made.sky.days, .options = options, .scope = scope};
  const BedDraws draws = bed_draws(garden, bed, journal, made.accounts.front().soil, made.sky.first, options);
  std::vector<DoubtedRun> no_runs;
  return followed_bed({garden, journal, sky, made.sky, question}, bed, draws, made.accounts, no_runs);
}

Likelihood likelihood_of(const Garden& garden, const Journal& journal, const Sky& sky,
                         const LikelihoodQuestion& question) {
  MemberSky members = member_sky(garden.site, sky, question.date, question.n_days, question.options);
  Likelihood out = head_of(members, question);
  // The columns stand day by day: a shorter look is their beginning.
  if (question.follow_days > 0) members.days = std::min(members.days, question.follow_days);
  const GardenOfMembers all{garden, journal, sky, members, question};
  std::vector<BedDraws> draws(garden.beds.size());
  std::vector<DoubtedRun> runs;
  for (std::size_t bed = 0; bed < garden.beds.size(); ++bed) {
    const auto accounts = accounts_of_bed(garden, bed, journal, sky, question.date, members.days);
    if (accounts.empty()) {
      out.beds.push_back({.bed = bed});
      continue;
    }
    draws[bed] =
        bed_draws(garden, bed, journal, accounts.front().soil, sys_days(question.date), question.options);
    out.beds.push_back(followed_bed(all, bed, draws[bed], accounts, runs));
  }
  for (const DoubtedRun& run : runs) out.minutes.push_back(minutes_doubt(run));
  out.measurements = measurement_gains(garden, runs);
  return out;
}

}  // namespace v1
}  // namespace noonleaf
