#include "noonleaf/report/outdoors_words.hpp"

#include <array>
#include <cmath>
#include <numbers>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/report/json_parts.hpp"
#include "noonleaf/report/labels.hpp"
#include "noonleaf/report/local_text.hpp"
#include "noonleaf/report/outdoors_phrases.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::ordered_json;

std::string say(Language language, OutdoorsPhrase id, std::initializer_list<Filling> fillings = {}) {
  return fill(language, id, fillings);
}

std::string both_units(Language language, double c) {
  const LocalText text(language, UnitSystem::metric);
  return fmt::format("{} °F ({} °C)", text.number(fahrenheit_from_celsius(c), 0), text.number(c, 1));
}

// Work loads of ISO 7243, classes 1 to 3, as NIOSH names them.
struct WorkLoad {
  OutdoorsPhrase name;
  double metabolic_w;
};
constexpr std::array work_loads{WorkLoad{OutdoorsPhrase::light_work, 180},
                                WorkLoad{OutdoorsPhrase::moderate_work, 300},
                                WorkLoad{OutdoorsPhrase::heavy_work, 415}};

std::string assumed_words(Language language, const OutdoorReading& reading) {
  std::string text = say(language, OutdoorsPhrase::from_weather);
  if (is_missing(reading.sun_height_deg)) text += say(language, OutdoorsPhrase::sun_height_assumed);
  if (is_missing(reading.elevation_m)) text += say(language, OutdoorsPhrase::sea_level_assumed);
  return text;
}

std::vector<std::string> assumed_codes(const OutdoorAnswer& answer) {
  std::vector<std::string> codes{"heat index assumes shade and a light wind"};
  if (beyond_heat_index_chart(answer.reading.t_c, answer.heat_index_c))
    codes.emplace_back("heat index beyond the published chart, carried on by the equation");
  if (is_missing(answer.wbgt.wbgt_c)) return codes;
  codes.emplace_back("wbgt is for open sun over level ground, wind at 2 m");
  if (is_missing(answer.reading.sun_height_deg))
    codes.emplace_back("sun height from rs_w_m2, sky taken as clear");
  if (is_missing(answer.reading.elevation_m)) codes.emplace_back("pressure at sea level");
  return codes;
}

void add_globe(std::vector<std::string>& words, const OutdoorAnswer& answer, Language language) {
  if (is_missing(answer.wbgt.wbgt_c)) {
    words.push_back(say(language, OutdoorsPhrase::no_globe));
    return;
  }
  words.push_back(
      say(language, OutdoorsPhrase::globe, {{"temperature", both_units(language, answer.wbgt.wbgt_c)}}) +
      assumed_words(language, answer.reading));
  words.push_back(say(language, OutdoorsPhrase::limits));
  for (const WorkLoad& load : work_loads)
    words.push_back(say(language, OutdoorsPhrase::limit,
                        {{"work", say(language, load.name)},
                         {"new_worker", both_units(language, alert_limit_wbgt_c(load.metabolic_w))},
                         {"used_to_heat", both_units(language, exposure_limit_wbgt_c(load.metabolic_w))}}));
}

std::string index_words(const OutdoorAnswer& answer, Language language) {
  std::string words =
      say(language, OutdoorsPhrase::heat_index, {{"temperature", both_units(language, answer.heat_index_c)}});
  const auto category = heat_category(answer.heat_index_c);
  if (category && *category != HeatCategory::below_caution)
    words += say(language, OutdoorsPhrase::heat_class,
                 {{"category", label(language, *category)}, {"effects", effects(language, *category)}});
  words += say(language, OutdoorsPhrase::shade_assumed);
  return words + beyond_chart_words(language, answer.reading.t_c, answer.heat_index_c);
}

}  // namespace

std::string beyond_chart_words(Language language, double t_c, double heat_index_c) {
  const auto category = heat_category(heat_index_c);
  if (!category || !beyond_heat_index_chart(t_c, heat_index_c)) return {};
  return say(language, OutdoorsPhrase::beyond_chart, {{"category", label(language, *category)}});
}

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

std::string outdoor_title(Language language) { return say(language, OutdoorsPhrase::outside_title); }

std::string outdoor_cautions_title(Language language) {
  return say(language, OutdoorsPhrase::take_care_title);
}

std::vector<std::string> outdoor_words(const OutdoorAnswer& answer, Language language) {
  const LocalText text(language, UnitSystem::metric);
  std::vector<std::string> words{say(language, OutdoorsPhrase::air,
                                     {{"temperature", both_units(language, answer.reading.t_c)},
                                      {"humidity", text.number(answer.reading.rh_pct, 0)}}),
                                 index_words(answer, language)};
  add_globe(words, answer, language);
  return words;
}

std::vector<std::string> outdoor_cautions(const OutdoorAnswer& answer, Language language) {
  std::vector<std::string> cautions{say(language, OutdoorsPhrase::heat_policy)};
  const auto category = heat_category(answer.heat_index_c);
  if (!category || *category == HeatCategory::below_caution) return cautions;
  for (const OutdoorsPhrase id :
       {OutdoorsPhrase::water_and_shade, OutdoorsPhrase::cool_morning, OutdoorsPhrase::call_911})
    cautions.push_back(say(language, id));
  return cautions;
}

std::string outdoor_json(const OutdoorAnswer& answer, Language language) {
  const auto number = [](double value) { return number_or_null(std::round(value * 100) / 100); };
  const auto category = heat_category(answer.heat_index_c);
  const Json json{{"shape", "noonleaf.outdoors"},
                  {"version", 1},
                  {"t_c", number(answer.reading.t_c)},
                  {"rh_pct", number(answer.reading.rh_pct)},
                  {"heat_index_c", number(answer.heat_index_c)},
                  {"heat_index_f", number(fahrenheit_from_celsius(answer.heat_index_c))},
                  {"heat_category", category ? Json(label(*category)) : Json(nullptr)},
                  {"wbgt_c", number(answer.wbgt.wbgt_c)},
                  {"globe_c", number(answer.wbgt.globe_c)},
                  {"natural_wet_bulb_c", number(answer.wbgt.natural_wet_bulb_c)},
                  {"assumed", assumed_codes(answer)},
                  {"cautions", outdoor_cautions(answer, language)}};
  return json_text(json);
}

}  // namespace v1
}  // namespace noonleaf
