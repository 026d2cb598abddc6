#include "noonleaf/weather/own_years.hpp"

#include <algorithm>
#include <array>
#include <map>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/daily_members.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Q = WeatherQuantity;

constexpr std::size_t slot(Q quantity) { return static_cast<std::size_t>(quantity); }

/// Means over other years, with how many years know each.
struct Means {
  WeatherQuantities known{};
  std::array<double, weather_quantity_count> values{};
  std::array<std::size_t, weather_quantity_count> years{};
};

struct Sum {
  double value = 0.0;
  std::size_t count = 0;
};

// The same calendar day of another year; 29 February is 28 February there.
std::chrono::sys_days same_day(std::chrono::year_month_day date, std::chrono::year year) {
  const std::chrono::year_month_day moved = year / date.month() / date.day();
  return moved.ok() ? std::chrono::sys_days(moved) : std::chrono::sys_days(year / date.month() / 28);
}

/// The measured days around one calendar day, added up for each year: of each quantity.
using YearSums = std::array<std::map<int, Sum>, weather_quantity_count>;

YearSums sums_around(const DailySeries& series, std::chrono::year_month_day date, const OwnYears& rule) {
  YearSums by_year;
  const std::chrono::sys_days first(series.days.front().date), last(series.days.back().date);
  for (auto year = series.days.front().date.year(); year <= series.days.back().date.year(); ++year) {
    const std::chrono::sys_days middle = same_day(date, year);
    for (int shift = -rule.window_days; shift <= rule.window_days; ++shift) {
      const std::chrono::sys_days day = middle + std::chrono::days{shift};
      if (day < first || day > last) continue;
      const auto index = static_cast<std::size_t>((day - first).count());
      if (series.origins[index] != DayOrigin::measured) continue;
      for (std::size_t quantity = 0; quantity < daily_members.size(); ++quantity) {
        const double value = series.days[index].*daily_members[quantity];
        if (is_missing(value)) continue;
        Sum& sum = by_year[quantity][static_cast<int>(year)];
        sum.value += value;
        ++sum.count;
      }
    }
  }
  return by_year;
}

/// The mean of each other year's own mean, so that a year with more days known does not count for more.
Means means_of_others(const YearSums& by_year, std::chrono::year own, const OwnYears& rule) {
  Means means;
  for (std::size_t quantity = 0; quantity < by_year.size(); ++quantity) {
    const std::size_t years = by_year[quantity].size() - by_year[quantity].count(static_cast<int>(own));
    if (years < rule.fewest_years || years == 0) continue;
    double total = 0.0;
    for (const auto& [year, sum] : by_year[quantity])
      if (year != static_cast<int>(own)) total += sum.value / static_cast<double>(sum.count);
    means.years[quantity] = years;
    means.values[quantity] = total / static_cast<double>(years);
    means.known.set(quantity);
  }
  return means;
}

// Takes the means into a day whose temperatures are missing. A temperature that was measured is replaced, or
// the pair could contradict itself.
BridgedDay bridge(DailyWeather& day, const Means& means) {
  BridgedDay bridged{.date = day.date, .years = means.years[slot(Q::t_max)]};
  for (std::size_t quantity = 0; quantity < daily_members.size(); ++quantity) {
    const bool temperature =
        quantity == slot(Q::t_max) || quantity == slot(Q::t_min) || quantity == slot(Q::t_mean);
    double& value = day.*daily_members[quantity];
    if (quantity == slot(Q::rain) || (is_known(value) && !temperature)) continue;
    if (!means.known.test(quantity)) {
      if (temperature) value = missing;
      continue;
    }
    value = means.values[quantity];
    bridged.quantities.set(quantity);
    bridged.years = std::min(bridged.years, means.years[quantity]);
  }
  return bridged;
}

// Values of other years beside a measured one of the day may not fit together; the measured one stays.
void drop_contradictions(DailyWeather& day, BridgedDay& bridged) {
  const auto drop = [&](Q quantity) {
    if (!bridged.quantities.test(slot(quantity))) return;
    day.*daily_members[slot(quantity)] = missing;
    bridged.quantities.reset(slot(quantity));
  };
  if (day.rh_min_pct > day.rh_max_pct) {
    drop(Q::rh_min);
    drop(Q::rh_max);
  }
  if (day.rh_mean_pct > day.rh_max_pct || day.rh_mean_pct < day.rh_min_pct) drop(Q::rh_mean);
  if (day.t_dew_c > day.t_max_c) day.t_dew_c = missing;
}

}  // namespace

std::vector<BridgedDay> bridge_with_own_years(DailySeries& series, const OwnYears& rule) {
  std::vector<BridgedDay> bridged;
  std::vector<DailyWeather> days = series.days;
  std::map<std::chrono::month_day, YearSums> around;  // a gap of many years asks for the same days in each
  for (DailyWeather& day : days) {
    if (is_known(day.t_max_c) && is_known(day.t_min_c)) continue;
    const auto [known, is_new] = around.try_emplace({day.date.month(), day.date.day()});
    if (is_new) known->second = sums_around(series, day.date, rule);
    const Means means = means_of_others(known->second, day.date.year(), rule);
    if (!means.known.test(slot(Q::t_max)) || !means.known.test(slot(Q::t_min))) continue;
    bridged.push_back(bridge(day, means));
    drop_contradictions(day, bridged.back());
  }
  series.days = std::move(days);
  return bridged;
}

}  // namespace v1
}  // namespace noonleaf
