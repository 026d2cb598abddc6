#include "noonleaf/report/calendar_text.hpp"

#include <array>
#include <string_view>

#include <fmt/format.h>

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::array<std::string_view, 7> weekday_names{"Sunday",   "Monday", "Tuesday", "Wednesday",
                                                        "Thursday", "Friday", "Saturday"};
constexpr std::array<std::string_view, 12> month_names{"January",   "February", "March",    "April",
                                                       "May",       "June",     "July",     "August",
                                                       "September", "October",  "November", "December"};

}  // namespace

std::string iso_date(std::chrono::year_month_day date) {
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                     static_cast<unsigned>(date.day()));
}

std::string long_date(std::chrono::year_month_day date) {
  const std::chrono::weekday weekday{std::chrono::sys_days(date)};
  return fmt::format("{} {} {} {}", weekday_names[weekday.c_encoding()], static_cast<unsigned>(date.day()),
                     month_names[static_cast<unsigned>(date.month()) - 1], static_cast<int>(date.year()));
}

std::string clock_text(std::chrono::minutes time_of_day) {
  return fmt::format("{:02}:{:02}", time_of_day.count() / 60, time_of_day.count() % 60);
}

}  // namespace v1
}  // namespace noonleaf
