#pragma once

#include <bitset>
#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/garden/weekly_hours.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Consecutive days with a name: a holiday, a break, somebody's leave.
struct DatedSpan {
  std::string name{};                   ///< as the calendar calls it
  std::chrono::year_month_day first{};  ///< included
  std::chrono::year_month_day last{};   ///< included
};

/// Hours of one date on which something is going on, as a calendar file gives them.
struct DatedHours {
  std::string name{};                  ///< as the calendar calls it
  std::chrono::year_month_day date{};  ///< by the site's clock
  std::chrono::minutes begin{0};       ///< wall clock of the site
  std::chrono::minutes end{1440};      ///< likewise; not included
};

/// Part of every year, both days included; it may run over the turn of the year.
struct YearlySeason {
  std::chrono::month_day first{};  ///< included
  std::chrono::month_day last{};   ///< included; may be earlier in the year than `first`
};

/// On which dates of the month a rule lets water run.
enum class DateParity { any, odd, even };

/// One rule of a supplier, a city or a district: when it is in force, water runs only as it says. Several
/// rules hold together.
struct WateringRestriction {
  std::string name{};                                 ///< as the answers call it: "city stage 2"
  std::bitset<7> weekdays = 0x7f;                     ///< days that it allows; bit 0 = Sunday
  DateParity dates = DateParity::any;                 ///< and dates of the month
  std::vector<WeeklyHours> hours{};                   ///< and hours; empty = any
  std::optional<YearlySeason> season{};               ///< in force in this part of every year
  int drought_level = 0;                              ///< in force from this declared level on; 0 = always
  std::optional<std::chrono::year_month_day> from{};  ///< in force from this day on; nothing = always was
  /// in force up to this day, included; nothing = no end
  std::optional<std::chrono::year_month_day> until{};
  bool exempt_hand = false;  ///< hand watering is free of it
  bool exempt_drip = false;  ///< so are drip lines and soaker hoses
};

/// When water may run at all.
struct WateringRules {
  std::vector<WeeklyHours> allowed_hours{};  ///< empty = any hour
  std::vector<WeeklyHours> quiet_hours{};  ///< children in the garden: no run overlaps these on a school day
  std::vector<DatedHours> quiet_dates{};   ///< the same from a school timetable (iCalendar)
  std::vector<DatedSpan> holidays{};       ///< no quiet hours, and no caretaker who does not work then
  std::vector<std::string> quiet_calendars{};       ///< iCalendar files in the garden folder
  std::vector<std::string> holiday_calendars{};     ///< likewise
  std::vector<WateringRestriction> restrictions{};  ///< all hold together
  int drought_level = 0;                            ///< declared now; 0 = none
  double frost_lockout_c = 0;                       ///< no tap is opened on a day whose low is at or below it
  /// No overhead run in an hour with more wind (at 2 m). Stop at 4 m/s: Yacoubi et al. 2012, read in
  /// abstract.
  double wind_limit_m_s = 4;
};

/// The holiday that a date falls on, or nothing.
const DatedSpan* holiday_on(const WateringRules& rules, std::chrono::year_month_day date);

/// Whether a restriction is in force on a date at the drought level declared.
bool in_force(const WateringRestriction& restriction, std::chrono::year_month_day date, int drought_level);

/// Whether a restriction, where it is in force, lets water run on that date at all.
bool allows_date(const WateringRestriction& restriction, std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
