#include "noonleaf/calendar_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

std::string padded(unsigned value, std::size_t width) {
  std::string digits = std::to_string(value);
  return digits.size() < width ? std::string(width - digits.size(), '0') + digits : digits;
}

std::optional<unsigned> parse_digits(std::string_view text) {
  unsigned value = 0;
  for (const char letter : text) {
    if (letter < '0' || letter > '9') return std::nullopt;
    value = value * 10 + static_cast<unsigned>(letter - '0');
  }
  return value;
}

}  // namespace

std::string iso_date(std::chrono::year_month_day date) {
  return padded(static_cast<unsigned>(static_cast<int>(date.year())), 4) + "-" +
         padded(static_cast<unsigned>(date.month()), 2) + "-" + padded(static_cast<unsigned>(date.day()), 2);
}

std::optional<std::chrono::year_month_day> parse_iso_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = parse_digits(text.substr(0, 4)), month = parse_digits(text.substr(5, 2)),
             day = parse_digits(text.substr(8, 2));
  if (!year || !month || !day) return std::nullopt;
  const std::chrono::year_month_day date{std::chrono::year(static_cast<int>(*year)), std::chrono::month(*month),
                                         std::chrono::day(*day)};
  return date.ok() ? std::optional(date) : std::nullopt;
}

std::string clock_text(std::chrono::minutes time_of_day) {
  const auto minutes = static_cast<unsigned>(time_of_day.count());
  return padded(minutes / 60, 2) + ":" + padded(minutes % 60, 2);
}

std::optional<std::chrono::minutes> parse_clock_text(std::string_view text) {
  if (text.size() != 5 || text[2] != ':') return std::nullopt;
  const auto hour = parse_digits(text.substr(0, 2)), minute = parse_digits(text.substr(3));
  if (!hour || !minute || *minute > 59 || *hour * 60 + *minute > 24 * 60) return std::nullopt;
  return std::chrono::minutes(*hour * 60 + *minute);
}

}  // namespace v1
}  // namespace noonleaf
