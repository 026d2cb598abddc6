// The calendar of a season: which row of stage lengths, which days.
#include <algorithm>
#include <array>
#include <bit>
#include <string>
#include <vector>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/nearest_name.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

/// Boundaries of a season: start, development, mid-season, late season, over.
constexpr std::size_t n_boundaries = 5;
using Boundaries = std::array<std::optional<sys_days>, n_boundaries>;

[[noreturn]] void refuse(std::string field, std::string text, std::string message, std::string fix) {
  Problem problem;
  problem.field = std::move(field);
  problem.text = std::move(text);
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

/// Months between the start and the nearest printed planting month, round the year.
int months_away(const StageLengths& row, std::chrono::month start) {
  if (row.months == 0) return 12;  // none printed: only when nothing else fits
  const int from = static_cast<int>(unsigned{start}) - 1;
  int nearest = 12;
  for (int month = 0; month < 12; ++month) {
    if ((row.months >> month & 1) == 0) continue;
    const int apart = std::abs(month - from);
    nearest = std::min({nearest, apart, 12 - apart});
  }
  return nearest;
}

std::vector<const StageLengths*> rows_of_region(const Crop& crop, const std::string& region) {
  std::vector<const StageLengths*> rows;
  std::vector<std::string_view> names;
  for (const StageLengths& row : crop.stages) {
    names.push_back(row.region);
    if (region.empty() || lower(row.region).find(lower(region)) != std::string::npos) rows.push_back(&row);
  }
  if (!rows.empty()) return rows;
  const std::string near = nearest_name(region, names);
  std::string known;
  for (const std::string_view name : names) known += (known.empty() ? "" : "; ") + std::string(name);
  refuse("region", region, "no stage lengths of " + std::string(crop.id) + " for \"" + region + "\"",
         near.empty() ? "choose one of: " + known : "did you mean " + near + "?");
}

const StageLengths& lengths_for(const Crop& crop, const Planting& planting, std::chrono::month start) {
  const auto rows = rows_of_region(crop, planting.region);
  return **std::min_element(rows.begin(), rows.end(), [&](const StageLengths* a, const StageLengths* b) {
    return months_away(*a, start) < months_away(*b, start);
  });
}

/// Of a calendar day in a year; 29 February becomes the 28th where there is none.
sys_days in_year(std::chrono::month_day day, std::chrono::year year) {
  const year_month_day date{year, day.month(), day.day()};
  return date.ok() ? sys_days{date} : sys_days{year_month_day{year / day.month() / std::chrono::last}};
}

/// Later seasons of a perennial start at least half a year after planting, so that one set out in winter does
/// not begin twice.
constexpr days half_a_year{183};

struct SeasonBounds {
  sys_days first;
  std::optional<sys_days> next;  ///< start of the following season of a perennial
};

SeasonBounds bounds_of_season(const Crop& crop, const Planting& planting, sys_days date) {
  const sys_days planted{planting.start};
  if (crop.season != SeasonKind::perennial) return {planted, {}};
  const auto start = planting.season_start.value_or(crop.season_start);
  std::chrono::year year = year_month_day{date}.year();
  if (in_year(start, year) > date) --year;  // the latest start that is not after the date
  const sys_days latest = in_year(start, year);
  if (latest - planted >= half_a_year) return {latest, in_year(start, year + std::chrono::years{1})};
  std::chrono::year following = planting.start.year();
  while (in_year(start, following) - planted < half_a_year) ++following;
  return {planted, in_year(start, following)};
}

Boundaries observed_boundaries(const Crop& crop, const Planting& planting, const SeasonBounds& season) {
  const ObservedStages& seen = planting.observed;
  const std::array<std::optional<year_month_day>, n_boundaries> dates{
      std::nullopt, seen.development, seen.mid_season, seen.late_season, seen.over};
  Boundaries known;
  known[0] = season.first;
  sys_days latest = season.first;
  for (std::size_t i = 1; i < n_boundaries; ++i) {
    if (!dates[i]) continue;
    const sys_days day{*dates[i]};
    if (season.next && (day < season.first || day >= *season.next)) continue;  // another year's
    if (day < latest)
      refuse("stage", iso_date(day),
             "the stage seen on " + iso_date(day) + " lies before " + iso_date(latest) + ", when " +
                 std::string(crop.id) + (i == 1 || latest == season.first ? " started" : " had passed on"),
             "give the stages in the order of the season, none before the start");
    known[i] = latest = day;
  }
  return known;
}

/// Fills what was not seen: in proportion between two known days, by the table's days after the last.
std::array<sys_days, n_boundaries> fill(const Boundaries& known, const std::array<int, 4>& lengths) {
  std::array<sys_days, n_boundaries> filled;
  filled[0] = *known[0];
  for (std::size_t from = 0; from + 1 < n_boundaries;) {
    std::size_t to = from + 1;
    while (to < n_boundaries && !known[to]) ++to;
    int total = 0;
    for (std::size_t i = from; i < std::min(to, n_boundaries - 1); ++i) total += lengths[i];
    int passed = 0;
    for (std::size_t i = from; i + 1 < n_boundaries && i < to; ++i) {
      passed += lengths[i];
      if (to == n_boundaries) {
        filled[i + 1] = filled[from] + days{passed};
      } else {
        const auto span = (*known[to] - filled[from]).count();
        filled[i + 1] = i + 1 == to
                            ? *known[to]
                            : filled[from] + days{total == 0 ? 0 : (span * passed + total / 2) / total};
      }
    }
    from = to;
  }
  return filled;
}

}  // namespace

SeasonCalendar season_calendar(const Crop& crop, const Planting& planting, year_month_day date) {
  if (!planting.start.ok())
    refuse("start", "", "the planting of " + std::string(crop.id) + " has no valid start date",
           "give the day of sowing or transplanting");
  const SeasonBounds season = bounds_of_season(crop, planting, sys_days{date});
  SeasonCalendar calendar;
  calendar.first = season.first;
  if (crop.stages.empty()) {
    calendar.development = calendar.mid_season = calendar.late_season = calendar.over = season.first;
    return calendar;
  }
  const StageLengths& row = lengths_for(crop, planting, year_month_day{season.first}.month());
  const bool is_first_season = season.first == sys_days{planting.start};  // a perennial is transplanted once
  const bool is_fresh = planting.method == PlantingStart::transplanted && is_first_season;
  const int l_ini = is_fresh ? (row.l_ini_d + 1) / 2 : row.l_ini_d;
  const Boundaries known = observed_boundaries(crop, planting, season);
  const auto filled = fill(known, {l_ini, row.l_dev_d, row.l_mid_d, row.l_late_d});
  calendar.development = filled[1];
  calendar.mid_season = filled[2];
  calendar.late_season = filled[3];
  calendar.over = filled[4];
  calendar.lengths = &row;
  calendar.initial_is_halved = is_fresh && !known[1];
  calendar.stages_were_seen =
      std::any_of(known.begin() + 1, known.end(), [](const auto& day) { return day.has_value(); });
  return calendar;
}

std::chrono::month_day season_start_at(const Crop& crop, double latitude_deg) {
  if (!(latitude_deg < 0)) return crop.season_start;
  return std::chrono::month_day{crop.season_start.month() + std::chrono::months{6}, crop.season_start.day()};
}

}  // namespace v1
}  // namespace noonleaf
