#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/garden/journal.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/soil/soil_water.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How far a depletion found by hand is off: a standard deviation, of TAW (depletion_found; ours).
inline constexpr double feel_sd_frac = 0.12;

/// A depletion of the root zone as a look into the soil tells it, and how sure that is.
struct FoundDepletion {
  double dr_mm = missing;  ///< depletion, Dr
  double sd_mm = missing;  ///< its standard deviation
};

/// What a feel or a probe entry says about a root zone.
///
/// Method    feel: the middle of its class of available water (NRCS 1998, from memory). Volumetric probe:
///           1000 (theta FC - theta) Zr. Tension: the water content at that tension (Saxton & Rawls 2006 eq.
///           11, 12), then the same. Never below 0 nor above TAW.
/// Sureness  ours: feel 0.12 TAW (a class is 0.25 TAW wide: 0.072, and 0.10 for judging it and for one spot
///           standing for a bed); field capacity by feel 0.10 TAW; volumetric 0.04 m3/m3 (0.03 of a probe
///           that nobody calibrated to this soil, 0.025 for one spot); tension 0.05 m3/m3 (the curve is of
///           the texture)
/// Result    missing where the entry says nothing, or the soil is wetter than its curve reaches
FoundDepletion depletion_found(const JournalEntry& entry, const SoilWater& soil, double root_depth_m);

/// How sure the account itself is: a standard deviation of 0.20 TAW; after a check what the check left,
/// growing by 0.02 TAW a day back to that. Ours: rain, rate and soil are each known to a tenth or two.
double account_sd_mm(double taw_mm, double sd_after_check_mm, double days_since_check);

/// A look into the soil, and what it changed in the account of one planting.
struct SoilCheck {
  std::string entry_id{};                             ///< of the journal
  std::chrono::year_month_day date{};                 ///< of the look
  std::optional<std::chrono::minutes> time_of_day{};  ///< nothing = taken as at dawn
  JournalEvent method = JournalEvent::feel;           ///< feel or probe
  std::optional<SoilFeel> feel{};                     ///< what the hand found; nothing for a probe
  FoundDepletion before{};                            ///< the account at that moment
  FoundDepletion found{};                             ///< the check
  FoundDepletion after{};                             ///< what is taken from now on
  /// Watering that the account rests on: since it was last full, what came before an earlier check by that
  /// check's share.
  double water_behind_mm = 0;
  double used_behind_mm = 0;  ///< ET that it rests on, likewise
};

/// The weighted mean of the account and a check, each by the inverse of its variance.
///
/// Equation  w = s_a^2 / (s_a^2 + s_f^2);  after = before + w (found - before);  s = s_a sqrt(1 - w)
/// Source    Kalman (1960), J. Basic Eng. 82, scalar case
FoundDepletion weighted(const FoundDepletion& before, const FoundDepletion& found);

/// Share of the day's demand that has passed at a time of day: 0 before 06:00, 1 after 20:00, half a cosine
/// between. Ours; no time given means the morning.
double demand_passed_frac(std::optional<std::chrono::minutes> time_of_day);

}  // namespace v1
}  // namespace noonleaf
