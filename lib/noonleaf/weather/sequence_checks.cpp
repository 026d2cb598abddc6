#include "noonleaf/weather/sequence_checks.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/calendar_stamp.hpp"
#include "noonleaf/weather/rounded_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Q = WeatherQuantity;

constexpr std::size_t slot(Q quantity) { return static_cast<std::size_t>(quantity); }

constexpr double day_spike_c = 20.0, hour_spike_c = 10.0;

// Rows of one value in sequence before a sensor is called stuck; 0 = not looked at. In the order of
// WeatherQuantity. Sunshine repeats itself in clear spells.
constexpr std::array<std::size_t, weather_quantity_count> stuck_days{6, 6, 6, 6, 6, 6, 6, 6, 6, 4, 0, 6, 4};
constexpr std::array<std::size_t, weather_quantity_count> stuck_hours{0,  0,  24, 0, 0,  24, 24,
                                                                      24, 24, 6,  0, 24, 6};

// Values that may well repeat: calm of the sun, no rain, saturated air.
bool may_repeat(Q quantity, double value) {
  const bool humidity = quantity == Q::rh_max || quantity == Q::rh_min || quantity == Q::rh_mean;
  return ((quantity == Q::rs || quantity == Q::rain) && value <= 0.0) || (humidity && value >= 98.0);
}

std::string time_text(std::int64_t seconds, bool day) {
  const auto days =
      static_cast<std::int32_t>(seconds >= 0 ? seconds / 86'400 : -((86'399 - seconds) / 86'400));
  if (day) return date_text(days);
  const std::int64_t minutes = (seconds - std::int64_t{days} * 86'400) / 60;
  const auto two = [](std::int64_t number) { return (number < 10 ? "0" : "") + std::to_string(number); };
  return date_text(days) + " " + two(minutes / 60) + ":" + two(minutes % 60) + " UTC";
}

std::string counted(std::int64_t count, bool day) {
  return std::to_string(count) + (day ? " day" : " row") + (count == 1 ? "" : "s");
}

}  // namespace

SequenceChecks::SequenceChecks(std::int64_t period_s, const ValueLocator& locator, FindingList& findings)
    : period_s_(period_s), locator_(locator), findings_(findings) {
  for (std::size_t index = 0; index < weather_quantity_count; ++index) {
    const auto quantity = static_cast<Q>(index);
    if (!locator.quantities().test(index)) continue;
    if ((is_day() ? stuck_days : stuck_hours)[index] > 0) runs_.push_back({.quantity = quantity});
    if (quantity == Q::t_max || quantity == Q::t_min || quantity == Q::t_mean)
      recent_.push_back({.quantity = quantity});
  }
}

void SequenceChecks::push(std::int64_t begin_s, const WeatherValues& values, RowPlace place) {
  if (in_sequence_ > 0 && begin_s != last_s_ + period_s_) {
    if (begin_s <= last_s_ && backwards_++ == 0) first_backwards_ = place;
    if (begin_s > last_s_ + period_s_) note_gap(begin_s, place);
    break_sequence();
  }
  for (Recent& recent : recent_) {
    const double value = values[slot(recent.quantity)];
    if (in_sequence_ > 1) note_spike(recent, value);
    recent.before = recent.last;
    recent.last = value;
  }
  for (Run& run : runs_) {
    const double value = values[slot(run.quantity)];
    if (value == run.value && run.length > 0) {
      ++run.length;
      continue;
    }
    if (run.length > 1) end_run(run);
    run.value = value;
    run.length = is_known(value) ? 1 : 0;
    run.first = place;
  }
  last_s_ = begin_s;
  last_place_ = place;
  ++in_sequence_;
}

void SequenceChecks::break_sequence() {
  for (Run& run : runs_) end_run(run);
  in_sequence_ = 0;
}

void SequenceChecks::finish() {
  break_sequence();
  if (backwards_ == 0) return;
  findings_.doubt("out_of_order", [&] {
    std::string rows =
        backwards_ == 1 ? "this row is" : "this row and " + std::to_string(backwards_ - 1) + " more are";
    return locator_.at(first_backwards_, std::nullopt, rows + " earlier than the one before",
                       "sort the file by date");
  });
}

void SequenceChecks::note_gap(std::int64_t begin_s, RowPlace place) {
  findings_.doubt("gap", [&] {
    const std::int64_t count = (begin_s - last_s_) / period_s_ - 1;
    const std::string first = time_text(last_s_ + period_s_, is_day());
    const std::string end = time_text(begin_s - period_s_, is_day());
    return locator_.at(place, std::nullopt,
                       counted(count, is_day()) +
                           (count == 1 ? " is missing before this row: " : " are missing before this row: ") +
                           (count == 1 ? first : first + " to " + end),
                       "add the rows if you have them");
  });
}

// The last row against its neighbours on both sides.
void SequenceChecks::note_spike(const Recent& recent, double after) {
  const double limit = is_day() ? day_spike_c : hour_spike_c;
  const double up = recent.last - recent.before, down = recent.last - after;
  if (!(std::abs(up) > limit) || !(std::abs(down) > limit) || (up > 0) != (down > 0)) return;
  findings_.doubt("spike", [&] {
    const std::string step = rounded_text(std::min(std::abs(up), std::abs(down)), 1);
    return locator_.at(last_place_, recent.quantity,
                       "off the rows before and after by " + step + " °C or more; used",
                       "correct the cell if it is a slip, or leave it empty");
  });
}

void SequenceChecks::end_run(Run& run) {
  const std::size_t length = run.length;
  run.length = 0;
  const std::size_t limit = (is_day() ? stuck_days : stuck_hours)[slot(run.quantity)];
  if (length < limit || may_repeat(run.quantity, run.value)) return;
  findings_.doubt("stuck", [&] {
    return locator_.at(
        run.first, run.quantity,
        "the same value in " + counted(static_cast<std::int64_t>(length), is_day()) + " from here on; used",
        "look whether the sensor is stuck; empty the cells if so");
  });
}

}  // namespace v1
}  // namespace noonleaf
