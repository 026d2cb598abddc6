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

constexpr std::array<std::string_view, 7> weekday_names{"Sunday",   "Monday", "Tuesday", "Wednesday",
                                                        "Thursday", "Friday", "Saturday"};
constexpr std::array<std::string_view, 12> month_names{"January",   "February", "March",    "April",
                                                       "May",       "June",     "July",     "August",
                                                       "September", "October",  "November", "December"};

double without_minus_zero(double value) { return value == 0 ? 0.0 : value; }

}  // namespace

std::string QuantityText::depth(double mm) const {
  if (is_missing(mm)) return "unknown";
  if (units_ == UnitSystem::us) return fmt::format("{:.2f} in", without_minus_zero(inches_from_mm(mm)));
  return mm < 10 ? fmt::format("{:.1f} mm", without_minus_zero(mm)) : fmt::format("{:.0f} mm", mm);
}

std::string QuantityText::volume(double litres) const {
  if (is_missing(litres)) return "unknown";
  return units_ == UnitSystem::us ? fmt::format("{:.0f} gal", gallons_from_litres(litres))
                                  : fmt::format("{:.0f} L", litres);
}

std::string QuantityText::temperature(double c) const {
  if (is_missing(c)) return "unknown";
  return units_ == UnitSystem::us ? fmt::format("{:.0f} °F", fahrenheit_from_celsius(c))
                                  : fmt::format("{:.0f} °C", c);
}

std::string day_name(std::chrono::year_month_day date) {
  const std::chrono::weekday weekday{std::chrono::sys_days(date)};
  return fmt::format("{} {} {}", weekday_names[weekday.c_encoding()], static_cast<unsigned>(date.day()),
                     month_names[static_cast<unsigned>(date.month()) - 1]);
}

std::string long_date(std::chrono::year_month_day date) {
  return fmt::format("{} {}", day_name(date), static_cast<int>(date.year()));
}

std::string hour_text(double hour) {
  if (is_missing(hour)) return "unknown";
  const auto five = static_cast<int>(std::lround(hour * 12)) % (24 * 12);
  return clock_text(std::chrono::minutes(five * 5));
}

}  // namespace v1
}  // namespace noonleaf
