// Compiled with -ffp-contract=off: the same members on every processor.
#include "noonleaf/plan/member_sky.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "noonleaf/atmosphere/elementary.hpp"
#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/balance/draws.hpp"
#include "noonleaf/plan/day_in_year.hpp"
#include "noonleaf/plan/draw_addresses.hpp"
#include "noonleaf/reference/penman_monteith_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr int window_d = 7;          // before and after the date, in past years
constexpr int this_year_d = 45;      // how far back this year's own days are taken from
constexpr double lead_memory = 0.7;  // correlation of a forecast's errors from day to day
constexpr double least_range_c = 1.0;
constexpr int largest_lead = 15;

bool whole(const SkyDay* day) {
  return day != nullptr && day->et0_from == Et0From::weather && day->estimate.is_complete();
}

/// Whether n days from `start` on can stand for days to come.
bool is_trace(const Sky& sky, sys_days start, std::size_t n_days) {
  for (std::size_t i = 0; i < n_days; ++i)
    if (!whole(sky.find(start + days(static_cast<int>(i))))) return false;
  return true;
}

struct Traces {
  std::vector<sys_days> starts;
  MemberDayFrom from = MemberDayFrom::last_days;
  int years = 0;
};

Traces traces_of(const Sky& sky, year_month_day date, std::size_t n_days) {
  Traces out;
  std::set<int> years;
  for (auto year = sky.days.front().weather.date.year(); year < date.year(); ++year)
    for (int shift = -window_d; shift <= window_d; ++shift) {
      const sys_days start = sys_days(day_in_year(date, year)) + days(shift);
      if (!is_trace(sky, start, n_days)) continue;
      out.starts.push_back(start);
      years.insert(static_cast<int>(year));
    }
  out.years = static_cast<int>(years.size());
  if (!out.starts.empty()) {
    out.from = MemberDayFrom::past_years;
    return out;
  }
  const auto length = static_cast<int>(n_days);
  for (int back = this_year_d; back >= length; --back)
    if (is_trace(sky, sys_days(date) - days(back), n_days)) out.starts.push_back(sys_days(date) - days(back));
  if (!out.starts.empty()) out.from = MemberDayFrom::this_year;
  return out;
}

/// What a day's draws stand around.
struct DayBase {
  const SkyDay* day;
  MemberDayFrom from;
  int lead;
  double rso_mj_m2_d, ra_mj_m2_d, gamma_kpa_c;
};

std::size_t at(const MemberSky& out, std::size_t day, std::size_t member) {
  return day * out.members + member;
}

/// A column of standard normal errors that remember the day before.
class Errors {
 public:
  Errors(DrawFor what, std::size_t members, std::uint64_t seed)
      : what_(what), seed_(seed), z_(members), fresh_(members) {}

  const std::vector<double>& on(std::size_t day) {
    normal_draws({.seed = seed_, .what = address(what_), .place = static_cast<std::uint32_t>(day)}, fresh_);
    const double rest = BatchMath::sqrt(1 - lead_memory * lead_memory);
    for (std::size_t m = 0; m < z_.size(); ++m)
      z_[m] = started_ ? lead_memory * z_[m] + rest * fresh_[m] : fresh_[m];
    started_ = true;
    return z_;
  }

 private:
  DrawFor what_;
  std::uint64_t seed_;
  bool started_ = false;
  std::vector<double> z_, fresh_;
};

struct AllErrors {
  Errors t_max, t_min, ea, rs, u2;
};

double et0_of(const formula::DailyRow& row, const DayBase& base) {
  const auto terms = formula::daily_terms<BatchMath, Equation::fao56>(
      row, {base.gamma_kpa_c, base.ra_mj_m2_d, base.rso_mj_m2_d}, formula::short_daily);
  return std::max(0.0, formula::depth(terms.terms));
}

void keep(MemberSky& out, std::size_t index, const DailyEstimate& day, double et0_mm_d, double rain_mm) {
  out.t_max_c[index] = day.t_max_c;
  out.t_min_c[index] = day.t_min_c;
  out.ea_kpa[index] = day.ea_kpa;
  out.rs_mj_m2_d[index] = day.rs_mj_m2_d;
  out.u2_m_s[index] = day.u2_m_s;
  out.et0_mm_d[index] = et0_mm_d < 0 ? 0 : et0_mm_d;  // dew, as the account has it
  out.rain_mm[index] = is_known(rain_mm) ? rain_mm : 0.0;
}

void put_forecast(MemberSky& out, std::size_t day, const DayBase& base, AllErrors& errors) {
  const DailyEstimate& middle = base.day->estimate;
  const ForecastError sd = forecast_error(base.lead);
  const auto& high = errors.t_max.on(day);
  const auto& low = errors.t_min.on(day);
  const auto& damp = errors.ea.on(day);
  const auto& sun = errors.rs.on(day);
  const auto& wind = errors.u2.on(day);
  for (std::size_t m = 0; m < out.members; ++m) {
    DailyEstimate drawn = middle;
    drawn.t_max_c += sd.t_max_c * high[m];
    // A warm day is as a rule a warm night: half of the variance in common (ours).
    drawn.t_min_c += sd.t_min_c * (0.7071 * high[m] + 0.7071 * low[m]);
    drawn.t_min_c = std::min(drawn.t_min_c, drawn.t_max_c - least_range_c);
    const double mean_c = (drawn.t_max_c + drawn.t_min_c) / 2;
    drawn.ea_kpa = std::min(middle.ea_kpa * fixed_exp(sd.ea_log * damp[m]),
                            formula::saturation_vapour_pressure_kpa<BatchMath>(mean_c));
    drawn.rs_mj_m2_d = std::min(middle.rs_mj_m2_d * fixed_exp(sd.rs_log * sun[m]),
                                std::max(base.rso_mj_m2_d, middle.rs_mj_m2_d));
    drawn.u2_m_s = std::clamp(middle.u2_m_s * fixed_exp(sd.u2_log * wind[m]), least_u2_m_s, 20.0);
    const double et0 =
        et0_of({drawn.t_max_c, drawn.t_min_c, drawn.ea_kpa, drawn.rs_mj_m2_d, drawn.u2_m_s, 0}, base);
    keep(out, at(out, day, m), drawn, et0, 0);
  }
}

/// The rain of a forecast day: the forecast's, or that of the member's trace.
void put_forecast_rain(MemberSky& out, std::size_t day, const DayBase& base, const Sky& sky,
                       const std::vector<sys_days>& trace, std::uint64_t seed) {
  const ForecastError sd = forecast_error(base.lead);
  const double told_mm = base.day->weather.rain_mm;
  const auto place = static_cast<std::uint32_t>(day);
  for (std::size_t m = 0; m < out.members; ++m) {
    const auto member = static_cast<std::uint32_t>(m);
    const auto draw = [&](DrawFor what) {
      return DrawAddress{.seed = seed, .member = member, .what = address(what), .place = place};
    };
    double& rain = out.rain_mm[at(out, day, m)];
    const bool kept =
        is_known(told_mm) && (trace.empty() || uniform_draw(draw(DrawFor::rain_kept)) < sd.rain_kept_frac);
    if (kept) {
      // The mean of the factor is 1: the forecast's amount is its mean, not its median.
      rain = told_mm *
             fixed_exp(sd.rain_log * normal_draw(draw(DrawFor::rain_amount)) - sd.rain_log * sd.rain_log / 2);
    } else if (!trace.empty()) {
      const double of_trace = sky.find(trace[m] + days(static_cast<int>(day)))->weather.rain_mm;
      rain = is_known(of_trace) ? of_trace : 0.0;
    }
  }
}

DayBase base_of(const Sky& sky, sys_days date, std::size_t day) {
  const SkyDay* found = sky.find(date + days(static_cast<int>(day)));
  DayBase base{found, MemberDayFrom::forecast, static_cast<int>(day) + 1, missing, missing, missing};
  if (day == 0 && whole(found) && found->origin == DayOrigin::measured) base.from = MemberDayFrom::measured;
  if (!whole(found)) base.from = MemberDayFrom::last_days;
  return base;
}

void put_place(const Site& site, sys_days date, DayBase& base) {
  const SunDay sun{.latitude_deg = site.location.latitude_deg,
                   .day_of_year = day_of_year(std::chrono::year_month_day(date))};
  base.ra_mj_m2_d = extraterrestrial_radiation_mj_m2_d(sun);
  base.rso_mj_m2_d =
      clear_sky_radiation(SimpleClearSky{.ra = base.ra_mj_m2_d, .elevation_m = site.location.elevation_m});
  base.gamma_kpa_c = psychrometric_constant_kpa_c(is_known(base.day->estimate.pressure_kpa)
                                                      ? base.day->estimate.pressure_kpa
                                                      : atmospheric_pressure_kpa(site.location.elevation_m));
}

MemberSky sized(std::size_t members, std::size_t n_days, sys_days first) {
  MemberSky out;
  out.members = members;
  out.days = n_days;
  out.first = first;
  for (auto* column :
       {&out.t_max_c, &out.t_min_c, &out.ea_kpa, &out.rs_mj_m2_d, &out.u2_m_s, &out.rain_mm, &out.et0_mm_d})
    column->resize(members * n_days, missing);
  return out;
}

/// The last day of the sky up to `date + day` that has all its numbers.
const SkyDay* last_whole(const Sky& sky, sys_days when) {
  for (sys_days day = std::min(when, sky.last()); day >= sky.first(); day -= days(1))
    if (whole(sky.find(day))) return sky.find(day);
  return nullptr;
}

}  // namespace

ForecastError forecast_error(int lead_d) {
  const double lead = std::clamp(lead_d, 1, largest_lead);
  return {.t_max_c = std::min(4.0, 1.2 + 0.3 * lead),
          .t_min_c = std::min(3.0, 1.0 + 0.2 * lead),
          .ea_log = std::min(0.18, 0.06 + 0.015 * lead),
          .rs_log = std::min(0.25, 0.10 + 0.02 * lead),
          .u2_log = std::min(0.45, 0.20 + 0.03 * lead),
          .rain_log = 0.5,
          .rain_kept_frac = std::max(0.3, 0.95 - 0.08 * lead)};
}

MemberSky member_sky(const Site& site, const Sky& sky, year_month_day date, std::size_t n_days,
                     const MemberOptions& options) {
  MemberSky out = sized(options.members, n_days, sys_days(date));
  const Traces traces = traces_of(sky, date, n_days);
  out.past_years = traces.years;
  out.traces = traces.starts.size();
  std::vector<sys_days> trace;
  for (std::uint32_t m = 0; m < out.members && !traces.starts.empty(); ++m) {
    const double where = uniform_draw({.seed = options.seed, .member = m, .what = address(DrawFor::trace)});
    trace.push_back(
        traces.starts[static_cast<std::size_t>(where * static_cast<double>(traces.starts.size()))]);
  }
  const auto errors_of = [&](DrawFor what) { return Errors(what, out.members, options.seed); };
  AllErrors errors{errors_of(DrawFor::t_max), errors_of(DrawFor::t_min), errors_of(DrawFor::ea),
                   errors_of(DrawFor::rs), errors_of(DrawFor::u2)};
  for (std::size_t day = 0; day < n_days; ++day) {
    DayBase base = base_of(sky, sys_days(date), day);
    const sys_days when = sys_days(date) + days(static_cast<int>(day));
    if (base.from == MemberDayFrom::measured) {
      for (std::size_t m = 0; m < out.members; ++m)
        keep(out, at(out, day, m), base.day->estimate, base.day->et0_mm_d, base.day->weather.rain_mm);
    } else if (base.from == MemberDayFrom::forecast) {
      put_place(site, when, base);
      put_forecast(out, day, base, errors);
      put_forecast_rain(out, day, base, sky, trace, options.seed);
    } else if (!trace.empty()) {
      base.from = traces.from;
      for (std::size_t m = 0; m < out.members; ++m) {
        const SkyDay& past = *sky.find(trace[m] + days(static_cast<int>(day)));
        keep(out, at(out, day, m), past.estimate, past.et0_mm_d, past.weather.rain_mm);
      }
    } else if (const SkyDay* last = last_whole(sky, when)) {
      base.day = last;
      base.lead = largest_lead;
      put_place(site, when, base);
      put_forecast(out, day, base, errors);
    }
    out.from.push_back(base.from);
  }
  return out;
}

}  // namespace v1
}  // namespace noonleaf
