#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/weather/hourly_weather.hpp"
#include "noonleaf/weather/site_zone.hpp"

namespace noonleaf {
inline namespace v1 {

/// Adds hours up to days of a zone, one after the other; days_from_hours says by what rule.
class DayBuilder {
 public:
  explicit DayBuilder(const std::string& zone);

  /// Takes the next hour; a day that it completes is appended to `days`.
  void push(const HourlyWeather& hour, std::vector<DailyWeather>& days);
  /// Appends the day that is open.
  void finish(std::vector<DailyWeather>& days);

  /// Sentences on days that some of their hours do not cover; taking empties the list.
  std::vector<std::string> take_incomplete();

 private:
  struct Total {
    double sum = 0.0;  // of value times length in hours
    double low = 0.0, high = 0.0;
    std::int64_t known_s = 0;
  };

  void open(std::int32_t day);
  void close(std::vector<DailyWeather>& days);
  const Total* whole(WeatherQuantity quantity);
  double mean(WeatherQuantity quantity);
  double sum(WeatherQuantity quantity);
  void add(WeatherQuantity quantity, double value, double weight, std::int64_t length_s);
  std::int64_t midnight_utc(std::int32_t day);

  SiteZone zone_;
  std::optional<std::int32_t> day_{};
  std::int64_t day_length_s_ = 86'400;
  std::array<Total, weather_quantity_count> totals_{};
  std::string lacking_{};  // what the open day has only in part
  std::vector<std::string> incomplete_{};
};

}  // namespace v1
}  // namespace noonleaf
