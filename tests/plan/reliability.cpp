#include "plan/reliability.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/balance/draws.hpp"
#include "noonleaf/calendar_text.hpp"
#include "noonleaf/plan/bed_likelihood.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/water_account.hpp"
#include "noonleaf/units.hpp"

#include "csv_rows.hpp"
#include "number_in.hpp"
#include "plan/invented_garden.hpp"

namespace reliability {
namespace {

using namespace std::chrono_literals;
using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr std::size_t days_asked = 10;
constexpr int forecast_days = 7;
constexpr int past_years = 3;
constexpr auto truth_year = 2004y;  // the other years stand before it, as 2001 to 2003

struct Station {
  noonleaf::Location place;
  std::string zone;
  int first_year = 2012, last_year = 2015;  ///< whole ones
  bool under_roof = false;
  std::map<year_month_day, noonleaf::DailyWeather> days{};
};

noonleaf::DailyWeather dated(const std::string& text) {
  return {.date = noonleaf::parse_iso_date(text).value()};
}

// The tables name cities only; these are the cities' places.
Station read_coast(const std::string& name) {
  Station out;
  const bool west = name == "Seattle";
  out.place = west ? noonleaf::Location{.latitude_deg = 47.6, .longitude_deg = -122.3, .elevation_m = 50}
                   : noonleaf::Location{.latitude_deg = 40.7, .longitude_deg = -74.0, .elevation_m = 10};
  out.zone = west ? "America/Los_Angeles" : "America/New_York";
  for (const auto& row : csv_rows("../weather_samples/open/seattle_newyork_daily_2012_2015.csv")) {
    if (row.at(0) != name) continue;
    noonleaf::DailyWeather day = dated(row[1]);
    day.rain_mm = number_in(row.at(2));
    day.t_max_c = number_in(row.at(3));
    day.t_min_c = number_in(row.at(4));
    day.wind_m_s = number_in(row.at(5));
    out.days[day.date] = day;
  }
  return out;
}

Station read_chicago() {
  Station out;
  out.place = {.latitude_deg = 41.9, .longitude_deg = -87.6, .elevation_m = 180};
  out.zone = "America/Chicago";
  out.first_year = 2002;
  out.under_roof = true;
  for (const auto& row : csv_rows("../weather_samples/open/chicago_daily_2001_2016.csv")) {
    noonleaf::DailyWeather day = dated(row.at(0));
    day.t_min_c = noonleaf::celsius_from_fahrenheit(number_in(row.at(1)));
    day.t_max_c = noonleaf::celsius_from_fahrenheit(number_in(row.at(3)));
    // Medians of the day need not belong to one hour: a dew point above the low is not used, and the low
    // stands for it, as on days without one.
    const double dew_c = noonleaf::celsius_from_fahrenheit(number_in(row.at(4)));
    if (dew_c <= day.t_min_c) day.t_dew_c = dew_c;
    day.wind_m_s = noonleaf::m_s_from_mph(number_in(row.at(8)));
    day.rain_mm = 0;  // on the bed
    out.days[day.date] = day;
  }
  return out;
}

/// The weather of one year under the dates of another.
void append_year(const Station& station, int from_year, std::chrono::year as, noonleaf::DailySeries& series) {
  for (sys_days date = sys_days(as / 1 / 1); date < sys_days((as + std::chrono::years(1)) / 1 / 1);
       date += days(1)) {
    const year_month_day shown(date);
    year_month_day taken = std::chrono::year(from_year) / shown.month() / shown.day();
    if (!taken.ok()) taken = std::chrono::year(from_year) / 2 / 28;
    noonleaf::DailyWeather weather = station.days.at(taken);
    weather.date = shown;
    series.days.push_back(weather);
    series.origins.push_back(noonleaf::DayOrigin::measured);
    series.forecast.push_back({});
  }
}

/// The truth, and as past years the three others that come next to it, the first ones after the last.
noonleaf::DailySeries three_years_and(const Station& station, int truth) {
  const int years = station.last_year - station.first_year + 1;
  noonleaf::DailySeries series;
  for (int back = past_years; back >= 1; --back) {
    const int year = station.first_year + (truth - station.first_year + back) % years;
    append_year(station, year, truth_year - std::chrono::years(back), series);
  }
  append_year(station, truth, truth_year, series);
  return series;
}

/// A forecast of the days from `date` on: the truth with errors of forecast_error's size, its rain now and
/// then that of another day of the season.
noonleaf::Sky with_forecast(const noonleaf::Site& site, const noonleaf::Sky& truth,
                            const noonleaf::DailySeries& series, sys_days date, std::uint64_t seed) {
  noonleaf::DailySeries told;
  double high = 0, low = 0, damp = 0, wind = 0;
  for (int day = 0; day < forecast_days; ++day) {
    const auto at = static_cast<std::size_t>((date - truth.first()).count() + day);
    const auto sd = noonleaf::forecast_error(day + 1);
    const auto place = static_cast<std::uint32_t>(day);
    const auto normal = [&](std::uint32_t what) {
      return noonleaf::normal_draw({.seed = seed, .what = 100 + what, .place = place});
    };
    const auto even = [&](std::uint32_t what) {
      return noonleaf::uniform_draw({.seed = seed, .what = 100 + what, .place = place});
    };
    const auto go_on = [&](double& error, std::uint32_t what) {
      error = day == 0 ? normal(what) : 0.7 * error + std::sqrt(1 - 0.49) * normal(what);
    };
    go_on(high, 1);
    go_on(low, 2);
    go_on(damp, 7);
    go_on(wind, 8);
    noonleaf::DailyWeather weather = series.days[at];
    weather.t_max_c += sd.t_max_c * high;
    weather.t_min_c = std::min(weather.t_min_c + sd.t_min_c * 0.7071 * (high + low), weather.t_max_c - 1);
    weather.wind_m_s *= std::exp(sd.u2_log * wind);
    if (noonleaf::is_known(weather.t_dew_c)) {
      weather.ea_kpa = noonleaf::saturation_vapour_pressure_kpa(weather.t_dew_c) * std::exp(sd.ea_log * damp);
      weather.t_dew_c = noonleaf::missing;
    }
    if (even(3) < sd.rain_kept_frac) {
      weather.rain_mm *= std::exp(sd.rain_log * normal(4) - sd.rain_log * sd.rain_log / 2);
    } else {
      const auto other = static_cast<std::size_t>(even(5) * 15);
      weather.rain_mm =
          series.days[at - 365 * (1 + static_cast<std::size_t>(even(6) * past_years)) - 7 + other].rain_mm;
    }
    told.days.push_back(weather);
    told.origins.push_back(noonleaf::DayOrigin::forecast);
    noonleaf::WeatherQuantities all;
    all.set();
    told.forecast.push_back(all);
  }
  noonleaf::Sky out = truth;
  out.days.resize(static_cast<std::size_t>((date - truth.first()).count()));
  const noonleaf::Sky ahead = noonleaf::sky_over(site, told);
  out.days.insert(out.days.end(), ahead.days.begin(), ahead.days.end());
  return out;
}

/// The days as they came, as the sky of one member.
noonleaf::MemberSky truth_of(const noonleaf::Sky& sky, sys_days date) {
  noonleaf::MemberSky out;
  out.members = 1;
  out.days = days_asked;
  out.first = date;
  for (std::size_t day = 0; day < days_asked; ++day) {
    const noonleaf::SkyDay& came = *sky.find(date + days(static_cast<int>(day)));
    // Rain that falls on the first day comes as the members' does: it is not in the account of the morning.
    out.from.push_back(noonleaf::MemberDayFrom::forecast);
    out.rain_mm.push_back(came.weather.rain_mm);
    out.et0_mm_d.push_back(came.et0_mm_d);
    out.t_max_c.push_back(came.estimate.t_max_c);
    out.t_min_c.push_back(came.estimate.t_min_c);
    out.ea_kpa.push_back(came.estimate.ea_kpa);
    out.rs_mj_m2_d.push_back(came.estimate.rs_mj_m2_d);
    out.u2_m_s.push_back(came.estimate.u2_m_s);
  }
  return out;
}

/// Thirty minutes every so many days, the last of them `days_dry` or more before the morning: dry and wet
/// beds.
noonleaf::Journal watered_until(sys_days date, int every_d, int days_dry) {
  noonleaf::Journal journal;
  for (sys_days day = sys_days(truth_year / 5 / 1); day + days(days_dry) < date; day += days(every_d)) {
    noonleaf::JournalEntry entry;
    entry.event = noonleaf::JournalEvent::water;
    entry.bed = "a";
    entry.date = day;
    entry.time_of_day = 360min;
    entry.minutes = 30;
    journal.push_back(entry);
  }
  return journal;
}

/// The days of a garden that is one more draw, under the weather that came: its shares are 0 or 1.
std::vector<noonleaf::DayLikelihood> outcome_of(const noonleaf::Garden& garden,
                                                const noonleaf::Journal& journal, const noonleaf::Sky& sky,
                                                sys_days date, std::uint64_t seed) {
  const auto accounts = noonleaf::accounts_of_bed(garden, 0, journal, sky, date, days_asked);
  const noonleaf::MemberSky came = truth_of(sky, date);
  return noonleaf::bed_likelihood(garden, 0, journal, sky, {came, accounts}, {.members = 1, .seed = seed},
                                  noonleaf::LikelihoodScope::hours_and_driest_quarter)
      .plantings.at(0)
      .days;
}

Case case_of(int lead_d, const noonleaf::DayLikelihood& said, const noonleaf::DayLikelihood& came) {
  Case one{.lead_d = lead_d};
  one.events = {Said{said.beyond_frac, came.beyond_frac > 0}, Said{said.droop_frac, came.droop_frac > 0},
                Said{said.wilt_frac, came.wilt_frac > 0}};
  one.within = came.dr50_mm >= said.dr10_mm && came.dr50_mm <= said.dr90_mm;
  return one;
}

}  // namespace

std::vector<Case> cases_of(const std::string& name, const Settings& settings) {
  const Station station = name == "Chicago" ? read_chicago() : read_coast(name);
  noonleaf::Garden garden =
      invented_garden("[[bed.planting]]\ncrop = \"" + settings.crop + "\"\ntransplanted = 2004-04-20\n");
  garden.site.location = station.place;
  garden.site.zone = station.zone;
  if (station.under_roof) garden.beds[0].rain_catch_frac = 0;
  std::vector<Case> cases;
  std::uint64_t seed = 1000;
  for (int year = station.first_year; year <= station.last_year; year += settings.step_years) {
    const noonleaf::DailySeries series = three_years_and(station, year);
    const noonleaf::Sky truth = noonleaf::sky_over(garden.site, series);
    for (int start = settings.first_day; start <= settings.last_day; start += settings.step_d) {
      const sys_days date = sys_days(truth_year / 6 / 1) + days(start);
      ++seed;
      // Under a roof, half of the starts are watered so often that the bed is moist without rain.
      const int every_d = station.under_roof && seed % 8 < 4 ? 2 : 5;
      const noonleaf::Journal journal = watered_until(date, every_d, static_cast<int>(seed % 4));
      const auto came = outcome_of(garden, journal, truth, date, seed);
      const noonleaf::Sky told = with_forecast(garden.site, truth, series, date, seed);
      const auto answer = noonleaf::likelihood_of(garden, journal, told,
                                                  {.date = date,
                                                   .n_days = days_asked,
                                                   .options = {.members = settings.members, .seed = 1},
                                                   .runs = {}});
      const auto& said = answer.beds.at(0).plantings.at(0).days;
      for (std::size_t day = 0; day < days_asked; ++day)
        cases.push_back(case_of(static_cast<int>(day) + 1, said[day], came[day]));
    }
  }
  return cases;
}

std::array<Bin, 10> bins_of(const std::vector<Case>& cases, Event event, int first_lead, int last_lead) {
  std::array<Bin, 10> bins{};
  for (const Case& one : cases) {
    if (one.lead_d < first_lead || one.lead_d > last_lead) continue;
    Bin& bin = bins[static_cast<std::size_t>(std::min(9.0, 10 * one.of(event).share))];
    ++bin.cases;
    bin.came_true += one.of(event).came_true ? 1 : 0;
    bin.said += one.of(event).share;
  }
  return bins;
}

Score score_of(const std::vector<Case>& cases, Event event, int first_lead, int last_lead) {
  Score out;
  double within = 0;
  for (const Case& one : cases) {
    if (one.lead_d < first_lead || one.lead_d > last_lead) continue;
    const Said& said = one.of(event);
    ++out.cases;
    out.came_true += said.came_true ? 1 : 0;
    within += one.within ? 1 : 0;
    out.brier += std::pow(said.share - (said.came_true ? 1 : 0), 2);
  }
  const double n = static_cast<double>(out.cases), rate = static_cast<double>(out.came_true) / n;
  out.brier /= n;
  out.of_the_mean = rate * (1 - rate);
  out.within_frac = within / n;
  return out;
}

}  // namespace reliability
