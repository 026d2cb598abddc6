// Forecasts of the US National Weather Service as its public interface gives them, from a saved file.
//
// Hourly periods: properties.periods[] with startTime, temperature (and temperatureUnit, or an object with
// unitCode and value), dewpoint, relativeHumidity, windSpeed as text. Raw grid: properties.<layer> = {uom,
// values: [{validTime, value}]}, validTime an ISO 8601 start and duration. Source: the layer list and schema
// of api.weather.gov, read; details of the values from memory.
#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <nlohmann/json.hpp>

#include "noonleaf/missing.hpp"
#include "noonleaf/units.hpp"
#include "noonleaf/weather/calendar_stamp.hpp"
#include "noonleaf/weather/decimal_number.hpp"
#include "noonleaf/weather/gathered_rows.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::json;
using Q = WeatherQuantity;

constexpr std::size_t most_bytes = std::size_t{64} << 20U;
constexpr std::int64_t hour_s = 3600, longest_span_s = std::int64_t{31} * 86'400;

// Sixty bytes of a file may stand for 31 days of hours; a forecast with more than these is none.
constexpr std::size_t most_hours = 366UL * 24, most_values = 20 * most_hours;

// "wmoUnit:degC" is "degC".
std::string_view bare_unit(std::string_view unit) {
  const std::size_t colon = unit.rfind(':');
  return colon == std::string_view::npos ? unit : unit.substr(colon + 1);
}

/// A start and an end in UTC, from "2024-07-01T06:00:00+00:00/PT3H".
struct Span {
  std::int64_t begin_s = 0, end_s = 0;
};

std::optional<std::int64_t> utc_of(std::string_view text) {
  const auto stamp = read_stamp(text, DateOrder::iso);
  if (!stamp.value || !stamp.value->offset) return std::nullopt;
  return stamp.value->seconds - stamp.value->offset->count();
}

// "P1DT6H", "PT30M": days, hours, minutes of an ISO 8601 duration.
std::optional<std::int64_t> duration_of(std::string_view text) {
  if (text.empty() || text.front() != 'P') return std::nullopt;
  text.remove_prefix(1);
  std::int64_t seconds = 0;
  bool time = false, any = false;
  while (!text.empty()) {
    if (text.front() == 'T' && !time) {
      time = true;
      text.remove_prefix(1);
      continue;
    }
    std::int64_t number = 0;
    const auto [stop, code] = std::from_chars(text.data(), text.data() + text.size(), number);
    const auto digits = static_cast<std::size_t>(stop - text.data());
    if (code != std::errc{} || number < 0 || number > 10'000 || digits == text.size()) return std::nullopt;
    const char unit = text[digits];
    if (!time && unit == 'D')
      seconds += number * 86'400;
    else if (time && unit == 'H')
      seconds += number * hour_s;
    else if (time && unit == 'M')
      seconds += number * 60;
    else
      return std::nullopt;
    any = true;
    text.remove_prefix(digits + 1);
  }
  return any ? std::optional(seconds) : std::nullopt;
}

std::optional<Span> span_of(std::string_view text) {
  const std::size_t slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  const auto begin = utc_of(text.substr(0, slash));
  const auto length = duration_of(text.substr(slash + 1));
  if (!begin || !length || *length <= 0 || *length > longest_span_s) return std::nullopt;
  return Span{*begin, *begin + *length};
}

// The value in the library's unit; none where the unit is not known.
std::optional<double> in_library_unit(Q quantity, double value, std::string_view unit) {
  if (quantity == Q::t_mean || quantity == Q::t_dew) {
    if (unit == "degC" || unit == "C") return value;
    if (unit == "degF" || unit == "F") return celsius_from_fahrenheit(value);
  } else if (quantity == Q::rh_mean) {
    if (unit == "percent") return value;
  } else if (quantity == Q::wind) {
    if (unit == "m_s-1") return value;
    if (unit == "km_h-1") return m_s_from_km_h(value);
    if (unit == "mi_h-1" || unit == "mph") return m_s_from_mph(value);
    if (unit == "kt" || unit == "kn") return m_s_from_knots(value);
  } else if (quantity == Q::rain) {
    if (unit == "mm") return value;
    if (unit == "in") return mm_from_inches(value);
  }
  return std::nullopt;
}

// A text member; empty where there is none or it is something else.
std::string text_of(const Json& object, const char* name) {
  return object.contains(name) && object[name].is_string() ? object[name].get<std::string>() : std::string{};
}

struct Layer {
  const char* name;
  Q quantity;
};
constexpr std::array grid_layers{Layer{"temperature", Q::t_mean}, Layer{"dewpoint", Q::t_dew},
                                 Layer{"relativeHumidity", Q::rh_mean}, Layer{"windSpeed", Q::wind},
                                 Layer{"quantitativePrecipitation", Q::rain}};

class ForecastJson final : public GatheredRows {
 public:
  ForecastJson(std::unique_ptr<TextSource> text, std::string_view format, const Json& document)
      : GatheredRows(std::move(text), std::string(format), WeatherStep::hour, WeatherKind::forecast) {
    const Json& properties = document["properties"];
    for (const char* name : {"updateTime", "updated", "generatedAt"}) {
      if (issued_ || !properties.contains(name) || !properties[name].is_string()) continue;
      if (const auto time = utc_of(properties[name].get<std::string>()))
        issued_ = std::chrono::sys_seconds(std::chrono::seconds(*time));
    }
    if (properties.contains("periods")) {
      read_periods(properties["periods"]);
    } else {
      read_grid(properties);
    }
    for (auto& [begin, row] : hours_) rows_.push_back(row);
    if (rows_.empty())
      refuse(source().problem(0, "the forecast holds no hour",
                              "save the hourly forecast or the raw grid again"));
  }

 private:
  void refuse_value(const std::string& path, std::string message) {
    Problem found = source().problem(0, std::move(message), "save the forecast again");
    found.field = path;
    refuse(std::move(found));
  }

  TableRow& hour_at(std::int64_t begin_s) {
    if (hours_.size() > most_hours || ++values_ > most_values)
      throw Error(
          source().problem(0, "the forecast holds more than a year of hours, or the same hours over and over",
                           "save the forecast again"));
    auto [known, is_new] = hours_.try_emplace(begin_s);
    if (is_new) {
      known->second.stamp = {.seconds = begin_s, .offset = std::chrono::seconds{0}};
      known->second.values.fill(missing);
    }
    return known->second;
  }

  void put(std::int64_t begin_s, Q quantity, double value) {
    hour_at(begin_s).values[static_cast<std::size_t>(quantity)] = value;
  }

  void read_periods(const Json& periods) {
    if (!periods.is_array()) return refuse_value("properties.periods", "this is not a list");
    for (std::size_t index = 0; index < periods.size(); ++index) {
      const std::string path = "periods[" + std::to_string(index) + "]";
      const Json& period = periods[index];
      const bool timed =
          period.is_object() && period.contains("startTime") && period["startTime"].is_string();
      const auto begin = timed ? utc_of(period["startTime"].get<std::string>()) : std::nullopt;
      if (!begin) {
        refuse_value(path + ".startTime", "this is not a time with its offset");
        continue;
      }
      if (period.contains("endTime") && period["endTime"].is_string()) {
        const auto end = utc_of(period["endTime"].get<std::string>());
        if (end && *end - *begin != hour_s) {
          refuse_value(path, "the period is not an hour long: this is the 12-hour forecast");
          continue;
        }
      }
      read_period(period, *begin, path);
    }
    notes_.push_back("an hourly forecast gives no amount of rain: rain is missing, not 0");
  }

  void read_period(const Json& period, std::int64_t begin_s, const std::string& path) {
    hour_at(begin_s);
    const std::string unit = text_of(period, "temperatureUnit");
    take(period, "temperature", unit, begin_s, Q::t_mean, path);
    take(period, "dewpoint", {}, begin_s, Q::t_dew, path);
    take(period, "relativeHumidity", {}, begin_s, Q::rh_mean, path);
    take(period, "windSpeed", {}, begin_s, Q::wind, path);
  }

  // A number beside its unit, an object with unitCode and value, or text with both ("5 to 10 mph").
  void take(const Json& period, const char* name, const std::string& unit, std::int64_t begin_s, Q quantity,
            const std::string& path) {
    if (!period.contains(name) || period[name].is_null()) return;
    const Json& entry = period[name];
    const std::string place = path + "." + name;
    if (entry.is_string()) return take_text(entry.get<std::string>(), begin_s, quantity, place);
    if (entry.is_number()) return take_number(entry.get<double>(), unit, begin_s, quantity, place);
    if (!entry.is_object() || !entry.contains("value"))
      return refuse_value(place, "this is neither a number nor a value with its unit");
    if (entry["value"].is_null()) return;
    if (!entry["value"].is_number()) return refuse_value(place + ".value", "this is not a number");
    take_number(entry["value"].get<double>(), text_of(entry, "unitCode"), begin_s, quantity, place);
  }

  void take_number(double number, std::string_view unit, std::int64_t begin_s, Q quantity,
                   const std::string& place) {
    const auto value = in_library_unit(quantity, number, bare_unit(unit));
    if (!value) return refuse_value(place, "the unit " + in_quotes(unit) + " is not known");
    put(begin_s, quantity, *value);
  }

  // The middle of a range stands for it.
  void take_text(const std::string& text, std::int64_t begin_s, Q quantity, const std::string& place) {
    double sum = 0.0;
    int count = 0;
    std::string unit;
    for (std::size_t word_begin = 0; word_begin < text.size();) {
      const std::size_t word_end = std::min(text.find(' ', word_begin), text.size());
      const std::string word = text.substr(word_begin, word_end - word_begin);
      word_begin = word_end + 1;
      if (const auto number = parse_decimal(word, '.')) {
        sum += *number;
        ++count;
      } else if (word != "to" && !word.empty()) {
        unit = word;
      }
    }
    if (count < 1 || count > 2) return refuse_value(place, in_quotes(text) + " is not a number or a range");
    const auto value = in_library_unit(quantity, sum / count, unit == "km/h" ? "km_h-1" : unit);
    if (!value) return refuse_value(place, in_quotes(text) + " has no unit that is known");
    put(begin_s, quantity, *value);
  }

  void read_grid(const Json& properties) {
    for (const Layer& layer : grid_layers) {
      const std::string path = std::string("properties.") + layer.name;
      if (!properties.contains(layer.name)) continue;
      const Json& content = properties[layer.name];
      if (!content.is_object() || !content.contains("values") || !content["values"].is_array()) {
        refuse_value(path, "the layer has no list of values");
        continue;
      }
      read_layer(content, layer.quantity, path);
    }
  }

  void read_layer(const Json& content, Q quantity, const std::string& path) {
    const std::string unit = text_of(content, "uom");
    const Json& values = content["values"];
    for (std::size_t index = 0; index < values.size(); ++index) {
      const std::string place = path + ".values[" + std::to_string(index) + "]";
      const Json& entry = values[index];
      const bool timed = entry.is_object() && entry.contains("validTime") && entry["validTime"].is_string();
      const auto span = timed ? span_of(entry["validTime"].get<std::string>()) : std::nullopt;
      if (!span) {
        refuse_value(place + ".validTime",
                     "this is not a start and a duration, like 2024-07-01T06:00:00+00:00/PT3H");
        continue;
      }
      if (!entry.contains("value") || entry["value"].is_null()) continue;
      if (!entry["value"].is_number()) {
        refuse_value(place + ".value", "this is not a number");
        continue;
      }
      const auto value = in_library_unit(quantity, entry["value"].get<double>(), bare_unit(unit));
      if (!value) return refuse_value(path + ".uom", "the unit " + in_quotes(unit) + " is not known");
      spread(*span, quantity, *value);
    }
  }

  // A state holds in every hour of its span; an amount is spread over them and never repeated.
  void spread(const Span& span, Q quantity, double value) {
    const std::int64_t first = span.begin_s - ((span.begin_s % hour_s) + hour_s) % hour_s;
    const double span_s = static_cast<double>(span.end_s - span.begin_s);
    for (std::int64_t begin = first; begin < span.end_s; begin += hour_s) {
      const std::int64_t overlap_s = std::min(begin + hour_s, span.end_s) - std::max(begin, span.begin_s);
      if (quantity != Q::rain) {
        put(begin, quantity, value);
        continue;
      }
      double& rain = hour_at(begin).values[static_cast<std::size_t>(quantity)];
      rain = (is_missing(rain) ? 0.0 : rain) + value * static_cast<double>(overlap_s) / span_s;
    }
  }

  std::map<std::int64_t, TableRow> hours_;
  std::size_t values_ = 0;  // put into hours
};

[[noreturn]] void refuse_json(const TextSource& source, std::string message) {
  throw Error(source.problem(0, std::move(message),
                             "save the hourly forecast or the raw grid of api.weather.gov as it comes"));
}

Json parsed(const TextSource& source, const std::string& bytes) {
  try {
    return Json::parse(bytes);
  } catch (const Json::parse_error& broken) {
    const std::size_t last = bytes.find_last_not_of(" \t\r\n");  // a file cut off breaks at its last text
    const auto end = bytes.begin() + static_cast<std::ptrdiff_t>(std::min(broken.byte, last));
    const auto line = 1 + static_cast<std::size_t>(std::count(bytes.begin(), end, '\n'));
    throw Error(
        source.problem(line, "the JSON is broken here: the file may be cut off", "save the forecast again"));
  } catch (const Json::exception& broken) {  // a number beyond the range of double
    throw Error(source.problem(0, "the JSON cannot be read: " + valid_utf8(broken.what()),
                               "save the forecast again"));
  }
}

}  // namespace

bool is_forecast_json(std::string_view bytes) {
  const std::size_t first = bytes.find_first_not_of(" \t\r\n");
  return first != std::string_view::npos && (bytes[first] == '{' || bytes[first] == '[');
}

std::unique_ptr<RowSource> read_forecast_json(std::unique_ptr<TextSource> source) {
  const Json document = parsed(*source, source->take_all(most_bytes));
  const bool has_properties =
      document.is_object() && document.contains("properties") && document["properties"].is_object();
  if (!has_properties)
    refuse_json(*source, "this is JSON, but no forecast that is known: it has no properties");
  const Json& properties = document["properties"];
  const bool periods = properties.contains("periods");
  if (!periods && !properties.contains("temperature"))
    refuse_json(
        *source,
        "this is JSON, but no forecast that is known: it has neither periods nor a layer of temperature");
  const std::string_view format = periods ? "NWS hourly forecast, JSON" : "NWS gridpoint forecast, JSON";
  return std::make_unique<ForecastJson>(std::move(source), format, document);
}

}  // namespace v1
}  // namespace noonleaf
