#pragma once

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Kc ini of a planting from how often and how deep its ground really was wetted in its initial stage, for
/// the single coefficient (kc_ini_of_wetting, FAO-56 eq. 59 to 61).
///
/// Method    Wettings are the days of the initial stage, as far as the sky reaches, with 3 mm or more of rain
///           and irrigation together (FAO-56 ch. 7 calls 3 to 4 mm significant); their mean interval and mean
///           depth; the mean ET0 of those days. Coarse: sand, loamy sand, and sandy loam.
/// Result    missing where the sky has no day of that stage or nothing wetted it: the table's value stays
double kc_ini_on_ground(const Garden& garden, std::size_t bed, const BedPlanting& planting,
                        const Journal& journal, const Sky& sky);

/// A planting as its account takes it: with that Kc ini where the garden is kept by the single coefficient.
BedPlanting planting_in_account(const Garden& garden, std::size_t bed, std::size_t planting,
                                const Journal& journal, const Sky& sky);

}  // namespace v1
}  // namespace noonleaf
