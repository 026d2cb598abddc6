#include "noonleaf/garden/watering_rules.hpp"

#include <algorithm>

namespace noonleaf {
inline namespace v1 {
namespace {

bool in_season(const YearlySeason& season, std::chrono::year_month_day date) {
  const std::chrono::month_day day{date.month(), date.day()};
  if (season.first <= season.last) return season.first <= day && day <= season.last;
  return season.first <= day || day <= season.last;  // over the turn of the year
}

}  // namespace

const DatedSpan* holiday_on(const WateringRules& rules, std::chrono::year_month_day date) {
  const auto found =
      std::find_if(rules.holidays.begin(), rules.holidays.end(),
                   [date](const DatedSpan& span) { return span.first <= date && date <= span.last; });
  return found == rules.holidays.end() ? nullptr : &*found;
}

bool in_force(const WateringRestriction& restriction, std::chrono::year_month_day date, int drought_level) {
  if (drought_level < restriction.drought_level) return false;
  if (restriction.from && date < *restriction.from) return false;
  if (restriction.until && date > *restriction.until) return false;
  return !restriction.season || in_season(*restriction.season, date);
}

bool allows_date(const WateringRestriction& restriction, std::chrono::year_month_day date) {
  if (!restriction.weekdays.test(std::chrono::weekday{std::chrono::sys_days(date)}.c_encoding()))
    return false;
  if (restriction.dates == DateParity::any) return true;
  return (static_cast<unsigned>(date.day()) % 2 == 1) == (restriction.dates == DateParity::odd);
}

}  // namespace v1
}  // namespace noonleaf
