#pragma once

#include <chrono>
#include <optional>

#include "noonleaf/balance/seed_zone.hpp"
#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Seed that is not up yet, on a morning.
struct Seedbed {
  SeedZone zone{};                ///< the layer that it lives in
  double depletion_mm = missing;  ///< of the seed zone now
  double close_mm = missing;      ///< at the day's close, without watering
  double soil_c = missing;        ///< mean taken for the soil since sowing
  bool by_table = false;          ///< days to emergence from the table; else the fixed count
  std::optional<std::chrono::year_month_day>
      emergence{};           ///< expected; empty = it does not come up like this
  SeedZoneWatering light{};  ///< light and often, for today's ET0
};

/// Days until seed is taken as up where the table does not know the crop. Common practice, no source.
inline constexpr int usual_emergence_d = 14;

/// The first day on which a planting's seed is up, as seedbed_on takes it: its start where it was set out, 60
/// days after sowing where it does not come up.
std::chrono::sys_days seed_up_day(const BedPlanting& planting, const Sky& sky);

/// The seedbed of a planting on a morning; nothing when it was set out, has emerged, or was seen to.
///
/// Method    Every day since sowing adds 1 / days_to_emergence at that day's temperature; at 1 it is up. For
///           the soil the mean of the day's air stands in (ours: bare wet soil is near it). Without the crop
///           in the table: 14 days. The first stage seen in the journal ends it. The seed zone's depletion
///           runs from sowing on, full at first (a bed is sown moist), by seed_zone_depletion_mm.
/// Input     sowing depth 13 mm, half an inch: that of the table
std::optional<Seedbed> seedbed_on(const Garden& garden, std::size_t bed, const BedPlanting& planting,
                                  const Journal& journal, const Sky& sky, std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
