#pragma once

#include <array>

#include "noonleaf/heat/diurnal.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Each hour's share of the day's potential transpiration.
///
/// Equation  share,h = max(ET0,h, 0) / sum max(ET0,h, 0)
///           ET0,h = [0.408 delta (Rn - G) + gamma 37/(T + 273) u2 (e° - ea)] / [delta + gamma (1 + Cd u2)],
///           Cd 0.24 and G 0.1 Rn in hours with sun, 0.96 and 0.5 Rn without
/// Source    ASCE-EWRI (2005), eq. 1 and table 1, short reference, hourly. Cloudiness of the day's longwave
///           loss from the day's Rs/Rso, the same in all 24 hours (ours)
/// Result    [-], 0 and up, 24 values whose sum is 1 to 1e-15. A day without any demand is shared by its
///           radiation; a day without radiation evenly
/// Missing   NaN in all hours if any value of any hour is missing
/// Throws    Error, naming the field, when outside the accepted range of hours_of_day
std::array<double, 24> transpiration_share(const WeatherHours& hours, const DaySite& site);

/// The day's potential transpiration spread over its hours.
///
/// Equation  mm,h = share,h x total
/// Input     total_mm_d  Kcb ET0 of the day, without stress [mm d⁻¹] 0 to 30
/// Result    [mm h⁻¹], 24 values that add up to the total within 1e-12 mm
/// Missing, Throws  as transpiration_share; Error, field "total_mm_d"
std::array<double, 24> hourly_transpiration_mm_h(const WeatherHours& hours, const DaySite& site,
                                                 double total_mm_d);

}  // namespace v1
}  // namespace noonleaf
