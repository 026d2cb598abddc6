#include "noonleaf/weather/calendar_stamp.hpp"

#include <array>
#include <charconv>
#include <utility>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/weather/decimal_number.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::int64_t day_s = 86'400, hour_s = 3600, minute_s = 60;

[[gnu::always_inline]] inline unsigned digit(char letter) {
  return static_cast<unsigned>(static_cast<unsigned char>(letter - '0'));
}

// Two digits as a number; anything else gives 100 or more.
[[gnu::always_inline]] inline unsigned two_digits(const char* place) {
  const unsigned tens = digit(place[0]), ones = digit(place[1]);
  return tens > 9 || ones > 9 ? 100 : tens * 10 + ones;
}

[[gnu::always_inline]] inline bool is_leap(unsigned year) {
  return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
}

[[gnu::always_inline]] inline unsigned days_in_month(unsigned year, unsigned month) {
  static constexpr std::array<unsigned char, 13> days{0, 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return month == 2 && is_leap(year) ? 29 : days[month];
}

// Days since 1970-01-01 in the proleptic Gregorian calendar, years counted from March.
[[gnu::always_inline]] inline std::int32_t days_from_civil(unsigned year, unsigned month, unsigned day) {
  const unsigned march_year = month > 2 ? year : year - 1;
  const unsigned era_year = march_year % 400;
  const unsigned month_from_march = month > 2 ? month - 3 : month + 9;
  const unsigned day_of_year = (153 * month_from_march + 2) / 5 + day - 1;
  const unsigned day_of_era = era_year * 365 + era_year / 4 - era_year / 100 + day_of_year;
  return static_cast<std::int32_t>(march_year / 400 * 146'097 + day_of_era) - 719'468;
}

// A spelling to show in a fix: the date meant where it exists, else any date.
std::string example(unsigned year, unsigned month, unsigned day) {
  const auto number = day_number(static_cast<int>(year), month, day);
  return number ? date_text(*number) : "2026-07-04";
}

struct DateParts {
  std::array<unsigned, 3> value{};
  std::array<std::size_t, 3> digits{};
  char separator = 0;
};

// Three whole numbers with one kind of separator between them.
std::optional<DateParts> date_parts(std::string_view text) {
  DateParts parts;
  const char* place = text.data();
  const char* const end = place + text.size();
  for (std::size_t index = 0; index < 3; ++index) {
    const auto [stop, code] = std::from_chars(place, end, parts.value[index]);
    if (code != std::errc{} || stop - place > 4) return std::nullopt;
    parts.digits[index] = static_cast<std::size_t>(stop - place);
    place = stop;
    if (index == 2) break;
    if (place == end || (*place != '-' && *place != '/' && *place != '.')) return std::nullopt;
    if (index == 1 && *place != parts.separator) return std::nullopt;
    parts.separator = *place++;
  }
  return place == end ? std::optional(parts) : std::nullopt;
}

Reading<std::int32_t> refused(std::string message, std::string fix) {
  return {std::nullopt, std::move(message), std::move(fix)};
}

// Nobody measured before, and nobody forecasts after: a slip, like 0025 (ours).
constexpr bool is_weather_year(unsigned year) { return year - 1800U <= 400U; }

Reading<std::int32_t> existing(std::string_view text, unsigned year, unsigned month, unsigned day) {
  if (!is_weather_year(year))
    return refused(in_quotes(text) + " is not a day with weather: years are 1800 to 2200",
                   "write the year in full, like 2026-07-04");
  if (const auto number = day_number(static_cast<int>(year), month, day)) return {number, {}, {}};
  const bool month_known = month >= 1 && month <= 12;
  std::string why = month_known ? "that month has " + std::to_string(days_in_month(year, month)) + " days"
                                : "months are 01 to 12";
  std::string fix =
      "write a day of the calendar, like " +
      (month_known && day > 0 ? example(year, month, days_in_month(year, month)) : "2026-07-04");
  return refused(in_quotes(text) + " does not exist: " + why, std::move(fix));
}

// A date that ends in its year, without leave to read it: both readings are named where both exist.
Reading<std::int32_t> year_last(std::string_view text, const DateParts& parts) {
  const auto [first, second, last] = parts.value;
  const unsigned year = parts.digits[2] == 2 ? 2000 + last : last;
  const std::string month_first = example(year, first, second);
  const std::string day_first = example(year, second, first);
  if (first <= 12 && second <= 12 && first != second)
    return refused(in_quotes(text) + " could be " + month_first + " or " + day_first,
                   "write dates as year-month-day, like " + month_first);
  return refused(in_quotes(text) + " is not an ISO date",
                 "write dates as year-month-day, like " + (first > 12 ? day_first : month_first));
}

Reading<LocalStamp> no_stamp(std::string message, std::string fix) {
  return {std::nullopt, std::move(message), std::move(fix)};
}

// "Z", "+02:00", "+0200", "-05"; empty text means no offset. Length taken in `used`.
bool read_offset(std::string_view text, std::optional<std::chrono::seconds>& offset) {
  offset.reset();
  if (text.empty()) return true;
  if (text == "Z" || text == "z") {
    offset = std::chrono::seconds{0};
    return true;
  }
  const char sign = text.front();
  text.remove_prefix(1);
  if ((sign != '+' && sign != '-') || text.size() < 2) return false;
  std::string digits(text);
  if (digits.size() == 5 && digits[2] == ':') digits.erase(2, 1);
  if (digits.size() != 2 && digits.size() != 4) return false;
  const unsigned hours = two_digits(digits.data());
  const unsigned minutes = digits.size() == 4 ? two_digits(digits.data() + 2) : 0;
  if (hours > 14 || minutes > 59) return false;
  const std::chrono::seconds size = std::chrono::hours(hours) + std::chrono::minutes(minutes);
  offset = sign == '-' ? -size : size;
  return true;
}

// "1:00 PM", "1:00p.m."
bool has_half_day_mark(std::string_view text) {
  const std::size_t letter = text.find_first_of("AaPp");
  return letter != std::string_view::npos && letter > 0;
}

}  // namespace

std::optional<std::int32_t> day_number(int year, unsigned month, unsigned day) {
  if (year < 1 || year > 9999 || month < 1 || month > 12) return std::nullopt;
  const auto years = static_cast<unsigned>(year);
  if (day < 1 || day > days_in_month(years, month)) return std::nullopt;
  return days_from_civil(years, month, day);
}

const char* plain_iso_date(const char* place, std::int32_t& day) {
  const unsigned century = two_digits(place), rest = two_digits(place + 2);
  const unsigned month = two_digits(place + 5), date = two_digits(place + 8);
  if (century > 99 || rest > 99 || place[4] != '-' || place[7] != '-' || month - 1U > 11U) return nullptr;
  const unsigned year = century * 100 + rest;
  if (!is_weather_year(year) || date - 1U >= days_in_month(year, month)) return nullptr;
  day = days_from_civil(year, month, date);
  return place + 10;
}

const char* plain_iso_stamp(const char* place, LocalStamp& stamp) {
  std::int32_t day = 0;
  const char* next = plain_iso_date(place, day);
  if (next == nullptr || (*next != 'T' && *next != ' ') || next[3] != ':') return nullptr;
  const unsigned hour = two_digits(next + 1), minute = two_digits(next + 4);
  unsigned second = 0;
  if (hour > 23 || minute > 59) return nullptr;
  next += 6;
  if (*next == ':') {
    second = two_digits(next + 1);
    if (second > 59) return nullptr;
    next += 3;
  }
  stamp.seconds = day * day_s + hour * hour_s + minute * minute_s + second;
  stamp.offset.reset();
  if (*next == 'Z') {
    stamp.offset = std::chrono::seconds{0};
    ++next;
  } else if ((*next == '+' || *next == '-') && next[3] == ':') {
    const unsigned hours = two_digits(next + 1), minutes = two_digits(next + 4);
    if (hours > 14 || minutes > 59) return nullptr;
    const std::chrono::seconds size{hours * 3600 + minutes * 60};
    stamp.offset = *next == '-' ? -size : size;
    next += 6;
  }
  return next;
}

Reading<std::int32_t> read_date(std::string_view text, DateOrder order) {
  const bool basic = text.size() == 8 && text.find_first_not_of("0123456789") == std::string_view::npos;
  if (basic) {
    const unsigned year = two_digits(text.data()) * 100 + two_digits(text.data() + 2);
    return existing(text, year, two_digits(text.data() + 4), two_digits(text.data() + 6));
  }
  const auto parts = date_parts(text);
  if (!text.empty() && text.find_first_not_of('#') == std::string_view::npos)
    return refused(in_quotes(text) + " is what a spreadsheet shows in a column that is too narrow",
                   "widen the column and export the file again");
  if (!parts) {
    if (text.size() > 10 && (text[10] == 'T' || text[10] == ' ') &&
        read_date(text.substr(0, 10), order).value)
      return refused(in_quotes(text) + " is a time, not a date",
                     "name the column time, or write the date alone: " + std::string(text.substr(0, 10)));
    return refused(in_quotes(text) + " is not a date", "write dates as year-month-day, like 2026-07-04");
  }
  const auto [first, second, last] = parts->value;
  if (parts->digits[0] == 4) {
    if (parts->separator != '-' || parts->digits[1] != 2 || parts->digits[2] != 2)
      return refused(in_quotes(text) + " is not an ISO date",
                     "write dates as year-month-day, like " + example(first, second, last));
    return existing(text, first, second, last);
  }
  if (order == DateOrder::iso) return year_last(text, *parts);
  if (parts->digits[2] != 4)
    return refused(in_quotes(text) + " has no year of four digits",
                   "write the year in full, like 2026-07-04");
  return order == DateOrder::month_first ? existing(text, last, first, second)
                                         : existing(text, last, second, first);
}

Reading<std::int64_t> read_clock(std::string_view text) {
  if (has_half_day_mark(text))
    return {std::nullopt,
            in_quotes(text) + " has AM or PM, which is not read: noon and midnight get mixed up with it",
            "write it from 00:00 to 24:00, like 13:00"};
  const auto refuse = [text] {
    return Reading<std::int64_t>{std::nullopt, in_quotes(text) + " is not a time of day",
                                 "write it from 00:00 to 24:00, like 13:00"};
  };
  std::string clock(text);
  if (clock.size() > 1 && clock[1] == ':') clock.insert(0, "0");
  const std::size_t decimals = clock.find('.');
  if (decimals != std::string::npos) {
    const bool digits_only = clock.find_first_not_of("0123456789", decimals + 1) == std::string::npos;
    if (decimals != 8 || !digits_only || decimals + 1 == clock.size()) return refuse();
    clock.resize(decimals);
  }
  if (clock.size() != 5 && clock.size() != 8) return refuse();
  const unsigned hour = two_digits(clock.data()), minute = two_digits(clock.data() + 3);
  const unsigned second = clock.size() == 8 ? two_digits(clock.data() + 6) : 0;
  if (clock[2] != ':' || (clock.size() == 8 && clock[5] != ':')) return refuse();
  const bool day_end = hour == 24 && minute == 0 && second == 0;
  if ((hour > 23 && !day_end) || minute > 59 || second > 59) return refuse();
  return {hour * hour_s + minute * minute_s + second, {}, {}};
}

Reading<LocalStamp> read_stamp(std::string_view text, DateOrder order) {
  std::size_t gap = text.find('T');
  if (gap == std::string_view::npos) gap = text.find(' ');
  if (gap == std::string_view::npos || gap == 0) {
    auto date = read_date(text, order);
    if (!date.value) return no_stamp(std::move(date.message), std::move(date.fix));
    return no_stamp(in_quotes(text) + " has no time of day",
                    "write date and time, like " + date_text(*date.value) + " 13:00");
  }
  const auto date = read_date(text.substr(0, gap), order);
  if (!date.value) return no_stamp(date.message, date.fix);
  std::string_view rest = text.substr(gap + 1);
  const std::size_t zone = rest.find_first_of("Zz+-");
  LocalStamp stamp;
  if (zone != std::string_view::npos && !read_offset(rest.substr(zone), stamp.offset))
    return no_stamp(in_quotes(text) + " has an offset from UTC that does not exist",
                    "write it as Z or like -05:00, from -14:00 to +14:00");
  if (zone != std::string_view::npos) rest = rest.substr(0, zone);
  const auto clock = read_clock(trimmed(rest));
  if (!clock.value) return no_stamp(clock.message, clock.fix);
  stamp.seconds = *date.value * day_s + *clock.value;
  return {stamp, {}, {}};
}

std::string date_text(std::int32_t day) {
  return iso_date(std::chrono::year_month_day(std::chrono::sys_days(std::chrono::days(day))));
}

}  // namespace v1
}  // namespace noonleaf
