#include "noonleaf/soil/pot.hpp"

#include <string>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

[[noreturn]] void refuse(const char* field, double value, std::string message, std::string fix) {
  Problem problem;
  problem.field = field;
  problem.text = number_text(value);
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

void require_weight(const char* field, double value) {
  if (is_missing(value)) refuse(field, value, "is missing", "weigh the pot in that state");
  require_within(field, value, 0.01, 1000, "kg");
}

void require_heavier(const char* field, double heavy, const char* lighter_field, double light) {
  if (is_missing(heavy) || is_missing(light) || heavy > light) return;
  refuse(field, heavy,
         number_text(heavy) + " kg is not above " + lighter_field + " of " + number_text(light) + " kg",
         "check whether two weights are swapped");
}

}  // namespace

SoilWater soil_of(const PotWeights& pot) {
  if (is_missing(pot.soil_volume_l))
    refuse("soil_volume_l", pot.soil_volume_l, "is missing",
           "fill the pot with water to the soil's mark and measure it");
  require_within("soil_volume_l", pot.soil_volume_l, 0.1, 1000, "l");
  require_weight("drained_kg", pot.drained_kg);
  require_weight("wilted_kg", pot.wilted_kg);
  require_heavier("soaked_kg", pot.soaked_kg, "drained_kg", pot.drained_kg);
  require_heavier("drained_kg", pot.drained_kg, "wilted_kg", pot.wilted_kg);
  require_heavier("wilted_kg", pot.wilted_kg, "dry_kg", pot.dry_kg);
  const double available = (pot.drained_kg - pot.wilted_kg) / pot.soil_volume_l;  // 1 kg of water is 1 l
  SoilWater soil;
  soil.source = "pot weighed drained and wilted";
  if (is_known(pot.dry_kg)) {
    soil.wilting_point_m3_m3 = (pot.wilted_kg - pot.dry_kg) / pot.soil_volume_l;
    soil.source += " and dry";
  } else {
    soil.wilting_point_m3_m3 = available;  // half of the field capacity
    soil.source += "; wilting point taken as half of the field capacity";
  }
  soil.field_capacity_m3_m3 = soil.wilting_point_m3_m3 + available;
  if (is_known(pot.soaked_kg))
    soil.saturation_m3_m3 = soil.field_capacity_m3_m3 + (pot.soaked_kg - pot.drained_kg) / pot.soil_volume_l;
  return measured_soil(soil);
}

}  // namespace v1
}  // namespace noonleaf
