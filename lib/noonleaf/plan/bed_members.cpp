// Compiled with -ffp-contract=off: the same members on every processor.
#include "noonleaf/plan/bed_members.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/balance/draws.hpp"
#include "noonleaf/balance/ensemble.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/plan/draw_addresses.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

constexpr std::size_t past_days =
    40;  // by then a bed has been full again, or its start is in start_later_frac
constexpr int gauge_counts_d = 30;
constexpr double highest_water_m3_m3 = 0.94, highest_rew_share = 0.9;
constexpr double least_du = 0.05;

/// exp(sd z) for every member, and 1 for the one without error.
std::vector<double> factors(DrawFor what, std::size_t place, double sd, const MemberOptions& options) {
  std::vector<double> out(options.members);
  normal_draws({.seed = options.seed, .what = address(what), .place = static_cast<std::uint32_t>(place)},
               out);
  for (double& value : out) value = fixed_exp(sd * value);
  out.push_back(1.0);
  return out;
}

bool soil_was_measured(const Bed& bed) { return is_known(bed.soil.field_capacity_m3_m3); }

bool has_gauge(const Journal& journal, sys_days morning) {
  return std::any_of(journal.begin(), journal.end(), [&](const JournalEntry& entry) {
    const auto age = morning - sys_days(entry.date);
    return entry.event == JournalEvent::rain && age >= days(0) && age <= days(gauge_counts_d);
  });
}

/// The days of the past that the members go through, with what is shared of them.
struct Past {
  std::vector<GrowthDay> growth;
  std::vector<double> et0, rain, morning_mm, evening_mm, u2, rh_min;
  double depleted_frac = 0, start_sd_frac = 0;
};

std::size_t first_past_day(const BalanceRun& run, const PlantingAccount& account) {
  std::size_t first = run.days.size() > past_days ? run.days.size() - past_days : 0;
  if (account.soil_checks.empty()) return first;
  for (std::size_t i = first; i < run.days.size(); ++i)
    if (run.days[i].date == account.soil_checks.back().date) first = i;
  return first;
}

double start_sd(const PlantingInBed& in, const BalanceRun& run, std::size_t first) {
  const auto& checks = in.account.soil_checks;
  const BalanceDetail& day = run.days[first];
  if (!checks.empty() && checks.back().date == day.date) return checks.back().after.sd_mm / day.taw_mm;
  if (first > 0) return start_later_frac;
  return in.account.start_doubt_mm > 0 ? start_assumed_frac : start_known_frac;
}

Past past_of(const PlantingInBed& in, const BalanceRun& run) {
  Past past;
  const std::size_t first = first_past_day(run, in.account);
  past.start_sd_frac = start_sd(in, run, first);
  past.depleted_frac = std::clamp(run.days[first].start.dr_mm / run.days[first].taw_mm, 0.0, 1.0);
  for (std::size_t i = first; i < run.days.size(); ++i) {
    const BalanceDetail& day = run.days[i];
    const bool open = day.ground == GroundState::open;
    past.growth.push_back(day.growth);
    past.u2.push_back(day.u2_m_s);
    past.rh_min.push_back(day.rh_min_pct);
    past.et0.push_back(open ? day.et0_mm_d : 0.0);
    past.rain.push_back(open ? day.rain_mm : 0.0);
    past.morning_mm.push_back(open ? day.irrigation_mm - day.evening_irrigation_mm : 0.0);
    past.evening_mm.push_back(open ? day.evening_irrigation_mm : 0.0);
  }
  return past;
}

double profile_of(const PlantingInBed& in) { return in.account.dawn.profile_depth_m; }

BalanceSettings settings_of(const PlantingInBed& in) {
  BalanceSettings settings = in.account.settings;
  const double mulch = in.account.days_to_come.front().evaporation_factor;
  if (is_known(mulch)) settings.evaporation_factor = mulch;
  return settings;
}

/// Day by member: a number of the day times one of the member.
std::vector<double> product(const std::vector<double>& by_day, const std::vector<double>& by_member) {
  std::vector<double> out;
  out.reserve(by_day.size() * by_member.size());
  for (const double day : by_day)
    for (const double member : by_member) out.push_back(day * member);
  return out;
}

MemberSeries series(const std::vector<double>& values, std::size_t members) {
  return {values.data(), static_cast<std::ptrdiff_t>(members), 1};
}

/// The same for all members, by day.
MemberSeries shared(const std::vector<double>& by_day) { return {by_day.data(), 1, 0}; }

/// Of a planned mean depth, what infiltrates. The past of the low quarter has its depths already: there the
/// members differ from its DU only.
std::vector<double> share_of(const PlantingInBed& in, BedTrace trace, double du_in_depths) {
  std::vector<double> share = in.draws.rate;
  for (std::size_t m = 0; m < share.size(); ++m) {
    if (trace == BedTrace::low_quarter) share[m] *= in.draws.du_lq[m] / du_in_depths;
    share[m] = std::min(share[m], 10.0);  // the ensemble's limit: 3.3 standard deviations of a guessed rate
  }
  return share;
}

std::vector<double> crop_factors(const PlantingInBed& in) {
  return factors(DrawFor::crop_use, in.bed * 100 + in.account.planting, crop_use_log, in.options);
}

/// Share of TAW that is gone at the start of the past, by member.
std::vector<double> start_shares(const PlantingInBed& in, const Past& past) {
  std::vector<double> out(in.options.members);
  const auto place = static_cast<std::uint32_t>(in.bed * 100 + in.account.planting);
  normal_draws({.seed = in.options.seed, .what = address(DrawFor::start), .place = place}, out);
  for (double& value : out) value = std::clamp(past.depleted_frac + past.start_sd_frac * value, 0.0, 1.0);
  out.push_back(past.depleted_frac);
  return out;
}

/// What the members bring to this morning.
struct Morning {
  std::vector<double> dr, lower, de;
};

/// The account's depletion, off by what the member's errors have made of it.
void anchor(const PlantingInBed& in, double dr_mm, Morning& morning) {
  const double reference = morning.dr.back();
  const double zr = in.account.growth_to_come.front().root_depth_m;
  const double below_m = profile_of(in) - zr;
  for (std::size_t m = 0; m < morning.dr.size(); ++m) {
    const double taw = in.draws.available_mm_m[m] * zr;
    morning.dr[m] = std::clamp(dr_mm + morning.dr[m] - reference, 0.0, std::max(dr_mm, taw));
    morning.lower[m] = std::clamp(morning.lower[m], 0.0, in.draws.available_mm_m[m] * std::max(0.0, below_m));
    if (is_missing(morning.de[m])) morning.de[m] = morning.dr[m];
  }
}

Morning morning_of(const PlantingInBed& in, BedTrace trace) {
  const BalanceRun& run = trace == BedTrace::mean ? in.account.past : in.account.low_past;
  const BalanceRun& ahead = trace == BedTrace::mean ? in.account.dry_ahead : in.account.low_ahead;
  const std::size_t n = in.draws.rate.size();
  const BalanceState& dawn = ahead.days.front().start;
  if (run.days.empty())
    return {std::vector<double>(n, dawn.dr_mm), std::vector<double>(n, dawn.lower_mm),
            std::vector<double>(n, dawn.de_mm)};
  const Past past = past_of(in, run);
  const auto crop = crop_factors(in), depleted = start_shares(in, past),
             share = share_of(in, trace, in.draws.du_lq.back());
  const auto et0 = product(past.et0, crop), rain = product(past.rain, in.draws.rain);
  const EnsembleGround ground{in.draws.field_capacity,
                              in.draws.wilting_point,
                              in.draws.rew_mm,
                              depleted,
                              in.account.soil.evaporation_depth_m,
                              profile_of(in)};
  const EnsemblePlanting planting{past.growth, settings_of(in), {past.morning_mm, past.evening_mm, share}};
  EnsembleResult result =
      run_ensemble(ground, {series(et0, n), series(rain, n), shared(past.u2), shared(past.rh_min)},
                   {&planting, 1})
          .front();
  Morning morning{std::move(result.dr_mm), std::move(result.lower_mm), std::move(result.de_mm)};
  anchor(in, dawn.dr_mm, morning);
  return morning;
}

std::vector<double> et0_to_come(const PlantingInBed& in) {
  const auto crop = crop_factors(in);
  const std::size_t members = in.sky.members;
  std::vector<double> out;
  out.reserve(in.sky.days * (members + 1));
  for (std::size_t day = 0; day < in.sky.days; ++day) {
    for (std::size_t m = 0; m < members; ++m)
      out.push_back(in.sky.et0_mm_d[day * members + m] * in.bed_share[day] * crop[m]);
    out.push_back(in.account.dry_ahead.days[day].et0_mm_d);
  }
  return out;
}

}  // namespace

BedDraws bed_draws(const Garden& garden, std::size_t index, const Journal& journal, const SoilWater& soil,
                   sys_days morning, const MemberOptions& options) {
  const Bed& bed = garden.beds[index];
  const Sprinkler& sprinkler = garden.sprinklers[bed.sprinkler];
  BedDraws out;
  out.rate_log = rate_doubt_log(sprinkler.rate.basis);
  out.rain_log = has_gauge(journal, morning) ? rain_gauge_log : rain_station_log;
  out.rate = factors(DrawFor::rate, bed.sprinkler, out.rate_log, options);
  out.rain = factors(DrawFor::rain_catch, index, out.rain_log, options);
  const double uneven = 1 - sprinkler.rate.du_lq_frac;
  const double evenness_log = sprinkler.evenness_is_guess ? evenness_guess_log : evenness_measured_log;
  for (const double factor : factors(DrawFor::evenness, bed.sprinkler, evenness_log, options))
    out.du_lq.push_back(std::max(least_du, 1 - uneven * factor));
  const double water_log =
      soil_was_measured(bed) ? available_water_measured_log : available_water_texture_log;
  const auto water = factors(DrawFor::available_water, index, water_log, options);
  const auto wilting = factors(DrawFor::wilting_point, index, wilting_point_log, options);
  for (std::size_t m = 0; m <= options.members; ++m) {
    const double wp = soil.wilting_point_m3_m3 * wilting[m];
    const double fc =
        std::min(highest_water_m3_m3, wp + (soil.field_capacity_m3_m3 - soil.wilting_point_m3_m3) * water[m]);
    const double tew = 1000 * (fc - 0.5 * wp) * soil.evaporation_depth_m;  // FAO-56 eq. 73
    out.wilting_point.push_back(wp);
    out.field_capacity.push_back(fc);
    out.available_mm_m.push_back(1000 * (fc - wp));
    out.rew_mm.push_back(std::min(soil.rew_mm, highest_rew_share * tew));
  }
  return out;
}

std::vector<double> planned_by_day(std::span<const PlannedWater> planned, std::size_t bed, std::size_t n_days,
                                   bool evening) {
  std::vector<double> out(n_days, 0.0);
  for (const PlannedWater& water : planned)
    if (water.bed == bed && water.day < n_days && water.evening == evening) out[water.day] += water.mean_mm;
  return out;
}

std::vector<double> rain_to_come(const PlantingInBed& in) {
  const double caught = in.garden.beds[in.bed].rain_catch_frac;
  const std::size_t members = in.sky.members;
  std::vector<double> out;
  out.reserve(in.sky.days * (members + 1));
  for (std::size_t day = 0; day < in.sky.days; ++day) {
    // Rain of today that is in the account already has been measured, by the station or by a gauge.
    const double fallen = day == 0 ? in.account.days_to_come.front().rain_mm : 0;
    const bool told = fallen > 0 || in.sky.from[day] == MemberDayFrom::measured;
    for (std::size_t m = 0; m < members; ++m)
      out.push_back((told ? fallen : in.sky.rain_mm[day * members + m] * caught) * in.draws.rain[m]);
    out.push_back(fallen);
  }
  return out;
}

PlantingMembersTrace members_of_planting(const PlantingInBed& in, BedTrace trace) {
  PlantingMembersTrace out;
  const Morning morning = morning_of(in, trace);
  const std::size_t n = in.draws.rate.size(), n_days = in.sky.days;
  const auto et0 = et0_to_come(in), rain = rain_to_come(in), share = share_of(in, trace, 1);
  std::vector<double> watered = planned_by_day(in.planned, in.bed, n_days, false),
                      evening = planned_by_day(in.planned, in.bed, n_days, true);
  watered[0] += in.account.days_to_come.front().irrigation_mm;
  evening[0] += in.account.days_to_come.front().evening_irrigation_mm;
  out.dr_mm.resize(n * n_days);
  out.raw_mm.resize(n * n_days);
  const std::vector<double> unused(n, 0.0);
  const EnsembleGround ground{in.draws.field_capacity,
                              in.draws.wilting_point,
                              in.draws.rew_mm,
                              unused,
                              in.account.soil.evaporation_depth_m,
                              profile_of(in)};
  const EnsemblePlanting planting{in.account.growth_to_come,
                                  settings_of(in),
                                  {watered, evening, share},
                                  out.dr_mm,
                                  out.raw_mm,
                                  {morning.dr, morning.lower, morning.de}};
  std::vector<double> u2, rh_min;
  for (const BalanceDetail& day : in.account.dry_ahead.days) {
    u2.push_back(day.u2_m_s);
    rh_min.push_back(day.rh_min_pct);
  }
  run_ensemble(ground, {series(et0, n), series(rain, n), shared(u2), shared(rh_min)}, {&planting, 1});
  out.dr_dawn_mm = morning.dr;
  for (std::size_t i = 0; i < out.dr_mm.size(); ++i) out.beyond_mm.push_back(out.dr_mm[i] - out.raw_mm[i]);
  return out;
}

}  // namespace v1
}  // namespace noonleaf
