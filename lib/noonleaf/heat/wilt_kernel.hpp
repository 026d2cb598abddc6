#pragma once

#include <array>
#include <cstddef>

#include "noonleaf/heat/diurnal_shape.hpp"
#include "noonleaf/heat/wilt.hpp"

namespace noonleaf {
inline namespace v1 {
namespace kernel {

/// Members that go through the hours together: a day's hours of them stay in the first-level cache.
inline constexpr std::size_t heat_members = 64;
using HeatLane = double[heat_members];

/// One day's weather of a block; no number is missing (wilt_sound.hpp).
struct alignas(64) DayBlock {
  HeatLane t_max, t_min, t_max_before, t_min_after, ea, rs, u2;
};

/// What all members of a day share.
struct DayPlace {
  formula::DiurnalShape shape;
  double gamma_kpa_c, rso_mj_m2_d;
};

/// Shares of the day's potential transpiration, hour by hour.
struct alignas(64) ShareBlock {
  HeatLane share[24];
};

/// Spreads the days over their hours: diurnal.hpp and demand.hpp for a block.
void transpiration_shares(const DayPlace& place, const DayBlock& day, ShareBlock& out);

/// What all members of a planting share on a day.
struct PlantingShared {
  double turgor_loss_mpa, plant_mpa_h_mm, soil_mpa_h_mm;
  double bearable_raw_frac;           ///< tender.hpp
  std::array<double, 24> sun_factor;  ///< from dawn on: the sunlit factor by day, 1 by night
  std::array<int, 24> clock;          ///< from dawn on: which hour of the clock
};

/// A planting of a block: what the members have of their own, and what the day makes of it.
struct alignas(64) PlantingBlock {
  HeatLane field_capacity, wilting_point, taw, raw, total;  ///< total: the day's potential transpiration
  HeatLane dr, deficit;                                     ///< at dawn; after the hours at the next dawn
  HeatLane droop_hours;                                     ///< a count
  WiltVerdict verdict[heat_members];
};

/// wilt_day's hours for a block.
void wilt_hours(const ShareBlock& shares, const PlantingShared& shared, PlantingBlock& block);

}  // namespace kernel
}  // namespace v1
}  // namespace noonleaf
