#pragma once

#include <chrono>
#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/weather/checks.hpp"
#include "noonleaf/weather/hourly_weather.hpp"
#include "noonleaf/weather/options.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Whether the days of a file have been or are expected.
enum class WeatherKind { measured, forecast };

/// One weather file as read: its days, and everything that has to be said about them.
struct WeatherFile {
  std::string name{};                        ///< as the user typed it
  WeatherKind kind = WeatherKind::measured;  ///< by the file's name (weather_kind)
  std::string format{};                      ///< "weather CSV, daily", "NOAA GHCN-Daily by station", …
  std::vector<DailyWeather> days{};          ///< sorted by date, each date once; may have gaps
  std::vector<std::size_t> lines{};    ///< line of each day in the file; 0 where a day has no single line
  std::vector<HourlyWeather> hours{};  ///< of an hourly file; sorted; else empty
  std::vector<std::string> notes{};    ///< plain sentences: ignored columns, accepted checks, checks not done
  std::vector<Finding> set_aside{};    ///< values that cannot be true; they are missing in `days` and `hours`
  std::vector<Finding> doubts{};       ///< values that were used all the same
  std::optional<std::chrono::sys_seconds> issued{};  ///< when a forecast was made, if it says so
};

/// Whether a file holds measurements or a forecast, by its name: "forecast*" is a forecast.
WeatherKind weather_kind(const std::filesystem::path& file);

/// The days of a weather file: the canonical CSV (docs/weather.md), daily or hourly, or one of the open
/// formats, recognised by content. Hours become days of the site's zone (days_from_hours).
///
/// Input     file        what to open; shown_name  how messages call it
/// Result    days sorted by date, each once
/// Missing   an empty cell is missing; a value that cannot be true is set aside and missing
/// Throws    Error with every problem of the file: not found, not readable, empty, not text, no header, no
///           key column, unknown or doubled columns, two units for one quantity, a broken row, text in a
///           number, a date that does not exist; under Strictness::strict also every set-aside or doubtful
///           value
WeatherFile read_daily_weather(const std::filesystem::path& file, std::string shown_name,
                               const WeatherOptions& options = {});

/// The same, for a file of hours or shorter periods; sub-hourly rows are brought to clock hours.
/// Throws    Error also when the file holds days
WeatherFile read_hourly_weather(const std::filesystem::path& file, std::string shown_name,
                                const WeatherOptions& options);

}  // namespace v1
}  // namespace noonleaf
