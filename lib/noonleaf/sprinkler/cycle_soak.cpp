#include "noonleaf/sprinkler/cycle_soak.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

#include "noonleaf/guard.hpp"
#include "noonleaf/sprinkler/fault_list.hpp"
#include "noonleaf/sprinkler/green_ampt_formula.hpp"
#include "noonleaf/sprinkler/intake_faults.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double shortest_soak_min = 15.0;  // ours
constexpr double soak_step_min = 5.0;
constexpr double storage_tolerance_mm = 1e-9;  // rounding must not cost a cycle

struct StorageRow {
  std::string_view texture;
  std::array<double, 4> inches;  // slopes to 3, 6, 12 and above 12 %
};

// As printed, in inches. Rows marked "as" are not in the source (see the header).
constexpr std::array<double, 4> sand_inches = {0.40, 0.35, 0.30, 0.25};
constexpr std::array<double, 4> sandy_loam_inches = {0.33, 0.29, 0.24, 0.20};
constexpr std::array<double, 4> loam_inches = {0.30, 0.25, 0.21, 0.17};
constexpr std::array<double, 4> clay_loam_inches = {0.26, 0.22, 0.18, 0.15};
constexpr std::array<StorageRow, 12> storage_rows = {{
    {"sand", sand_inches},
    {"loamy sand", sand_inches},  // as sand
    {"sandy loam", sandy_loam_inches},
    {"loam", loam_inches},
    {"silt loam", loam_inches},        // as loam
    {"silt", loam_inches},             // as loam
    {"sandy clay loam", loam_inches},  // as loam
    {"clay loam", clay_loam_inches},
    {"silty clay loam", clay_loam_inches},  // as clay loam, and so below
    {"sandy clay", clay_loam_inches},
    {"silty clay", clay_loam_inches},
    {"clay", clay_loam_inches},
}};

// The soil during one cycle. x is the depth infiltrated in this cycle. Until x reaches `meet_mm` the front
// runs through the layer that earlier cycles wetted; from there on both are one front over `carried_mm + x`.
struct Wetting {
  double k_mm_h;
  double layer_a_mm;  // psi dtheta of the layer
  double meet_mm;
  double soil_a_mm;  // psi dtheta of the soil below
  double carried_mm;
};

double ponding_x(const Wetting& soil, double rate_mm_h) {
  const double in_layer = ponding_depth(soil.layer_a_mm, soil.k_mm_h, rate_mm_h);
  if (in_layer < soil.meet_mm) return in_layer;
  const double below = ponding_depth(soil.soil_a_mm, soil.k_mm_h, rate_mm_h) - soil.carried_mm;
  return std::max(soil.meet_mm, below);
}

double hours_to_take(const Wetting& soil, double from_x, double to_x) {
  double hours = 0.0;
  if (from_x < soil.meet_mm) {
    const double end = std::min(to_x, soil.meet_mm);
    hours +=
        (ponded_time_term(soil.layer_a_mm, end) - ponded_time_term(soil.layer_a_mm, from_x)) / soil.k_mm_h;
    from_x = end;
  }
  if (from_x < to_x) {
    const double a = soil.soil_a_mm;
    hours += (ponded_time_term(a, soil.carried_mm + to_x) - ponded_time_term(a, soil.carried_mm + from_x)) /
             soil.k_mm_h;
  }
  return hours;
}

double x_after_ponding(const Wetting& soil, double x, double hours) {
  if (x < soil.meet_mm) {
    const double to_meet = hours_to_take(soil, x, soil.meet_mm);
    if (hours <= to_meet) return depth_after_ponding(soil.layer_a_mm, soil.k_mm_h, x, hours);
    hours -= to_meet;
    x = soil.meet_mm;
  }
  return depth_after_ponding(soil.soil_a_mm, soil.k_mm_h, soil.carried_mm + x, hours) - soil.carried_mm;
}

Wetting dry_start(const IntakeState& state) {
  const double a = suction_deficit_mm(state);
  return {.k_mm_h = state.soil.conductivity_mm_h,
          .layer_a_mm = a,
          .meet_mm = 0.0,
          .soil_a_mm = a,
          .carried_mm = 0.0};
}

// The wetted layer as a rectangle of `carried_mm` over the initial content, dried to `saturation` by the
// pause.
Wetting after_pause(const IntakeState& state, double carried_mm, double saturation) {
  Wetting soil = dry_start(state);
  const double initial = state.initial_saturation_frac;
  soil.carried_mm = carried_mm;
  if (saturation <= initial || initial >= 1.0) return soil;  // drained away, or nothing to dry
  soil.layer_a_mm = state.soil.suction_head_mm * (1.0 - saturation) * state.soil.effective_porosity_m3_m3;
  soil.meet_mm = carried_mm * (1.0 - saturation) / (saturation - initial);
  return soil;
}

Cycle run_cycle(const Wetting& soil, double rate_mm_h, double minutes) {
  Cycle cycle;
  const double hours = minutes / 60.0;
  const double pond_x = ponding_x(soil, rate_mm_h);
  cycle.minutes = minutes;
  cycle.ponds_after_min = 60.0 * pond_x / rate_mm_h;
  const double pond_hours = pond_x / rate_mm_h;
  const double x =
      hours <= pond_hours ? rate_mm_h * hours : x_after_ponding(soil, pond_x, hours - pond_hours);
  cycle.standing_mm = std::max(0.0, rate_mm_h * hours - x);
  cycle.infiltrated_mm = soil.carried_mm + rate_mm_h * hours;
  return cycle;
}

// A pause: until the standing water is in, the front still runs as if ponded; only the rest dries the layer.
struct Soak {
  double minutes, drying_min;
};

Soak soak_after(const Wetting& soil, const Cycle& cycle) {
  const double all = cycle.infiltrated_mm - soil.carried_mm;
  const double standing_min = 60.0 * hours_to_take(soil, all - cycle.standing_mm, all);
  const double minutes =
      std::max(shortest_soak_min, soak_step_min * std::ceil(standing_min / soak_step_min - 1e-9));
  return {.minutes = minutes, .drying_min = std::max(0.0, minutes - standing_min)};
}

// Whole minutes, the longer cycles first; a fraction of a minute goes to the last.
std::vector<double> equal_cycles(double minutes, int count) {
  const double whole = std::floor(minutes);
  const double each = std::floor(whole / count);
  const double longer = whole - each * count;
  std::vector<double> lengths;
  lengths.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) lengths.push_back(i < longer ? each + 1.0 : each);
  lengths.back() += minutes - whole;
  return lengths;
}

// The plan for these cycles; none when more would stand than the storage holds.
std::optional<CyclePlan> fitting_plan(const CycleRequest& request, double minutes, int count) {
  CyclePlan plan;
  plan.soak_min = 0.0;
  Wetting soil = dry_start(request.intake);
  const std::vector<double> lengths = equal_cycles(minutes, count);
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    const Cycle cycle = run_cycle(soil, request.rate_mm_h, lengths[i]);
    if (cycle.standing_mm > request.surface_storage_mm + storage_tolerance_mm) return std::nullopt;
    plan.cycles.push_back(cycle);
    if (i + 1 == lengths.size()) break;
    const Soak soak = soak_after(soil, cycle);
    plan.soak_min = std::max(plan.soak_min, soak.minutes);
    soil = after_pause(request.intake, cycle.infiltrated_mm,
                       saturation_after_pause_frac(request.intake, cycle.infiltrated_mm, soak.drying_min));
  }
  return plan;
}

// The most whole minutes that fit into `most_cycles`; 0 cycles when not even one minute each does.
CyclePlan longest_fitting_plan(const CycleRequest& request) {
  double fits = 0.0;
  double fails = std::floor(request.minutes) + 1.0;
  CyclePlan best;
  best.soak_min = 0.0;
  while (fails - fits > 1.0) {
    const double middle = std::floor(0.5 * (fits + fails));
    const int count = std::min(request.most_cycles, static_cast<int>(middle));
    if (std::optional<CyclePlan> plan = fitting_plan(request, middle, count)) {
      fits = middle;
      best = *std::move(plan);
    } else {
      fails = middle;
    }
  }
  best.left_out_min = request.minutes - fits;
  best.reason = CycleReason::too_many_cycles;
  return best;
}

void check(const CycleRequest& request) {
  FaultList faults;
  add_faults(request.intake, faults);
  faults.positive("rate_mm_h", request.rate_mm_h, 1000.0, "mm/h");
  faults.within("minutes", request.minutes, 0.0, 1440.0, "min");
  faults.within("surface_storage_mm", request.surface_storage_mm, 0.0, 1000.0, "mm");
  faults.within("most_cycles", request.most_cycles, 1.0, 20.0, "");
  faults.throw_if_any();
}

// Time for the layer to dry by one step of u = ln((S - s_e) / (1 - s_e)), Simpson's rule on S^-n.
double drying_step(double initial, double exponent, double from_u, double to_u) {
  const auto slowness = [&](double u) {
    return std::pow(initial + (1.0 - initial) * std::exp(u), -exponent);
  };
  return (from_u - to_u) / 6.0 * (slowness(from_u) + 4.0 * slowness(0.5 * (from_u + to_u)) + slowness(to_u));
}

}  // namespace

double surface_storage_mm(std::string_view texture, double slope_pct) {
  const GreenAmptSoil& soil = green_ampt_soil(texture);
  FaultList faults;
  faults.within("slope_pct", slope_pct, 0.0, 100.0, "%");
  faults.throw_if_any();
  const auto row = std::find_if(storage_rows.begin(), storage_rows.end(),
                                [&](const StorageRow& entry) { return entry.texture == soil.texture; });
  const std::size_t column = slope_pct <= 3.0 ? 0 : slope_pct <= 6.0 ? 1 : slope_pct <= 12.0 ? 2 : 3;
  return mm_from_inches(row->inches[column]);
}

double bare_intake_share(std::string_view texture) {
  const std::string_view id = green_ampt_soil(texture).texture;
  if (id == "sand") return 2.0 / 2.0;
  if (id == "loamy sand" || id == "sandy loam") return 1.0 / 1.75;
  const bool medium = id == "loam" || id == "silt loam" || id == "silt" || id == "sandy clay loam";
  return medium ? 0.5 / 1.0 : 0.15 / 0.2;
}

std::string_view pause_rule_text() { return "rectangular wetted layer draining under gravity alone"; }

double saturation_after_pause_frac(const IntakeState& state, double infiltrated_mm, double pause_min) {
  FaultList faults;
  add_faults(state, faults);
  faults.positive("infiltrated_mm", infiltrated_mm, 1e6, "mm");
  faults.within("pause_min", pause_min, 0.0, 14400.0, "min");
  faults.throw_if_any();
  const double initial = state.initial_saturation_frac;
  if (initial >= 1.0) return 1.0;
  const double exponent = 3.0 + 2.0 / state.soil.pore_size_index;
  double left = pause_min / 60.0 * state.soil.conductivity_mm_h / infiltrated_mm;
  double u = 0.0;
  constexpr double step = 0.01;
  constexpr double lowest_u = -30.0;  // S within 1e-13 of the initial saturation
  while (left > 0.0 && u > lowest_u) {
    const double cost = drying_step(initial, exponent, u, u - step);
    if (cost >= left) {
      double part = step * left / cost;
      for (int round = 0; round < 4; ++round) part *= left / drying_step(initial, exponent, u, u - part);
      u -= part;
      break;
    }
    left -= cost;
    u -= step;
  }
  return initial + (1.0 - initial) * std::exp(u);
}

CyclePlan cycle_plan(const CycleRequest& request) {
  check(request);
  if (request.minutes == 0.0) return {.soak_min = 0.0};
  for (int count = 1; count <= request.most_cycles; ++count) {
    if (count > 1 && request.minutes < count) break;  // no cycle below a minute
    if (std::optional<CyclePlan> plan = fitting_plan(request, request.minutes, count)) {
      plan->reason = count == 1 ? CycleReason::one_run : CycleReason::split;
      return *plan;
    }
  }
  return longest_fitting_plan(request);
}

}  // namespace v1
}  // namespace noonleaf
