#include <cmath>
#include <cstdio>
#include <numbers>
#include <vector>

#include "noonleaf/reference/daily_batch.hpp"

int main() {
  constexpr std::size_t gardens = 1000, days = 365;
  std::vector<noonleaf::Location> sites(gardens);
  std::vector<double> t_max_c(gardens * days), t_min_c(gardens * days), ea_kpa(gardens * days),
      rs(gardens * days), u2_m_s(gardens * days, 2.0);
  std::vector<double> et0_mm_d(gardens * days);
  for (std::size_t s = 0; s < gardens; ++s) {
    sites[s] = {.latitude_deg = 30 + 0.02 * static_cast<double>(s), .longitude_deg = 0, .elevation_m = 200};
    for (std::size_t d = 0; d < days; ++d) {  // made-up weather: a cosine over the year
      const double season = std::cos(2 * std::numbers::pi * (static_cast<double>(d) - 200) / 365);
      const std::size_t i = s * days + d;
      t_max_c[i] = 18 + 10 * season, t_min_c[i] = 8 + 8 * season, ea_kpa[i] = 1.1 + 0.4 * season,
      rs[i] = 14 + 8 * season;
    }
  }
  const noonleaf::StationColumns columns{.first_site = {.day = {.first = std::chrono::year{2025} / 1 / 1},
                                                        .t_max_c = {t_max_c.data()},
                                                        .t_min_c = {t_min_c.data()},
                                                        .ea_kpa = {ea_kpa.data()},
                                                        .rs_mj_m2_d = {rs.data()},
                                                        .u2_m_s = {u2_m_s.data()}},
                                         .site_stride = days,
                                         .result_site_stride = days};
  const noonleaf::BadRows bad =
      noonleaf::daily_et0_mm_d(sites, columns, days, {et0_mm_d.data()}, noonleaf::Equation::fao56,
                               noonleaf::Surface::short_crop, {.count = 2});
  const auto year_mm = [&](std::size_t s) {
    double sum = 0;
    for (std::size_t d = 0; d < days; ++d) sum += et0_mm_d[s * days + d];
    return sum;
  };
  std::printf("%zu values, %zu bad rows; at 30 N %.0f mm a year, at 50 N %.0f mm\n", et0_mm_d.size(),
              bad.size(), year_mm(0), year_mm(gardens - 1));
}
