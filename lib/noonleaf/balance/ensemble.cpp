#include "noonleaf/balance/ensemble.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <string>

#include "noonleaf/balance/ensemble_kernel.hpp"
#include "noonleaf/balance/ensemble_weather.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/soil/texture.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using kernel::block_members;
using kernel::BlockWeather;
using kernel::EnsembleBlock;
using kernel::SharedDay;

[[noreturn]] void refuse(const char* field, std::string message, std::string fix) {
  Problem problem;
  problem.field = field;
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  throw Error(std::move(problem));
}

void require_length(const char* field, std::size_t length, std::size_t wanted) {
  if (length == wanted) return;
  refuse(field, std::to_string(length) + " numbers where " + std::to_string(wanted) + " are needed",
         "give one number for each member or day");
}

void require_members(const EnsembleGround& ground, const EnsembleSky& sky) {
  const std::size_t members = ground.field_capacity_m3_m3.size();
  require_length("wilting_point_m3_m3", ground.wilting_point_m3_m3.size(), members);
  require_length("rew_mm", ground.rew_mm.size(), members);
  require_length("depleted_frac", ground.depleted_frac.size(), members);
  require_within("evaporation_depth_m", ground.evaporation_depth_m, 0.05, 0.3, "m");
  require_within("profile_depth_m", ground.profile_depth_m, ground.evaporation_depth_m, 10, "m");
  if (is_missing(ground.profile_depth_m))
    refuse("profile_depth_m", "is missing", "give the depth of the account");
  if (sky.et0_mm_d.data == nullptr || sky.rain_mm.data == nullptr)
    refuse("sky", "reference evapotranspiration and rain are needed", "give both, missing days as NaN");
}

void require_settings(const BalanceSettings& settings, const EnsembleWatering& watering) {
  require_within("irrigated_frac", settings.irrigated_frac, 0.01, 1, "");
  require_within("salt_stress", settings.salt_stress, 0, 1, "");
  require_within("evaporation_factor", settings.evaporation_factor, 0, 1, "");
  require_within("curve_number", settings.curve_number, 1, 100, "");
  require_within("refill_max_mm", watering.refill_max_mm, 0, 2000, "mm");
  for (const double needed :
       {settings.irrigated_frac, settings.salt_stress, settings.evaporation_factor, watering.refill_max_mm})
    if (is_missing(needed)) refuse("settings", "a setting is missing", "give a number or keep the default");
}

void require_planting(const EnsemblePlanting& planting, std::size_t members, std::size_t days,
                      double profile_m) {
  const EnsembleWatering& watering = planting.watering;
  require_length("growth", planting.growth.size(), days);
  if (!watering.share.empty()) require_length("share", watering.share.size(), members);
  if (!watering.irrigation_mm.empty()) require_length("irrigation_mm", watering.irrigation_mm.size(), days);
  if (!watering.evening_irrigation_mm.empty())
    require_length("evening_irrigation_mm", watering.evening_irrigation_mm.size(), days);
  if (!planting.dr_trace.empty()) require_length("dr_trace", planting.dr_trace.size(), members * days);
  if (!planting.raw_trace.empty()) require_length("raw_trace", planting.raw_trace.size(), members * days);
  const EnsembleStart& start = planting.start;
  if (!start.dr_mm.empty() || !start.lower_mm.empty()) {
    require_length("dr_mm", start.dr_mm.size(), members);
    require_length("lower_mm", start.lower_mm.size(), members);
  }
  if (!start.de_mm.empty()) require_length("de_mm", start.de_mm.size(), members);
  if (planting.settings.surface != SurfaceAccount::coupled)
    refuse("surface", "a batch keeps the surface coupled only", "use daily_step for the account as printed");
  require_settings(planting.settings, watering);
  for (const double depth : watering.irrigation_mm) require_within("irrigation_mm", depth, 0, 2000, "mm");
  for (const double depth : watering.evening_irrigation_mm)
    require_within("irrigation_mm", depth, 0, 2000, "mm");
  for (const GrowthDay& day : planting.growth)
    require_within("root_depth_m", day.root_depth_m, 0.01, profile_m, "m");
}

/// A member as given.
struct Member {
  SoilWater soil;
  double depleted_frac, share;
};

Member member_of(const EnsembleGround& ground, const EnsembleWatering& watering, std::size_t index) {
  Member out{};
  out.soil.field_capacity_m3_m3 = ground.field_capacity_m3_m3[index];
  out.soil.wilting_point_m3_m3 = ground.wilting_point_m3_m3[index];
  out.soil.rew_mm = ground.rew_mm[index];
  out.soil.evaporation_depth_m = ground.evaporation_depth_m;
  out.depleted_frac = ground.depleted_frac[index];
  out.share = watering.share.empty() ? 1 : watering.share[index];
  return out;
}

/// A comparison with NaN is false: missing is not sound.
bool is_sound(const Member& member) {
  const SoilWater& soil = member.soil;
  return soil.wilting_point_m3_m3 >= 0 && soil.wilting_point_m3_m3 < soil.field_capacity_m3_m3 &&
         soil.field_capacity_m3_m3 <= 0.95 && soil.rew_mm >= 0 && soil.rew_mm < tew_mm(soil) &&
         member.depleted_frac >= 0 && member.depleted_frac <= 1 && member.share >= 0 && member.share <= 10;
}

/// The numbers of one member at the start, as initial_state has them.
void load_member(EnsembleBlock& b, std::size_t lane, const Member& member, const GrowthDay& first,
                 double profile_m) {
  const SoilWater& soil = member.soil;
  const double zr = first.root_depth_m, depleted = member.depleted_frac;
  b.share[lane] = member.share;
  b.rew[lane] = soil.rew_mm;
  b.tew[lane] = tew_mm(soil);
  b.per_drying[lane] = 1 / (b.tew[lane] - soil.rew_mm);
  b.available_mm_m[lane] = taw_mm(soil, 1);
  b.below_wilting_mm_m[lane] = 1000 * 0.5 * soil.wilting_point_m3_m3;
  b.dr[lane] = depleted * taw_mm(soil, zr);
  b.lower[lane] = depleted * taw_mm(soil, profile_m - zr);
  b.de[lane] = b.de_rain[lane] = depleted * taw_mm(soil, soil.evaporation_depth_m);
  b.raw[lane] = first.p_frac * taw_mm(soil, zr);
}

bool is_single(const GrowthDay& day, const BalanceSettings& settings) {
  if (day.basis == CropBasis::plant_factor) return true;
  return day.basis == CropBasis::kc_curve && settings.method == CoefficientMethod::single;
}

SharedDay shared_day(const EnsembleGround& ground, const EnsembleWatering& watering, const GrowthDay& growth,
                     const BalanceSettings& settings, std::size_t index) {
  SharedDay day{};
  day.ze = ground.evaporation_depth_m;
  day.zr = growth.root_depth_m;
  day.lower_depth = ground.profile_depth_m - growth.root_depth_m;
  day.irrigated_frac = settings.irrigated_frac;
  day.p = growth.p_frac;
  const bool adjusted = settings.depletion == DepletionFraction::adjusted_daily;
  day.p_slope = adjusted ? 0.04 : 0;
  day.p_low = adjusted ? 0.1 : 0;
  day.p_high = adjusted ? 0.8 : 1;
  day.salt = settings.salt_stress;
  day.evaporation_factor = settings.evaporation_factor;
  day.irrigation = watering.irrigation_mm.empty() ? 0 : watering.irrigation_mm[index];
  day.evening_irrigation = watering.evening_irrigation_mm.empty() ? 0 : watering.evening_irrigation_mm[index];
  day.curve_number = settings.curve_number;
  if (is_single(growth, settings)) {
    day.kcb = growth.kc;
    return day;
  }
  day.kcb = growth.kcb;
  day.kc_max_shared = is_known(growth.kc_max) ? growth.kc_max : 0;  // see missing_since
  day.height_term = std::pow(growth.height_m / 3, 0.3);
  day.few = exposed_wetted_frac(growth.cover_frac, settings.irrigated_frac, settings.emitters);
  day.few_rain = std::max(0.0, 1 - growth.cover_frac - day.few);
  day.per_few = 1 / day.few;
  day.per_few_rain = day.few_rain > 0 ? 1 / day.few_rain : 0;
  const bool drawn = settings.top_roots == TopLayerRoots::drawn && growth.basis == CropBasis::kc_curve;
  day.top_depth = drawn ? std::pow(day.ze / day.zr, 0.6) : 0;
  return day;
}

kernel::Form form_of(const SharedDay& day, kernel::Runoff runoff) {
  using namespace step_formula;
  return {day.irrigated_frac < 1 ? Parts::two : Parts::one,
          day.top_depth > 0 ? TopRoots::drawn : TopRoots::ignored,
          day.zr < day.ze ? Reach::part_of_it : Reach::whole_top_layer, runoff};
}

/// One planting with what its members share worked out.
struct PreparedPlanting {
  const EnsemblePlanting& given;
  std::vector<SharedDay>
      days;  ///< up to the first day with something missing: no member is known from there on
  std::vector<std::size_t> needs_climate;  ///< days without a Kc max of their own
  kernel::Runoff runoff;
};

/// As daily_step has it.
bool is_complete(const GrowthDay& growth, const BalanceSettings& settings) {
  if (is_missing(growth.root_depth_m) || is_missing(growth.p_frac)) return false;
  if (is_single(growth, settings)) return is_known(growth.kc);
  return is_known(growth.kcb) && is_known(growth.cover_frac) && is_known(growth.height_m);
}

PreparedPlanting prepared(const EnsembleGround& ground, const EnsemblePlanting& planting) {
  const BalanceSettings& settings = planting.settings;
  PreparedPlanting out{
      planting,
      {},
      {},
      is_known(settings.curve_number) ? kernel::Runoff::by_curve_number : kernel::Runoff::off};
  for (std::size_t i = 0; i < planting.growth.size(); ++i) {
    const SharedDay day = shared_day(ground, planting.watering, planting.growth[i], settings, i);
    if (!is_complete(planting.growth[i], settings) || is_missing(day.irrigation) ||
        is_missing(day.evening_irrigation))
      break;
    out.days.push_back(day);
    if (!is_single(planting.growth[i], settings) && is_missing(planting.growth[i].kc_max))
      out.needs_climate.push_back(i);
  }
  return out;
}

/// The first day from which on a member is not known; the number of all days for a member that always is.
std::size_t missing_since(const PreparedPlanting& planting, const BlockWeather& weather, std::size_t lane) {
  const std::size_t upto = std::min(planting.days.size(), weather.missing_from(lane));
  for (const std::size_t day : planting.needs_climate)
    if (day < upto && weather.row(day).climate[lane] <= kernel::climate_unknown) return day;
  return upto;
}

/// One block of members of one planting: its numbers and where they go.
struct BlockRun {
  const EnsembleGround& ground;
  const BlockWeather& weather;
  const PreparedPlanting& planting;
  std::size_t first, count;

  double planned_mm() const {
    double sum = 0;
    for (const SharedDay& day : planting.days) sum += day.irrigation + day.evening_irrigation;
    return sum;
  }
};

using MissingSince = std::array<std::size_t, block_members>;

/// Whether a member's own start is one; a start that is not given is.
bool is_sound(const EnsembleStart& start, std::size_t index) {
  const auto sound = [&](std::span<const double> of) {
    return of.empty() || (of[index] >= 0 && of[index] < 1e4);
  };
  return sound(start.dr_mm) && sound(start.lower_mm) && sound(start.de_mm);
}

void load_start(EnsembleBlock& b, std::size_t lane, const EnsembleStart& start, std::size_t index) {
  if (!start.dr_mm.empty()) {
    b.dr[lane] = start.dr_mm[index];
    b.lower[lane] = start.lower_mm[index];
  }
  if (!start.de_mm.empty()) b.de[lane] = b.de_rain[lane] = std::min(start.de_mm[index], b.tew[lane]);
}

/// Members that are not sound carry a loam's numbers and are missing from the first day on.
MissingSince load_block(EnsembleBlock& b, const BlockRun& run) {
  MissingSince since{};
  b = EnsembleBlock{};
  const auto& given = run.planting.given;
  for (std::size_t i = 0; i < block_members; ++i) {
    const std::size_t index = run.first + std::min(i, run.count - 1);
    Member member = member_of(run.ground, given.watering, index);
    const bool sound = is_sound(member) && is_sound(given.start, index);
    if (!sound) member = {soil_of(find_texture("loam")), 0, 1};
    load_member(b, i, member, given.growth.front(), run.ground.profile_depth_m);
    if (sound) load_start(b, i, given.start, index);
    since[i] = sound ? missing_since(run.planting, run.weather, i) : 0;
  }
  return since;
}

void keep_trace(const EnsembleBlock& b, const BlockRun& run, const MissingSince& since, std::size_t day) {
  const std::size_t at = day * run.ground.field_capacity_m3_m3.size() + run.first;
  const auto keep = [&](std::span<double> trace, const kernel::Lane& lane) {
    if (trace.empty()) return;
    for (std::size_t i = 0; i < run.count; ++i) trace[at + i] = day < since[i] ? lane[i] : missing;
  };
  keep(run.planting.given.dr_trace, b.dr);
  keep(run.planting.given.raw_trace, b.raw);
}

void tell(const EnsembleBlock& b, const BlockRun& run, const MissingSince& since, EnsembleResult& out) {
  const std::size_t n_days = run.planting.given.growth.size();
  const auto copy = [&](const kernel::Lane& lane, std::vector<double>& to) {
    for (std::size_t i = 0; i < run.count; ++i) to[run.first + i] = since[i] == n_days ? lane[i] : missing;
  };
  copy(b.dr, out.dr_mm);
  copy(b.lower, out.lower_mm);
  copy(b.de, out.de_mm);
  copy(b.raw, out.raw_mm);
  copy(b.transpiration, out.transpiration_mm);
  copy(b.evaporation, out.evaporation_mm);
  copy(b.drainage, out.drainage_mm);
  copy(b.runoff, out.runoff_mm);
  copy(b.irrigation, out.irrigation_mm);
  copy(b.stress, out.stress_mm);
  copy(b.beyond, out.days_beyond_raw);
  copy(b.refills, out.refills);
  for (std::size_t i = 0; i < run.count; ++i)
    if (since[i] < n_days) out.missing_members.push_back(run.first + i);
}

kernel::Dawn first_dawn(const BlockRun& run) {
  const EnsembleWatering& watering = run.planting.given.watering;
  return {.has_rule = is_known(watering.refill_beyond_raw_frac),
          .refill_beyond = watering.refill_beyond_raw_frac,
          .refill_max = watering.refill_max_mm,
          .root_from = run.planting.given.growth.front().root_depth_m,
          .root_to = missing,  // each day's own
          .profile = run.ground.profile_depth_m,
          .ze = run.ground.evaporation_depth_m,
          .surface_known = true};
}

/// Carries one block of members through all days of one planting.
void run_block(EnsembleBlock& b, const BlockRun& run, EnsembleResult& result) {
  const PreparedPlanting& planting = run.planting;
  const MissingSince since = load_block(b, run);
  kernel::Dawn dawn = first_dawn(run);
  const std::size_t n_days = planting.given.growth.size();
  for (std::size_t day = 0; day < n_days; ++day) {
    if (day < planting.days.size()) {
      const SharedDay& shared = planting.days[day];
      dawn.root_to = shared.zr;
      kernel::dawn(b, dawn);
      const bool single = is_single(planting.given.growth[day], planting.given.settings);
      if (single)
        kernel::single_day(b, run.weather.row(day), shared, planting.runoff);
      else
        kernel::dual_day(b, run.weather.row(day), shared, form_of(shared, planting.runoff));
      dawn.root_from = shared.zr;
      dawn.surface_known = !single;
    }
    keep_trace(b, run, since, day);
  }
  const double planned = run.planned_mm();
  for (std::size_t i = 0; i < block_members; ++i) b.irrigation[i] += planned * b.share[i];
  if (!dawn.surface_known) std::fill_n(b.de, block_members, missing);
  tell(b, run, since, result);
}

EnsembleResult sized(std::size_t members) {
  EnsembleResult out;
  for (auto* column : {&out.dr_mm, &out.lower_mm, &out.de_mm, &out.raw_mm, &out.transpiration_mm,
                       &out.evaporation_mm, &out.drainage_mm, &out.runoff_mm, &out.irrigation_mm,
                       &out.stress_mm, &out.days_beyond_raw, &out.refills})
    column->resize(members);
  return out;
}

}  // namespace

std::vector<EnsembleResult> run_ensemble(const EnsembleGround& ground, const EnsembleSky& sky,
                                         std::span<const EnsemblePlanting> plantings) {
  require_members(ground, sky);
  const std::size_t members = ground.field_capacity_m3_m3.size();
  if (plantings.empty() || plantings.front().growth.empty())
    refuse("plantings", "there are no days of growth", "give at least one planting with its days");
  const std::size_t days = plantings.front().growth.size();
  std::vector<PreparedPlanting> all;
  std::vector<EnsembleResult> results;
  for (const EnsemblePlanting& planting : plantings) {
    require_planting(planting, members, days, ground.profile_depth_m);
    all.push_back(prepared(ground, planting));
    results.push_back(sized(members));
  }
  BlockWeather weather(days);
  const auto block = std::make_unique<EnsembleBlock>();
  for (std::size_t first = 0; first < members; first += block_members) {
    const std::size_t count = std::min(block_members, members - first);
    weather.load(sky, first, count);
    for (std::size_t one = 0; one < all.size(); ++one)
      run_block(*block, {ground, weather, all[one], first, count}, results[one]);
  }
  return results;
}

}  // namespace v1
}  // namespace noonleaf
