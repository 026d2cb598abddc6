#include "noonleaf/plan/required_weather.hpp"

#include <utility>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {

void require_weather(const Sky& sky, std::chrono::year_month_day date) {
  if (sky.find(std::chrono::sys_days(date)) != nullptr) return;
  Problem problem;
  problem.field = "date";
  problem.text = iso_date(date);
  problem.message = sky.empty() ? "there is no weather at all"
                                : "there is no weather for " + problem.text + "; the files hold " +
                                      iso_date(sky.days.front().weather.date) + " to " +
                                      iso_date(sky.days.back().weather.date);
  problem.fix =
      "add newer measurements or a forecast to the weather folder, or ask for a day within with --date";
  throw Error(std::move(problem));
}

}  // namespace v1
}  // namespace noonleaf
