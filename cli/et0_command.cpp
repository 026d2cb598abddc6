#include <cmath>
#include <cstdio>
#include <string>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "noonleaf/calendar_text.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/reference/missing_data.hpp"
#include "noonleaf/reference/penman_monteith.hpp"
#include "noonleaf/weather/weather_reader.hpp"
#include "terminal.hpp"

namespace noonleaf::cli {
namespace {

using Json = nlohmann::ordered_json;

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
  if (!arguments.where.empty()) options.where = RowFilter{arguments.where.front().first, arguments.where.front().second};
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

/// A day worked out, with what its row needs.
struct Row {
  DailyEstimate estimate{};
  DailyEt0Detail detail{};
  std::string estimated{};
};

/// Writes rows in the format asked for, a block at a time.
class RowWriter {
 public:
  explicit RowWriter(const Et0Arguments& arguments)
      : arguments_(arguments), columns_(daily_et0_columns(equation_of(arguments))) {}

  void begin() {
    if (arguments_.format == Et0Arguments::Format::json) {
      block_ += fmt::format("{{\"shape\": \"noonleaf.et0\", \"version\": 1, \"equation\": \"{}\", \"surface\": \"{}\", \"days\": [",
                            arguments_.equation == Et0Arguments::Equation::asce ? "asce" : "fao56",
                            arguments_.surface == Et0Arguments::Surface::tall ? "tall" : "short");
      return;
    }
    block_ += "date,et0_mm,estimated";
    for (const DailyEt0Column& column : columns_) {
      if (is_wanted(column)) block_ += fmt::format(",{}", column.header);
    }
    block_ += "\n";
  }

  void add(const Row& row) {
    if (arguments_.format == Et0Arguments::Format::json) {
      add_json(row);
    } else {
      add_csv(row);
    }
    if (block_.size() > flush_bytes) flush();
  }

  void end() {
    if (arguments_.format == Et0Arguments::Format::json) block_ += "\n]}\n";
    flush();
  }

 private:
  static constexpr std::size_t flush_bytes = 1 << 16;

  bool is_wanted(const DailyEt0Column& column) const {
    return arguments_.detail && column.value != &DailyEt0Detail::et0_mm_d;
  }

  std::string number(double value) const {
    if (is_missing(value)) return {};
    std::string text = fmt::format("{:.{}f}", value, arguments_.precision);
    const bool is_zero = text.find_first_of("123456789") == std::string::npos;
    return is_zero && text.front() == '-' ? text.substr(1) : text;
  }

  void add_csv(const Row& row) {
    block_ += fmt::format("{},{},{}", iso_date(row.estimate.date), number(row.detail.et0_mm_d), row.estimated);
    for (const DailyEt0Column& column : columns_) {
      if (is_wanted(column)) block_ += "," + number(row.detail.*column.value);
    }
    block_ += "\n";
  }

  Json rounded(double value) const {
    if (is_missing(value)) return nullptr;
    const double scale = std::pow(10.0, arguments_.precision);
    return std::round(value * scale) / scale;
  }

  void add_json(const Row& row) {
    Json day{{"date", iso_date(row.estimate.date)}, {"et0_mm", rounded(row.detail.et0_mm_d)}, {"estimated", row.estimated}};
    for (const DailyEt0Column& column : columns_) {
      if (is_wanted(column)) day[std::string(column.header)] = rounded(row.detail.*column.value);
    }
    block_ += (first_ ? "\n" : ",\n") + day.dump();
    first_ = false;
  }

  void flush() {
    print(block_);
    block_.clear();
  }

  const Et0Arguments& arguments_;
  std::span<const DailyEt0Column> columns_;
  std::string block_;
  bool first_ = true;
};

Row row_of(const DailyWeather& weather, const Et0Arguments& arguments) {
  Row row;
  row.estimate = complete_daily(weather, location_of(arguments), ladder_options(arguments));
  row.detail = daily_et0(row.estimate, location_of(arguments), equation_of(arguments), surface_of(arguments));
  row.estimated = row.estimate.is_complete() ? estimated_codes(row.estimate) : "temperature=none";
  return row;
}

void require_possible(const Et0Arguments& arguments) {
  if (arguments.surface != Et0Arguments::Surface::tall || arguments.equation == Et0Arguments::Equation::asce) return;
  Problem problem;
  problem.field = "--surface";
  problem.message = "FAO-56 knows the short reference surface only";
  problem.fix = "add --equation asce for the tall one";
  throw Error(std::move(problem));
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
  WeatherReader(arguments.file, arguments.file, options).read_through();  // nothing is written unless all is readable
  WeatherReader reader(arguments.file, arguments.file, options);
  RowWriter writer(arguments);
  writer.begin();
  for (auto days = reader.next_days(); !days.empty(); days = reader.next_days()) {
    for (const DailyWeather& day : days) writer.add(row_of(day, arguments));
  }
  writer.end();
  say(reader);
  return 0;
}

}  // namespace noonleaf::cli
