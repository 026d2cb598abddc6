#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/likelihood.hpp"
#include "noonleaf/plan/member_sky.hpp"
#include "noonleaf/plan/water_account.hpp"

namespace noonleaf {
inline namespace v1 {

/// How far off a rate is that was found like that, one standard deviation of its logarithm (likelihood.hpp).
inline double rate_doubt_log(RateBasis basis) {
  if (basis == RateBasis::guess) return rate_guess_log;
  return basis == RateBasis::cans_in_bed ? rate_cans_log : rate_flow_log;
}

/// What the members of a bed draw, a number each. One more than there are members: the last one has no error.
struct BedDraws {
  std::vector<double> field_capacity, wilting_point, rew_mm, available_mm_m;
  std::vector<double> rate, rain, du_lq;  ///< factors on watering and rain; share of the low quarter
  double rate_log = 0, rain_log = 0;      ///< their standard deviations
};
BedDraws bed_draws(const Garden& garden, std::size_t bed, const Journal& journal, const SoilWater& soil,
                   std::chrono::sys_days morning, const MemberOptions& options);

/// Which trace of a bed.
enum class BedTrace { mean, low_quarter };

/// The members of one planting: this morning, and day by day without water.
struct PlantingMembersTrace {
  std::vector<double> dr_dawn_mm;                ///< this morning, before today's water
  std::vector<double> dr_mm, raw_mm, beyond_mm;  ///< [day * (members + 1) + member], at the close; Dr - RAW
};

/// Everything that one planting's members are run from.
struct PlantingInBed {
  const Garden& garden;
  std::size_t bed;
  const Journal& journal;
  const PlantingAccount& account;
  const MemberSky& sky;
  const std::vector<double>& bed_share;  ///< ET0 over the bed as a share of the garden's, by day
  const BedDraws& draws;
  const MemberOptions& options;
  std::span<const PlannedWater> planned{};
};

/// Planned water of a bed by day, morning or evening.
std::vector<double> planned_by_day(std::span<const PlannedWater> planned, std::size_t bed, std::size_t n_days,
                                   bool evening);

PlantingMembersTrace members_of_planting(const PlantingInBed& planting, BedTrace trace);

/// Rain on the bed of the days to come, [day * (members + 1) + member].
std::vector<double> rain_to_come(const PlantingInBed& planting);

}  // namespace v1
}  // namespace noonleaf
