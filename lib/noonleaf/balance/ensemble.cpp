#include "noonleaf/balance/ensemble.hpp"

#include <algorithm>
#include <cmath>
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

void require_ensemble(const EnsembleGround& ground, const EnsembleSky& sky, const EnsembleWatering& watering,
                      std::span<const GrowthDay> growth, const BalanceSettings& settings,
                      std::span<double> dr_trace) {
  const std::size_t members = ground.field_capacity_m3_m3.size();
  require_length("wilting_point_m3_m3", ground.wilting_point_m3_m3.size(), members);
  require_length("rew_mm", ground.rew_mm.size(), members);
  require_length("depleted_frac", ground.depleted_frac.size(), members);
  if (!watering.share.empty()) require_length("share", watering.share.size(), members);
  if (!watering.irrigation_mm.empty())
    require_length("irrigation_mm", watering.irrigation_mm.size(), growth.size());
  if (!watering.evening_irrigation_mm.empty())
    require_length("evening_irrigation_mm", watering.evening_irrigation_mm.size(), growth.size());
  if (!dr_trace.empty()) require_length("dr_trace", dr_trace.size(), members * growth.size());
  if (growth.empty()) refuse("growth", "there are no days", "give one growth day for each day");
  if (sky.et0_mm_d.data == nullptr || sky.rain_mm.data == nullptr)
    refuse("sky", "reference evapotranspiration and rain are needed", "give both, missing days as NaN");
  if (settings.surface != SurfaceAccount::coupled)
    refuse("surface", "a batch keeps the surface coupled only", "use daily_step for the account as printed");
  for (const double depth : watering.irrigation_mm) require_within("irrigation_mm", depth, 0, 2000, "mm");
  for (const double depth : watering.evening_irrigation_mm)
    require_within("irrigation_mm", depth, 0, 2000, "mm");
  require_within("evaporation_depth_m", ground.evaporation_depth_m, 0.05, 0.3, "m");
  for (const GrowthDay& day : growth)
    require_within("root_depth_m", day.root_depth_m, 0.01, ground.profile_depth_m, "m");
  require_within("profile_depth_m", ground.profile_depth_m, ground.evaporation_depth_m, 10, "m");
  if (is_missing(ground.profile_depth_m))
    refuse("profile_depth_m", "is missing", "give the depth of the account");
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

void load_lane(kernel::Lane& lane, const MemberSeries& series, std::size_t day, std::size_t first,
               std::size_t count) {
  if (series.data == nullptr || series.member_stride == 0) {
    std::fill_n(lane, block_members, at(series, day, first));
    return;
  }
  const double* from = series.data + static_cast<std::ptrdiff_t>(day) * series.day_stride +
                       static_cast<std::ptrdiff_t>(first) * series.member_stride;
  for (std::size_t i = 0; i < count; ++i)
    lane[i] = from[static_cast<std::ptrdiff_t>(i) * series.member_stride];
  for (std::size_t i = count; i < block_members; ++i) lane[i] = lane[0];
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
    day.few = day.kc_max_shared = 1;
    return day;
  }
  day.kcb = growth.kcb;
  day.kc_max_shared = growth.kc_max;
  day.height_term = std::pow(growth.height_m / 3, 0.3);
  day.few = exposed_wetted_frac(growth.cover_frac, settings.irrigated_frac, settings.emitters);
  day.few_rain = settings.irrigated_frac < 1 ? std::max(0.0, 1 - growth.cover_frac - day.few) : 0;
  const bool drawn = settings.top_roots == TopLayerRoots::drawn && growth.basis == CropBasis::kc_curve;
  day.top_depth = drawn ? std::pow(day.ze / day.zr, 0.6) : 0;
  return day;
}

/// Carries one block of members through all days.
class BlockRun {
 public:
  BlockRun(const EnsembleGround& ground, const EnsembleSky& sky, const EnsembleWatering& watering,
           std::span<const GrowthDay> growth, const BalanceSettings& settings,
           std::span<const SharedDay> days)
      : ground_(ground), sky_(sky), watering_(watering), growth_(growth), settings_(settings), days_(days) {}

  void run(std::size_t first, std::size_t count, std::span<double> dr_trace, EnsembleResult& result) {
    *block_ = EnsembleBlock{};
    block_->count = count;
    for (std::size_t i = 0; i < block_members; ++i)
      load_member(*block_, i, ground_, watering_, growth_.front(), first + std::min(i, count - 1));
    bool surface_known = true;
    double root_depth = growth_.front().root_depth_m;
    for (std::size_t day = 0; day < growth_.size(); ++day) {
      one_day(day, first, surface_known, root_depth);
      surface_known = !is_single(growth_[day], settings_);
      root_depth = growth_[day].root_depth_m;
      if (dr_trace.empty()) continue;
      const std::size_t members = ground_.field_capacity_m3_m3.size();
      std::copy_n(block_->dr, count, dr_trace.begin() + static_cast<std::ptrdiff_t>(day * members + first));
    }
    if (!surface_known) std::fill_n(block_->de, block_members, missing);
    tell(first, count, result);
  }

 private:
  void one_day(std::size_t day, std::size_t first, bool surface_known, double root_from) {
    EnsembleBlock& b = *block_;
    load_lane(b.et0, sky_.et0_mm_d, day, first, b.count);
    load_lane(b.rain, sky_.rain_mm, day, first, b.count);
    load_lane(b.u2, sky_.u2_m_s, day, first, b.count);
    load_lane(b.rh_min, sky_.rh_min_pct, day, first, b.count);
    const double beyond = is_known(watering_.refill_beyond_raw_frac)
                              ? watering_.refill_beyond_raw_frac
                              : std::numeric_limits<double>::infinity();
    kernel::dawn(b, {beyond, watering_.refill_max_mm, root_from, days_[day].zr, ground_.profile_depth_m,
                     ground_.evaporation_depth_m, surface_known});
    const auto runoff =
        is_known(settings_.curve_number) ? kernel::Runoff::by_curve_number : kernel::Runoff::off;
    if (is_single(growth_[day], settings_))
      kernel::single_day(b, days_[day], runoff);
    else
      kernel::dual_day(b, days_[day],
                       settings_.irrigated_frac < 1 ? step_formula::Parts::two : step_formula::Parts::one,
                       runoff);
  }

  void tell(std::size_t first, std::size_t count, EnsembleResult& out) const {
    const EnsembleBlock& b = *block_;
    const auto at_first = static_cast<std::ptrdiff_t>(first);
    const auto copy = [&](const kernel::Lane& lane, std::vector<double>& to) {
      std::copy_n(lane, count, to.begin() + at_first);
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
    for (std::size_t i = 0; i < count; ++i)
      if (is_missing(b.poison[i]) || is_missing(b.dr[i])) out.missing_members.push_back(first + i);
  }

  const EnsembleGround& ground_;
  const EnsembleSky& sky_;
  const EnsembleWatering& watering_;
  std::span<const GrowthDay> growth_;
  const BalanceSettings& settings_;
  std::span<const SharedDay> days_;
  std::unique_ptr<EnsembleBlock> block_ = std::make_unique<EnsembleBlock>();
};

EnsembleResult sized(std::size_t members) {
  EnsembleResult out;
  for (auto* column : {&out.dr_mm, &out.lower_mm, &out.de_mm, &out.raw_mm, &out.transpiration_mm,
                       &out.evaporation_mm, &out.drainage_mm, &out.runoff_mm, &out.irrigation_mm,
                       &out.stress_mm, &out.days_beyond_raw, &out.refills})
    column->resize(members);
  return out;
}

}  // namespace

EnsembleResult run_ensemble(const EnsembleGround& ground, const EnsembleSky& sky,
                            const EnsembleWatering& watering, std::span<const GrowthDay> growth,
                            const BalanceSettings& settings, std::span<double> dr_trace) {
  require_ensemble(ground, sky, watering, growth, settings, dr_trace);
  std::vector<SharedDay> days;
  days.reserve(growth.size());
  for (std::size_t i = 0; i < growth.size(); ++i)
    days.push_back(shared_day(ground, watering, growth[i], settings, i));
  const std::size_t members = ground.field_capacity_m3_m3.size();
  EnsembleResult result = sized(members);
  BlockRun block(ground, sky, watering, growth, settings, days);
  for (std::size_t first = 0; first < members; first += block_members)
    block.run(first, std::min(block_members, members - first), dr_trace, result);
  return result;
}

}  // namespace v1
}  // namespace noonleaf
