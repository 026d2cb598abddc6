#pragma once

#include <chrono>
#include <cstddef>
#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What kind of thing was not measured.
enum class EstimateKind { weather, journal, sprinkler, crop, soil_start };

/// Something that was not measured, in words, and on how many days.
struct Estimate {
  EstimateKind kind = EstimateKind::weather;
  std::string what{};    ///< "sun estimated from the day's temperature range"
  std::size_t days = 0;  ///< of the account; 0 = not a matter of days
  std::size_t of_days = 0;
};

/// All that the answer for `date` rests on without measurement: weather by the missing-data ladder, forecast
/// days, bridged gaps, days without a word in the journal, guessed sprinklers, surrogate crops, and the
/// wetness assumed at the start.
std::vector<Estimate> estimates_behind(const Garden& garden, const Journal& journal, const Sky& sky,
                                       std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
