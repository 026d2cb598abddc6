#include "noonleaf/soil/soil_water.hpp"

#include <algorithm>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

[[noreturn]] void refuse(std::string field, double value, std::string message, std::string fix) {
  Problem problem;
  problem.field = std::move(field);
  problem.text = number_text(value);
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

void require_known(const char* field, double value) {
  if (is_known(value)) return;
  refuse(field, value, "is missing", "name a texture class, give sand and clay, or give measured values");
}

void require_retention(const SoilWater& soil) {
  require_known("field_capacity_m3_m3", soil.field_capacity_m3_m3);
  require_known("wilting_point_m3_m3", soil.wilting_point_m3_m3);
  require_within("field_capacity_m3_m3", soil.field_capacity_m3_m3, 0.01, 0.95, "m3/m3");
  require_within("wilting_point_m3_m3", soil.wilting_point_m3_m3, 0, 0.9, "m3/m3");
  if (!(soil.wilting_point_m3_m3 < soil.field_capacity_m3_m3))
    refuse("wilting_point_m3_m3", soil.wilting_point_m3_m3,
           number_text(soil.wilting_point_m3_m3) + " is not below the field capacity of " +
               number_text(soil.field_capacity_m3_m3),
           "check whether the two are swapped, or in per cent");
  if (soil.saturation_m3_m3 < soil.field_capacity_m3_m3)
    refuse("saturation_m3_m3", soil.saturation_m3_m3,
           number_text(soil.saturation_m3_m3) + " is below the field capacity of " +
               number_text(soil.field_capacity_m3_m3),
           "give the water content of the soaked soil, or leave it out");
  require_within("saturation_m3_m3", soil.saturation_m3_m3, 0, 1, "m3/m3");
  require_within("conductivity_mm_h", soil.conductivity_mm_h, 0, 10000, "mm/h");
  require_known("evaporation_depth_m", soil.evaporation_depth_m);
  require_within("evaporation_depth_m", soil.evaporation_depth_m, 0.05, 0.3, "m");
}

}  // namespace

double taw_mm(const SoilWater& soil, double root_depth_m) {
  return 1000 * (soil.field_capacity_m3_m3 - soil.wilting_point_m3_m3) * root_depth_m;  // FAO-56 eq. 82
}

double tew_mm(const SoilWater& soil) {
  return 1000 * (soil.field_capacity_m3_m3 - 0.5 * soil.wilting_point_m3_m3) *
         soil.evaporation_depth_m;  // FAO-56 eq. 73
}

SoilWater measured_soil(SoilWater values) {
  require_retention(values);
  if (is_missing(values.rew_mm)) {
    // Table 19: 8 to 12 mm for all but sands; the available water tells sands from the rest.
    const double available = values.field_capacity_m3_m3 - values.wilting_point_m3_m3;
    const double by_table = available < 0.09 ? 5 : available < 0.12 ? 7 : 9;
    values.rew_mm = std::min(by_table, 0.6 * tew_mm(values));
  }
  if (values.source.empty()) values.source = "measured";
  require_complete(values);
  return values;
}

void require_complete(const SoilWater& soil) {
  require_retention(soil);
  require_known("rew_mm", soil.rew_mm);
  require_within("rew_mm", soil.rew_mm, 0, 30, "mm");
  if (!(soil.rew_mm < tew_mm(soil)))
    refuse("rew_mm", soil.rew_mm,
           number_text(soil.rew_mm) + " mm is not below the total evaporable water of " +
               number_text(tew_mm(soil)) + " mm",
           "readily evaporable water is mostly 40 to 60 % of the total");
}

}  // namespace v1
}  // namespace noonleaf
