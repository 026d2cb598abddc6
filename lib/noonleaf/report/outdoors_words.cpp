#include "noonleaf/report/outdoors_words.hpp"

#include <array>
#include <cmath>
#include <numbers>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::ordered_json;

double fahrenheit(double c) { return c * 1.8 + 32; }

std::string both_units(double c) { return fmt::format("{:.0f} °F ({:.1f} °C)", fahrenheit(c), c); }

// Work loads of ISO 7243, classes 1 to 3, as NIOSH names them.
struct WorkLoad {
  const char* name;
  double metabolic_w;
};
constexpr std::array work_loads{WorkLoad{"light work, like handing out tools", 180},
                                WorkLoad{"moderate work, like weeding or raking", 300},
                                WorkLoad{"heavy work, like digging or carrying soil", 415}};

std::string assumed_words(const OutdoorReading& reading) {
  std::string text =
      "Worked out from weather, not read from an instrument; for open sun over level ground, wind at 2 m.";
  if (is_missing(reading.sun_height_deg))
    text +=
        " The sun's height is not given: it is taken as the one at which a clear sky gives this sunshine.";
  if (is_missing(reading.elevation_m)) text += " The place is taken to be at sea level.";
  return text;
}

std::vector<std::string> assumed_codes(const OutdoorAnswer& answer) {
  std::vector<std::string> codes{"heat index assumes shade and a light wind"};
  if (is_missing(answer.wbgt.wbgt_c)) return codes;
  codes.emplace_back("wbgt is for open sun over level ground, wind at 2 m");
  if (is_missing(answer.reading.sun_height_deg))
    codes.emplace_back("sun height from rs_w_m2, sky taken as clear");
  if (is_missing(answer.reading.elevation_m)) codes.emplace_back("pressure at sea level");
  return codes;
}

void add_globe(std::vector<std::string>& words, const OutdoorAnswer& answer) {
  if (is_missing(answer.wbgt.wbgt_c)) {
    words.emplace_back(
        "Wet-bulb globe temperature: not worked out, it needs wind and sun (--wind-m-s, --sun-w-m2; full "
        "summer "
        "sun at noon is about 900 W/m2).");
    return;
  }
  words.push_back(fmt::format("Wet-bulb globe temperature: {} in the open sun. {}",
                              both_units(answer.wbgt.wbgt_c), assumed_words(answer.reading)));
  words.emplace_back(
      "Limits of NIOSH (2016-106) for the mean of an hour, for healthy adults at work; children need more "
      "margin:");
  for (const WorkLoad& load : work_loads)
    words.push_back(fmt::format(
        "- {}: {:.0f} °F ({:.1f} °C) if not used to heat, {:.0f} °F ({:.1f} °C) if used to it", load.name,
        fahrenheit(alert_limit_wbgt_c(load.metabolic_w)), alert_limit_wbgt_c(load.metabolic_w),
        fahrenheit(exposure_limit_wbgt_c(load.metabolic_w)), exposure_limit_wbgt_c(load.metabolic_w)));
}

}  // namespace

OutdoorAnswer outdoor_answer(const OutdoorReading& reading) {
  OutdoorAnswer answer{.reading = reading};
  answer.heat_index_c = heat_index_c({.t_c = reading.t_c, .rh_pct = reading.rh_pct});
  require_within("sun_height_deg", reading.sun_height_deg, 0, 90, "°");
  const double cos_zenith = is_known(reading.sun_height_deg)
                                ? std::sin(reading.sun_height_deg * std::numbers::pi / 180)
                                : clear_sky_cos_zenith(reading.rs_w_m2);
  const double elevation_m = is_known(reading.elevation_m) ? reading.elevation_m : 0.0;
  answer.wbgt = outdoor_wbgt({.t_c = reading.t_c,
                              .rh_pct = reading.rh_pct,
                              .pressure_kpa = atmospheric_pressure_kpa(elevation_m),
                              .u2_m_s = reading.wind_m_s,
                              .rs_w_m2 = reading.rs_w_m2,
                              .cos_zenith = cos_zenith});
  return answer;
}

std::vector<std::string> outdoor_words(const OutdoorAnswer& answer) {
  const auto category = heat_category(answer.heat_index_c);
  std::string index = "Heat index: " + both_units(answer.heat_index_c);
  if (category && *category != HeatCategory::below_caution)
    index +=
        fmt::format(", \"{}\" by the National Weather Service: {}", label(*category), effects(*category));
  if (index.back() != '.') index += '.';
  index += " It assumes shade and a light wind; full sun can add up to 15 °F.";
  std::vector<std::string> words{
      fmt::format("Air of {}, humidity {:.0f} %.", both_units(answer.reading.t_c), answer.reading.rh_pct),
      index};
  add_globe(words, answer);
  return words;
}

std::vector<std::string> outdoor_cautions(const OutdoorAnswer& answer) {
  std::vector<std::string> cautions{"Your district's heat policy and medical advice come first."};
  const auto category = heat_category(answer.heat_index_c);
  if (!category || *category == HeatCategory::below_caution) return cautions;
  cautions.emplace_back(
      "Water within reach and often, rest in the shade, light clothes, hats; new people start slowly.");
  cautions.emplace_back(
      "Move garden work to the cool of the morning. Children and people not used to heat need more "
      "margin than any table gives.");
  cautions.emplace_back("Confusion, collapse or hot dry skin: call 911, move into the shade, cool first.");
  return cautions;
}

std::string outdoor_json(const OutdoorAnswer& answer) {
  const auto number = [](double value) {
    return is_missing(value) ? Json(nullptr) : Json(std::round(value * 100) / 100);
  };
  const auto category = heat_category(answer.heat_index_c);
  const Json json{{"shape", "noonleaf.outdoors"},
                  {"version", 1},
                  {"t_c", number(answer.reading.t_c)},
                  {"rh_pct", number(answer.reading.rh_pct)},
                  {"heat_index_c", number(answer.heat_index_c)},
                  {"heat_index_f", number(fahrenheit(answer.heat_index_c))},
                  {"heat_category", category ? Json(label(*category)) : Json(nullptr)},
                  {"wbgt_c", number(answer.wbgt.wbgt_c)},
                  {"globe_c", number(answer.wbgt.globe_c)},
                  {"natural_wet_bulb_c", number(answer.wbgt.natural_wet_bulb_c)},
                  {"assumed", assumed_codes(answer)},
                  {"cautions", outdoor_cautions(answer)}};
  return json.dump(2) + "\n";
}

}  // namespace v1
}  // namespace noonleaf
