#pragma once

#include <chrono>
#include <cstddef>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A run that begins at this hour or later wets the next day's surface.
inline constexpr std::chrono::hours evening_begins{18};

/// The water that a day brought to a bed by hand or sky.
struct BedWater {
  double rain_mm = 0;                ///< before the day's demand
  double irrigation_mm = 0;          ///< likewise, mean infiltrated depth
  double evening_irrigation_mm = 0;  ///< after it
};

/// What the journal and the station say fell on a bed, for somebody who asks for many days: the journal is read once.
///
/// Rule      A gauge beats the station; a forecast is no rain, not even of a day that has passed. A gauge
///           read before 10:00 tells of the day before (common practice, no source). A run that started at
///           18:00 or later wets the next day's surface. Minutes and litres become the mean depth in the
///           bed (watering_of). Missing rain counts as none, and `today` says so.
class BedWaterByDay {
 public:
  /// Input     bed  index into Garden::beds
  BedWaterByDay(const Garden& garden, std::size_t bed, const Journal& journal);

  /// Input     day  with the station's rain of that day
  BedWater on(const SkyDay& day) const;

 private:
  struct Day {
    std::chrono::sys_days date{};
    double gauge_mm = missing;
    double irrigation_mm = 0, evening_irrigation_mm = 0;
  };
  std::vector<Day> days_;  ///< those that the journal speaks of, oldest first
  double rain_catch_frac_;
};

/// The same for a single day.
BedWater water_on(const Garden& garden, std::size_t bed, const Journal& journal, const SkyDay& day);

}  // namespace v1
}  // namespace noonleaf
