#include "plan/reliability.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "noonleaf/balance/draws.hpp"
#include "noonleaf/plan/bed_members.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/water_account.hpp"

#include "csv_rows.hpp"
#include "plan/invented_garden.hpp"

namespace reliability {
namespace {

using namespace std::chrono_literals;
using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr std::size_t days_asked = 10;
constexpr int forecast_days = 7;
constexpr auto truth_year = 2004y;  // the other three years stand before it, as 2001 to 2003

struct Station {
  noonleaf::Location place;
  std::map<year_month_day, noonleaf::DailyWeather> days;
};

// The table names cities only; these are the cities' places.
Station read_station(const std::string& name) {
  Station out;
  out.place = name == "Seattle"
                  ? noonleaf::Location{.latitude_deg = 47.6, .longitude_deg = -122.3, .elevation_m = 50}
                  : noonleaf::Location{.latitude_deg = 40.7, .longitude_deg = -74.0, .elevation_m = 10};
  for (const auto& row : csv_rows("../weather_samples/open/seattle_newyork_daily_2012_2015.csv")) {
    if (row.at(0) != name) continue;
    const auto number = [&](std::size_t cell) { return std::stod(row.at(cell)); };
    noonleaf::DailyWeather day;
    day.date = std::chrono::year(std::stoi(row[1].substr(0, 4))) /
               std::chrono::month(static_cast<unsigned>(std::stoi(row[1].substr(5, 2)))) /
               std::chrono::day(static_cast<unsigned>(std::stoi(row[1].substr(8, 2))));
    day.rain_mm = number(2);
    day.t_max_c = number(3);
    day.t_min_c = number(4);
    day.wind_m_s = number(5);
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

noonleaf::DailySeries three_years_and(const Station& station, int truth) {
  noonleaf::DailySeries series;
  auto as = truth_year - std::chrono::years(3);
  for (int year = 2012; year <= 2015; ++year) {
    if (year == truth) continue;
    append_year(station, year, as, series);
    as += std::chrono::years(1);
  }
  append_year(station, truth, truth_year, series);
  return series;
}

/// A forecast of the days from `date` on: the truth with errors of forecast_error's size, its rain now and
/// then that of another day of the season.
noonleaf::Sky with_forecast(const noonleaf::Site& site, const noonleaf::Sky& truth,
                            const noonleaf::DailySeries& series, sys_days date, std::uint64_t seed) {
  noonleaf::DailySeries told;
  double high = 0, low = 0;
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
    high = day == 0 ? normal(1) : 0.7 * high + std::sqrt(1 - 0.49) * normal(1);
    low = day == 0 ? normal(2) : 0.7 * low + std::sqrt(1 - 0.49) * normal(2);
    noonleaf::DailyWeather weather = series.days[at];
    weather.t_max_c += sd.t_max_c * high;
    weather.t_min_c = std::min(weather.t_min_c + sd.t_min_c * 0.7071 * (high + low), weather.t_max_c - 1);
    if (even(3) < sd.rain_kept_frac) {
      weather.rain_mm *= std::exp(sd.rain_log * normal(4) - sd.rain_log * sd.rain_log / 2);
    } else {
      const auto other = static_cast<std::size_t>(even(5) * 15);
      weather.rain_mm =
          series.days[at - 365 * (1 + static_cast<std::size_t>(even(6) * 3)) - 7 + other].rain_mm;
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
  }
  return out;
}

/// Twenty minutes every fifth day, the last of them `days_dry` or more before the morning: dry and wet beds.
noonleaf::Journal watered_until(sys_days date, int days_dry) {
  noonleaf::Journal journal;
  for (sys_days day = sys_days(truth_year / 5 / 1); day + days(days_dry) < date; day += days(5)) {
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

/// Whether the account of a garden that is one more draw is beyond its limit, day by day, and its depletion.
struct Outcome {
  std::vector<bool> beyond;
  std::vector<double> dr_mm;
};
Outcome outcome_of(const noonleaf::Garden& garden, const noonleaf::Journal& journal, const noonleaf::Sky& sky,
                   sys_days date, std::uint64_t seed) {
  const noonleaf::MemberOptions one{.members = 1, .seed = seed};
  const auto accounts = noonleaf::accounts_of_bed(garden, 0, journal, sky, date, days_asked);
  const auto draws = noonleaf::bed_draws(garden, 0, journal, accounts[0].soil, date, one);
  const noonleaf::MemberSky came = truth_of(sky, date);
  const std::vector<double> share(days_asked, 1.0);
  const auto trace = noonleaf::members_of_planting({garden, 0, journal, accounts[0], came, share, draws, one},
                                                   noonleaf::BedTrace::mean);
  Outcome out;
  for (std::size_t day = 0; day < days_asked; ++day) {
    out.beyond.push_back(trace.beyond_mm[day * 2] > 0);
    out.dr_mm.push_back(trace.dr_mm[day * 2]);
  }
  return out;
}

}  // namespace

std::vector<Case> cases_of(const std::string& name, const Settings& settings) {
  const Station station = read_station(name);
  noonleaf::Garden garden =
      invented_garden("[[bed.planting]]\ncrop = \"tomato\"\ntransplanted = 2004-04-20\n");
  garden.site.location = station.place;
  garden.site.zone = name == "Seattle" ? "America/Los_Angeles" : "America/New_York";
  std::vector<Case> cases;
  std::uint64_t seed = 1000;
  for (int year = 2012; year <= 2015; ++year) {
    const noonleaf::DailySeries series = three_years_and(station, year);
    const noonleaf::Sky truth = noonleaf::sky_over(garden.site, series);
    for (int start = settings.first_day; start <= settings.last_day; start += settings.step_d) {
      const sys_days date = sys_days(truth_year / 6 / 1) + days(start);
      ++seed;
      const noonleaf::Journal journal = watered_until(date, static_cast<int>(seed % 4));
      const Outcome came = outcome_of(garden, journal, truth, date, seed);
      const noonleaf::Sky told = with_forecast(garden.site, truth, series, date, seed);
      const auto answer = noonleaf::likelihood_of(garden, journal, told,
                                                  {.date = date,
                                                   .n_days = days_asked,
                                                   .options = {.members = settings.members, .seed = 1},
                                                   .runs = {}});
      const auto& said = answer.beds.at(0).plantings.at(0).days;
      for (std::size_t day = 0; day < days_asked; ++day)
        cases.push_back({static_cast<int>(day) + 1, said[day].beyond_frac, came.beyond[day],
                         came.dr_mm[day] >= said[day].dr10_mm && came.dr_mm[day] <= said[day].dr90_mm});
    }
  }
  return cases;
}

std::array<Bin, 10> bins_of(const std::vector<Case>& cases, int first_lead, int last_lead) {
  std::array<Bin, 10> bins{};
  for (const Case& one : cases) {
    if (one.lead_d < first_lead || one.lead_d > last_lead) continue;
    Bin& bin = bins[static_cast<std::size_t>(std::min(9.0, 10 * one.said))];
    ++bin.cases;
    bin.came_true += one.came_true ? 1 : 0;
    bin.said += one.said;
  }
  return bins;
}

Score score_of(const std::vector<Case>& cases, int first_lead, int last_lead) {
  Score out;
  double hits = 0, within = 0;
  for (const Case& one : cases) {
    if (one.lead_d < first_lead || one.lead_d > last_lead) continue;
    ++out.cases;
    hits += one.came_true ? 1 : 0;
    within += one.within ? 1 : 0;
    out.brier += std::pow(one.said - (one.came_true ? 1 : 0), 2);
  }
  const double n = static_cast<double>(out.cases), rate = hits / n;
  out.brier /= n;
  out.of_the_mean = rate * (1 - rate);
  out.within_frac = within / n;
  return out;
}

}  // namespace reliability
