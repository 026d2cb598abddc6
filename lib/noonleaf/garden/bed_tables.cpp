#include "noonleaf/garden/bed_tables.hpp"

#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/garden/ground_tables.hpp"
#include "noonleaf/garden/quantity_units.hpp"
#include "noonleaf/garden/rule_tables.hpp"
#include "noonleaf/garden/soil_particles.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/soil/texture.hpp"
#include "noonleaf/sprinkler/application_rate.hpp"
#include "noonleaf/sprinkler/catch_cans.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::array<std::string_view, 4> kind_words{"sprinkler", "soaker_hose", "drip", "hand"};
constexpr std::array<WettingKind, 4> kinds{WettingKind::sprinkler, WettingKind::soaker_hose,
                                           WettingKind::drip, WettingKind::hand};

constexpr AcceptedRange bed_area_range{0.01, 1e5, "m2"};
constexpr AcceptedRange rooting_depth_range{0.05, 3, "m"};
constexpr AcceptedRange can_depth_range{0, 200, "mm"};
constexpr AcceptedRange can_minutes_range{0, 600, "minutes", AcceptedRange::Low::excluded};
constexpr AcceptedRange flow_range{0, 2000, "l/min", AcceptedRange::Low::excluded};
constexpr AcceptedRange bucket_range{0, 1000, "l", AcceptedRange::Low::excluded};
constexpr AcceptedRange seconds_range{0, 3600, "s", AcceptedRange::Low::excluded};
constexpr AcceptedRange emitter_range{0, 100, "l/h", AcceptedRange::Low::excluded};
constexpr AcceptedRange spacing_range{0.05, 10, "m"};
constexpr AcceptedRange intake_range{0, 1000, "mm/h", AcceptedRange::Low::excluded};
constexpr AcceptedRange can_range{0.5, 100, "l"};
constexpr AcceptedRange run_range{1, 1440, "minutes"};
constexpr AcceptedRange percent_range{0, 100, "%"};
constexpr AcceptedRange spray_loss_range{0, 50, "%"};
constexpr AcceptedRange off_target_range{0, 95, "%"};
constexpr AcceptedRange uniformity_range{5, 100, "%"};
constexpr AcceptedRange slope_range{0, 60, "%"};
constexpr AcceptedRange share_range{0, 100, "%", AcceptedRange::Low::excluded};
constexpr AcceptedRange density_range{0.9, 1.3, "of the normal density"};
constexpr AcceptedRange water_content_range{0, 90, "% of the volume"};
constexpr double share_slack = 1e-6;  // shares written as 33.3, 33.3, 33.4 add up

std::optional<double> fraction_of_percent(TomlTable& table, std::string_view key,
                                          const AcceptedRange& range) {
  const auto percent = table.number(key, range);
  return percent ? std::optional(*percent / 100.0) : std::nullopt;
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
               !nearest.empty()
                   ? "did you mean \"" + nearest + "\"?"
                   : "add a [[" + std::string(table_name) + "]] with id = \"" + id + "\", or mend the id");
  return 0;
}

ApplicationRate rate_from_cans(TomlTable& table, Sprinkler& sprinkler) {
  CatchCanTest test;
  for (const double depth_mm : table.quantities("cans_depth", depth_units, can_depth_range)) {
    test.cans.push_back({.depth_mm = depth_mm});
  }
  test.minutes = table.number("cans_minutes", can_minutes_range).value_or(missing);
  if (!table.has("cans_minutes")) {
    table.refuse_table("\"cans_minutes\" is missing beside the catch cans",
                       "add how long the test ran: cans_minutes = 15");
    return {};
  }
  try {
    sprinkler.cans = catch_can_result(test);
  } catch (const Error& refused) {
    const Problem& first = refused.problems().front();
    table.refuse(table.has("cans_depth_mm") ? "cans_depth_mm" : "cans_depth_in", first.message, first.fix);
    return {};
  }
  return {.basis = RateBasis::cans_in_bed,
          .rate_mm_h = sprinkler.cans->rate_mm_h.value,
          .du_lq_frac = sprinkler.cans->du_lq_frac.value};
}

ApplicationRate rate_from_flow(TomlTable& table) {
  ApplicationRate rate;
  const double bucket_l = table.quantity("bucket", volume_units, bucket_range).value_or(missing);
  const double seconds = table.number("bucket_seconds", seconds_range).value_or(missing);
  rate.flow_l_min = table.quantity("flow", flow_units, flow_range).value_or(missing);
  rate.basis = RateBasis::flow_and_area;
  if (is_known(bucket_l) && is_known(seconds)) {
    rate.flow_l_min = bucket_flow_l_min({.bucket_l = bucket_l, .seconds = seconds});
    rate.basis = RateBasis::bucket;
  }
  const double area_m2 = table.quantity("wetted_area", area_units, bed_area_range).value_or(missing);
  if (is_missing(rate.flow_l_min) || is_missing(area_m2)) {
    const ApplicationRate guess = guessed_application_rate();
    rate.basis = guess.basis;
    rate.rate_mm_h = guess.rate_mm_h;
    rate.du_lq_frac = guess.du_lq_frac;
    return rate;
  }
  rate.rate_mm_h = rate_from_flow_mm_h({.flow_l_min = rate.flow_l_min, .area_m2 = area_m2});
  rate.area = WateredArea::all_wetted;  // what falls on the path is in the area already
  rate.off_target_frac = fraction_of_percent(table, "off_target_pct", off_target_range).value_or(0.0);
  rate.spray_loss_frac = fraction_of_percent(table, "spray_loss_pct", spray_loss_range).value_or(0.0);
  return rate;
}

ApplicationRate rate_from_emitters(TomlTable& table) {
  const DripSpacing drip{
      .emitter_flow_l_h = table.quantity("emitter_flow", emitter_flow_units, emitter_range).value_or(missing),
      .emitter_spacing_m = table.quantity("emitter_spacing", length_units, spacing_range).value_or(missing),
      .line_spacing_m = table.quantity("line_spacing", length_units, spacing_range).value_or(missing)};
  const double rate_mm_h = drip_rate_mm_h(drip);
  if (is_missing(rate_mm_h)) {
    table.refuse_table(
        "a drip line by its emitters needs their flow, their spacing and the spacing of the lines",
        "add emitter_flow_l_h, emitter_spacing_cm and line_spacing_cm (or _gal_h and _in)");
  }
  return {.basis = RateBasis::drip_spacing, .rate_mm_h = rate_mm_h};
}

/// Cans tell what reaches the bed; else emitters, else flow over area; else it is a guess and called one.
ApplicationRate read_rate(TomlTable& table, Sprinkler& sprinkler) {
  ApplicationRate rate;
  if (table.has("cans_depth_mm") || table.has("cans_depth_in")) {
    rate = rate_from_cans(table, sprinkler);
    rate.flow_l_min = table.quantity("flow", flow_units, flow_range).value_or(missing);
  } else if (table.has("emitter_flow_l_h") || table.has("emitter_flow_gal_h")) {
    rate = rate_from_emitters(table);
  } else {
    rate = rate_from_flow(table);
  }
  if (const auto stated = fraction_of_percent(table, "uniformity_pct", uniformity_range)) {
    if (sprinkler.cans) {
      table.refuse("uniformity_pct", "the catch cans already say how even the sprinkler is",
                   "remove this line");
    }
    rate.du_lq_frac = *stated;
  } else if (sprinkler.kind == WettingKind::hand && !sprinkler.cans) {
    rate.du_lq_frac = 1.0;  // the person sees where the water goes
  } else if (!sprinkler.cans) {
    rate.du_lq_frac = guessed_du_lq_frac(rate.basis);
    sprinkler.evenness_is_guess = true;
  }
  return rate;
}

ObservedStages read_observed_stages(TomlTable& planting) {
  auto table = planting.table("stages_seen");
  if (!table) return {};
  const ObservedStages stages{.development = table->date("development"),
                              .mid_season = table->date("mid_season"),
                              .late_season = table->date("late_season"),
                              .over = table->date("over")};
  table->refuse_unknown_keys();
  return stages;
}

void read_start(TomlTable& table, Planting& season) {
  int starts = 0;
  const std::array<std::pair<std::string_view, PlantingStart>, 3> keys{
      {{"sown", PlantingStart::sown},
       {"transplanted", PlantingStart::transplanted},
       {"established", PlantingStart::transplanted}}};
  for (const auto& [key, method] : keys) {
    if (!table.has(key)) continue;
    ++starts;
    if (const auto date = table.date(key)) season.start = *date;
    season.method = method;
  }
  if (starts == 1) return;
  table.refuse_table(
      starts == 0 ? "the planting does not say when it began" : "the planting began in two ways at once",
      "write one of sown = 2025-05-10, transplanted = 2025-05-10, or established = 2022-04-01 for a "
      "perennial");
}

/// The crop exists, and its calendar can be made from what the planting says.
void check_planting(TomlTable& table, const BedPlanting& planting) {
  if (planting.crop.empty() || !planting.season.start.ok()) return;
  try {
    const Crop& crop = find_crop(planting.crop);
    growth_day(crop, planting.season, planting.season.start, {});  // its calendar, and no second coefficient
  } catch (const Error& refused) {
    const Problem& first = refused.problems().front();
    const std::string field = first.field == "landscape_coefficient" ? "landscape" : first.field;
    table.refuse(table.has(field) ? field : "crop", first.message, first.fix);
  }
}

BedPlanting read_planting(TomlTable& table) {
  BedPlanting planting;
  planting.crop = table.required_text("crop", "tomato");
  planting.share_frac = fraction_of_percent(table, "share_pct", share_range).value_or(1.0);
  read_start(table, planting.season);
  planting.pulled = table.date("pulled");
  planting.season.region = table.text("region").value_or(std::string{});
  planting.season.observed = read_observed_stages(table);
  planting.season.landscape_coefficient = read_landscape(table);
  check_planting(table, planting);
  if (planting.pulled && *planting.pulled <= planting.season.start) {
    table.refuse("pulled", "the planting was pulled before it began", "check both dates");
  }
  table.refuse_unknown_keys();
  return planting;
}

/// What Saxton & Rawls (2006) cannot tell is refused here, not on the first hot day.
void require_texture_equations(TomlTable& table, const BedSoil& soil) {
  if (soil.sand_pct + soil.clay_pct > 100) {
    table.refuse("clay_pct", "sand and clay are together more than 100 %", "check both; the rest is silt");
    return;
  }
  try {
    saxton_rawls(particles_of(soil));
  } catch (const Error& refused) {
    for (const Problem& problem : refused.problems())
      table.refuse(table.has(problem.field) ? problem.field : "sand_pct", problem.message, problem.fix);
  }
}

BedSoil read_soil_table(TomlTable& table) {
  BedSoil soil;
  soil.sand_pct = table.number("sand_pct", percent_range).value_or(missing);
  soil.clay_pct = table.number("clay_pct", percent_range).value_or(missing);
  soil.organic_pct = table.number("organic_pct", percent_range).value_or(missing);
  soil.gravel_pct = table.number("gravel_pct", percent_range).value_or(missing);
  soil.density_factor = table.number("density_factor", density_range).value_or(missing);
  soil.field_capacity_m3_m3 =
      fraction_of_percent(table, "field_capacity_pct", water_content_range).value_or(missing);
  soil.wilting_point_m3_m3 =
      fraction_of_percent(table, "wilting_point_pct", water_content_range).value_or(missing);
  soil.saturation_m3_m3 = fraction_of_percent(table, "saturation_pct", water_content_range).value_or(missing);
  const bool fractions = is_known(soil.sand_pct) && is_known(soil.clay_pct);
  const bool measured = is_known(soil.field_capacity_m3_m3) && is_known(soil.wilting_point_m3_m3);
  if (fractions == measured) {
    table.refuse_table(
        "a soil table needs either sand_pct and clay_pct, or field_capacity_pct and wilting_point_pct",
        "write soil = { sand_pct = 40, clay_pct = 20, organic_pct = 2.5 } or soil = \"loam\"");
  } else if (measured && !(soil.field_capacity_m3_m3 > soil.wilting_point_m3_m3)) {
    table.refuse("field_capacity_pct", "field capacity must be above the wilting point",
                 "check which of the two is which; a loam has about 28 and 14");
  }
  if (fractions && !measured) require_texture_equations(table, soil);
  table.refuse_unknown_keys();
  return soil;
}

BedSoil read_soil(TomlTable& bed) {
  if (!bed.has("soil")) {
    bed.refuse_table("\"soil\" is missing",
                     "add soil = \"loam\" (docs/garden.md tells how to find the texture by hand)");
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
  for (const BedPlanting& planting : bed.plantings) {
    if (!planting.pulled) total += planting.share_frac;
  }
  if (total > 1.0 + share_slack) {
    table.refuse_table(
        "the plantings share more than the whole bed: " + number_text(std::round(total * 1000) / 10) + " %",
        "lower share_pct, or give the date on which the earlier crop was pulled: pulled = 2025-06-20");
  }
}

std::string flow_text(double l_min) {
  const auto rounded = [](double value) { return number_text(std::round(value * 10) / 10); };
  return rounded(l_min) + " l/min (" + rounded(gallons_from_litres(l_min)) + " gal/min)";
}

/// More water than the tap gives cannot come out of a sprinkler: one of the two numbers is wrong.
void check_flow(TomlTable& table, const Sprinkler& sprinkler, std::span<const Tap> taps) {
  constexpr double slack = 1.001;  // the same flow written in gallons and in litres
  if (sprinkler.tap >= taps.size()) return;
  const Tap& tap = taps[sprinkler.tap];
  if (!(sprinkler.rate.flow_l_min > slack * tap.flow_l_min)) return;
  std::string_view key = "tap";
  for (const std::string_view each : {"flow_l_min", "flow_gal_min", "bucket_l", "bucket_gal"}) {
    if (table.has(each)) key = each;
  }
  table.refuse(key,
               "the sprinkler takes " + flow_text(sprinkler.rate.flow_l_min) + ", more than the tap \"" +
                   tap.id + "\" gives: " + flow_text(tap.flow_l_min),
               "measure both with a bucket and a watch; the tap without a sprinkler gives the most");
}

}  // namespace

Sprinkler read_sprinkler(TomlTable& table, std::span<const Tap> taps) {
  Sprinkler sprinkler;
  sprinkler.id = table.required_text("id", "oscillating");
  sprinkler.name = table.text("name").value_or(sprinkler.id);
  sprinkler.name_es = table.text("name_es").value_or(std::string{});
  sprinkler.kind = kinds[table.choice("kind", kind_words)];
  sprinkler.tap = resolve(table, "tap", "north", taps, "tap");
  sprinkler.rate = read_rate(table, sprinkler);
  sprinkler.longest_run_min = table.number("longest_run_min", run_range).value_or(missing);
  if (sprinkler.kind == WettingKind::hand)
    sprinkler.can_l = table.quantity("can", volume_units, can_range).value_or(missing);
  check_flow(table, sprinkler, taps);
  table.refuse_unknown_keys();
  return sprinkler;
}

Bed read_bed(TomlTable& table, std::span<const Sprinkler> sprinklers) {
  Bed bed;
  bed.id = table.required_text("id", "a");
  bed.name = table.text("name").value_or(bed.id);
  bed.name_es = table.text("name_es").value_or(std::string{});
  if (!table.has("area_m2") && !table.has("area_ft2")) {
    table.refuse_table("the area of the bed is missing",
                       "add area_m2 = 9 or area_ft2 = 96: length times width");
  }
  bed.area_m2 = table.quantity("area", area_units, bed_area_range).value_or(missing);
  bed.sprinkler = resolve(table, "sprinkler", "oscillating", sprinklers, "sprinkler");
  bed.soil = read_soil(table);
  bed.rooting_depth_m = table.quantity("rooting_depth", length_units, rooting_depth_range).value_or(missing);
  read_bed_ground(table, bed);
  bed.slope_pct = table.number("slope_pct", slope_range).value_or(0.0);
  bed.intake_mm_h = table.quantity("intake", rate_units, intake_range).value_or(missing);
  bed.letter = table.text("letter").value_or(std::string{});
  bed.place = read_place(table);
  bed.framed = table.yes_or_no("framed").value_or(false);
  for (TomlTable& planting : table.tables("planting")) bed.plantings.push_back(read_planting(planting));
  for (BedPlanting& planting : bed.plantings) planting.season.root_limit_m = bed.rooting_depth_m;
  check_shares(table, bed);
  table.refuse_unknown_keys();
  return bed;
}

}  // namespace v1
}  // namespace noonleaf
