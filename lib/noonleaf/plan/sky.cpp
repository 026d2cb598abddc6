#include "noonleaf/plan/sky.hpp"

#include <algorithm>

#include "noonleaf/reference/penman_monteith.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::size_t neighbours_each_side = 3;

LadderOptions ladder_options(const Site& site) {
  LadderOptions options;
  options.wind_height_m = site.wind_height_m;
  options.dryness = site.air;
  options.setting = site.setting;
  return options;
}

double mean_of_neighbours(const std::vector<SkyDay>& days, std::size_t gap_begin, std::size_t gap_end) {
  double sum = 0;
  int count = 0;
  const auto add = [&](const SkyDay& day) {
    if (day.et0_from != Et0From::weather) return;
    sum += day.et0_mm_d;
    ++count;
  };
  for (std::size_t back = 1; back <= neighbours_each_side && back <= gap_begin; ++back)
    add(days[gap_begin - back]);
  for (std::size_t on = 0; on < neighbours_each_side && gap_end + on < days.size(); ++on)
    add(days[gap_end + on]);
  return count == 0 ? missing : sum / count;
}

void bridge_gaps(std::vector<SkyDay>& days) {
  for (std::size_t begin = 0; begin < days.size();) {
    if (days[begin].et0_from != Et0From::none) {
      ++begin;
      continue;
    }
    std::size_t end = begin;
    while (end < days.size() && days[end].et0_from == Et0From::none) ++end;
    const double mean = end - begin <= longest_bridged_gap_d ? mean_of_neighbours(days, begin, end) : missing;
    for (std::size_t index = begin; index < end && is_known(mean); ++index) {
      days[index].et0_mm_d = mean;
      days[index].et0_from = Et0From::neighbours;
    }
    begin = end;
  }
}

}  // namespace

double measured_rain_mm(const SkyDay& day) {
  return day.forecast.test(static_cast<std::size_t>(WeatherQuantity::rain)) ? missing : day.weather.rain_mm;
}

std::chrono::sys_days Sky::first() const { return std::chrono::sys_days(days.front().weather.date); }

std::chrono::sys_days Sky::last() const { return std::chrono::sys_days(days.back().weather.date); }

const SkyDay* Sky::find(std::chrono::sys_days date) const {
  if (empty() || date < first() || date > last()) return nullptr;
  return &days[static_cast<std::size_t>((date - first()).count())];
}

Sky sky_over(const Site& site, const DailySeries& weather) {
  const LadderOptions options = ladder_options(site);
  Sky sky;
  for (std::size_t index = 0; index < weather.days.size(); ++index) {
    SkyDay day{.weather = weather.days[index],
               .origin = weather.origins[index],
               .forecast = weather.forecast[index]};
    day.estimate = complete_daily(day.weather, site.location, options);
    day.et0_mm_d = daily_et0_mm_d(day.estimate, site.location);
    day.et0_from = is_known(day.et0_mm_d) ? Et0From::weather : Et0From::none;
    sky.days.push_back(day);
  }
  bridge_gaps(sky.days);
  return sky;
}

}  // namespace v1
}  // namespace noonleaf
