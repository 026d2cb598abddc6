#include <cstdio>

#include "noonleaf/reference/missing_data.hpp"
#include "noonleaf/reference/penman_monteith.hpp"
#include "noonleaf/weather/daily_file.hpp"

int main(int, char** words) {
  const noonleaf::Location campus{.latitude_deg = 46.07, .longitude_deg = -118.33, .elevation_m = 290};
  const noonleaf::WeatherFile file = noonleaf::read_daily_weather(words[1], "station.csv");
  double season_mm = 0;
  int days = 0, measured = 0, left_out = 0;
  for (const noonleaf::DailyWeather& day : file.days) {
    const noonleaf::DailyEstimate estimate = noonleaf::complete_daily(day, campus);
    if (!estimate.is_complete()) {  // no temperature: nothing to work with
      ++left_out;
      continue;
    }
    season_mm += noonleaf::daily_et0_mm_d(estimate, campus);
    ++days;
    measured += estimate.is_measured();
  }
  std::printf("%d days, %.0f mm; all inputs measured on %d of them; left out: %d\n", days, season_mm,
              measured, left_out);
}
