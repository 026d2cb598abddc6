#include "noonleaf/garden/weekly_hours.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

#include "noonleaf/calendar_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::array<std::string_view, 7> weekday_words{"sun", "mon", "tue", "wed", "thu", "fri", "sat"};

std::optional<std::size_t> parse_weekday(std::string_view word) {
  const auto found = std::find(weekday_words.begin(), weekday_words.end(), word);
  if (found == weekday_words.end()) return std::nullopt;
  return static_cast<std::size_t>(found - weekday_words.begin());
}

std::optional<std::bitset<7>> parse_weekdays(std::string_view words) {
  if (words == "daily") return std::bitset<7>{}.set();
  std::bitset<7> days;
  while (true) {
    const std::size_t comma = words.find(',');
    const std::string_view item = words.substr(0, comma);
    const std::size_t dash = item.find('-');
    const auto first = parse_weekday(item.substr(0, dash));
    const auto last = dash == std::string_view::npos ? first : parse_weekday(item.substr(dash + 1));
    if (!first || !last) return std::nullopt;
    for (std::size_t day = *first;; day = (day + 1) % 7) {  // "fri-mon" goes over the weekend
      days.set(day);
      if (day == *last) break;
    }
    if (comma == std::string_view::npos) return days;
    words.remove_prefix(comma + 1);
  }
}

bool on_weekday(const WeeklyHours& hours, std::chrono::year_month_day date) {
  return hours.weekdays.test(std::chrono::weekday{std::chrono::sys_days(date)}.c_encoding());
}

}  // namespace

std::optional<WeeklyHours> parse_weekly_hours(std::string_view text) {
  const std::size_t space = text.find(' ');
  if (space == std::string_view::npos) return std::nullopt;
  const auto days = parse_weekdays(text.substr(0, space));
  const std::string_view range = text.substr(space + 1);
  if (!days || range.size() != 11 || range[5] != '-') return std::nullopt;
  const auto begin = parse_clock_text(range.substr(0, 5)), end = parse_clock_text(range.substr(6));
  if (!begin || !end || *begin >= *end) return std::nullopt;
  return WeeklyHours{*days, *begin, *end};
}

bool covers(std::span<const WeeklyHours> hours, std::chrono::year_month_day date, std::chrono::minutes begin,
            std::chrono::minutes end) {
  return std::any_of(hours.begin(), hours.end(), [&](const WeeklyHours& each) {
    return on_weekday(each, date) && each.begin <= begin && end <= each.end;
  });
}

bool overlaps(std::span<const WeeklyHours> hours, std::chrono::year_month_day date,
              std::chrono::minutes begin, std::chrono::minutes end) {
  return std::any_of(hours.begin(), hours.end(), [&](const WeeklyHours& each) {
    return on_weekday(each, date) && each.begin < end && begin < each.end;
  });
}

}  // namespace v1
}  // namespace noonleaf
