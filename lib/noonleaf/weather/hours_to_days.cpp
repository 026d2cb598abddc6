#include "noonleaf/weather/hours_to_days.hpp"

#include <algorithm>
#include <chrono>
#include <iterator>
#include <utility>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/calendar_stamp.hpp"
#include "noonleaf/weather/day_builder.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Q = WeatherQuantity;

constexpr std::int64_t hour_s = 3600, day_s = 86'400;
constexpr std::int64_t fewest_quarters = 3;  // of a day's rain

std::int32_t day_of(std::int64_t local_s) {
  return static_cast<std::int32_t>(local_s >= 0 ? local_s / day_s : -((day_s - 1 - local_s) / day_s));
}

}  // namespace

DayBuilder::DayBuilder(const std::string& zone) : zone_(zone) {}

std::int64_t DayBuilder::midnight_utc(std::int32_t day) { return zone_.utc_s(day * day_s).first; }

void DayBuilder::open(std::int32_t day) {
  day_ = day;
  day_length_s_ = midnight_utc(day + 1) - midnight_utc(day);
  totals_ = {};
}

void DayBuilder::add(Q quantity, double value, double weight, std::int64_t length_s) {
  if (is_missing(value)) return;
  Total& total = totals_[static_cast<std::size_t>(quantity)];
  total.low = total.known_s == 0 ? value : std::min(total.low, value);
  total.high = total.known_s == 0 ? value : std::max(total.high, value);
  total.sum += value * weight;
  total.known_s += length_s;
}

void DayBuilder::push(const HourlyWeather& hour, std::vector<DailyWeather>& days) {
  const std::int32_t day = day_of(zone_.local_s(hour.begin.time_since_epoch().count()));
  if (day_ && *day_ != day) close(days);
  if (!day_) open(day);
  const std::int64_t length_s = hour.length.count();
  const double hours = static_cast<double>(length_s) / static_cast<double>(hour_s);
  add(Q::t_mean, hour.t_c, hours, length_s);
  add(Q::rh_mean, hour.rh_pct, hours, length_s);
  add(Q::t_dew, hour.t_dew_c, hours, length_s);
  add(Q::ea, hour.ea_kpa, hours, length_s);
  add(Q::wind, hour.wind_m_s, hours, length_s);
  add(Q::pressure, hour.pressure_kpa, hours, length_s);
  add(Q::rs, hour.rs_mj_m2_h, hours, length_s);
  add(Q::sunshine, hour.sunshine_h, 1.0, length_s);
  add(Q::rain, hour.rain_mm, 1.0, length_s);
}

// What is known of a quantity if it is known enough to stand for the day.
const DayBuilder::Total* DayBuilder::whole(Q quantity) {
  const Total& total = totals_[static_cast<std::size_t>(quantity)];
  if (total.known_s == 0) return nullptr;
  if (total.known_s >= day_length_s_) return &total;
  const bool enough = quantity == Q::rain && total.known_s * 4 >= day_length_s_ * fewest_quarters;
  lacking_ += (lacking_.empty() ? "" : ", ") + std::string(canonical_name(quantity)) + " has " +
              std::to_string(total.known_s / hour_s) + " of " + std::to_string(day_length_s_ / hour_s) +
              (enough ? " hours, summed" : " hours, taken as missing");
  return enough ? &total : nullptr;
}

double DayBuilder::mean(Q quantity) {
  const Total* total = whole(quantity);
  return total == nullptr ? missing
                          : total->sum * static_cast<double>(hour_s) / static_cast<double>(total->known_s);
}

double DayBuilder::sum(Q quantity) {
  const Total* total = whole(quantity);
  return total == nullptr ? missing : total->sum;
}

void DayBuilder::close(std::vector<DailyWeather>& days) {
  DailyWeather day;
  day.date = std::chrono::year_month_day(std::chrono::sys_days(std::chrono::days(*day_)));
  lacking_.clear();
  day.t_mean_c = mean(Q::t_mean);
  if (is_known(day.t_mean_c)) {
    day.t_min_c = totals_[static_cast<std::size_t>(Q::t_mean)].low;
    day.t_max_c = totals_[static_cast<std::size_t>(Q::t_mean)].high;
  }
  day.rh_mean_pct = mean(Q::rh_mean);
  if (is_known(day.rh_mean_pct)) {
    day.rh_min_pct = totals_[static_cast<std::size_t>(Q::rh_mean)].low;
    day.rh_max_pct = totals_[static_cast<std::size_t>(Q::rh_mean)].high;
  }
  day.t_dew_c = mean(Q::t_dew);
  day.ea_kpa = mean(Q::ea);
  day.wind_m_s = mean(Q::wind);
  day.pressure_kpa = mean(Q::pressure);
  day.rs_mj_m2_d = sum(Q::rs);
  day.sunshine_h = sum(Q::sunshine);
  day.rain_mm = sum(Q::rain);
  if (!lacking_.empty()) incomplete_.push_back(date_text(*day_) + ": " + lacking_);
  const double known[] = {day.t_mean_c,     day.rh_mean_pct, day.t_dew_c,    day.ea_kpa, day.wind_m_s,
                          day.pressure_kpa, day.rs_mj_m2_d,  day.sunshine_h, day.rain_mm};
  if (std::any_of(std::begin(known), std::end(known), is_known)) days.push_back(day);
  day_.reset();
}

void DayBuilder::finish(std::vector<DailyWeather>& days) {
  if (day_) close(days);
}

std::vector<std::string> DayBuilder::take_incomplete() { return std::exchange(incomplete_, {}); }

DaysFromHours days_from_hours(std::span<const HourlyWeather> hours, const std::string& zone) {
  DaysFromHours result;
  DayBuilder builder(zone);
  for (const HourlyWeather& hour : hours) builder.push(hour, result.days);
  builder.finish(result.days);
  result.incomplete = builder.take_incomplete();
  return result;
}

}  // namespace v1
}  // namespace noonleaf
