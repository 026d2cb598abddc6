#include "noonleaf/weather/hour_builder.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Q = WeatherQuantity;

constexpr std::int64_t hour_s = 3600;

// An hour counts as known where this share of its rows is.
constexpr std::size_t fewest_quarters = 3;

bool is_sum(std::size_t index) {
  const Q quantity = static_cast<Q>(index);
  return quantity == Q::rain || quantity == Q::sunshine;
}

// Rain falls or does not; it is never drawn between two hours.
bool may_interpolate(std::size_t index) { return static_cast<Q>(index) != Q::rain; }

WeatherQuantities known_of(const WeatherValues& values) {
  unsigned long known = 0;
  for (std::size_t index = 0; index < values.size(); ++index)
    known |= static_cast<unsigned long>(is_known(values[index])) << index;
  return WeatherQuantities(known);
}

HourlyWeather hourly_weather(std::int64_t begin_s, std::int64_t length_s, const WeatherValues& v,
                             WeatherQuantities interpolated) {
  HourlyWeather hour;
  hour.begin = std::chrono::sys_seconds{std::chrono::seconds{begin_s}};
  hour.length = std::chrono::seconds{length_s};
  const auto value = [&v](Q quantity) { return v[static_cast<std::size_t>(quantity)]; };
  hour.t_c = value(Q::t_mean);
  hour.rh_pct = value(Q::rh_mean);
  hour.t_dew_c = value(Q::t_dew);
  hour.ea_kpa = value(Q::ea);
  hour.wind_m_s = value(Q::wind);
  hour.rs_mj_m2_h = value(Q::rs);
  hour.sunshine_h = value(Q::sunshine);
  hour.pressure_kpa = value(Q::pressure);
  hour.rain_mm = value(Q::rain);
  hour.interpolated = interpolated;
  return hour;
}

}  // namespace

HourBuilder::HourBuilder(std::chrono::seconds length, const WeatherOptions& options,
                         const ValueLocator& locator, FindingList& findings)
    : length_s_(length.count()),
      period_s_(std::max(length.count(), hour_s)),
      longest_gap_(static_cast<std::size_t>(std::max<std::int64_t>(
          0, std::chrono::seconds(options.longest_interpolated_gap).count() / period_s_))),
      quantities_(locator.quantities()),
      locator_(locator),
      findings_(findings),
      sequence_(length.count(), locator, findings) {
  if (!options.zone.empty()) zone_.emplace(options.zone);
}

void HourBuilder::push(const TableRow& row, std::vector<HourlyWeather>& hours) {
  sequence_.push(row.stamp.seconds, row.values, row.place);
  if (length_s_ < hour_s) {
    add_to_hour(row, hours);
  } else {
    take_period(row.stamp.seconds, row.values, {}, row.place, hours);
  }
}

void HourBuilder::finish(std::vector<HourlyWeather>& hours) {
  if (hour_) close_hour(hours);
  release(0, hours);
  sequence_.finish();
  if (patchy_hours_ == 0) return;
  findings_.doubt("interpolated", [&] {
    return locator_.at(first_patchy_, std::nullopt,
                       "this hour and " + std::to_string(patchy_hours_ - 1) +
                           " more lack up to a quarter of their rows; their means stand for the hour",
                       "add the rows if you have them");
  });
}

void HourBuilder::add_to_hour(const TableRow& row, std::vector<HourlyWeather>& hours) {
  const std::int64_t local_s = zone_ ? zone_->local_s(row.stamp.seconds) : row.stamp.seconds;
  const std::int64_t into_hour = ((local_s % hour_s) + hour_s) % hour_s;
  const std::int64_t begin_s = row.stamp.seconds - into_hour;
  if (hour_ && hour_->begin_s != begin_s) close_hour(hours);
  if (!hour_) hour_ = Sum{.begin_s = begin_s, .place = row.place};
  for (std::size_t index = 0; index < row.values.size(); ++index) {
    if (is_missing(row.values[index])) continue;
    hour_->sums[index] += row.values[index];
    ++hour_->known[index];
  }
}

void HourBuilder::close_hour(std::vector<HourlyWeather>& hours) {
  const auto whole = static_cast<std::size_t>(hour_s / length_s_);
  const Sum sum = *hour_;
  hour_.reset();
  WeatherValues values{};
  WeatherQuantities partly;
  for (std::size_t index = 0; index < values.size(); ++index) {
    const std::size_t known = sum.known[index];
    values[index] = missing;
    if (known * 4 < whole * fewest_quarters) continue;
    values[index] = is_sum(index) ? sum.sums[index] : sum.sums[index] / static_cast<double>(known);
    if (known < whole) partly.set(index);
  }
  if (partly.any() && patchy_hours_++ == 0) first_patchy_ = sum.place;
  take_period(sum.begin_s, values, partly, sum.place, hours);
}

void HourBuilder::take_period(std::int64_t begin_s, const WeatherValues& values, WeatherQuantities partly,
                              RowPlace place, std::vector<HourlyWeather>& hours) {
  if (!held_.empty()) {
    const std::int64_t step = begin_s - held_.back().begin_s;
    const std::int64_t lacking = step / period_s_ - 1;
    const bool fits = step > 0 && step % period_s_ == 0 && lacking <= static_cast<std::int64_t>(longest_gap_);
    if (!fits) release(0, hours);
    for (std::int64_t count = 0; fits && count < lacking; ++count) {
      Held empty{.begin_s = held_.back().begin_s + period_s_};
      empty.values.fill(missing);
      held_.push_back(empty);
    }
  }
  held_.push_back({begin_s, values, known_of(values), partly});
  if (held_.size() > 1 && (held_.back().known & ~held_[held_.size() - 2].known).any())
    fill_before_last(place);
  // Behind an hour that knows all that the file has, nothing before it can still be filled.
  const bool all_known = (held_.back().known & quantities_) == quantities_;
  release(all_known ? 1 : longest_gap_ + 1, hours);
}

// For each quantity that the last period knows again after a short gap: a straight line over the gap.
void HourBuilder::fill_before_last(RowPlace place) {
  const std::size_t last = held_.size() - 1;
  std::string names;
  std::size_t longest = 0;
  for (std::size_t index = 0; index < weather_quantity_count; ++index) {
    if (!may_interpolate(index) || is_missing(held_[last].values[index]) || last == 0) continue;
    std::size_t before = last;
    while (before > 0 && is_missing(held_[before - 1].values[index])) --before;
    const std::size_t lacking = last - before;
    if (before == 0 || lacking == 0 || lacking > longest_gap_) continue;
    const double from = held_[before - 1].values[index], to = held_[last].values[index];
    for (std::size_t step = 1; step <= lacking; ++step) {
      Held& filled = held_[before - 1 + step];
      filled.values[index] =
          from + (to - from) * static_cast<double>(step) / static_cast<double>(lacking + 1);
      filled.known.set(index);
      filled.interpolated.set(index);
    }
    names += (names.empty() ? "" : ", ") + std::string(canonical_name(static_cast<Q>(index)));
    longest = std::max(longest, lacking);
  }
  if (names.empty()) return;
  findings_.doubt("interpolated", [&] {
    return locator_.at(place, std::nullopt,
                       std::to_string(longest) + (longest == 1 ? " period" : " periods") +
                           " before this row filled between the neighbours: " + names,
                       "add the values if you have them");
  });
}

void HourBuilder::release(std::size_t keep, std::vector<HourlyWeather>& hours) {
  if (held_.size() <= keep) return;
  const auto kept = held_.end() - static_cast<std::ptrdiff_t>(keep);
  for (auto held = held_.begin(); held != kept; ++held)
    hours.push_back(hourly_weather(held->begin_s, period_s_, held->values, held->interpolated));
  held_.erase(held_.begin(), kept);
}

}  // namespace v1
}  // namespace noonleaf
