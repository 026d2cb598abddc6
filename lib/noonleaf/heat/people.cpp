#include "noonleaf/heat/people.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/heat/hour_humidity.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

// Rothfusz (1990) and the notes of the Weather Prediction Center are written in °F; so is this.
double simple_index_f(double t, double rh) { return 0.5 * (t + 61.0 + ((t - 68.0) * 1.2) + (rh * 0.094)); }

double regression_f(double t, double rh) {
  return -42.379 + 2.04901523 * t + 10.14333127 * rh - .22475541 * t * rh - .00683783 * t * t -
         .05481717 * rh * rh + .00122874 * t * t * rh + .00085282 * t * rh * rh - .00000199 * t * t * rh * rh;
}

double adjustment_f(double t, double rh) {
  if (rh < 13 && t >= 80 && t <= 112) return -((13 - rh) / 4) * std::sqrt((17 - std::abs(t - 95.)) / 17);
  if (rh > 85 && t >= 80 && t <= 87) return ((rh - 85) / 10) * ((87 - t) / 5);
  return 0;
}

double heat_index_f(double t, double rh) {
  const double simple = simple_index_f(t, rh);
  return simple < 80 ? simple : regression_f(t, rh) + adjustment_f(t, rh);
}

double highest_within(const PeopleDay& day, int from_h, int length_h) {
  double highest = -1e9;
  for (int hour = from_h; hour < from_h + length_h; ++hour) {
    const double value = day.heat_index_c[static_cast<std::size_t>(hour)];
    if (is_missing(value)) return missing;
    highest = std::max(highest, value);
  }
  return highest;
}

}  // namespace

double heat_index_c(const ShadeAir& air) {
  require_within("t_c", air.t_c, -40, 55, "°C");
  require_within("rh_pct", air.rh_pct, 0, 100, "%");
  if (is_missing(air.t_c) || is_missing(air.rh_pct)) return missing;
  return (heat_index_f(air.t_c * 1.8 + 32, air.rh_pct) - 32) / 1.8;
}

bool beyond_heat_index_chart(double t_c, double heat_index_c) {
  constexpr double last_row_f = 110, highest_cell_f = 137;
  if (is_missing(heat_index_c)) return false;
  return std::round(t_c * 1.8 + 32) > last_row_f || std::round(heat_index_c * 1.8 + 32) > highest_cell_f;
}

std::optional<HeatCategory> heat_category(double heat_index_c) {
  if (is_missing(heat_index_c)) return std::nullopt;
  const double index_f = std::round(heat_index_c * 1.8 + 32);
  if (index_f >= 125) return HeatCategory::extreme_danger;
  if (index_f >= 103) return HeatCategory::danger;
  if (index_f >= 90) return HeatCategory::extreme_caution;
  if (index_f >= 80) return HeatCategory::caution;
  return HeatCategory::below_caution;
}

std::string_view label(HeatCategory category) {
  switch (category) {
    case HeatCategory::caution:
      return "Caution";
    case HeatCategory::extreme_caution:
      return "Extreme Caution";
    case HeatCategory::danger:
      return "Danger";
    case HeatCategory::extreme_danger:
      return "Extreme Danger";
    case HeatCategory::below_caution:
      break;
  }
  return "below Caution";
}

std::string_view effects(HeatCategory category) {
  switch (category) {
    case HeatCategory::caution:
      return "fatigue possible with prolonged exposure and/or physical activity";
    case HeatCategory::extreme_caution:
      return "heat stroke, heat cramps, or heat exhaustion possible with prolonged exposure and/or physical "
             "activity";
    case HeatCategory::danger:
      return "heat cramps or heat exhaustion likely, and heat stroke possible with prolonged exposure and/or "
             "physical activity";
    case HeatCategory::extreme_danger:
      return "heat stroke highly likely";
    case HeatCategory::below_caution:
      break;
  }
  return "";
}

PeopleDay people_day(const WeatherHours& hours) {
  PeopleDay day;
  for (std::size_t i = 0; i < hours.size(); ++i) {
    day.heat_index_c[i] = heat_index_c({.t_c = hours[i].t_c, .rh_pct = relative_humidity_pct(hours[i])});
    if (is_missing(day.heat_index_c[i]) || day.heat_index_c[i] <= day.peak_c) continue;
    day.peak_c = day.heat_index_c[i];
    day.peak_hour = static_cast<int>(i);
  }
  day.peak_category = heat_category(day.peak_c);
  return day;
}

std::optional<int> coolest_hours(const PeopleDay& day, const WorkWindow& window) {
  if (window.from_h < 0 || window.until_h > 24 || window.length_h < 1 ||
      window.until_h - window.from_h < window.length_h) {
    Problem problem;
    problem.field = "work_window";
    problem.message = "the hours to look within do not hold the hours of work";
    problem.fix = "give hours from 0 to 24 and at least an hour of work";
    throw Error(std::move(problem));
  }
  std::optional<int> best;
  double best_c = missing;
  for (int start = window.from_h; start + window.length_h <= window.until_h; ++start) {
    const double highest = highest_within(day, start, window.length_h);
    if (is_missing(highest) || highest >= best_c) continue;
    best = start;
    best_c = highest;
  }
  return best;
}

}  // namespace v1
}  // namespace noonleaf
