#include "noonleaf/balance/initial_state.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/nearest_name.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

// clang-format off: a table
constexpr std::array<FeelLevel, 5> levels{{
    {"dry", 0, 0.25, "dry, loose or hard lumps, no water stain on the fingers",
     "seca, suelta o en terrones duros, no mancha los dedos"},
    {"slightly_moist", 0.25, 0.5, "forms a weak ball that crumbles, no stain",
     "forma una bola débil que se deshace, no mancha"},
    {"moist", 0.5, 0.75, "forms a ball with finger marks, light stain",
     "forma una bola con marcas de los dedos, mancha un poco"},
    {"wet", 0.75, 1, "forms a soft ball, wet stain, no free water",
     "forma una bola blanda, moja la mano, sin agua libre"},
    {"field_capacity", 1, 1, "forms a soft ball, free water shows when squeezed",
     "forma una bola blanda, sale agua al apretar"},
}};
// clang-format on

}  // namespace

BalanceState state_from_moisture(const SoilWater& soil, double root_depth_m, double profile_depth_m,
                                 const MeasuredMoisture& moisture) {
  BalanceState state = initial_state(soil, root_depth_m, profile_depth_m, 0);
  const double driest = 0.5 * soil.wilting_point_m3_m3;
  const double wettest = is_known(soil.saturation_m3_m3) ? soil.saturation_m3_m3 : 0.6;
  const double root_zone = moisture.root_zone_m3_m3;
  const double top = is_known(moisture.top_layer_m3_m3) ? moisture.top_layer_m3_m3 : root_zone;
  const double lower = is_known(moisture.lower_m3_m3) ? moisture.lower_m3_m3 : root_zone;
  require_within("root_zone_m3_m3", root_zone, driest, wettest, "m3/m3");
  require_within("top_layer_m3_m3", top, driest, wettest, "m3/m3");
  require_within("lower_m3_m3", lower, driest, wettest, "m3/m3");
  const auto lacking = [&](double theta, double thickness_m) {
    return is_missing(theta) ? missing
                             : std::max(0.0, 1000 * (soil.field_capacity_m3_m3 - theta) * thickness_m);
  };
  state.dr_mm = lacking(root_zone, root_depth_m);
  state.lower_mm = lacking(lower, profile_depth_m - root_depth_m);
  state.de_mm = state.de_rain_mm = lacking(top, soil.evaporation_depth_m);
  return state;
}

std::span<const FeelLevel> feel_table() { return levels; }

double depleted_frac_by_feel(std::string_view id) {
  std::vector<std::string_view> ids;
  std::string all;
  for (const FeelLevel& level : levels) {
    if (level.id == id) return 1 - (level.available_low + level.available_high) / 2;
    ids.push_back(level.id);
    all += (all.empty() ? "" : ", ") + std::string(level.id);
  }
  const std::string near = nearest_name(id, ids);
  Problem problem;
  problem.field = "feel";
  problem.text = id;
  problem.message = "no step of the feel test is called \"" + std::string(id) + "\"";
  problem.fix = near.empty() ? "choose one of: " + all : "did you mean " + near + "?";
  throw Error(std::move(problem));
}

BalanceState spin_up(const SoilWater& soil, double profile_depth_m, std::span<const BalanceDay> days,
                     std::span<const GrowthDay> growth, const BalanceSettings& settings) {
  require_within("days", static_cast<double>(days.size()), 1, 100000, "");
  const BalanceState middle = initial_state(soil, growth.front().root_depth_m, profile_depth_m, 0.5);
  return run_balance(middle, days, growth, soil, settings).days.back().end;
}

StartMatters start_matters(const SoilWater& soil, double profile_depth_m, std::span<const BalanceDay> days,
                           std::span<const GrowthDay> growth, const BalanceSettings& settings) {
  require_within("days", static_cast<double>(days.size()), 1, 100000, "");
  const auto from = [&](double depleted_frac) {
    const BalanceState start =
        initial_state(soil, growth.front().root_depth_m, profile_depth_m, depleted_frac);
    return run_balance(start, days, growth, soil, settings);
  };
  const BalanceRun wet = from(0), dry = from(1);
  StartMatters out;
  for (std::size_t i = 0; i < days.size(); ++i) {
    out.dr_apart_mm = dry.days[i].end.dr_mm - wet.days[i].end.dr_mm;
    const bool close = std::abs(out.dr_apart_mm) < 1;
    if (close && !out.forgotten_on) out.forgotten_on = i;
    if (!close) out.forgotten_on.reset();
  }
  return out;
}

}  // namespace v1
}  // namespace noonleaf
