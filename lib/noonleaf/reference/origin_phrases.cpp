#include <string>

#include "noonleaf/reference/missing_data.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// The two texts of one enumerator.
struct Words {
  std::string_view code, phrase;
};

Words words(TemperatureFrom from) {
  switch (from) {
    case TemperatureFrom::measured:
      return {"measured", "temperature measured"};
    case TemperatureFrom::none:
      break;
  }
  return {"none", "temperature missing"};
}

Words words(RadiationFrom from) {
  switch (from) {
    case RadiationFrom::measured:
      return {"measured", "sun measured"};
    case RadiationFrom::sunshine:
      return {"sunshine", "sun worked out from the hours of sunshine"};
    case RadiationFrom::temperature_range:
      return {"temperature_range", "sun estimated from the day's temperature range"};
    case RadiationFrom::none:
      break;
  }
  return {"none", "sun unknown"};
}

Words words(HumidityFrom from) {
  switch (from) {
    case HumidityFrom::measured:
      return {"measured", "humidity measured"};
    case HumidityFrom::dew_point:
      return {"dew_point", "humidity from the dew point"};
    case HumidityFrom::rh_max_min:
      return {"rh_max_min", "humidity from the day's highest and lowest"};
    case HumidityFrom::rh_max:
      return {"rh_max", "humidity worked out from the day's highest alone"};
    case HumidityFrom::rh_mean:
      return {"rh_mean", "humidity worked out from the day's mean alone"};
    case HumidityFrom::t_min:
      return {"t_min", "humidity estimated from the night's lowest temperature"};
    case HumidityFrom::none:
      break;
  }
  return {"none", "humidity unknown"};
}

Words words(RhMinFrom from) {
  switch (from) {
    case RhMinFrom::measured:
      return {"measured", "lowest humidity measured"};
    case RhMinFrom::vapour_pressure:
      return {"vapour_pressure", "lowest humidity estimated from the day's vapour and highest temperature"};
    case RhMinFrom::none:
      break;
  }
  return {"none", "lowest humidity unknown"};
}

Words words(WindFrom from) {
  switch (from) {
    case WindFrom::measured:
      return {"measured", "wind measured"};
    case WindFrom::other_height:
      return {"other_height", "wind measured and brought to 2 m height"};
    case WindFrom::calm_limit:
      return {"calm_limit", "wind raised to 0.5 m/s, the least the equation should be given"};
    case WindFrom::usual_wind:
      return {"usual_wind", "wind taken as 2 m/s"};
    case WindFrom::none:
      break;
  }
  return {"none", "wind unknown"};
}

Words words(PressureFrom from) {
  switch (from) {
    case PressureFrom::measured:
      return {"measured", "air pressure measured"};
    case PressureFrom::elevation:
      return {"elevation", "air pressure from the elevation"};
    case PressureFrom::none:
      break;
  }
  return {"none", "air pressure unknown"};
}

bool is_direct(HumidityFrom from) {
  return from == HumidityFrom::measured || from == HumidityFrom::dew_point ||
         from == HumidityFrom::rh_max_min;
}

bool is_direct(WindFrom from) { return from == WindFrom::measured || from == WindFrom::other_height; }

void append(std::string& list, std::string_view separator, std::string_view name, std::string_view text) {
  if (!list.empty()) list += separator;
  list += name;
  list += text;
}

}  // namespace

std::string_view phrase(TemperatureFrom from) { return words(from).phrase; }
std::string_view phrase(RadiationFrom from) { return words(from).phrase; }
std::string_view phrase(HumidityFrom from) { return words(from).phrase; }
std::string_view phrase(RhMinFrom from) { return words(from).phrase; }
std::string_view phrase(WindFrom from) { return words(from).phrase; }
std::string_view phrase(PressureFrom from) { return words(from).phrase; }

std::string_view code(TemperatureFrom from) { return words(from).code; }
std::string_view code(RadiationFrom from) { return words(from).code; }
std::string_view code(HumidityFrom from) { return words(from).code; }
std::string_view code(RhMinFrom from) { return words(from).code; }
std::string_view code(WindFrom from) { return words(from).code; }
std::string_view code(PressureFrom from) { return words(from).code; }

bool DailyEstimate::is_measured() const {
  return temperature == TemperatureFrom::measured && radiation == RadiationFrom::measured &&
         is_direct(humidity) && is_direct(wind);
}

std::string estimated_phrases(const DailyEstimate& day) {
  std::string list;
  if (day.temperature == TemperatureFrom::none) append(list, "; ", "", phrase(day.temperature));
  if (day.radiation != RadiationFrom::measured) append(list, "; ", "", phrase(day.radiation));
  if (!is_direct(day.humidity)) append(list, "; ", "", phrase(day.humidity));
  if (!is_direct(day.wind)) append(list, "; ", "", phrase(day.wind));
  return list;
}

std::string estimated_codes(const DailyEstimate& day) {
  std::string list;
  if (day.temperature == TemperatureFrom::none) append(list, " ", "t=", code(day.temperature));
  if (day.radiation != RadiationFrom::measured) append(list, " ", "rs=", code(day.radiation));
  if (!is_direct(day.humidity)) append(list, " ", "ea=", code(day.humidity));
  if (!is_direct(day.wind)) append(list, " ", "u2=", code(day.wind));
  return list;
}

}  // namespace v1
}  // namespace noonleaf
