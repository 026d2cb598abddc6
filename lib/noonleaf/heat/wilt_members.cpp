#include "noonleaf/heat/wilt_members.hpp"

#include <algorithm>
#include <memory>
#include <string>

#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/heat/hydraulics.hpp"
#include "noonleaf/heat/tender.hpp"
#include "noonleaf/heat/wilt_kernel.hpp"
#include "noonleaf/heat/wilt_sound.hpp"

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

/// A block's part of a column; the last block is filled up with its last member.
void load(std::span<const double> from, std::size_t first, std::size_t count, kernel::HeatLane& to) {
  std::copy_n(from.begin() + static_cast<std::ptrdiff_t>(first), count, to);
  std::fill(to + count, to + heat_members, from[first + count - 1]);
}

void load_day(const DayMembers& day, std::size_t first, std::size_t count, kernel::DayBlock& to) {
  load(day.t_max_c, first, count, to.t_max);
  load(day.t_min_c, first, count, to.t_min);
  load(day.t_max_before_c.empty() ? day.t_max_c : day.t_max_before_c, first, count, to.t_max_before);
  load(day.t_min_after_c.empty() ? day.t_min_c : day.t_min_after_c, first, count, to.t_min_after);
  load(day.ea_kpa, first, count, to.ea);
  load(day.rs_mj_m2_d, first, count, to.rs);
  load(day.u2_m_s, first, count, to.u2);
}

void load_planting(const PlantingMembers& planting, std::size_t first, std::size_t count,
                   kernel::PlantingBlock& to) {
  load(planting.field_capacity_m3_m3, first, count, to.field_capacity);
  load(planting.wilting_point_m3_m3, first, count, to.wilting_point);
  load(planting.taw_mm, first, count, to.taw);
  load(planting.raw_mm, first, count, to.raw);
  load(planting.dr_mm, first, count, to.dr);
  load(planting.total_mm_d, first, count, to.total);
  if (planting.leaf_deficit_mm.empty())
    std::fill(to.deficit, to.deficit + heat_members, 0.0);
  else
    load(planting.leaf_deficit_mm, first, count, to.deficit);
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
  shared.bearable_raw_frac = tender_raw_frac(planting.root_depth_m);
  const auto lit = std::find_if(shape.sun.begin(), shape.sun.end(), [](double share) { return share > 0; });
  const int dawn = lit == shape.sun.end() ? 6 : static_cast<int>(lit - shape.sun.begin());
  for (std::size_t step = 0; step < 24; ++step) {
    shared.clock[step] = (dawn + static_cast<int>(step)) % 24;
    shared.sun_factor[step] =
        shape.sun[static_cast<std::size_t>(shared.clock[step])] > 0 ? planting.sunlit_factor : 1;
  }
  return shared;
}

void tell(const kernel::PlantingBlock& block, std::size_t first, std::size_t count, WiltMembers& out) {
  const auto at = static_cast<std::ptrdiff_t>(first);
  std::copy_n(block.verdict, count, out.verdict.begin() + at);
  std::copy_n(block.droop_hours, count, out.droop_hours.begin() + at);
  std::copy_n(block.deficit, count, out.leaf_deficit_mm.begin() + at);
  std::copy_n(block.dr, count, out.depletion_mm.begin() + at);
}

WiltMembers sized(std::size_t members) {
  WiltMembers out;
  out.verdict.resize(members);
  for (auto* column : {&out.droop_hours, &out.leaf_deficit_mm, &out.depletion_mm}) column->resize(members);
  return out;
}

}  // namespace

std::vector<WiltMembers> wilt_members(const DaySite& site, const DayMembers& day,
                                      std::span<const PlantingMembers> plantings) {
  require_lengths(day, plantings);
  const std::size_t members = day.t_max_c.size();
  std::vector<WiltMembers> results(plantings.size());
  for (WiltMembers& result : results) result = sized(members);
  const kernel::DayPlace place = place_of(site);
  std::vector<kernel::PlantingShared> shared;
  for (const PlantingMembers& planting : plantings) shared.push_back(shared_of(planting.shared, place.shape));
  const auto weather = std::make_unique<kernel::DayBlock>();
  const auto shares = std::make_unique<kernel::ShareBlock>();
  const auto block = std::make_unique<kernel::PlantingBlock>();
  kernel::Sound day_sound, planting_sound;
  for (std::size_t first = 0; first < members; first += heat_members) {
    const std::size_t count = std::min(heat_members, members - first);
    load_day(day, first, count, *weather);
    kernel::set_aside(*weather, place.rso_mj_m2_d, day_sound);
    kernel::transpiration_shares(place, *weather, *shares);
    for (std::size_t one = 0; one < plantings.size(); ++one) {
      load_planting(plantings[one], first, count, *block);
      kernel::set_aside(*block, planting_sound);
      kernel::wilt_hours(*shares, shared[one], *block);
      kernel::take_away(day_sound, planting_sound, *block);
      tell(*block, first, count, results[one]);
    }
  }
  return results;
}

}  // namespace v1
}  // namespace noonleaf
