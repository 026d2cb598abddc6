#include "noonleaf/plan/bed_water.hpp"

#include <algorithm>

#include "noonleaf/plan/watering.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

constexpr std::chrono::hours gauge_tells_of_yesterday_before{10};

sys_days gauge_day(const JournalEntry& entry) {
  const bool morning = entry.time_of_day && *entry.time_of_day < gauge_tells_of_yesterday_before;
  return sys_days(entry.date) - days(morning ? 1 : 0);
}

/// One entry's part of a day.
struct Part {
  sys_days date{};
  double gauge_mm = missing;
  double irrigation_mm = 0;
  bool evening = false;
};

/// What of the journal is water for this bed, in the order of the days, and of the file within a day.
std::vector<Part> parts_of(const Garden& garden, const Bed& bed, const Journal& journal) {
  std::vector<Part> parts;
  for (const JournalEntry& entry : journal) {
    if (entry.event == JournalEvent::rain && is_known(entry.rain_mm))
      parts.push_back({.date = gauge_day(entry), .gauge_mm = entry.rain_mm});
    if (entry.event != JournalEvent::water || entry.bed != bed.id) continue;
    const double depth_mm = watering_of(garden, bed, entry).mean_mm;
    if (is_missing(depth_mm)) continue;
    const bool evening = entry.time_of_day && *entry.time_of_day >= evening_begins;
    parts.push_back({.date = sys_days(entry.date), .irrigation_mm = depth_mm, .evening = evening});
  }
  std::stable_sort(parts.begin(), parts.end(), [](const Part& a, const Part& b) { return a.date < b.date; });
  return parts;
}

}  // namespace

BedWaterByDay::BedWaterByDay(const Garden& garden, std::size_t bed, const Journal& journal)
    : rain_catch_frac_(garden.beds[bed].rain_catch_frac) {
  for (const Part& part : parts_of(garden, garden.beds[bed], journal)) {
    if (days_.empty() || days_.back().date != part.date) days_.push_back({.date = part.date});
    Day& day = days_.back();
    if (is_known(part.gauge_mm)) day.gauge_mm = (is_known(day.gauge_mm) ? day.gauge_mm : 0) + part.gauge_mm;
    (part.evening ? day.evening_irrigation_mm : day.irrigation_mm) += part.irrigation_mm;
  }
}

BedWater BedWaterByDay::on(const SkyDay& day) const {
  const sys_days date(day.weather.date);
  BedWater water;
  const double station_mm = measured_rain_mm(day);
  if (is_known(station_mm)) water.rain_mm = station_mm;
  const auto found = std::lower_bound(days_.begin(), days_.end(), date,
                                      [](const Day& each, sys_days when) { return each.date < when; });
  if (found != days_.end() && found->date == date) {
    if (is_known(found->gauge_mm)) water.rain_mm = found->gauge_mm;
    water.irrigation_mm = found->irrigation_mm;
    water.evening_irrigation_mm = found->evening_irrigation_mm;
  }
  water.rain_mm *= rain_catch_frac_;
  return water;
}

BedWater water_on(const Garden& garden, std::size_t bed, const Journal& journal, const SkyDay& day) {
  return BedWaterByDay(garden, bed, journal).on(day);
}

}  // namespace v1
}  // namespace noonleaf
