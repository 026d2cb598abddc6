#include "noonleaf/balance/ensemble.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <memory>
#include <string>

#include "noonleaf/balance/ensemble_kernel.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using kernel::block_members;
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

void require_planting(const EnsemblePlanting& planting, std::size_t members, std::size_t days,
                      double profile_m) {
  const EnsembleWatering& watering = planting.watering;
  require_length("growth", planting.growth.size(), days);
  if (!watering.share.empty()) require_length("share", watering.share.size(), members);
  if (!watering.irrigation_mm.empty()) require_length("irrigation_mm", watering.irrigation_mm.size(), days);
  if (!watering.evening_irrigation_mm.empty())
    require_length("evening_irrigation_mm", watering.evening_irrigation_mm.size(), days);
  if (!planting.dr_trace.empty()) require_length("dr_trace", planting.dr_trace.size(), members * days);
  if (planting.settings.surface != SurfaceAccount::coupled)
    refuse("surface", "a batch keeps the surface coupled only", "use daily_step for the account as printed");
  for (const double depth : watering.irrigation_mm) require_within("irrigation_mm", depth, 0, 2000, "mm");
  for (const double depth : watering.evening_irrigation_mm)
    require_within("irrigation_mm", depth, 0, 2000, "mm");
  for (const GrowthDay& day : planting.growth)
    require_within("root_depth_m", day.root_depth_m, 0.01, profile_m, "m");
}

/// The numbers of one member at the start, as initial_state has them.
void load_member(EnsembleBlock& b, std::size_t lane, const EnsembleGround& ground,
                 const EnsembleWatering& watering, const GrowthDay& first, std::size_t member) {
  SoilWater soil;
  soil.field_capacity_m3_m3 = ground.field_capacity_m3_m3[member];
  soil.wilting_point_m3_m3 = ground.wilting_point_m3_m3[member];
  soil.rew_mm = ground.rew_mm[member];
  soil.evaporation_depth_m = ground.evaporation_depth_m;
  const double depleted = ground.depleted_frac[member];
  b.share[lane] = watering.share.empty() ? 1 : watering.share[member];
  b.rew[lane] = soil.rew_mm;
  b.tew[lane] = tew_mm(soil);
  b.per_drying[lane] = 1 / (b.tew[lane] - soil.rew_mm);
  b.available_mm_m[lane] = taw_mm(soil, 1);
  b.below_wilting_mm_m[lane] = 1000 * 0.5 * soil.wilting_point_m3_m3;
  const double zr = first.root_depth_m;
  b.dr[lane] = depleted * taw_mm(soil, zr);
  b.lower[lane] = depleted * taw_mm(soil, ground.profile_depth_m - zr);
  b.de[lane] = b.de_rain[lane] = depleted * taw_mm(soil, soil.evaporation_depth_m);
  b.raw[lane] = first.p_frac * taw_mm(soil, zr);
  const bool sound = soil.wilting_point_m3_m3 >= 0 && soil.wilting_point_m3_m3 < soil.field_capacity_m3_m3 &&
                     soil.field_capacity_m3_m3 <= 0.95 && soil.rew_mm >= 0 && soil.rew_mm < b.tew[lane] &&
                     depleted >= 0 && depleted <= 1 && b.share[lane] >= 0 && b.share[lane] <= 10;
  b.poison[lane] = sound ? 0 : missing;
}

double at(const MemberSeries& series, std::size_t day, std::size_t member) {
  if (series.data == nullptr) return missing;
  return series.data[static_cast<std::ptrdiff_t>(day) * series.day_stride +
                     static_cast<std::ptrdiff_t>(member) * series.member_stride];
}

/// One series of a block, along memory whichever way the caller keeps it.
void load_series(const MemberSeries& series, std::size_t days, std::size_t first, std::size_t count,
                 double* to, std::size_t row_size) {
  if (std::abs(series.day_stride) < std::abs(series.member_stride)) {
    for (std::size_t i = 0; i < count; ++i)
      for (std::size_t day = 0; day < days; ++day) to[day * row_size + i] = at(series, day, first + i);
  } else {
    for (std::size_t day = 0; day < days; ++day)
      for (std::size_t i = 0; i < count; ++i) to[day * row_size + i] = at(series, day, first + i);
  }
  for (std::size_t day = 0; day < days; ++day)
    std::fill(to + day * row_size + count, to + day * row_size + block_members, to[day * row_size]);
}

/// The weather of a block of members, day after day: copied once, read by every planting.
class BlockWeather {
 public:
  explicit BlockWeather(std::size_t days)
      : numbers_(days * row_size), humidity_(days * (block_members + 8)) {}

  void load(const EnsembleSky& sky, std::size_t days, std::size_t first, std::size_t count) {
    load_series(sky.et0_mm_d, days, first, count, &numbers_[0], row_size);
    load_series(sky.rain_mm, days, first, count, &numbers_[block_members], row_size);
    load_series(sky.u2_m_s, days, first, count, &numbers_[2 * block_members], row_size);
    load_series(sky.rh_min_pct, days, first, count, humidity_.data(), block_members + 8);
    for (std::size_t day = 0; day < days; ++day) {
      double* wind = &numbers_[day * row_size + 2 * block_members];
      kernel::climate_row(wind, &humidity_[day * (block_members + 8)], block_members, wind);
    }
  }

  kernel::WeatherRow row(std::size_t day) const {
    const double* et0 = &numbers_[day * row_size];
    return {et0, et0 + block_members, et0 + 2 * block_members};
  }

 private:
  /// The odd eight keep successive rows out of the same cache sets.
  static constexpr std::size_t n_series = 3, row_size = n_series * block_members + 8;
  std::vector<double> numbers_, humidity_;
};

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
    day.few = day.per_few = day.kc_max_shared = 1;
    return day;
  }
  day.kcb = growth.kcb;
  day.kc_max_shared = growth.kc_max;
  day.height_term = std::pow(growth.height_m / 3, 0.3);
  day.few = exposed_wetted_frac(growth.cover_frac, settings.irrigated_frac, settings.emitters);
  day.few_rain = settings.irrigated_frac < 1 ? std::max(0.0, 1 - growth.cover_frac - day.few) : 0;
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
  std::vector<SharedDay> days;
  kernel::Runoff runoff;
};

PreparedPlanting prepared(const EnsembleGround& ground, const EnsemblePlanting& planting) {
  PreparedPlanting out{
      planting,
      {},
      is_known(planting.settings.curve_number) ? kernel::Runoff::by_curve_number : kernel::Runoff::off};
  for (std::size_t i = 0; i < planting.growth.size(); ++i)
    out.days.push_back(shared_day(ground, planting.watering, planting.growth[i], planting.settings, i));
  return out;
}

void tell(const EnsembleBlock& b, std::size_t first, EnsembleResult& out) {
  const auto copy = [&](const kernel::Lane& lane, std::vector<double>& to) {
    for (std::size_t i = 0; i < b.count; ++i) to[first + i] = lane[i] + b.poison[i];
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
  for (std::size_t i = 0; i < b.count; ++i)
    if (is_missing(out.dr_mm[first + i])) out.missing_members.push_back(first + i);
}

/// Carries one block of members through all days of one planting.
void run_block(EnsembleBlock& b, const EnsembleGround& ground, const BlockWeather& weather,
               const PreparedPlanting& planting, std::size_t first, std::size_t count,
               EnsembleResult& result) {
  const auto growth = planting.given.growth;
  const EnsembleWatering& watering = planting.given.watering;
  const std::size_t members = ground.field_capacity_m3_m3.size();
  b = EnsembleBlock{};
  b.count = count;
  for (std::size_t i = 0; i < block_members; ++i)
    load_member(b, i, ground, watering, growth.front(), first + std::min(i, count - 1));
  const double beyond = is_known(watering.refill_beyond_raw_frac) ? watering.refill_beyond_raw_frac
                                                                  : std::numeric_limits<double>::infinity();
  kernel::Dawn dawn{beyond, watering.refill_max_mm, growth.front().root_depth_m,
                    0,      ground.profile_depth_m, ground.evaporation_depth_m,
                    true};
  for (std::size_t day = 0; day < growth.size(); ++day) {
    const SharedDay& shared = planting.days[day];
    dawn.root_to = shared.zr;
    kernel::dawn(b, dawn);
    const bool single = is_single(growth[day], planting.given.settings);
    if (single)
      kernel::single_day(b, weather.row(day), shared, planting.runoff);
    else
      kernel::dual_day(b, weather.row(day), shared, form_of(shared, planting.runoff));
    dawn.root_from = shared.zr;
    dawn.surface_known = !single;
    if (!planting.given.dr_trace.empty())
      std::copy_n(b.dr, count,
                  planting.given.dr_trace.begin() + static_cast<std::ptrdiff_t>(day * members + first));
  }
  if (!dawn.surface_known) std::fill_n(b.de, block_members, missing);
  tell(b, first, result);
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
    weather.load(sky, days, first, count);
    for (std::size_t one = 0; one < all.size(); ++one)
      run_block(*block, ground, weather, all[one], first, count, results[one]);
  }
  return results;
}

}  // namespace v1
}  // namespace noonleaf
