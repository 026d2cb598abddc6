#include "site_day.hpp"

#include "noonleaf/garden/zone.hpp"

namespace noonleaf::cli {

std::chrono::year_month_day day_at(const Site& site,
                                   const std::optional<std::chrono::year_month_day>& asked) {
  if (asked) return *asked;
  if (site.demo_date) return *site.demo_date;
  const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  return local_time(site.zone, now).date;
}

}  // namespace noonleaf::cli
