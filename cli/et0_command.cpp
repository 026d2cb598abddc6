#include <chrono>
#include <cstdio>
#include <string>
#include <unistd.h>

#include <fmt/format.h>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/zone.hpp"
#include "noonleaf/reference/hourly.hpp"
#include "noonleaf/reference/missing_data.hpp"
#include "noonleaf/reference/penman_monteith.hpp"
#include "noonleaf/weather/weather_reader.hpp"

#include "commands.hpp"
#include "et0_table.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

Equation equation_of(const Et0Arguments& arguments) {
  return arguments.equation == Et0Arguments::Equation::asce ? Equation::asce : Equation::fao56;
}

Surface surface_of(const Et0Arguments& arguments) {
  return arguments.surface == Et0Arguments::Surface::tall ? Surface::tall_crop : Surface::short_crop;
}

Location location_of(const Et0Arguments& arguments) {
  return {arguments.latitude_deg, arguments.longitude_deg, arguments.elevation_m};
}

WeatherOptions weather_options(const Et0Arguments& arguments) {
  WeatherOptions options;
  for (const auto& [name, header] : arguments.columns) options.columns[name] = header;
  if (!arguments.where.empty())
    options.where = RowFilter{arguments.where.front().first, arguments.where.front().second};
  options.zone = arguments.zone;
  options.site = location_of(arguments);
  options.strictness = arguments.strict ? Strictness::strict : Strictness::lenient;
  options.accept = arguments.accepted_checks;
  options.ignore = arguments.ignored;
  options.stamps = arguments.stamps;
  options.date_order = arguments.date_order;
  return options;
}

LadderOptions ladder_options(const Et0Arguments& arguments) {
  LadderOptions options;
  options.wind_height_m = arguments.wind_height_m;
  options.dryness = arguments.arid ? Dryness::arid : Dryness::humid;
  options.setting = arguments.coast ? Setting::coast : Setting::interior;
  return options;
}

/// Headers of the detail columns (all but ET0 itself, which has its own), when they are asked for.
template <class Columns, class Member>
std::vector<std::string_view> detail_headers(const Et0Arguments& arguments, const Columns& columns,
                                             Member et0) {
  std::vector<std::string_view> headers;
  for (const auto& column : columns) {
    if (arguments.detail && column.value != et0) headers.push_back(column.header);
  }
  return headers;
}

template <class Columns, class Detail, class Member>
std::vector<double> detail_values(const Et0Arguments& arguments, const Columns& columns, const Detail& detail,
                                  Member et0) {
  std::vector<double> values;
  for (const auto& column : columns) {
    if (arguments.detail && column.value != et0) values.push_back(detail.*column.value);
  }
  return values;
}

/// How far a long file has been read, on a terminal only.
class ProgressLine {
 public:
  void show(const WeatherReader& reader) {
    const ReadProgress progress = reader.progress();
    if (isatty(STDERR_FILENO) == 0 || progress.bytes_in_file.value_or(0) < long_file_bytes) return;
    const auto percent = static_cast<int>(100 * progress.bytes_read / *progress.bytes_in_file);
    if (percent == shown_) return;
    shown_ = percent;
    std::fprintf(stderr, "\rreading: %d %%%s", percent, percent == 100 ? "\n" : "");
  }

 private:
  static constexpr std::uint64_t long_file_bytes = 50'000'000;
  int shown_ = -1;
};

void write_days(WeatherReader& reader, const Et0Arguments& arguments) {
  const auto columns = daily_et0_columns(equation_of(arguments));
  Et0Table table(arguments, {.key = "date",
                             .rows = "days",
                             .detail = detail_headers(arguments, columns, &DailyEt0Detail::et0_mm_d)});
  ProgressLine progress;
  for (auto days = reader.next_days(); !days.empty(); days = reader.next_days()) {
    for (const DailyWeather& day : days) {
      const DailyEstimate estimate = complete_daily(day, location_of(arguments), ladder_options(arguments));
      const DailyEt0Detail detail =
          daily_et0(estimate, location_of(arguments), equation_of(arguments), surface_of(arguments));
      table.add({.key = iso_date(day.date),
                 .et0_mm = detail.et0_mm_d,
                 .estimated = estimate.is_complete() ? estimated_codes(estimate) : "temperature=none",
                 .detail = detail_values(arguments, columns, detail, &DailyEt0Detail::et0_mm_d)});
    }
    progress.show(reader);
  }
  table.end();
}

HourRecord record_of(const HourlyWeather& hour) {
  return {.begin = hour.begin,
          .length = hour.length,
          .t_c = hour.t_c,
          .rh_pct = hour.rh_pct,
          .t_dew_c = hour.t_dew_c,
          .ea_kpa = hour.ea_kpa,
          .wind_m_s = hour.wind_m_s,
          .rs_mj_m2_h = hour.rs_mj_m2_h,
          .sunshine_h = hour.sunshine_h,
          .pressure_kpa = hour.pressure_kpa};
}

std::string estimated_of(const HourEstimate& estimate, const HourlyWeather& hour) {
  std::string text;
  const auto add = [&text](std::string_view word) { text += (text.empty() ? "" : " ") + std::string(word); };
  if (estimate.radiation != RadiationFrom::measured) add("rs=" + std::string(code(estimate.radiation)));
  if (estimate.humidity == HumidityFrom::none) add("ea=none");
  if (estimate.wind == WindFrom::usual_wind) add("u2=" + std::string(code(estimate.wind)));
  if (hour.interpolated.any()) add("interpolated");
  return text;
}

/// "2018-01-01T13:00Z"
std::string utc_text(std::chrono::sys_seconds moment) {
  const auto day = std::chrono::floor<std::chrono::days>(moment);
  return iso_date(std::chrono::year_month_day(day)) + "T" +
         clock_text(std::chrono::duration_cast<std::chrono::minutes>(moment - day)) + "Z";
}

/// Adds hours up to days of the site's zone.
class DaySum {
 public:
  DaySum(const Et0Arguments& arguments, Et0Table& table) : arguments_(arguments), table_(table) {}

  void add(const HourlyWeather& hour, double et0_mm, const std::string& estimated) {
    const auto date = local_time(arguments_.zone, hour.begin).date;
    if (hours_ > 0 && date != date_) close();
    date_ = date;
    covered_ += hour.length;
    ++hours_;
    et0_mm_ += et0_mm;  // a missing hour makes the day missing
    if (!estimated.empty()) ++estimated_hours_;
  }

  void close() {
    if (hours_ == 0) return;
    const auto next_day = std::chrono::sys_days{date_} + std::chrono::days{1};
    const bool whole = covered_ >= elapsed(arguments_.zone, {date_, {}}, {next_day, {}});  // 23 to 25 hours
    std::string estimated =
        estimated_hours_ == 0 ? "" : fmt::format("{} of {} hours", estimated_hours_, hours_);
    if (!whole)
      estimated = fmt::format("only {:.1f} hours of data", static_cast<double>(covered_.count()) / 3600.0);
    table_.add({.key = iso_date(date_), .et0_mm = whole ? et0_mm_ : missing, .estimated = estimated});
    covered_ = {};
    hours_ = estimated_hours_ = 0;
    et0_mm_ = 0;
  }

 private:
  const Et0Arguments& arguments_;
  Et0Table& table_;
  std::chrono::year_month_day date_{};
  std::chrono::seconds covered_{};
  int hours_ = 0, estimated_hours_ = 0;
  double et0_mm_ = 0;
};

void write_hours(WeatherReader& reader, const Et0Arguments& arguments) {
  const auto columns = hourly_et0_columns(equation_of(arguments));
  const bool sums = arguments.days_of_hours == Et0Arguments::DaysOfHours::summed;
  Et0Table table(arguments,
                 {.key = sums ? "date" : "time",
                  .rows = sums ? "days" : "hours",
                  .detail = sums ? std::vector<std::string_view>{}
                                 : detail_headers(arguments, columns, &HourlyEt0Detail::et0_mm_h)});
  HourlySeries series(location_of(arguments), equation_of(arguments), surface_of(arguments),
                      arguments.arid ? Dryness::arid : Dryness::humid);
  DaySum days(arguments, table);
  ProgressLine progress;
  for (auto hours = reader.next_hours(); !hours.empty(); hours = reader.next_hours()) {
    for (const HourlyWeather& hour : hours) {
      const HourEstimate estimate =
          complete_hour(record_of(hour), location_of(arguments), ladder_options(arguments));
      const HourlyEt0Detail detail = series.next(estimate.inputs);
      const double et0_mm = detail.et0_mm_h * static_cast<double>(hour.length.count()) / 3600.0;
      const std::string estimated = estimated_of(estimate, hour);
      if (sums) {
        days.add(hour, et0_mm, estimated);
      } else {
        table.add({.key = utc_text(hour.begin),
                   .et0_mm = et0_mm,
                   .estimated = estimated,
                   .detail = detail_values(arguments, columns, detail, &HourlyEt0Detail::et0_mm_h)});
      }
    }
    progress.show(reader);
  }
  days.close();
  table.end();
}

[[noreturn]] void refuse(std::string field, std::string message, std::string fix) {
  Problem problem;
  problem.field = std::move(field);
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

void require_possible(const Et0Arguments& arguments) {
  if (arguments.surface == Et0Arguments::Surface::tall &&
      arguments.equation != Et0Arguments::Equation::asce) {
    refuse("--surface", "FAO-56 knows the short reference surface only",
           "add --equation asce for the tall one");
  }
}

void require_place_of_sun(const Et0Arguments& arguments) {
  if (is_missing(arguments.longitude_deg)) {
    refuse("--longitude", "hours need the longitude, since the sun's hour depends on it",
           "add it, east positive: --longitude -118.33");
  }
}

/// What the reader has to say, on stderr, so that stdout stays a clean table.
void say(const WeatherReader& reader) {
  for (const std::string& note : reader.notes()) std::fprintf(stderr, "note: %s\n", note.c_str());
  const auto list = [](std::string_view what, const std::vector<Finding>& findings) {
    if (findings.empty()) return;
    std::fprintf(stderr, "%s:\n%s", std::string(what).c_str(), describe(problems_of(findings)).c_str());
  };
  list("set aside as missing", reader.set_aside());
  list("doubtful, used all the same", reader.doubts());
}

}  // namespace

int run(const Et0Arguments& arguments) {
  require_possible(arguments);
  const WeatherOptions options = weather_options(arguments);
  WeatherReader(arguments.file, arguments.file, options)
      .read_through();  // nothing is written unless all is readable
  WeatherReader reader(arguments.file, arguments.file, options);
  const bool days_wanted = arguments.days_of_hours == Et0Arguments::DaysOfHours::daily_equation;
  if (reader.step() == WeatherStep::hour && !days_wanted) {
    require_place_of_sun(arguments);
    write_hours(reader, arguments);
  } else {
    write_days(reader, arguments);
  }
  say(reader);
  return 0;
}

}  // namespace noonleaf::cli
