#include "noonleaf/report/soil_words.hpp"

#include <cmath>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/report/json_parts.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Json = nlohmann::ordered_json;

std::string range_text(const Range& range, double factor) {
  return fmt::format("{:.0f}-{:.0f}", range.low * factor, range.high * factor);
}

/// Percent of the volume with one digit, without a tail of zeros, for a line of garden.toml.
std::string percent(double fraction) { return number_text(std::round(fraction * 1000) / 10); }

std::string measured_line(const SoilWater& soil) {
  std::string line = "soil = { field_capacity_pct = " + percent(soil.field_capacity_m3_m3) +
                     ", wilting_point_pct = " + percent(soil.wilting_point_m3_m3);
  if (is_known(soil.saturation_m3_m3)) line += ", saturation_pct = " + percent(soil.saturation_m3_m3);
  return line + " }";
}

std::string particles_line(const SoilParticles& particles) {
  std::string line = "soil = { sand_pct = " + number_text(particles.sand_pct) +
                     ", clay_pct = " + number_text(particles.clay_pct) +
                     ", organic_pct = " + number_text(particles.organic_pct);
  if (particles.gravel_pct > 0) line += ", gravel_pct = " + number_text(particles.gravel_pct);
  if (particles.density_factor != 1) line += ", density_factor = " + number_text(particles.density_factor);
  return line + " }";
}

std::string line_of(const TextureClass& texture) {
  const SoilWater soil = soil_of(texture);
  return fmt::format(
      "  {:<15} {:>5.1f} {:<6}{:>5.1f} {:<6}{:>5.1f} {:>5.1f} {:>7.1f} {:>5.1f} {:>5.1f}  {}{}\n", texture.id,
      100 * soil.field_capacity_m3_m3, range_text(texture.field_capacity_m3_m3, 100),
      100 * soil.wilting_point_m3_m3, range_text(texture.wilting_point_m3_m3, 100),
      100 * (soil.field_capacity_m3_m3 - soil.wilting_point_m3_m3), 100 * soil.saturation_m3_m3,
      soil.conductivity_mm_h, soil.rew_mm, tew_mm(soil), texture.surrogate ? "low" : "high",
      texture.surrogate ? "*" : "");
}

Json json_of(const SoilAnswer& answer) {
  const SoilWater& soil = answer.soil;
  return {{"name", answer.name},
          {"wilting_point_m3_m3", number_or_null(soil.wilting_point_m3_m3)},
          {"field_capacity_m3_m3", number_or_null(soil.field_capacity_m3_m3)},
          {"saturation_m3_m3", number_or_null(soil.saturation_m3_m3)},
          {"conductivity_mm_h", number_or_null(soil.conductivity_mm_h)},
          {"rew_mm", number_or_null(soil.rew_mm)},
          {"tew_mm", number_or_null(tew_mm(soil))},
          {"source", soil.source},
          {"confidence", answer.confidence},
          {"doubt", answer.doubt},
          {"garden_line", answer.garden_line}};
}

std::string worked_line(std::string_view what, const std::string& how, double fraction) {
  if (is_missing(fraction)) return fmt::format("  {:<16} {:<46} ______ %\n", what, how);
  return fmt::format("  {:<16} {:<46} {:>6.1f} %\n", what, how, 100 * fraction);
}

std::string weight_line(char letter, std::string_view what, double value, std::string_view unit) {
  const std::string written = is_missing(value) ? "______" : fmt::format("{:>6}", number_text(value));
  return fmt::format("  {}  {:<60} {} {}\n", letter, what, written, unit);
}

std::string difference(std::string_view form, double heavy, double light, double volume_l) {
  if (is_missing(heavy - light) || is_missing(volume_l)) return std::string(form);
  return fmt::format("{} = ({} - {}) / {}", form, number_text(heavy), number_text(light),
                     number_text(volume_l));
}

}  // namespace

std::string soil_table_text() {
  std::string text =
      "                     field         wilting\n"
      "                  capacity           point  avail. satur.  intake   REW   TEW\n" +
      fmt::format("  {:<15} {:>5} {:<6}{:>5} {:<6}{:>5} {:>5} {:>7} {:>5} {:>5}  {}\n", "texture", "%",
                  "range", "%", "range", "%", "%", "mm/h", "mm", "mm", "trust");
  for (const TextureClass& texture : texture_table()) text += line_of(texture);
  return text;
}

std::vector<std::string> soil_table_words() {
  return {
      "Percent of the soil's volume; the middle of the printed range is used. REW and TEW in mm: what "
      "evaporation takes from the top 10 cm easily, and at most.",
      "Source: FAO-56 (Allen et al. 1998), Table 19, from memory; TEW by its eq. 73. Saturation and intake "
      "(saturated conductivity): Saxton & Rawls (2006) for the typical soil of the class with 2.5 % organic "
      "matter.",
      "* Not in Table 19: the row of a neighbour in the texture triangle stands in (ours).",
      "Your own soil: noonleaf soils --sand 55 --clay 15 --organic 4. A potting or compost mix: noonleaf "
      "soils --pot."};
}

SoilAnswer soil_answer(const TextureClass& texture) {
  SoilAnswer answer;
  answer.name = texture.id;
  answer.soil = soil_of(texture);
  answer.confidence = texture.surrogate ? "low" : "high";
  answer.doubt = texture.surrogate ? std::string(texture.note) : "a class is wide: see the printed range";
  answer.garden_line = "soil = \"" + std::string(texture.id) + "\"";
  return answer;
}

SoilAnswer soil_answer(const SoilParticles& particles) {
  SoilAnswer answer;
  answer.soil = soil_of(particles);
  answer.name = std::string(classify_texture(particles.sand_pct, particles.clay_pct).id);
  answer.confidence = "medium";
  answer.doubt =
      "a regression over many farm soils: its standard error is about 2 % of the volume for the wilting "
      "point and 5 % for field capacity (from memory of the paper)";
  answer.garden_line = particles_line(particles);
  return answer;
}

SoilAnswer soil_answer(const PotWeights& pot) {
  SoilAnswer answer;
  answer.soil = soil_of(pot);
  answer.name = "pot";
  answer.confidence = is_known(pot.dry_kg) ? "high" : "medium";
  answer.doubt = is_known(pot.dry_kg)
                     ? "a shallow pot stays wetter at its bottom than a deep bed of the same mix"
                     : "without the dry weight the wilting point is taken as half of the field capacity; "
                       "what plants can use is exact all the same";
  answer.garden_line = measured_line(answer.soil);
  return answer;
}

std::vector<std::string> soil_words(const SoilAnswer& answer) {
  const SoilWater& soil = answer.soil;
  const double available = soil.field_capacity_m3_m3 - soil.wilting_point_m3_m3;
  std::vector<std::string> lines;
  lines.push_back(fmt::format("Field capacity {:.1f} % of the volume: what it holds after draining.",
                              100 * soil.field_capacity_m3_m3));
  lines.push_back(
      fmt::format("Wilting point {:.1f} %: what roots cannot get.", 100 * soil.wilting_point_m3_m3));
  lines.push_back(
      fmt::format("Available to plants {:.1f} %: {:.0f} mm in a metre of depth, {:.2f} in in a foot.",
                  100 * available, 1000 * available, 12 * available));
  if (is_known(soil.saturation_m3_m3))
    lines.push_back(fmt::format("Saturation {:.1f} %: with every pore full.", 100 * soil.saturation_m3_m3));
  if (is_known(soil.conductivity_mm_h))
    lines.push_back(
        fmt::format("Saturated conductivity {:.1f} mm/h ({:.2f} in/h): about what it takes in once wet.",
                    soil.conductivity_mm_h, inches_from_mm(soil.conductivity_mm_h)));
  lines.push_back(fmt::format("The bare top 10 cm lose {:.1f} mm easily (REW) and {:.1f} mm at most (TEW).",
                              soil.rew_mm, tew_mm(soil)));
  lines.push_back("Source: " + soil.source + ".");
  lines.push_back("Trust: " + answer.confidence + (answer.doubt.empty() ? "." : "; " + answer.doubt + "."));
  return lines;
}

std::vector<std::string> pot_steps() {
  return {
      "1. Fill a pot with holes with the mix of the bed, as loose as it lies there. Mark how high the soil "
      "stands. Sow into it, or set a seedling, and wait until its roots fill the pot.",
      "2. Stand the pot in a bucket of water up to the soil until no bubbles rise. Lift it, let it stop "
      "streaming, weigh: soaked.",
      "3. Cover it and let it drain for a day. Weigh: drained.",
      "4. Give no more water. When the leaves hang at dawn, weigh: wilted.",
      "5. If you can, have the soil dried at 105 °C, 220 °F, until it loses no more: in a laboratory, or in "
      "a metal "
      "pot and an oven not used for food, with the window open and somebody there. Weigh: dry. What is "
      "available to "
      "plants does not need it; without it the field capacity is an estimate.",
      "6. Empty the pot, close the holes, fill water to the mark and measure it: the volume."};
}

std::string pot_form_text(const PotWeights& pot) {
  const bool whole = is_known(pot.soil_volume_l) && is_known(pot.drained_kg) && is_known(pot.wilted_kg);
  const SoilWater soil = whole ? soil_of(pot) : SoilWater{};
  const double available = soil.field_capacity_m3_m3 - soil.wilting_point_m3_m3;
  const std::string wilting = whole && is_missing(pot.dry_kg)
                                  ? std::string("no dry weight: as much again as is available")
                                  : difference("(d - e) / a", pot.wilted_kg, pot.dry_kg, pot.soil_volume_l);
  return weight_line('a', "volume of the soil", pot.soil_volume_l, "l") +
         weight_line('b', "soaked (may be left out)", pot.soaked_kg, "kg") +
         weight_line('c', "drained for a day", pot.drained_kg, "kg") +
         weight_line('d', "wilted: the leaves hang at dawn", pot.wilted_kg, "kg") +
         weight_line('e', "dry (may be left out)", pot.dry_kg, "kg") + "\n" +
         worked_line("available", difference("(c - d) / a", pot.drained_kg, pot.wilted_kg, pot.soil_volume_l),
                     available) +
         worked_line("wilting point", wilting, soil.wilting_point_m3_m3) +
         worked_line("field capacity", "wilting point + available", soil.field_capacity_m3_m3) +
         worked_line("saturation", "field capacity + (b - c) / a", soil.saturation_m3_m3);
}

std::string soils_json() {
  Json soils = Json::array();
  for (const TextureClass& texture : texture_table()) soils.push_back(json_of(soil_answer(texture)));
  return json_text({{"shape", "noonleaf.soils"}, {"version", 1}, {"soils", std::move(soils)}});
}

std::string soil_json(const SoilAnswer& answer) {
  Json json{{"shape", "noonleaf.soil"}, {"version", 1}};
  json.update(json_of(answer));
  return json_text(json);
}

}  // namespace v1
}  // namespace noonleaf
