#include "noonleaf/heat/wilt_members.hpp"

#include <algorithm>
#include <array>
#include <memory>
#include <string>

#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/heat/hydraulics.hpp"
#include "noonleaf/heat/tender.hpp"
#include "noonleaf/heat/wilt_kernel.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using kernel::heat_members;

void require_length(const char* field, std::size_t length, std::size_t members) {
  if (length == members) return;
  Problem problem;
  problem.field = field;
  problem.message = std::to_string(length) + " numbers for " + std::to_string(members) + " members";
  problem.fix = "give one number for each member";
  throw Error(std::move(problem));
}

void require_lengths(const DayMembers& day, std::span<const PlantingMembers> plantings) {
  const std::size_t members = day.t_max_c.size();
  require_length("t_min_c", day.t_min_c.size(), members);
  require_length("ea_kpa", day.ea_kpa.size(), members);
  require_length("rs_mj_m2_d", day.rs_mj_m2_d.size(), members);
  require_length("u2_m_s", day.u2_m_s.size(), members);
  if (!day.t_max_before_c.empty()) require_length("t_max_before_c", day.t_max_before_c.size(), members);
  if (!day.t_min_after_c.empty()) require_length("t_min_after_c", day.t_min_after_c.size(), members);
  for (const PlantingMembers& planting : plantings) {
    require_length("field_capacity_m3_m3", planting.field_capacity_m3_m3.size(), members);
    require_length("wilting_point_m3_m3", planting.wilting_point_m3_m3.size(), members);
    require_length("taw_mm", planting.taw_mm.size(), members);
    require_length("raw_mm", planting.raw_mm.size(), members);
    require_length("dr_mm", planting.dr_mm.size(), members);
    require_length("total_mm_d", planting.total_mm_d.size(), members);
    if (!planting.leaf_deficit_mm.empty())
      require_length("leaf_deficit_mm", planting.leaf_deficit_mm.size(), members);
    require_within("sunlit_factor", planting.shared.sunlit_factor, 1, 2, "");
    require_within("root_depth_m", planting.shared.root_depth_m, 0, 5, "m");
    require_within("days_since_transplant", planting.shared.days_since_transplant, 0, 40'000, "d");
  }
}

// Without a branch, so that a loop over it becomes vector code.
bool within(double value, double low, double high) { return (value >= low) & (value <= high); }

/// A block's part of a column; the last block is filled up with its last member.
void load(std::span<const double> from, std::size_t first, std::size_t count, kernel::HeatLane& to) {
  std::copy_n(from.begin() + static_cast<std::ptrdiff_t>(first), count, to);
  std::fill(to + count, to + heat_members, from[first + count - 1]);
}

/// Which members of a block are known. The kernels work with numbers only: a member with a missing or
/// impossible one carries a stand-in's, and its result is missing.
using Sound = std::array<bool, heat_members>;

Sound load_day(const DayMembers& day, std::size_t first, std::size_t count, double rso_mj_m2_d,
               kernel::DayBlock& to) {
  load(day.t_max_c, first, count, to.t_max);
  load(day.t_min_c, first, count, to.t_min);
  load(day.t_max_before_c.empty() ? day.t_max_c : day.t_max_before_c, first, count, to.t_max_before);
  load(day.t_min_after_c.empty() ? day.t_min_c : day.t_min_after_c, first, count, to.t_min_after);
  load(day.ea_kpa, first, count, to.ea);
  load(day.rs_mj_m2_d, first, count, to.rs);
  load(day.u2_m_s, first, count, to.u2);
  Sound known{};
  for (std::size_t i = 0; i < heat_members; ++i) {
    const bool sound = (rso_mj_m2_d > 0) & within(to.t_max[i], -60, 60) &
                       within(to.t_min[i], -60, to.t_max[i]) & within(to.t_max_before[i], -60, 60) &
                       within(to.t_min_after[i], -60, 60) & within(to.ea[i], 0, 10) &
                       within(to.rs[i], 0, 60) & within(to.u2[i], 0, 60);
    known[i] = sound;
    to.t_max[i] = sound ? to.t_max[i] : 25;
    to.t_min[i] = sound ? to.t_min[i] : 15;
    to.t_max_before[i] = sound ? to.t_max_before[i] : 25;
    to.t_min_after[i] = sound ? to.t_min_after[i] : 15;
    to.ea[i] = sound ? to.ea[i] : 1.2;
    to.rs[i] = sound ? to.rs[i] : 20;
    to.u2[i] = sound ? to.u2[i] : 2;
  }
  return known;
}

Sound load_planting(const PlantingMembers& planting, std::size_t first, std::size_t count,
                    kernel::PlantingBlock& to) {
  load(planting.field_capacity_m3_m3, first, count, to.field_capacity);
  load(planting.wilting_point_m3_m3, first, count, to.wilting_point);
  load(planting.taw_mm, first, count, to.taw);
  load(planting.raw_mm, first, count, to.raw);
  load(planting.dr_mm, first, count, to.dr);
  load(planting.total_mm_d, first, count, to.total);
  std::fill(to.deficit, to.deficit + heat_members, 0.0);
  if (!planting.leaf_deficit_mm.empty()) load(planting.leaf_deficit_mm, first, count, to.deficit);
  Sound known{};
  for (std::size_t i = 0; i < heat_members; ++i) {
    const bool sound = (to.wilting_point[i] > 0) & (to.wilting_point[i] < to.field_capacity[i]) &
                       (to.field_capacity[i] < 1) & within(to.taw[i], 0.01, 1000) &
                       within(to.raw[i], 0, to.taw[i]) & within(to.dr[i], 0, 2000) &
                       within(to.total[i], 0, 30) & within(to.deficit[i], 0, leaf_refill_mm);
    known[i] = sound;
    to.wilting_point[i] = sound ? to.wilting_point[i] : 0.1;
    to.field_capacity[i] = sound ? to.field_capacity[i] : 0.3;
    to.taw[i] = sound ? to.taw[i] : 100;
    to.raw[i] = sound ? to.raw[i] : 50;
    to.dr[i] = sound ? to.dr[i] : 0;
    to.total[i] = sound ? to.total[i] : 5;
    to.deficit[i] = sound ? to.deficit[i] : 0;
  }
  return known;
}

kernel::DayPlace place_of(const DaySite& site) {
  const auto ra = extraterrestrial_by_hour_mj_m2_h(site);
  double total = 0;
  for (const double hour : ra) total += hour;
  return {formula::diurnal_shape(site),
          psychrometric_constant_kpa_c(atmospheric_pressure_kpa(site.location.elevation_m)),
          clear_sky_radiation(SimpleClearSky{.ra = total, .elevation_m = site.location.elevation_m})};
}

kernel::PlantingShared shared_of(const WiltPlanting& planting, const formula::DiurnalShape& shape) {
  const WaterPath path = water_path({.p_frac = planting.p_frac, .turgor_loss_mpa = planting.turgor_loss_mpa});
  kernel::PlantingShared shared{};
  shared.turgor_loss_mpa = path.turgor_loss_mpa;
  shared.plant_mpa_h_mm = path.plant_mpa_h_mm * transplant_factor(planting.days_since_transplant);
  shared.soil_mpa_h_mm = path.soil_mpa_h_mm;
  const auto lit = std::find_if(shape.sun.begin(), shape.sun.end(), [](double share) { return share > 0; });
  const int dawn = lit == shape.sun.end() ? 6 : static_cast<int>(lit - shape.sun.begin());
  for (std::size_t step = 0; step < 24; ++step) {
    shared.clock[step] = (dawn + static_cast<int>(step)) % 24;
    shared.sun_factor[step] =
        shape.sun[static_cast<std::size_t>(shared.clock[step])] > 0 ? planting.sunlit_factor : 1;
  }
  return shared;
}

WiltVerdict verdict_of(const kernel::PlantingBlock& block, std::size_t lane, double dr_at_dawn_mm,
                       double bearable_frac) {
  WiltVerdict verdict = block.droop_hours[lane] > 0 ? WiltVerdict::droop : WiltVerdict::comfortable;
  verdict = (dr_at_dawn_mm > block.raw[lane]) | (block.dr_hanging[lane] > bearable_frac * block.raw[lane])
                ? WiltVerdict::stress
                : verdict;
  return block.deficit[lane] > 0 ? WiltVerdict::dry_soil_wilt : verdict;
}

/// `out` is missing until it is told.
void tell(const kernel::PlantingBlock& block, const PlantingMembers& planting, const Sound& known_day,
          const Sound& known_planting, std::size_t first, std::size_t count, WiltMembers& out) {
  const double bearable_frac = tender_raw_frac(planting.shared.root_depth_m);
  for (std::size_t i = 0; i < count; ++i) {
    if (!known_day[i] || !known_planting[i]) continue;
    out.verdict[first + i] = verdict_of(block, i, planting.dr_mm[first + i], bearable_frac);
    out.droop_hours[first + i] = block.droop_hours[i];
    out.leaf_deficit_mm[first + i] = block.deficit[i];
    out.depletion_mm[first + i] = block.dr[i];
  }
}

WiltMembers sized(std::size_t members) {
  WiltMembers out;
  out.verdict.resize(members, WiltVerdict::unknown);
  for (auto* column : {&out.droop_hours, &out.leaf_deficit_mm, &out.depletion_mm})
    column->resize(members, missing);
  return out;
}

}  // namespace

std::vector<WiltMembers> wilt_members(const DaySite& site, const DayMembers& day,
                                      std::span<const PlantingMembers> plantings) {
  require_lengths(day, plantings);
  const std::size_t members = day.t_max_c.size();
  std::vector<WiltMembers> results(plantings.size(), sized(members));
  const kernel::DayPlace place = place_of(site);
  std::vector<kernel::PlantingShared> shared;
  for (const PlantingMembers& planting : plantings) shared.push_back(shared_of(planting.shared, place.shape));
  const auto weather = std::make_unique<kernel::DayBlock>();
  const auto shares = std::make_unique<kernel::ShareBlock>();
  const auto block = std::make_unique<kernel::PlantingBlock>();
  for (std::size_t first = 0; first < members; first += heat_members) {
    const std::size_t count = std::min(heat_members, members - first);
    const Sound known_day = load_day(day, first, count, place.rso_mj_m2_d, *weather);
    kernel::transpiration_shares(place, *weather, *shares);
    for (std::size_t one = 0; one < plantings.size(); ++one) {
      const Sound known_planting = load_planting(plantings[one], first, count, *block);
      kernel::wilt_hours(*shares, shared[one], *block);
      tell(*block, plantings[one], known_day, known_planting, first, count, results[one]);
    }
  }
  return results;
}

}  // namespace v1
}  // namespace noonleaf
