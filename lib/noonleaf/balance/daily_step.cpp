#include "noonleaf/balance/daily_step.hpp"

#include <cmath>
#include <string>

#include "noonleaf/balance/balance_formula.hpp"
#include "noonleaf/balance/profile.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/soil/runoff.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using balance_formula::least;
using balance_formula::most;

constexpr double closure_limit_mm = 1e-9;

/// Rain from which it counts as wetting all of the ground. FAO-56 ch. 7, text to eq. 75: "3 to 4 mm".
constexpr double significant_rain_mm = 3;

[[noreturn]] void refuse(const char* field, double value, std::string message, std::string fix) {
  Problem problem;
  problem.field = field;
  problem.text = number_text(value);
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

void require_day(const BalanceDay& day, const BalanceSettings& settings) {
  require_within("et0_mm_d", day.et0_mm_d, 0, 30, "mm/d");
  for (const double rain : {day.rain_mm, day.evening_rain_mm}) require_within("rain_mm", rain, 0, 2000, "mm");
  for (const double water : {day.irrigation_mm, day.evening_irrigation_mm})
    require_within("irrigation_mm", water, 0, 2000, "mm");
  require_within("irrigation_fw", day.irrigation_fw, 0.01, 1, "");
  require_within("irrigated_frac", settings.irrigated_frac, 0.01, 1, "");
  require_within("salt_stress", settings.salt_stress, 0, 1, "");
  require_within("evaporation_factor", settings.evaporation_factor, 0, 1, "");
}

void require_profile(const BalanceState& state, const GrowthDay& growth, const SoilWater& soil) {
  require_within("root_depth_m", state.root_depth_m, 0.01, 10, "m");
  require_within("root_depth_m", growth.root_depth_m, 0.01, 10, "m");
  const double needed = most(most(state.root_depth_m, growth.root_depth_m), soil.evaporation_depth_m);
  if (state.profile_depth_m >= needed) return;
  refuse("profile_depth_m", state.profile_depth_m,
         number_text(state.profile_depth_m) + " m is shallower than the roots or the top layer, " +
             number_text(needed) + " m",
         "let the account reach as deep as the deepest roots of all its crops, or limit the roots");
}

/// Which coefficient carries the day: a plant factor already holds all evaporation, bare soil has nothing
/// else.
CoefficientMethod method_of(const GrowthDay& growth, const BalanceSettings& settings) {
  if (growth.basis == CropBasis::plant_factor) return CoefficientMethod::single;
  if (growth.basis == CropBasis::bare_soil) return CoefficientMethod::dual;
  return settings.method;
}

bool anything_missing(const BalanceState& start, const BalanceDay& day, const GrowthDay& growth,
                      CoefficientMethod method) {
  for (const double value : {start.dr_mm, start.lower_mm, start.root_depth_m, start.profile_depth_m,
                             day.et0_mm_d, day.rain_mm, day.irrigation_mm, day.evening_rain_mm,
                             day.evening_irrigation_mm, growth.root_depth_m, growth.p_frac})
    if (is_missing(value)) return true;
  if (method == CoefficientMethod::single) return is_missing(growth.kc);
  const bool no_climate = is_missing(day.u2_m_s) || is_missing(day.rh_min_pct);
  return is_missing(growth.kcb) || is_missing(growth.cover_frac) || is_missing(growth.height_m) ||
         (no_climate && is_missing(growth.kc_max));
}

/// The working values of one day that no one asks for afterwards.
struct Working {
  BalanceState state;
  double morning_mm = 0, evening_mm = 0;                      ///< water that enters the root zone
  double surface_morning_mm = 0, surface_evening_mm = 0;      ///< on the irrigated part of the surface
  double rain_part_morning_mm = 0, rain_part_evening_mm = 0;  ///< on the part that rain alone wets
  double top_draw_mm = 0, rain_part_top_draw_mm = 0;          ///< Tew of both parts
  double evaporation_mm = 0, rain_part_evaporation_mm = 0;
  double morning_fw = 1, evening_fw = 1;
};

void rain_and_runoff(BalanceDetail& d, Working& w, const BalanceDay& day, const BalanceSettings& settings) {
  d.rain_mm = day.rain_mm + day.evening_rain_mm;
  d.irrigation_mm = day.irrigation_mm + day.evening_irrigation_mm;
  d.runoff_mm = 0;
  if (is_known(settings.curve_number) && d.rain_mm > 0) {
    const double fw = settings.irrigated_frac;
    const double de = fw * w.state.de_mm + (1 - fw) * w.state.de_rain_mm;
    d.curve_number = curve_number_for_wetness(settings.curve_number, de, d.rew_mm, d.tew_mm);
    d.runoff_mm = runoff_mm(d.rain_mm, d.curve_number);
  }
  const double kept = d.rain_mm > 0 ? 1 - d.runoff_mm / d.rain_mm : 1;
  w.morning_mm = day.rain_mm * kept + day.irrigation_mm;
  w.evening_mm = day.evening_rain_mm * kept + day.evening_irrigation_mm;
}

/// Depth on each part of the surface from an irrigation that wets the share fw: the irrigated part first.
struct OnSurface {
  double irrigated_mm, rain_part_mm;
};
OnSurface irrigation_on_surface(double irrigation, double fw, double irrigated_frac) {
  if (fw <= irrigated_frac) return {irrigation / irrigated_frac, 0};
  const double beyond = irrigated_frac < 1 ? (fw - irrigated_frac) / (1 - irrigated_frac) : 0;
  return {irrigation / fw, irrigation / fw * beyond};
}

/// FAO-56 ch. 7, rules for fw where one De is kept: the irrigation's; all of the ground after significant
/// rain; else as before.
double fw_after(double before, double rain, double irrigation, double irrigation_fw) {
  if (irrigation > 0) return irrigation_fw;
  return rain >= significant_rain_mm ? 1 : before;
}

void water_on_surface(BalanceDetail& d, Working& w, const BalanceDay& day, const BalanceSettings& settings) {
  const double morning_rain = w.morning_mm - day.irrigation_mm;
  const double evening_rain = w.evening_mm - day.evening_irrigation_mm;
  const double fw = is_known(day.irrigation_fw) ? day.irrigation_fw : settings.irrigated_frac;
  if (settings.surface == SurfaceAccount::as_printed) {
    w.morning_fw = fw_after(w.state.wetted_frac, morning_rain, day.irrigation_mm, fw);
    w.evening_fw = fw_after(w.morning_fw, evening_rain, day.evening_irrigation_mm, fw);
    w.surface_morning_mm = morning_rain + day.irrigation_mm / fw;
    w.surface_evening_mm = evening_rain + day.evening_irrigation_mm / fw;
    w.rain_part_morning_mm = morning_rain;
    w.rain_part_evening_mm = evening_rain;
  } else {
    w.morning_fw = w.evening_fw = settings.irrigated_frac;
    const OnSurface morning = irrigation_on_surface(day.irrigation_mm, fw, settings.irrigated_frac);
    const OnSurface evening = irrigation_on_surface(day.evening_irrigation_mm, fw, settings.irrigated_frac);
    w.surface_morning_mm = morning_rain + morning.irrigated_mm;
    w.surface_evening_mm = evening_rain + evening.irrigated_mm;
    w.rain_part_morning_mm = morning_rain + morning.rain_part_mm;
    w.rain_part_evening_mm = evening_rain + evening.rain_part_mm;
  }
  d.fw = w.morning_fw;
  d.de_wet_mm = most(0, w.state.de_mm - w.surface_morning_mm);  // eq. 77, water early in the day
  d.de_rain_wet_mm = most(0, w.state.de_rain_mm - w.rain_part_morning_mm);
  d.dpe_mm = most(0, w.surface_morning_mm - w.state.de_mm);  // eq. 79
  d.dpe_rain_mm = most(0, w.rain_part_morning_mm - w.state.de_rain_mm);
}

void exposed_parts(BalanceDetail& d, const BalanceSettings& settings) {
  d.few = exposed_wetted_frac(d.fc, d.fw, settings.emitters);
  const bool two = settings.surface == SurfaceAccount::coupled && d.fw < 1;
  d.few_rain = two ? most(0, 1 - d.fc - d.few) : 0;
}

/// Allen et al. 2005: energy is shared by the exposed areas and the water left in them.
double energy_share(const BalanceDetail& d) {
  if (d.few_rain <= 0) return 1;
  const double left = most(0.001, d.tew_mm - d.de_wet_mm);
  const double left_rain = most(0.001, d.tew_mm - d.de_rain_wet_mm);
  return 1 / (1 + d.few_rain / d.few * left_rain / left);
}

/// Potential evaporation of both parts, limited to what their top layers hold.
void evaporation_demand(BalanceDetail& d, Working& w, const BalanceSettings& settings) {
  d.kr = balance_formula::kr(d.de_wet_mm, d.rew_mm, d.tew_mm);
  d.kr_rain = balance_formula::kr(d.de_rain_wet_mm, d.rew_mm, d.tew_mm);
  d.energy_share = energy_share(d);
  const double open = d.kc_max - d.kcb;
  const double ke = least(d.kr * d.energy_share * open, d.few * d.kc_max);
  const double ke_rain = least(d.kr_rain * (1 - d.energy_share) * open, d.few_rain * d.kc_max);
  const double factor = settings.evaporation_factor * d.et0_mm_d;
  w.evaporation_mm = least(ke * factor, d.few * most(0, d.tew_mm - d.de_wet_mm));
  w.rain_part_evaporation_mm = least(ke_rain * factor, d.few_rain * most(0, d.tew_mm - d.de_rain_wet_mm));
  d.evaporation_mm = w.evaporation_mm + w.rain_part_evaporation_mm;
}

void stress(BalanceDetail& d, const Working& w, const BalanceSettings& settings) {
  d.p_frac = settings.depletion == DepletionFraction::fixed
                 ? d.growth.p_frac
                 : balance_formula::p_adjusted(d.growth.p_frac, d.etc_mm_d);
  d.raw_mm = d.p_frac * d.taw_mm;  // eq. 83
  d.dr_open_mm = w.state.dr_mm - w.morning_mm;
  d.dr_wet_mm = most(0, d.dr_open_mm);
  d.ks = settings.salt_stress * balance_formula::ks(d.dr_wet_mm, d.taw_mm, d.raw_mm);
}

/// Transpiration stops at TAW, evaporation where the ground it draws on is at half the wilting point.
void limit_flows(BalanceDetail& d, Working& w, const SoilWater& soil) {
  const double zr = w.state.root_depth_m;
  const LayerLimits roots = root_zone_limits(soil, zr);
  const LayerLimits lower = lower_layer_limits(soil, zr, w.state.profile_depth_m);
  d.transpiration_mm = least(d.transpiration_mm, most(0, roots.transpiration_mm - d.dr_open_mm));
  const double root_share = least(1, zr / soil.evaporation_depth_m);
  double scale = 1;
  const double from_roots = d.evaporation_mm * root_share;
  const double from_lower = d.evaporation_mm - from_roots;
  const double roots_hold = most(0, roots.evaporation_mm - d.dr_open_mm - d.transpiration_mm);
  const double lower_holds = most(0, lower.evaporation_mm - w.state.lower_mm);
  if (from_roots > roots_hold) scale = roots_hold / from_roots;
  if (from_lower > lower_holds) scale = least(scale, lower_holds / from_lower);
  w.evaporation_mm *= scale;
  w.rain_part_evaporation_mm *= scale;
  d.evaporation_mm = w.evaporation_mm + w.rain_part_evaporation_mm;
  d.lower_evaporation_mm = d.evaporation_mm * (1 - root_share);
}

/// Tew of one part: Allen et al. 2005, Kt = (1 - De/TEW) / (1 - Dr/TAW) (Ze/Zr)^0.6 <= 1; roots take no water
/// below the wilting point.
double top_draw(const BalanceDetail& d, const SoilWater& soil, double de, double evaporated) {
  const double wet = most(0, 1 - de / d.tew_mm);
  const double root_wet = most(0.001, 1 - d.dr_wet_mm / d.taw_mm);
  const double depth = std::pow(soil.evaporation_depth_m / d.growth.root_depth_m, 0.6);
  const double kt = least(1, wet / root_wet * depth);
  const double above_wilting = taw_mm(soil, soil.evaporation_depth_m) - de - evaporated;
  return least(kt * d.transpiration_mm, most(0, above_wilting));
}

void close_surface(BalanceDetail& d, Working& w, const SoilWater& soil, const BalanceSettings& settings) {
  const double evaporated = w.evaporation_mm / d.few;
  const double rain_evaporated = d.few_rain > 0 ? w.rain_part_evaporation_mm / d.few_rain : 0;
  if (settings.top_roots == TopLayerRoots::drawn && d.growth.basis == CropBasis::kc_curve) {
    w.top_draw_mm = top_draw(d, soil, d.de_wet_mm, evaporated);
    w.rain_part_top_draw_mm = top_draw(d, soil, d.de_rain_wet_mm, rain_evaporated);
  }
  const double de = d.de_wet_mm + evaporated + w.top_draw_mm;  // eq. 77
  const double de_rain = d.de_rain_wet_mm + rain_evaporated + w.rain_part_top_draw_mm;
  d.end.de_mm = most(0, de - w.surface_evening_mm);
  d.end.de_rain_mm = most(0, de_rain - w.rain_part_evening_mm);
  d.dpe_mm += most(0, w.surface_evening_mm - de);
  d.dpe_rain_mm += most(0, w.rain_part_evening_mm - de_rain);
  d.top_transpiration_mm = w.top_draw_mm;
  d.end.wetted_frac = w.evening_fw;
  const double left = w.state.de_mm - w.surface_morning_mm - w.surface_evening_mm + evaporated +
                      w.top_draw_mm + d.dpe_mm - d.end.de_mm;
  if (std::abs(left) > closure_limit_mm)
    refuse("de_mm", left, "water does not add up in the top layer: " + number_text(left) + " mm are left",
           "this is a fault of the program: please report it with the day's numbers");
}

void close_layers(BalanceDetail& d, const Working& w) {
  const double from_roots = d.transpiration_mm + d.evaporation_mm - d.lower_evaporation_mm;
  const double dr = d.dr_open_mm + from_roots - w.evening_mm;  // eq. 85
  d.dp_mm = most(0, -dr);                                      // eq. 88
  d.end.dr_mm = dr + d.dp_mm;
  const double lower = w.state.lower_mm + d.lower_evaporation_mm - d.dp_mm;
  d.drainage_mm = most(0, -lower);
  d.end.lower_mm = lower + d.drainage_mm;
}

/// Makes De agree with Dr at the close of the day. The exposed top layer is a part of the root zone (and,
/// under roots shallower than it, of the layer below): it cannot lack more water than the whole lacks, nor
/// hold more than the whole holds. FAO-56 keeps both accounts apart: eq. 88 lets the day's ET use water in
/// excess of field capacity before it drains, eq. 79 does not.
void tie_surface(BalanceDetail& d, const SoilWater& soil, const BalanceSettings& settings) {
  d.de_tied_mm = 0;
  if (settings.surface == SurfaceAccount::as_printed) return;
  const double root_share = least(1, d.end.root_depth_m / soil.evaporation_depth_m);
  const double exposed = (d.few + d.few_rain) * root_share;
  const double lacking = root_share * (d.few * d.end.de_mm + d.few_rain * d.end.de_rain_mm);
  const double held = exposed * d.tew_mm - lacking;
  const double root_held = most(0, root_zone_limits(soil, d.end.root_depth_m).evaporation_mm - d.end.dr_mm);
  const double before = d.end.de_mm;
  if (lacking > d.end.dr_mm) {
    d.end.de_mm *= d.end.dr_mm / lacking;
    d.end.de_rain_mm *= d.end.dr_mm / lacking;
  } else if (held > root_held) {
    d.end.de_mm = d.tew_mm - (d.tew_mm - d.end.de_mm) * root_held / held;
    d.end.de_rain_mm = d.tew_mm - (d.tew_mm - d.end.de_rain_mm) * root_held / held;
  }
  d.de_tied_mm = d.end.de_mm - before;
}

/// All water of the day from the flows on one side, from the states on the other.
void assert_closure(BalanceDetail& d) {
  const double came = d.rain_mm - d.runoff_mm + d.irrigation_mm;
  const double left = d.transpiration_mm + d.evaporation_mm + d.drainage_mm;
  const double wetter = (d.start.dr_mm + d.start.lower_mm) - (d.end.dr_mm + d.end.lower_mm);
  d.closure_mm = came - left - wetter;
  if (std::abs(d.closure_mm) <= closure_limit_mm) return;
  refuse("closure_mm", d.closure_mm,
         "water does not add up: rain " + number_text(d.rain_mm) + ", runoff " + number_text(d.runoff_mm) +
             ", irrigation " + number_text(d.irrigation_mm) + ", transpiration " +
             number_text(d.transpiration_mm) + ", evaporation " + number_text(d.evaporation_mm) +
             ", drainage " + number_text(d.drainage_mm) + " mm; depletion from " +
             number_text(d.start.dr_mm) + " + " + number_text(d.start.lower_mm) + " to " +
             number_text(d.end.dr_mm) + " + " + number_text(d.end.lower_mm) + " mm",
         "this is a fault of the program: please report it with the day's numbers");
}

void dual_day(BalanceDetail& d, Working& w, const BalanceDay& day, const SoilWater& soil,
              const BalanceSettings& settings) {
  d.kcb = d.growth.kcb;
  d.fc = d.growth.cover_frac;
  const bool has_climate = is_known(day.u2_m_s) && is_known(day.rh_min_pct);
  d.kc_max = has_climate ? kc_max(d.kcb, {day.u2_m_s, day.rh_min_pct}, d.growth.height_m) : d.growth.kc_max;
  exposed_parts(d, settings);
  evaporation_demand(d, w, settings);
  d.etc_mm_d = d.kcb * d.et0_mm_d + d.evaporation_mm;  // eq. 69
  stress(d, w, settings);
  d.transpiration_mm = d.ks * d.kcb * d.et0_mm_d;  // eq. 80
  limit_flows(d, w, soil);
  close_surface(d, w, soil, settings);
}

void single_day(BalanceDetail& d, Working& w, const SoilWater& soil, const BalanceSettings& settings) {
  d.kc = d.growth.kc;
  d.etc_mm_d = d.kc * d.et0_mm_d;  // eq. 58
  d.evaporation_mm = 0;
  stress(d, w, settings);
  d.transpiration_mm = d.ks * d.etc_mm_d;  // eq. 81
  limit_flows(d, w, soil);
  // A single coefficient tells nothing of the top layer.
  d.de_wet_mm = d.de_rain_wet_mm = d.dpe_mm = d.dpe_rain_mm = d.fw = missing;
}

/// Snow or frozen ground: nothing moves but the root boundary.
void standing_day(BalanceDetail& d, const BalanceState& state) {
  d.end = state;
  d.rain_mm = d.runoff_mm = d.irrigation_mm = 0;
  d.transpiration_mm = d.evaporation_mm = d.etc_mm_d = d.etc_adj_mm_d = d.lower_evaporation_mm = 0;
  d.dp_mm = d.drainage_mm = 0;
  d.dr_open_mm = d.dr_wet_mm = state.dr_mm;
  d.p_frac = d.growth.p_frac;
  d.raw_mm = d.p_frac * d.taw_mm;
}

}  // namespace

BalanceDetail daily_step(const BalanceState& start, const BalanceDay& day, const GrowthDay& growth,
                         const SoilWater& soil, const BalanceSettings& settings) {
  require_complete(soil);
  require_day(day, settings);
  require_profile(start, growth, soil);
  BalanceDetail d;
  d.date = day.date;
  d.start = start;
  d.growth = growth;
  d.ground = day.ground;
  d.end.root_depth_m = growth.root_depth_m;
  d.end.profile_depth_m = start.profile_depth_m;
  const CoefficientMethod method = method_of(growth, settings);
  if (anything_missing(start, day, growth, method)) return d;

  Working w;
  w.state = start;
  d.et0_mm_d = day.et0_mm_d;
  d.rew_mm = soil.rew_mm;
  d.tew_mm = tew_mm(soil);
  if (is_missing(w.state.de_mm)) w.state.de_mm = least(most(0, start.dr_mm), d.tew_mm);
  if (is_missing(w.state.de_rain_mm)) w.state.de_rain_mm = w.state.de_mm;
  d.root_gain_mm = move_root_boundary(w.state, soil, growth.root_depth_m);
  d.taw_mm = taw_mm(soil, growth.root_depth_m);
  if (day.ground != GroundState::open) {
    standing_day(d, w.state);
    assert_closure(d);
    return d;
  }
  rain_and_runoff(d, w, day, settings);
  water_on_surface(d, w, day, settings);
  if (method == CoefficientMethod::dual)
    dual_day(d, w, day, soil, settings);
  else
    single_day(d, w, soil, settings);
  d.etc_adj_mm_d = d.transpiration_mm + d.evaporation_mm;
  if (method == CoefficientMethod::dual) {
    d.ke = d.et0_mm_d > 0 ? d.evaporation_mm / d.et0_mm_d : 0;
    d.kc = d.kcb + d.ke;
  }
  close_layers(d, w);
  if (method == CoefficientMethod::dual) tie_surface(d, soil, settings);
  assert_closure(d);
  return d;
}

}  // namespace v1
}  // namespace noonleaf
