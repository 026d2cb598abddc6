#include "noonleaf/balance/daily_step.hpp"

#include <cmath>
#include <string>

#include "noonleaf/balance/balance_formula.hpp"
#include "noonleaf/balance/profile.hpp"
#include "noonleaf/balance/step_formula.hpp"
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
  require_within("evaporation_factor", day.evaporation_factor, 0, 1, "");
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

/// What the formulas take, gathered from the day; and what belongs to the state but not to them.
struct Working {
  BalanceState state;
  step_formula::Day day{};
  double morning_fw = missing, evening_fw = missing;
};

/// Rain of the morning and the evening after runoff, which takes its share of both.
struct NetRain {
  double morning_mm, evening_mm;
};
NetRain rain_and_runoff(BalanceDetail& d, Working& w, const BalanceDay& day,
                        const BalanceSettings& settings) {
  d.rain_mm = day.rain_mm + day.evening_rain_mm;
  d.irrigation_mm = day.irrigation_mm + day.evening_irrigation_mm;
  d.evening_irrigation_mm = day.evening_irrigation_mm;
  d.runoff_mm = 0;
  double kept = 1;
  if (is_known(settings.curve_number) && d.rain_mm > 0) {
    const double fw = settings.irrigated_frac;
    const double de = fw * w.state.de_mm + (1 - fw) * w.state.de_rain_mm;
    d.curve_number = curve_number_for_wetness(settings.curve_number, de, d.rew_mm, d.tew_mm);
    d.runoff_mm = runoff_mm(d.rain_mm, d.curve_number);
    kept = 1 - d.runoff_mm / d.rain_mm;
  }
  const NetRain net{day.rain_mm * kept, day.evening_rain_mm * kept};
  w.day.morning = net.morning_mm + day.irrigation_mm;
  w.day.evening = net.evening_mm + day.evening_irrigation_mm;
  return net;
}

/// Depth on each part of the surface from an irrigation that wets the share fw: the irrigated part first.
struct OnSurface {
  double irrigated_mm, rain_part_mm;
};
OnSurface irrigation_on_surface(double irrigation, double fw, double irrigated_frac) {
  if (fw <= irrigated_frac) return {irrigation / irrigated_frac, 0};
  const double beyond = (fw - irrigated_frac) / (1 - irrigated_frac);
  return {irrigation / fw, irrigation / fw * beyond};
}

/// FAO-56 ch. 7, rules for fw where one De is kept: the irrigation's; all of the ground after significant
/// rain; else as before.
double fw_after(double before, double rain, double irrigation, double irrigation_fw) {
  if (irrigation > 0) return irrigation_fw;
  return rain >= significant_rain_mm ? 1 : before;
}

void water_on_surface(Working& w, const NetRain& rain, const BalanceDay& day,
                      const BalanceSettings& settings) {
  const double fw = is_known(day.irrigation_fw) ? day.irrigation_fw : settings.irrigated_frac;
  w.day.rain_part_morning = rain.morning_mm;
  w.day.rain_part_evening = rain.evening_mm;
  if (settings.surface == SurfaceAccount::as_printed) {
    w.morning_fw = fw_after(w.state.wetted_frac, rain.morning_mm, day.irrigation_mm, fw);
    w.evening_fw = fw_after(w.morning_fw, rain.evening_mm, day.evening_irrigation_mm, fw);
    w.day.surface_morning = rain.morning_mm + day.irrigation_mm / fw;
    w.day.surface_evening = rain.evening_mm + day.evening_irrigation_mm / fw;
    return;
  }
  w.morning_fw = w.evening_fw = settings.irrigated_frac;
  const OnSurface morning = irrigation_on_surface(day.irrigation_mm, fw, settings.irrigated_frac);
  const OnSurface evening = irrigation_on_surface(day.evening_irrigation_mm, fw, settings.irrigated_frac);
  w.day.surface_morning = rain.morning_mm + morning.irrigated_mm;
  w.day.surface_evening = rain.evening_mm + evening.irrigated_mm;
  w.day.rain_part_morning += morning.rain_part_mm;
  w.day.rain_part_evening += evening.rain_part_mm;
}

void exposed_parts(BalanceDetail& d, const BalanceSettings& settings) {
  d.few = exposed_wetted_frac(d.fc, d.fw, settings.emitters);
  d.few_rain = settings.surface == SurfaceAccount::coupled ? most(0, 1 - d.fc - d.few) : 0;
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

void plant_of_day(BalanceDetail& d, Working& w, const SoilWater& soil, const BalanceSettings& settings) {
  w.day.et0 = d.et0_mm_d;
  w.day.zr = d.growth.root_depth_m;
  w.day.lower_depth = w.state.profile_depth_m - d.growth.root_depth_m;
  w.day.p = d.growth.p_frac;
  w.day.salt = settings.salt_stress;
  w.day.evaporation_factor = d.evaporation_factor;
  const bool drawn = settings.top_roots == TopLayerRoots::drawn && d.growth.basis == CropBasis::kc_curve;
  w.day.top_depth = drawn ? std::pow(soil.evaporation_depth_m / d.growth.root_depth_m, 0.6) : 0;
}

void tell_flows(BalanceDetail& d, const step_formula::Flows& f, const step_formula::State& after) {
  d.taw_mm = f.taw;
  d.p_frac = f.p;
  d.raw_mm = f.raw;
  d.dr_open_mm = f.dr_open;
  d.dr_wet_mm = f.dr_wet;
  d.ks = f.ks;
  d.etc_mm_d = f.etc;
  d.transpiration_mm = f.transpiration;
  d.evaporation_mm = f.evaporation;
  d.lower_evaporation_mm = f.lower_evaporation;
  d.etc_adj_mm_d = f.transpiration + f.evaporation;
  d.dp_mm = f.dp;
  d.drainage_mm = f.drainage;
  d.end.dr_mm = after.dr;
  d.end.lower_mm = after.lower;
}

void tell_surface(BalanceDetail& d, const step_formula::Flows& f, const step_formula::State& after) {
  d.de_wet_mm = f.de_wet;
  d.de_rain_wet_mm = f.de_rain_wet;
  d.kr = f.kr;
  d.kr_rain = f.kr_rain;
  d.energy_share = f.energy_share;
  d.ke_irrigated = f.ke_irrigated;
  d.ke_rain = f.ke_rain;
  d.top_transpiration_mm = f.top_draw;
  d.dpe_mm = f.dpe;
  d.dpe_rain_mm = f.dpe_rain;
  d.de_tied_mm = after.de - f.de_untied;
  d.end.de_mm = after.de;
  d.end.de_rain_mm = after.de_rain;
  d.ke = d.et0_mm_d > 0 ? d.evaporation_mm / d.et0_mm_d : 0;
  d.kc = d.kcb + d.ke;
}

/// The top layer's water from its flows on one side, its states on the other.
void assert_surface_closure(const BalanceDetail& d, const Working& w, const step_formula::Flows& f) {
  const double left = w.state.de_mm - w.day.surface_morning - w.day.surface_evening +
                      f.evaporation_irrigated / d.few + f.top_draw + f.dpe + d.de_tied_mm - d.end.de_mm;
  if (std::abs(left) <= closure_limit_mm) return;
  refuse("de_mm", left, "water does not add up in the top layer: " + number_text(left) + " mm are left",
         "this is a fault of the program: please report it with the day's numbers");
}

double p_of_day(DepletionFraction depletion, double p_table, double etc) {
  return depletion == DepletionFraction::fixed ? p_table : balance_formula::p_adjusted(p_table, etc);
}

void dual_day(BalanceDetail& d, Working& w, const BalanceDay& day, const SoilWater& soil,
              const BalanceSettings& settings) {
  d.kcb = w.day.kcb = d.growth.kcb;
  d.fc = d.growth.cover_frac;
  d.fw = w.morning_fw;
  const bool has_climate = is_known(day.u2_m_s) && is_known(day.rh_min_pct);
  d.kc_max = w.day.kc_max =
      has_climate ? kc_max(d.kcb, {day.u2_m_s, day.rh_min_pct}, d.growth.height_m) : d.growth.kc_max;
  exposed_parts(d, settings);
  w.day.few = d.few;
  w.day.few_rain = d.few_rain;
  w.day.per_few = 1 / d.few;
  w.day.per_few_rain = d.few_rain > 0 ? 1 / d.few_rain : 0;
  const step_formula::Soil plain = plain_soil(soil);
  const step_formula::State before{w.state.de_mm, w.state.de_rain_mm, w.state.dr_mm, w.state.lower_mm};
  const auto p = [&](double p_table, double etc) { return p_of_day(settings.depletion, p_table, etc); };
  step_formula::Flows f{};
  // The general forms: they hold where the batch takes the shorter ones.
  using step_formula::Parts, step_formula::Tie, step_formula::TopRoots, step_formula::Reach;
  constexpr auto drawn = TopRoots::drawn;
  step_formula::State after;
  if (settings.surface == SurfaceAccount::as_printed)
    after = w.day.zr < plain.ze ? step_formula::dual<Parts::one, Tie::none, drawn, Reach::part_of_it>(
                                      plain, w.day, before, p, f)
                                : step_formula::dual<Parts::one, Tie::none, drawn, Reach::whole_top_layer>(
                                      plain, w.day, before, p, f);
  else
    after = w.day.zr < plain.ze
                ? step_formula::dual<Parts::two, Tie::to_root_zone, drawn, Reach::part_of_it>(plain, w.day,
                                                                                              before, p, f)
                : step_formula::dual<Parts::two, Tie::to_root_zone, drawn, Reach::whole_top_layer>(
                      plain, w.day, before, p, f);
  tell_flows(d, f, after);
  tell_surface(d, f, after);
  d.end.wetted_frac = w.evening_fw;
  assert_surface_closure(d, w, f);
}

void single_day(BalanceDetail& d, Working& w, const SoilWater& soil, const BalanceSettings& settings) {
  d.kc = w.day.kcb = d.growth.kc;
  const step_formula::State before{missing, missing, w.state.dr_mm, w.state.lower_mm};
  const auto p = [&](double p_table, double etc) { return p_of_day(settings.depletion, p_table, etc); };
  step_formula::Flows f{};
  tell_flows(d, f, step_formula::single(plain_soil(soil), w.day, before, p, f));
}

/// Snow or frozen ground: nothing moves but the root boundary.
void standing_day(BalanceDetail& d, const BalanceState& state) {
  d.end = state;
  d.rain_mm = d.runoff_mm = d.irrigation_mm = d.evening_irrigation_mm = 0;
  d.transpiration_mm = d.evaporation_mm = d.etc_mm_d = d.etc_adj_mm_d = d.lower_evaporation_mm = 0;
  d.dp_mm = d.drainage_mm = 0;
  d.dr_open_mm = d.dr_wet_mm = state.dr_mm;
  d.p_frac = d.growth.p_frac;
  d.raw_mm = d.p_frac * d.taw_mm;
}

/// What the day has whatever becomes of it, so that a day with something missing says so much.
BalanceDetail begun_day(const BalanceState& start, const BalanceDay& day, const GrowthDay& growth,
                        const SoilWater& soil, const BalanceSettings& settings) {
  BalanceDetail d;
  d.date = day.date;
  d.start = start;
  d.growth = growth;
  d.ground = day.ground;
  d.field_capacity_m3_m3 = soil.field_capacity_m3_m3;
  d.wilting_point_m3_m3 = soil.wilting_point_m3_m3;
  d.evaporation_depth_m = soil.evaporation_depth_m;
  d.u2_m_s = day.u2_m_s;
  d.rh_min_pct = day.rh_min_pct;
  d.evaporation_factor =
      is_known(day.evaporation_factor) ? day.evaporation_factor : settings.evaporation_factor;
  d.salt_stress = settings.salt_stress;
  d.end.root_depth_m = growth.root_depth_m;
  d.end.profile_depth_m = start.profile_depth_m;
  return d;
}

}  // namespace

BalanceDetail daily_step(const BalanceState& start, const BalanceDay& day, const GrowthDay& growth,
                         const SoilWater& given_soil, const BalanceSettings& settings) {
  const SoilWater& soil = day.soil ? *day.soil : given_soil;
  require_complete(soil);
  require_day(day, settings);
  require_profile(start, growth, soil);
  BalanceDetail d = begun_day(start, day, growth, soil, settings);
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
  plant_of_day(d, w, soil, settings);
  water_on_surface(w, rain_and_runoff(d, w, day, settings), day, settings);
  if (method == CoefficientMethod::dual)
    dual_day(d, w, day, soil, settings);
  else
    single_day(d, w, soil, settings);
  assert_closure(d);
  return d;
}

}  // namespace v1
}  // namespace noonleaf
