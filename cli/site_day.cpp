#include "site_day.hpp"

namespace noonleaf::cli {

LocalTime clock_at(const Site& site) {
  return local_time(site.zone, std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now()));
}

LocalTime moment_at(const Site& site) {
  if (site.demo_date) return {*site.demo_date, std::chrono::minutes(0)};
  return clock_at(site);
}

std::chrono::year_month_day day_at(const Site& site,
                                   const std::optional<std::chrono::year_month_day>& asked) {
  return asked ? *asked : moment_at(site).date;
}

}  // namespace noonleaf::cli
