#pragma once

#include <chrono>
#include <optional>
#include <string>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/garden_file.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/weather/merge.hpp"

#include "invented_site.hpp"

/// One framed bed of tomatoes on loam, 10 m2, a sprinkler of 30 mm/h (even, in the bed), a custodian on
/// weekdays.
inline noonleaf::Garden invented_garden(const std::string& plantings) {
  return noonleaf::parse_garden(invented_site + R"([[caretaker]]
id = "custodian"
role = "custodian"
hours = ["mon-fri 06:00-14:00"]
[[tap]]
id = "t"
[[sprinkler]]
id = "s"
tap = "t"
cans_minutes = 20
cans_depth_mm = [10, 10, 10, 10]
[[bed]]
id = "a"
area_m2 = 10
sprinkler = "s"
soil = "loam"
framed = true
)" + plantings,
                                "garden.toml");
}

/// Tomatoes in the whole bed, set out on a day.
inline std::string tomatoes_from(const std::string& date) {
  return "[[bed.planting]]\ncrop = \"tomato\"\ntransplanted = " + date + "\n";
}

/// What happened at bed a on a day, without a time of day.
inline noonleaf::JournalEntry entry_of(noonleaf::JournalEvent event, std::chrono::year_month_day date) {
  noonleaf::JournalEntry entry;
  entry.event = event;
  entry.date = date;
  entry.bed = "a";
  return entry;
}

/// Water at bed a, opened at six or at the time given; {} leaves it open.
inline noonleaf::JournalEntry watered(std::chrono::year_month_day date, double minutes,
                                      std::optional<std::chrono::minutes> at = std::chrono::hours(6)) {
  noonleaf::JournalEntry entry = entry_of(noonleaf::JournalEvent::water, date);
  entry.time_of_day = at;
  entry.minutes = minutes;
  return entry;
}

/// A journal that says of the 14 days before `date` that bed a was not watered.
inline noonleaf::Journal nothing_ran_before(std::chrono::sys_days date) {
  noonleaf::Journal journal;
  for (int back = 1; back <= 14; ++back) {
    noonleaf::JournalEntry entry = entry_of(noonleaf::JournalEvent::water, date - std::chrono::days(back));
    entry.minutes = 0;
    journal.push_back(entry);
  }
  return journal;
}

/// Days of the same weather from `first` on: 15 to 30 °C, RH 35 to 80 %, 2 m/s, no rain.
inline noonleaf::DailySeries steady_weather(std::chrono::sys_days first, int days, int forecast_days = 0) {
  noonleaf::DailySeries series;
  for (int day = 0; day < days; ++day) {
    noonleaf::DailyWeather weather;
    weather.date = first + std::chrono::days(day);
    weather.t_min_c = 15;
    weather.t_max_c = 30;
    weather.rh_min_pct = 35;
    weather.rh_max_pct = 80;
    weather.wind_m_s = 2;
    weather.rs_mj_m2_d = 25;
    weather.rain_mm = 0;
    series.days.push_back(weather);
    series.origins.push_back(day < days - forecast_days ? noonleaf::DayOrigin::measured
                                                        : noonleaf::DayOrigin::forecast);
    noonleaf::WeatherQuantities forecast;
    if (day >= days - forecast_days) forecast.set();
    series.forecast.push_back(forecast);
  }
  return series;
}
