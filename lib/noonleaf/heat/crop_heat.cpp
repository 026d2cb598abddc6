#include "noonleaf/heat/crop_heat.hpp"

#include <array>

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::string_view iowa =
    "Iowa State University Extension (A. Steil), managing weather-related problems in the vegetable garden; "
    "read";
constexpr std::string_view maryland =
    "University of Maryland Extension (J. Brust), extreme heat and tomato fruit set; read as reported in the "
    "trade press";
constexpr std::string_view south_dakota =
    "South Dakota State University Extension (R. Burrows), heat effects on vegetables; read";
constexpr std::string_view cornell = "Cornell Cooperative Extension, heat and garden vegetables; read";
constexpr std::string_view cornell_nights =
    "Cornell Cooperative Extension, heat and garden vegetables (\"problems\" in nights above 72 °F); read. "
    "That it "
    "means the blossoms is ours";
constexpr std::string_view bean_common = "common extension statement, sources 85 to 95 °F; from memory";
constexpr std::string_view melon_common = "common extension statement, sources 90 to 100 °F; from memory";
constexpr std::string_view cucumber_common =
    "common extension statement; number from memory, bitterness with heat and drought read (South Dakota "
    "State)";
constexpr std::string_view lettuce_common =
    "common extension statement, sources 75 to 85 °F; number from memory, UC IPM (read) confirms heat as "
    "cause";
constexpr std::string_view spinach_common =
    "common extension statement, from memory; UC IPM (read): day length is the main trigger, so heat alone "
    "is "
    "no reliable alarm";

using enum HeatHarm;
using enum HeatStage;
using enum HeatLimitKind;

// One row per crop and published number. A new edition of a bulletin: change the number and the source
// together. Printed in °F.
constexpr std::array<CropHeatLimit, 27> limits{{
    {"tomato", blossom_drop, flowering, day_above, 90, missing, iowa},
    {"tomato", blossom_drop, flowering, night_above, missing, 75, iowa},
    {"tomato", poor_pollen, flowering, day_and_night_above, 95, 80, maryland},
    {"tomato", poor_fruit_set, flowering, night_above, missing, 75, maryland},
    {"tomato", poor_fruit_set, flowering, day_and_night_above, 90, 70, south_dakota},
    {"tomato", slow_ripening, fruiting, day_above, 85, missing, iowa},
    {"tomato", poor_colour, fruiting, day_above, 85, missing, south_dakota},
    {"pepper_sweet", blossom_drop, flowering, day_above, 90, missing, iowa},
    {"pepper_sweet", blossom_drop, flowering, night_above, missing, 75, iowa},
    {"pepper_sweet", poor_fruit_set, flowering, day_above, 90, missing, south_dakota},
    {"pepper_sweet", slow_ripening, fruiting, day_above, 85, missing, iowa},
    {"eggplant", slow_ripening, fruiting, day_above, 85, missing, iowa},
    {"bean_green", blossom_drop, flowering, day_above, 90, missing, iowa},
    {"bean_green", blossom_drop, flowering, night_above, missing, 75, iowa},
    {"bean_green", poor_fruit_set, flowering, day_above, 85, missing, bean_common},
    {"maize_sweet", poor_tip_fill, flowering, day_above, 95, missing, cornell},
    {"cantaloupe", poor_fruit_set, flowering, day_above, 95, missing, melon_common},
    {"sweet_melon", poor_fruit_set, flowering, day_above, 95, missing, melon_common},
    {"watermelon", poor_fruit_set, flowering, day_above, 95, missing, melon_common},
    {"cucumber_fresh", bitterness, fruiting, day_above, 90, missing, cucumber_common},
    {"cucumber_machine", bitterness, fruiting, day_above, 90, missing, cucumber_common},
    {"lettuce", bolting, leaf_growth, day_above, 80, missing, lettuce_common},
    {"lettuce", bitterness, leaf_growth, day_above, 80, missing, lettuce_common},
    {"spinach", bolting, leaf_growth, day_above, 75, missing, spinach_common},
    {"tomato", blossom_drop, flowering, night_above, missing, 72, cornell_nights},
    {"pepper_sweet", blossom_drop, flowering, night_above, missing, 72, cornell_nights},
    {"bean_green", blossom_drop, flowering, night_above, missing, 72, cornell_nights},
}};

// 90 °F comes in as 32.222… °C and must not come out above 90.
bool above(double t_c, double limit_f) { return t_c * 1.8 + 32 > limit_f + 1e-6; }

bool passes(const CropHeatLimit& limit, const HeatDay& day) {
  const bool hot_day = above(day.t_max_c, limit.day_f);
  const bool hot_night = above(day.t_min_c, limit.night_f);
  switch (limit.kind) {
    case day_above:
      return hot_day;
    case night_above:
      return hot_night;
    case day_and_night_above:
      return hot_day && hot_night;
  }
  return false;
}

}  // namespace

std::span<const CropHeatLimit> crop_heat_limits() { return limits; }

std::vector<CropHeatFinding> crop_heat_findings(std::string_view crop, std::span<const HeatDay> days) {
  std::vector<CropHeatFinding> findings;
  for (const CropHeatLimit& limit : limits) {
    if (limit.crop != crop) continue;
    CropHeatFinding finding{.limit = &limit, .days_over = {}};
    for (const HeatDay& day : days)
      if (passes(limit, day)) finding.days_over.push_back(day.date);
    if (!finding.days_over.empty()) findings.push_back(std::move(finding));
  }
  return findings;
}

std::string_view what_helps(HeatHarm harm) {
  switch (harm) {
    case blossom_drop:
    case poor_pollen:
    case poor_fruit_set:
      return "Shade cloth in the afternoon and even soil moisture help the next flowers; spraying or extra "
             "water "
             "does not bring back those that dropped. Fruit sets again when it cools.";
    case slow_ripening:
    case poor_colour:
      return "Pick at first colour and ripen indoors; water does not help.";
    case poor_tip_fill:
      return "Even soil moisture while the silks are fresh helps; nothing fills an ear afterwards.";
    case bolting:
      return "Shade cloth and early harvest help; once the stem stretches water does not turn it back.";
    case bitterness:
      return "Even soil moisture and shade cloth help the next harvest; pick early in the day.";
  }
  return "";
}

std::string_view label(HeatHarm harm) {
  switch (harm) {
    case blossom_drop:
      return "blossom drop";
    case poor_pollen:
      return "poor pollen";
    case poor_fruit_set:
      return "poor fruit set";
    case slow_ripening:
      return "slow ripening";
    case poor_colour:
      return "poor colour";
    case poor_tip_fill:
      return "poorly filled tips";
    case bolting:
      return "bolting";
    case bitterness:
      return "bitterness";
  }
  return "";
}

}  // namespace v1
}  // namespace noonleaf
