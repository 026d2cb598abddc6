#include <cstdio>
#include <vector>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/reference/missing_data.hpp"
#include "noonleaf/reference/penman_monteith.hpp"

// Stands for a data base, a web service, a logger: whatever gives numbers by day. What it lacks stays
// missing.
std::vector<noonleaf::DailyWeather> days_of_my_logger() {
  using namespace std::chrono_literals;
  return {{.date = 2025y / 7 / 14,
           .t_max_c = 31.2,
           .t_min_c = 15.4,
           .rh_max_pct = 78,
           .rh_min_pct = 29,
           .wind_m_s = 1.6,
           .rs_mj_m2_d = 26.1},
          {.date = 2025y / 7 / 15, .t_max_c = 33.0, .t_min_c = 16.1, .rh_mean_pct = 48, .sunshine_h = 12.5},
          {.date = 2025y / 7 / 16, .t_max_c = 34.5, .t_min_c = 17.0}};
}

int main() {
  const noonleaf::Location site{.latitude_deg = 46.07, .longitude_deg = -118.33, .elevation_m = 290};
  for (const noonleaf::DailyWeather& day : days_of_my_logger()) {
    const noonleaf::DailyEstimate estimate = noonleaf::complete_daily(day, site, {.wind_height_m = 10});
    const std::string estimated = noonleaf::estimated_phrases(estimate);
    std::printf("%s  ET0 %.2f mm  %s\n", noonleaf::iso_date(day.date).c_str(),
                noonleaf::daily_et0_mm_d(estimate, site),
                estimated.empty() ? "all measured" : estimated.c_str());
  }
}
