#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "noonleaf/balance/daily_step.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Numbers by day and member in the caller's memory: data[day * day_stride + member * member_stride].
/// A stride of 0 means that all members (or days) share the number; no data means that nothing is known.
struct MemberSeries {
  const double* data = nullptr;      ///< day 0 of member 0; null = none was given
  std::ptrdiff_t day_stride = 0;     ///< distance from a day to the next, in numbers
  std::ptrdiff_t member_stride = 0;  ///< distance from a member to the next, in numbers
};

/// The soils of the members, one number each, and what share of the available water is gone at the start.
struct EnsembleGround {
  std::span<const double> field_capacity_m3_m3;  ///< by member
  std::span<const double> wilting_point_m3_m3;   ///< by member
  std::span<const double> rew_mm;                ///< readily evaporable water, by member
  /// share of the available water gone at the start, 0 to 1, by member
  std::span<const double> depleted_frac;
  double evaporation_depth_m = 0.10;  ///< Ze, of all members
  double profile_depth_m = missing;   ///< bottom of the account, of all members
};

/// The weather of the members. Rain falls before the day's demand. Wind and humidity may be left out: then Kc
/// max is that of the growth day.
struct EnsembleSky {
  MemberSeries et0_mm_d;    ///< reference ET; needed
  MemberSeries rain_mm;     ///< before the day's demand
  MemberSeries u2_m_s;      ///< wind at 2 m; none = Kc max of the growth day
  MemberSeries rh_min_pct;  ///< lowest relative humidity; none = Kc max of the growth day
};

/// How water is given to one planting, the same plan for all members.
struct EnsembleWatering {
  std::span<const double> irrigation_mm;          ///< by day, in the morning; empty = none
  std::span<const double> evening_irrigation_mm;  ///< by day; empty = none
  std::span<const double> share;  ///< by member: of the planned depth that infiltrates; empty = 1
  /// A rule on top of the plan: when Dr at dawn exceeds this share of the day before's RAW, the root zone is
  /// refilled that morning. Missing = no rule.
  double refill_beyond_raw_frac = missing;
  double refill_max_mm = 1000;  ///< the most that one refill brings
};

/// Members of one planting after the last day. A member with a missing or impossible number is missing from
/// that day on, and in all its totals; its index is in `missing_members`.
struct EnsembleResult {
  std::vector<double> dr_mm;                 ///< Dr at the close of the last day
  std::vector<double> lower_mm;              ///< below the roots, likewise
  std::vector<double> de_mm;                 ///< De of the top layer, likewise
  std::vector<double> raw_mm;                ///< RAW on the last day
  std::vector<double> transpiration_mm;      ///< total of all days
  std::vector<double> evaporation_mm;        ///< total
  std::vector<double> drainage_mm;           ///< total, out of the profile
  std::vector<double> runoff_mm;             ///< total
  std::vector<double> irrigation_mm;         ///< total
  std::vector<double> stress_mm;             ///< (1 - Ks) Kcb ET0 summed up: transpiration lost
  std::vector<double> days_beyond_raw;       ///< closes of day with Dr above RAW
  std::vector<double> refills;               ///< times that the rule gave water
  std::vector<std::size_t> missing_members;  ///< index of each, once
};

/// Where each member starts, where that is known better than by one depleted share: a number for each member.
struct EnsembleStart {
  std::span<const double> dr_mm;     ///< by member; both or none; none = EnsembleGround::depleted_frac
  std::span<const double> lower_mm;  ///< below the roots, by member
  std::span<const double> de_mm;     ///< above TEW it is TEW; empty = depleted_frac
};

/// One planting of the ensemble: its days of growth, its settings, its water.
struct EnsemblePlanting {
  std::span<const GrowthDay>
      growth;                   ///< one per day, the same for all members; all plantings have as many days
  BalanceSettings settings{};   ///< as daily_step, with SurfaceAccount::coupled
  EnsembleWatering watering{};  ///< none unless it says so
  std::span<double>
      dr_trace{};  ///< empty, or n_days x n_members: receives Dr at the close of every day, day by day
  std::span<double> raw_trace{};  ///< the same for the day's RAW
  EnsembleStart start{};          ///< none = EnsembleGround::depleted_frac
};

/// The balance of plantings under one sky for many members at once: daily_step's equations over blocks of
/// members.
///
/// Result    one for each planting, in their order: as daily_step day by day for every member, within 1e-9 mm
///           and with the same refills (tests)
/// Missing   NaN in, NaN out, per member
/// Throws    Error: spans of different lengths, settings that the batch does not serve, a profile too shallow
/// Note      Give all plantings of a bed at once: the weather is then read once. Members are independent:
///           split them to use several threads. The same numbers come out whatever the split and the
///           instruction set.
std::vector<EnsembleResult> run_ensemble(const EnsembleGround& ground, const EnsembleSky& sky,
                                         std::span<const EnsemblePlanting> plantings);

}  // namespace v1
}  // namespace noonleaf
