#include "noonleaf/report/quantity_text.hpp"

#include <array>
#include <cmath>
#include <string_view>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::year_month_day;

constexpr std::array<std::string_view, 7> weekday_names{"Sunday",   "Monday", "Tuesday", "Wednesday",
                                                        "Thursday", "Friday", "Saturday"};
constexpr std::array<std::string_view, 12> month_names{"January",   "February", "March",    "April",
                                                       "May",       "June",     "July",     "August",
                                                       "September", "October",  "November", "December"};

std::chrono::minutes five_minutes(double hour) {
  const auto five = static_cast<int>(std::lround(hour * 12)) % (24 * 12);
  return std::chrono::minutes(five * 5);
}

}  // namespace

std::string QuantityText::number(double value, int decimals) const { return local().number(value, decimals); }

std::string QuantityText::depth(double mm) const { return local().depth(mm); }

std::string QuantityText::volume(double litres) const {
  if (is_missing(litres)) return number(litres, 0);
  if (units_ == UnitSystem::metric) return number(litres, 0) + " L";
  const std::string gallons = number(gallons_from_litres(litres), 0);
  if (language_ == Language::en) return gallons + " gal";
  return gallons + (gallons == "1" ? " galón" : " galones");
}

std::string QuantityText::temperature(double c) const { return local().temperature(c); }

std::string QuantityText::day(year_month_day date) const {
  return is_english_screen() ? day_name(date) : local().day(date);
}

std::string QuantityText::date(year_month_day date) const {
  if (language_ == Language::en) return long_date(date);
  return fmt::format("{} de {}", local().day(date), static_cast<int>(date.year()));
}

std::string QuantityText::clock(std::chrono::minutes time_of_day) const {
  return is_english_screen() ? clock_text(time_of_day) : local().clock(time_of_day);
}

std::string QuantityText::the_clock(std::chrono::minutes time_of_day) const {
  return is_english_screen() ? clock_text(time_of_day) : local().the_clock(time_of_day);
}

std::string QuantityText::hour(double hour) const {
  return is_missing(hour) ? number(hour, 0) : clock(five_minutes(hour));
}

std::string QuantityText::the_hour(double hour) const {
  return is_missing(hour) ? number(hour, 0) : the_clock(five_minutes(hour));
}

std::string QuantityText::list(const std::vector<std::string>& items) const { return local().list(items); }

std::string day_name(std::chrono::year_month_day date) {
  const std::chrono::weekday weekday{std::chrono::sys_days(date)};
  return fmt::format("{} {} {}", weekday_names[weekday.c_encoding()], static_cast<unsigned>(date.day()),
                     month_names[static_cast<unsigned>(date.month()) - 1]);
}

std::string long_date(std::chrono::year_month_day date) {
  return fmt::format("{} {}", day_name(date), static_cast<int>(date.year()));
}

}  // namespace v1
}  // namespace noonleaf
