#pragma once

#include <chrono>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/heat/diurnal.hpp"
#include "noonleaf/heat/wilt.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/plan/water_account.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The hours of a day over the garden, spread from its daily weather. Missing where that is missing, and
/// beyond 66 degrees of latitude.
WeatherHours hours_over(const Site& site, const Sky& sky, std::chrono::year_month_day date);

/// A planting where it stands.
struct PlantingPlace {
  const Garden& garden;         ///< for its site
  const Bed& bed;               ///< where it stands
  const BedPlanting& planting;  ///< the one
  const Journal& journal;       ///< for what somebody saw at dawn
};

/// A planting on the morning of a day of its account, as wilt_day wants it.
WiltPlanting wilt_planting(const PlantingPlace& place, const SoilWater& soil, const BalanceDetail& day);

/// How a planting gets through a day without watering.
///
/// Method    wilt_day on the account's numbers; what the leaves lack at dawn is carried through the two days
///           before. A droop that the journal reports before 09:00 of the day, or of the day before as not
///           recovered, counts as hanging at dawn.
/// Result    verdict unknown where no plant grows, the day has no temperature, or beyond 66 degrees of
///           latitude
WiltDay wilt_of_planting(const PlantingPlace& place, const PlantingAccount& account, const Sky& sky,
                         std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
