#include "noonleaf/sprinkler/green_ampt.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/plain_name.hpp"
#include "noonleaf/sprinkler/fault_list.hpp"
#include "noonleaf/sprinkler/green_ampt_formula.hpp"
#include "noonleaf/sprinkler/intake_faults.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::string_view rawls =
    "Rawls, Brakensiek & Miller 1983 (Chow et al. 1988, Table 4.3.1), from memory";
constexpr std::string_view stand_in = "no row in the source: the values of silt loam stand in";

// Printed in cm and cm/h; here in mm and mm/h. A new edition of the table: edit these rows and the check rows
// in tests/sprinkler/green_ampt_test.cpp.
constexpr std::array<GreenAmptSoil, 12> soils = {{
    {"sand", 0.437, 0.417, 49.5, 117.8, 0.694, rawls},
    {"loamy sand", 0.437, 0.401, 61.3, 29.9, 0.553, rawls},
    {"sandy loam", 0.453, 0.412, 110.1, 10.9, 0.378, rawls},
    {"loam", 0.463, 0.434, 88.9, 3.4, 0.252, rawls},
    {"silt loam", 0.501, 0.486, 166.8, 6.5, 0.234, rawls},
    {"silt", 0.501, 0.486, 166.8, 6.5, 0.234, stand_in},
    {"sandy clay loam", 0.398, 0.330, 218.5, 1.5, 0.319, rawls},
    {"clay loam", 0.464, 0.309, 208.8, 1.0, 0.242, rawls},
    {"silty clay loam", 0.471, 0.432, 273.0, 1.0, 0.177, rawls},
    {"sandy clay", 0.430, 0.321, 239.0, 0.6, 0.223, rawls},
    {"silty clay", 0.479, 0.423, 292.2, 0.5, 0.150, rawls},
    {"clay", 0.475, 0.385, 316.3, 0.3, 0.165, rawls},
}};

void check_rate(double rate_mm_h, FaultList& faults) {
  faults.positive("rate_mm_h", rate_mm_h, 1000.0, "mm/h");
}

double suction_deficit(const IntakeState& state) {
  return state.soil.suction_head_mm * (1.0 - state.initial_saturation_frac) *
         state.soil.effective_porosity_m3_m3;
}

}  // namespace

void add_faults(const IntakeState& state, FaultList& faults) {
  faults.within("porosity_m3_m3", state.soil.porosity_m3_m3, 0.05, 0.95, "");
  faults.within("effective_porosity_m3_m3", state.soil.effective_porosity_m3_m3, 0.01,
                is_known(state.soil.porosity_m3_m3) ? state.soil.porosity_m3_m3 : 0.95, "");
  faults.within("suction_head_mm", state.soil.suction_head_mm, 0.0, 5000.0, "mm");
  faults.positive("conductivity_mm_h", state.soil.conductivity_mm_h, 10000.0, "mm/h");
  faults.within("pore_size_index", state.soil.pore_size_index, 0.05, 5.0, "");
  faults.within("initial_saturation_frac", state.initial_saturation_frac, 0.0, 1.0, "");
}

std::span<const GreenAmptSoil> green_ampt_soils() { return soils; }

const GreenAmptSoil& green_ampt_soil(std::string_view texture) {
  const std::string wanted = plain_name(texture, ' ');
  const auto found = std::find_if(soils.begin(), soils.end(),
                                  [&](const GreenAmptSoil& soil) { return soil.texture == wanted; });
  if (found != soils.end()) return *found;
  std::array<std::string_view, soils.size()> names{};
  for (std::size_t i = 0; i < soils.size(); ++i) names[i] = soils[i].texture;
  const std::string nearest = nearest_name(texture, names);
  Problem problem;
  problem.field = "texture";
  problem.text = texture;
  problem.message = "\"" + problem.text + "\" is not a texture class";
  problem.fix = nearest.empty() ? "use one such as \"sandy loam\"" : "did you mean \"" + nearest + "\"?";
  throw Error(std::move(problem));
}

double effective_saturation_frac(const GreenAmptSoil& soil, double theta_m3_m3) {
  require_within("theta_m3_m3", theta_m3_m3, 0.0, 1.0, "m3/m3");
  if (is_missing(theta_m3_m3)) return missing;
  const double residual = soil.porosity_m3_m3 - soil.effective_porosity_m3_m3;
  return std::clamp((theta_m3_m3 - residual) / soil.effective_porosity_m3_m3, 0.0, 1.0);
}

double suction_deficit_mm(const IntakeState& state) {
  FaultList faults;
  add_faults(state, faults);
  faults.throw_if_any();
  return suction_deficit(state);
}

double ponded_infiltration_mm(const IntakeState& state, double hours) {
  FaultList faults;
  add_faults(state, faults);
  faults.within("hours", hours, 0.0, 240.0, "h");
  faults.throw_if_any();
  return depth_for_time_term(suction_deficit(state), state.soil.conductivity_mm_h * hours);
}

double intake_rate_mm_h(const IntakeState& state, double infiltrated_mm) {
  FaultList faults;
  add_faults(state, faults);
  faults.within("infiltrated_mm", infiltrated_mm, 0.0, 1e6, "mm");
  faults.throw_if_any();
  if (infiltrated_mm == 0.0) return std::numeric_limits<double>::infinity();
  return state.soil.conductivity_mm_h * (1.0 + suction_deficit(state) / infiltrated_mm);
}

double ponding_time_min(const IntakeState& state, double rate_mm_h) {
  FaultList faults;
  add_faults(state, faults);
  check_rate(rate_mm_h, faults);
  faults.throw_if_any();
  return 60.0 * ponding_depth(suction_deficit(state), state.soil.conductivity_mm_h, rate_mm_h) / rate_mm_h;
}

double infiltrated_under_rate_mm(const IntakeState& state, double rate_mm_h, double minutes) {
  FaultList faults;
  add_faults(state, faults);
  check_rate(rate_mm_h, faults);
  faults.within("minutes", minutes, 0.0, 14400.0, "min");
  faults.throw_if_any();
  const double a = suction_deficit(state);
  const double k = state.soil.conductivity_mm_h;
  const double hours = minutes / 60.0;
  const double at_ponding = ponding_depth(a, k, rate_mm_h);
  if (rate_mm_h * hours <= at_ponding) return rate_mm_h * hours;
  return depth_after_ponding(a, k, at_ponding, hours - at_ponding / rate_mm_h);
}

}  // namespace v1
}  // namespace noonleaf
