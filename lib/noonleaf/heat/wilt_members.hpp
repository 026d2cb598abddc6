#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "noonleaf/heat/diurnal.hpp"
#include "noonleaf/heat/wilt.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// One day's weather as many members have it, a number each.
struct DayMembers {
  std::span<const double> t_max_c, t_min_c, ea_kpa, rs_mj_m2_d, u2_m_s;
  std::span<const double> t_max_before_c, t_min_after_c;  ///< empty = this day's own
};

/// One planting on a day as many members have it.
struct PlantingMembers {
  WiltPlanting shared{};  ///< p_frac, turgor_loss_mpa, sunlit_factor, root_depth_m, days_since_transplant
  std::span<const double> field_capacity_m3_m3, wilting_point_m3_m3;
  std::span<const double> taw_mm, raw_mm, dr_mm;  ///< at dawn, as WiltPlanting
  std::span<const double> total_mm_d;             ///< the day's potential transpiration
  std::span<const double> leaf_deficit_mm;        ///< at dawn; empty = none
};

/// What the day does to one planting, a number for each member.
struct WiltMembers {
  std::vector<WiltVerdict> verdict;
  std::vector<double> droop_hours, leaf_deficit_mm, depletion_mm;  ///< the last two at the next dawn
};

/// wilt_day for many members of several plantings under one sky at once.
///
/// Method    hours_of_day, hourly_transpiration_mm_h and wilt_day over blocks of members; the hours are
/// worked
///           out once for all plantings. Nobody looked at dawn (DawnLook::not_looked)
/// Result    one for each planting, in their order; as the scalar doors member by member: depletion within
/// 1e-9
///           mm, the same verdicts and hours of droop (tests). The same bits whatever the split over calls or
///           the instruction set
/// Missing   A member with a number missing or outside the ranges of the scalar doors: verdict unknown, NaN
/// Throws    Error: spans of different lengths; the shared numbers as wilt_day; site as hours_of_day
std::vector<WiltMembers> wilt_members(const DaySite& site, const DayMembers& day,
                                      std::span<const PlantingMembers> plantings);

}  // namespace v1
}  // namespace noonleaf
