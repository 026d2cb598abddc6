#include "noonleaf/report/crop_words.hpp"

#include <optional>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/emergence.hpp"
#include "noonleaf/report/json_parts.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::ordered_json;

std::string cell(double value, int digits) {
  return is_missing(value) ? std::string("-") : fmt::format("{:.{}f}", value, digits);
}

std::string_view code(CropBasis basis) {
  switch (basis) {
    case CropBasis::kc_curve:
      return "kc_curve";
    case CropBasis::plant_factor:
      return "plant_factor";
    case CropBasis::bare_soil:
      return "bare_soil";
  }
  return {};
}

std::string_view code(SeasonKind season) {
  switch (season) {
    case SeasonKind::annual:
      return "annual";
    case SeasonKind::perennial:
      return "perennial";
    case SeasonKind::year_round:
      return "year_round";
  }
  return {};
}

std::string_view start_words(UsualStart start) {
  switch (start) {
    case UsualStart::sown:
      return "usually sown";
    case UsualStart::transplanted:
      return "usually transplanted";
    case UsualStart::planted:
      return "planted once";
    case UsualStart::either:
      return "sown or transplanted";
  }
  return {};
}

std::string_view season_words(SeasonKind season) {
  switch (season) {
    case SeasonKind::annual:
      return "one season";
    case SeasonKind::perennial:
      return "a season every year";
    case SeasonKind::year_round:
      return "the same all year";
  }
  return {};
}

std::string line_of(const Crop& crop) {
  return fmt::format("{:<24} {:>4} {:>4} {:>4}  {:>4} {:>4} {:>4} {:>3} {:>3}-{:<3} {:>4} {}{}\n", crop.id,
                     cell(crop.kc_ini, 2), cell(crop.kc_mid, 2), cell(crop.kc_end, 2), cell(crop.kcb_ini, 2),
                     cell(crop.kcb_mid, 2), cell(crop.kcb_end, 2), cell(crop.height_max_m, 1),
                     cell(crop.root_depth_min_m, 1), cell(crop.root_depth_max_m, 1), cell(crop.p_frac, 2),
                     label(crop.confidence), crop.surrogate ? "*" : "");
}

void add_seed_words(const Crop& crop, std::vector<std::string>& lines) {
  std::string days;
  for (const int soil_c : {10, 15, 20, 25, 30}) {
    const double count = days_to_emergence(crop.id, soil_c);
    if (is_known(count))
      days += fmt::format("{}{:.0f} days at {} °C", days.empty() ? "" : ", ", count, soil_c);
  }
  if (!days.empty()) lines.push_back("From seed to emergence in soil of: " + days + ".");
}

Json stages_json(const Crop& crop) {
  Json stages = Json::array();
  for (const StageLengths& row : crop.stages) {
    stages.push_back({{"planted", row.planted},
                      {"region", row.region},
                      {"initial_d", row.l_ini_d},
                      {"development_d", row.l_dev_d},
                      {"mid_season_d", row.l_mid_d},
                      {"late_season_d", row.l_late_d},
                      {"confidence", label(row.confidence)},
                      {"note", row.note}});
  }
  return stages;
}

Json json_of(const Crop& crop) {
  return {{"id", crop.id},
          {"name_en", crop.name_en},
          {"name_es", crop.name_es},
          {"group", label(crop.group)},
          {"basis", code(crop.basis)},
          {"season", code(crop.season)},
          {"kc_ini", number_or_null(crop.kc_ini)},
          {"kc_mid", number_or_null(crop.kc_mid)},
          {"kc_end", number_or_null(crop.kc_end)},
          {"kcb_ini", number_or_null(crop.kcb_ini)},
          {"kcb_mid", number_or_null(crop.kcb_mid)},
          {"kcb_end", number_or_null(crop.kcb_end)},
          {"height_m", number_or_null(crop.height_max_m)},
          {"root_depth_min_m", number_or_null(crop.root_depth_min_m)},
          {"root_depth_max_m", number_or_null(crop.root_depth_max_m)},
          {"p_frac", number_or_null(crop.p_frac)},
          {"ece_threshold_ds_m", number_or_null(crop.ece_threshold_ds_m)},
          {"yield_loss_pct_m_ds", number_or_null(crop.yield_loss_pct_m_ds)},
          {"ky", number_or_null(crop.ky)},
          {"surrogate", crop.surrogate},
          {"source", crop.source},
          {"confidence", label(crop.confidence)},
          {"note", crop.note},
          {"stages", stages_json(crop)}};
}

}  // namespace

std::string crop_table_text() {
  std::string text =
      "                              Kc             Kcb        height and roots\n"
      "crop                      ini  mid  end   ini  mid  end   m       m    p trust\n";
  std::optional<CropGroup> group;
  for (const Crop& crop : crop_table()) {
    if (group != crop.group) text += fmt::format("\n{}\n", label(crop.group));
    group = crop.group;
    text += line_of(crop);
  }
  return text;
}

std::vector<std::string> crop_words(const Crop& crop) {
  std::vector<std::string> lines;
  lines.push_back(fmt::format("{}, {}, {}.", label(crop.group), season_words(crop.season),
                              start_words(crop.usual_start)));
  if (crop.surrogate)
    lines.push_back("SURROGATE: no published values of its own; a similar crop's stand in.");
  if (crop.basis == CropBasis::plant_factor) {
    lines.push_back(
        fmt::format("Plant factor {} of ET0, on every day of an established planting; it holds all "
                    "evaporation, none is added.",
                    cell(crop.kc_mid, 2)));
  } else if (crop.basis == CropBasis::kc_curve) {
    lines.push_back(fmt::format("Kc (plant and soil): {} at first, {} in mid-season, {} at the end.",
                                cell(crop.kc_ini, 2), cell(crop.kc_mid, 2), cell(crop.kc_end, 2)));
    lines.push_back(fmt::format("Kcb (plant alone): {} at first, {} in mid-season, {} at the end.",
                                cell(crop.kcb_ini, 2), cell(crop.kcb_mid, 2), cell(crop.kcb_end, 2)));
  }
  lines.push_back(fmt::format(
      "Height to {} m. Roots to {} m where it is watered, {} m where only rain falls.",
      cell(crop.height_max_m, 1), cell(crop.root_depth_min_m, 1), cell(crop.root_depth_max_m, 1)));
  lines.push_back(
      fmt::format("p {}: the share of the soil's available water it takes without harm at 5 mm a day.",
                  cell(crop.p_frac, 2)));
  if (is_known(crop.ece_threshold_ds_m)) {
    lines.push_back(
        fmt::format("Salt: yield falls from ECe {} dS/m on, {} % for each dS/m more{}.",
                    cell(crop.ece_threshold_ds_m, 1), cell(crop.yield_loss_pct_m_ds, 0),
                    is_known(crop.ky) ? fmt::format(" (Ky {})", cell(crop.ky, 2)) : std::string{}));
  }
  add_seed_words(crop, lines);
  lines.push_back(fmt::format("Source: {}.", crop.source));
  lines.push_back(fmt::format("Trust: {} (the lowest of the columns).", label(crop.confidence)));
  if (!crop.note.empty()) lines.push_back(fmt::format("Note: {}", crop.note));
  return lines;
}

std::string crop_stages_text(const Crop& crop) {
  if (crop.stages.empty()) return {};
  std::string text = "  ini  dev  mid late total  planted           region\n";
  for (const StageLengths& row : crop.stages) {
    text += fmt::format("  {:>3}  {:>3}  {:>3}  {:>3}  {:>4}  {:<16}  {}{}\n", row.l_ini_d, row.l_dev_d,
                        row.l_mid_d, row.l_late_d, row.l_ini_d + row.l_dev_d + row.l_mid_d + row.l_late_d,
                        row.planted, row.region, row.confidence == Confidence::low ? " (low trust)" : "");
  }
  return text;
}

std::string crops_json() {
  Json crops = Json::array();
  for (const Crop& crop : crop_table()) crops.push_back(json_of(crop));
  return json_text({{"shape", "noonleaf.crops"}, {"version", 1}, {"crops", std::move(crops)}});
}

std::string crop_json(const Crop& crop) {
  Json json{{"shape", "noonleaf.crop"}, {"version", 1}};
  json.update(json_of(crop));
  return json_text(json);
}

}  // namespace v1
}  // namespace noonleaf
