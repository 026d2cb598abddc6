#include "noonleaf/garden/bed_tables.hpp"

#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/garden/quantity_units.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/soil/texture.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::array<std::string_view, 3> kind_words{"sprinkler", "soaker_hose", "drip"};
constexpr std::array<std::string_view, 3> stage_words{"development", "mid", "late"};

constexpr AcceptedRange bed_area_range{0, 1e5, "m2", AcceptedRange::Low::excluded};
constexpr AcceptedRange rooting_depth_range{0.05, 3, "m"};
constexpr AcceptedRange can_depth_range{0, 200, "mm"};
constexpr AcceptedRange can_minutes_range{0, 600, "minutes", AcceptedRange::Low::excluded};
constexpr AcceptedRange flow_range{0, 2000, "l/min", AcceptedRange::Low::excluded};
constexpr AcceptedRange rate_range{0.1, 1000, "mm/h"};
constexpr AcceptedRange run_range{1, 1440, "minutes"};
constexpr AcceptedRange percent_range{0, 100, "%"};
constexpr AcceptedRange off_target_range{0, 95, "%"};
constexpr AcceptedRange uniformity_range{5, 100, "%"};
constexpr AcceptedRange share_range{0, 100, "%", AcceptedRange::Low::excluded};
constexpr AcceptedRange water_content_range{0, 90, "% of the volume"};
constexpr double share_slack = 1e-6;  // shares written as 33.3, 33.3, 33.4 add up

double fraction_of_percent(TomlTable& table, std::string_view key, const AcceptedRange& range) {
  const auto percent = table.number(key, range);
  return percent ? *percent / 100.0 : missing;
}

template <class Things>
std::size_t resolve(TomlTable& table, std::string_view key, std::string_view example, const Things& things,
                    std::string_view table_name) {
  const std::string id = table.required_text(key, example);
  if (id.empty()) return 0;
  std::vector<std::string> ids;
  for (std::size_t index = 0; index < things.size(); ++index) {
    if (things[index].id == id) return index;
    ids.push_back(things[index].id);
  }
  const std::string nearest = nearest_name(id, ids);
  table.refuse(key, "there is no " + std::string(table_name) + " with the id \"" + id + "\"",
               !nearest.empty() ? "did you mean \"" + nearest + "\"?"
                                : "add a [[" + std::string(table_name) + "]] with id = \"" + id + "\", or mend the id");
  return 0;
}

void read_rate(TomlTable& table, Sprinkler& sprinkler) {
  sprinkler.can_depths_mm = table.quantities("cans_depth", depth_units, can_depth_range);
  sprinkler.can_minutes = table.number("cans_minutes", can_minutes_range).value_or(missing);
  sprinkler.flow_l_min = table.quantity("flow", flow_units, flow_range).value_or(missing);
  sprinkler.wetted_area_m2 = table.quantity("wetted_area", area_units, bed_area_range).value_or(missing);
  sprinkler.off_target_frac = fraction_of_percent(table, "off_target_pct", off_target_range);
  sprinkler.rate_mm_h = table.quantity("rate", rate_units, rate_range).value_or(missing);
  sprinkler.du_lq_frac = fraction_of_percent(table, "uniformity_pct", uniformity_range);
  const bool cans = table.has("cans_depth_mm") || table.has("cans_depth_in");
  if (cans && is_missing(sprinkler.can_minutes)) {
    table.refuse_table("\"cans_minutes\" is missing beside the catch cans", "add how long the test ran: cans_minutes = 15");
  }
  if (cans) {
    sprinkler.basis = RateBasis::cans_in_bed;
  } else if (is_known(sprinkler.rate_mm_h)) {
    sprinkler.basis = RateBasis::stated;
  } else if (is_known(sprinkler.flow_l_min) && is_known(sprinkler.wetted_area_m2)) {
    sprinkler.basis = RateBasis::flow_and_area;
  }
}

std::vector<ObservedStage> read_observed_stages(TomlTable& planting) {
  std::vector<ObservedStage> stages;
  auto table = planting.table("stages_seen");
  if (!table) return stages;
  for (const std::string_view stage : stage_words) {
    if (const auto date = table->date(stage)) stages.push_back({std::string(stage), *date});
  }
  table->refuse_unknown_keys();
  return stages;
}

void read_start(TomlTable& table, Planting& planting) {
  int starts = 0;
  const std::array<std::pair<std::string_view, PlantingStart>, 3> kinds{
      {{"sown", PlantingStart::sown},
       {"transplanted", PlantingStart::transplanted},
       {"established", PlantingStart::established}}};
  for (const auto& [key, kind] : kinds) {
    if (!table.has(key)) continue;
    ++starts;
    if (const auto date = table.date(key)) planting.start_date = *date;
    planting.start = kind;
  }
  if (starts == 1) return;
  table.refuse_table(starts == 0 ? "the planting does not say when it began" : "the planting began in two ways at once",
                     "write one of sown = 2025-05-10, transplanted = 2025-05-10, or established = 2022-04-01 for a perennial");
}

void check_crop(TomlTable& table, const Planting& planting) {
  if (planting.crop.empty()) return;
  try {
    find_crop(planting.crop);
  } catch (const Error& refused) {
    table.refuse("crop", refused.problems().front().message, refused.problems().front().fix);
  }
}

Planting read_planting(TomlTable& table) {
  Planting planting;
  planting.crop = table.required_text("crop", "tomato");
  check_crop(table, planting);
  planting.share_frac = table.number("share_pct", share_range).value_or(100.0) / 100.0;
  read_start(table, planting);
  planting.pulled = table.date("pulled");
  planting.region = table.text("region").value_or(std::string{});
  planting.observed_stages = read_observed_stages(table);
  table.refuse_unknown_keys();
  return planting;
}

BedSoil read_soil_table(TomlTable& table) {
  BedSoil soil;
  soil.sand_pct = table.number("sand_pct", percent_range).value_or(missing);
  soil.clay_pct = table.number("clay_pct", percent_range).value_or(missing);
  soil.organic_pct = table.number("organic_pct", percent_range).value_or(missing);
  soil.gravel_pct = table.number("gravel_pct", percent_range).value_or(missing);
  soil.field_capacity_m3_m3 = fraction_of_percent(table, "field_capacity_pct", water_content_range);
  soil.wilting_point_m3_m3 = fraction_of_percent(table, "wilting_point_pct", water_content_range);
  soil.saturation_m3_m3 = fraction_of_percent(table, "saturation_pct", water_content_range);
  const bool fractions = is_known(soil.sand_pct) && is_known(soil.clay_pct);
  const bool measured = is_known(soil.field_capacity_m3_m3) && is_known(soil.wilting_point_m3_m3);
  if (fractions == measured) {
    table.refuse_table("a soil table needs either sand_pct and clay_pct, or field_capacity_pct and wilting_point_pct",
                       "write soil = { sand_pct = 40, clay_pct = 20, organic_pct = 2.5 } or soil = \"loam\"");
  } else if (measured && !(soil.field_capacity_m3_m3 > soil.wilting_point_m3_m3)) {
    table.refuse("field_capacity_pct", "field capacity must be above the wilting point",
                 "check which of the two is which; a loam has about 28 and 14");
  }
  table.refuse_unknown_keys();
  return soil;
}

BedSoil read_soil(TomlTable& bed) {
  if (!bed.has("soil")) {
    bed.refuse_table("\"soil\" is missing", "add soil = \"loam\" (docs/garden.md tells how to find the texture by hand)");
    return {};
  }
  if (!bed.is_text("soil")) {
    auto table = bed.table("soil");
    return table ? read_soil_table(*table) : BedSoil{};
  }
  BedSoil soil;
  soil.texture = *bed.text("soil");
  try {
    find_texture(soil.texture);
  } catch (const Error& refused) {
    bed.refuse("soil", refused.problems().front().message, refused.problems().front().fix);
  }
  return soil;
}

void check_shares(TomlTable& table, const Bed& bed) {
  double total = 0;
  for (const Planting& planting : bed.plantings) {
    if (!planting.pulled) total += planting.share_frac;
  }
  if (total > 1.0 + share_slack) {
    table.refuse_table("the plantings share more than the whole bed: " + number_text(std::round(total * 1000) / 10) + " %",
                       "lower share_pct, or give the date on which the earlier crop was pulled: pulled = 2025-06-20");
  }
}

}  // namespace

Sprinkler read_sprinkler(TomlTable& table, std::span<const Tap> taps) {
  Sprinkler sprinkler;
  sprinkler.id = table.required_text("id", "oscillating");
  sprinkler.name = table.text("name").value_or(sprinkler.id);
  sprinkler.kind = static_cast<SprinklerKind>(table.choice("kind", kind_words));
  sprinkler.tap = resolve(table, "tap", "north", taps, "tap");
  read_rate(table, sprinkler);
  sprinkler.longest_run_min = table.number("longest_run_min", run_range).value_or(missing);
  table.refuse_unknown_keys();
  return sprinkler;
}

Bed read_bed(TomlTable& table, std::span<const Sprinkler> sprinklers) {
  Bed bed;
  bed.id = table.required_text("id", "a");
  bed.name = table.text("name").value_or(bed.id);
  if (!table.has("area_m2") && !table.has("area_ft2")) {
    table.refuse_table("the area of the bed is missing", "add area_m2 = 9 or area_ft2 = 96: length times width");
  }
  bed.area_m2 = table.quantity("area", area_units, bed_area_range).value_or(missing);
  bed.sprinkler = resolve(table, "sprinkler", "oscillating", sprinklers, "sprinkler");
  bed.soil = read_soil(table);
  bed.rooting_depth_m = table.quantity("rooting_depth", length_units, rooting_depth_range).value_or(missing);
  bed.framed = table.yes_or_no("framed").value_or(false);
  for (TomlTable& planting : table.tables("planting")) bed.plantings.push_back(read_planting(planting));
  check_shares(table, bed);
  table.refuse_unknown_keys();
  return bed;
}

}  // namespace v1
}  // namespace noonleaf
