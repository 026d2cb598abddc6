#include "weather_checks.hpp"

#include <array>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/daily_members.hpp"
#include "noonleaf/weather/merge.hpp"
#include "noonleaf/weather/own_years.hpp"
#include "noonleaf/weather/weather_reader.hpp"

#include "fuzz_target.hpp"

namespace fuzz {
namespace {

void check_day(const noonleaf::DailyWeather& day) {
  require(day.date.ok(), "a day exists");
  for (const auto member : noonleaf::daily_members)
    require(missing_or_finite(day.*member), "a value of a day is a number");
  require(!(day.t_min_c > day.t_max_c), "the lowest temperature is not above the highest");
}

void check_hour(const noonleaf::HourlyWeather& hour) {
  for (const double value : {hour.t_c, hour.rh_pct, hour.t_dew_c, hour.ea_kpa, hour.wind_m_s, hour.rs_mj_m2_h,
                             hour.sunshine_h, hour.pressure_kpa, hour.rain_mm})
    require(missing_or_finite(value), "a value of an hour is a number");
  require(hour.length.count() > 0, "an hour has a length");
}

void check_findings(const noonleaf::WeatherFile& file) {
  for (const auto* list : {&file.set_aside, &file.doubts}) {
    for (const noonleaf::Finding& finding : *list)
      require(!finding.problem.message.empty() && !finding.problem.fix.empty(),
              "a finding says what and how");
  }
}

void check_file(const noonleaf::WeatherFile& file) {
  require(file.lines.size() == file.days.size(), "each day has its line");
  for (std::size_t day = 0; day < file.days.size(); ++day) {
    check_day(file.days[day]);
    require(day == 0 ||
                std::chrono::sys_days(file.days[day - 1].date) < std::chrono::sys_days(file.days[day].date),
            "days are sorted, each once");
  }
  for (std::size_t hour = 0; hour < file.hours.size(); ++hour) {
    check_hour(file.hours[hour]);
    require(hour == 0 || file.hours[hour - 1].begin < file.hours[hour].begin, "hours are sorted, each once");
  }
  check_findings(file);
}

void check_series(const noonleaf::WeatherFile& file) {
  noonleaf::DailySeries series = noonleaf::merge_daily_weather({&file, 1});
  require(series.days.size() >= file.days.size(), "a series has every day of its file");
  noonleaf::bridge_with_own_years(series, {});
  for (const noonleaf::DailyWeather& day : series.days) check_day(day);
}

}  // namespace

noonleaf::WeatherOptions weather_options() {
  noonleaf::WeatherOptions options;
  options.zone = "America/Chicago";
  options.site = {.latitude_deg = 41.9, .longitude_deg = -87.6, .elevation_m = 180};
  return options;
}

void read_as_days(std::string_view bytes, const noonleaf::WeatherOptions& options) {
  const InputFile file(bytes);
  done(bytes, [&] {
    const auto whole = noonleaf::read_daily_weather(file.path(), "w.csv", options);
    check_file(whole);
    check_series(whole);
  });
  done(bytes, [&] {
    noonleaf::WeatherReader reader(file.path(), "w.csv", options);
    for (auto days = reader.next_days(); !days.empty(); days = reader.next_days()) {
      for (const noonleaf::DailyWeather& day : days) check_day(day);
    }
  });
}

void read_as_hours(std::string_view bytes, const noonleaf::WeatherOptions& options) {
  const InputFile file(bytes);
  done(bytes, [&] { check_file(noonleaf::read_hourly_weather(file.path(), "w.csv", options)); });
  done(bytes, [&] {
    noonleaf::WeatherReader reader(file.path(), "w.csv", options);
    for (auto hours = reader.next_hours(); !hours.empty(); hours = reader.next_hours()) {
      for (const noonleaf::HourlyWeather& hour : hours) check_hour(hour);
    }
  });
  done(bytes, [&] { noonleaf::WeatherReader(file.path(), "w.csv", options).read_through(); });
}

}  // namespace fuzz
