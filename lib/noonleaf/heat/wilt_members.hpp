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
  std::span<const double> t_max_c;         ///< of the day; -60 to 60
  std::span<const double> t_min_c;         ///< of the day; -60 to t_max_c
  std::span<const double> ea_kpa;          ///< mean of the day; 0 to 10
  std::span<const double> rs_mj_m2_d;      ///< total of the day; 0 to 60
  std::span<const double> u2_m_s;          ///< mean of the day; 0 to 60
  std::span<const double> t_max_before_c;  ///< of the day before; empty = this day's own
  std::span<const double> t_min_after_c;   ///< of the day after; empty = this day's own
};

/// One planting on a day as many members have it.
struct PlantingMembers {
  WiltPlanting shared{};  ///< p_frac, turgor_loss_mpa, sunlit_factor, root_depth_m, days_since_transplant
  std::span<const double> field_capacity_m3_m3;  ///< above wilting_point_m3_m3, below 1
  std::span<const double> wilting_point_m3_m3;   ///< above 0
  std::span<const double> taw_mm;                ///< 0.01 to 1000
  std::span<const double> raw_mm;                ///< 0 to taw_mm
  std::span<const double> dr_mm;                 ///< at dawn, as WiltPlanting; 0 to 2000
  std::span<const double> total_mm_d;            ///< the day's potential transpiration; 0 to 30
  std::span<const double> leaf_deficit_mm;       ///< at dawn; empty = none
};

/// What the day does to one planting, a number for each member.
struct WiltMembers {
  std::vector<WiltVerdict> verdict;     ///< unknown where a number is missing
  std::vector<double> droop_hours;      ///< hours in which the leaves hang; 0 to 24
  std::vector<double> leaf_deficit_mm;  ///< at the next dawn
  std::vector<double> depletion_mm;     ///< Dr at the next dawn
};

/// wilt_day for many members of several plantings under one sky at once.
///
/// Method    hours_of_day, hourly_transpiration_mm_h and wilt_day over blocks of members; the hours are
///           worked out once for all plantings. Nobody looked at dawn (DawnLook::not_looked)
/// Result    one for each planting, in their order; as the scalar doors member by member: depletion within
///           1e-9 mm, the same verdicts and hours of droop (tests). The same bits whatever the split over calls or
///           the instruction set
/// Missing   A member with a number missing or outside the ranges of the scalar doors: verdict unknown, NaN
/// Throws    Error: spans of different lengths; the shared numbers as wilt_day; site as hours_of_day
std::vector<WiltMembers> wilt_members(const DaySite& site, const DayMembers& day,
                                      std::span<const PlantingMembers> plantings);

}  // namespace v1
}  // namespace noonleaf
