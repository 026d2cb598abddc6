#pragma once

#include <chrono>
#include <cstddef>
#include <string_view>
#include <vector>

#include "noonleaf/balance/daily_step.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/garden/garden.hpp"
#include "noonleaf/plan/sky.hpp"
#include "noonleaf/soil/soil_water.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The soil of a bed for the balance.
/// Throws    Error as find_texture, soil_of, measured_soil
SoilWater soil_of_bed(const Bed& bed);

/// What is the same every day for the plantings of a bed: wetted share of the ground by kind of sprinkler,
/// and the curve number of an unframed bed (TR-55 Table 2-2b, row crops in straight rows, good condition: 67,
/// 78, 85, 89 for hydrologic groups A to D; group by texture, TR-55 appendix A). A bed of measured soil has
/// no texture to take a group from: no runoff is reckoned there. Drip lines and soaker hoses lie under the
/// leaves (FAO-56 ch. 7, text below eq. 75). The coefficients are the garden's (AccountOptions).
BalanceSettings settings_of_bed(const Garden& garden, const Bed& bed);

/// What has grown, day by day, on the ground of one planting: before it the planting of the same bed that was
/// pulled to make room, before that bare soil.
///
/// Input     first, n_days  the days wanted
/// Note      Kc is adjusted to the mean wind and humidity of the sky's days from the planting's start on.
std::vector<GrowthDay> growth_on_ground(const Bed& bed, const BedPlanting& planting, const Sky& sky,
                                        double latitude_deg, std::chrono::sys_days first, std::size_t n_days);

/// A day of one planting as growth_on_ground has it, with all that its coefficients were made from.
GrowthDetail growth_detail_on(const BedPlanting& planting, const Sky& sky, double latitude_deg,
                              std::chrono::year_month_day date);

/// Whether a planting is in the ground on a day.
bool grows_on(const BedPlanting& planting, std::chrono::sys_days date);

}  // namespace v1
}  // namespace noonleaf
