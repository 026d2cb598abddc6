#pragma once

#include <chrono>
#include <cstddef>
#include <string>
#include <vector>

#include "noonleaf/crop/crop.hpp"
#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What kind of thing was not measured.
enum class EstimateKind { weather, journal, sprinkler, crop, soil_start };

/// What was not measured.
enum class NotMeasured {
  sun_from_sunshine,
  sun_from_temperature,  ///< from the day's range
  sun_unknown,
  humidity_from_night,  ///< from the lowest temperature
  humidity_unknown,
  wind_usual,  ///< 2 m/s
  wind_unknown,
  no_temperature,   ///< ET0 from the days around
  no_rain_reading,  ///< taken as none
  forecast_weather,
  forecast_in_part,
  forecast_rain,         ///< not counted
  weather_ends,          ///< `date`: later days are taken like the last three
  no_temperature_today,  ///< droop and wilt cannot be told
  journal_empty,
  journal_silent,     ///< since `date`
  mulch_unsaid,       ///< the entry of `date` does not say what was laid
  amend_unsaid,       ///< the entry of `date` has no numbers
  amend_measured,     ///< the entry of `date` names organic matter for a soil that was measured
  northern_months,    ///< stages south of the equator by northern planting months
  spray_loss_unsaid,  ///< of `sprinkler`
  rate_guessed,       ///< of `sprinkler`
  evenness_guessed,   ///< of `sprinkler`
  garden_doubt,       ///< `doubt`
  surrogate_crop,     ///< `crop` has no published values
  first_year,         ///< of `crop`
  salt_guessed,       ///< under `crop`
  too_salty,          ///< for `crop`
  account_after_gap,  ///< it begins on `date`: the weather before is missing
  soil_full,          ///< on `date`
  soil_half           ///< on `date`
};

/// Something that was not measured, what it is about, and on how many days.
struct Estimate {
  EstimateKind kind = EstimateKind::weather;         ///< what it is about
  NotMeasured fact = NotMeasured::forecast_weather;  ///< what was not measured
  std::size_t days = 0;                              ///< of the account; 0 = not a matter of days
  std::size_t of_days = 0;                           ///< of how many; 0 = not a matter of days
  std::chrono::year_month_day date{};                ///< where the fact has one
  std::string bed{};                                 ///< id, where the fact is of a bed
  std::string sprinkler{};                           ///< id, where the fact is of a sprinkler
  const Crop* crop = nullptr;                        ///< where the fact is of a crop
  std::string doubt{};                               ///< a garden doubt in its own words
};

/// All that the answer for `date` rests on without measurement: weather by the missing-data ladder, forecast
/// days, bridged gaps, days without a word in the journal, guessed sprinklers, surrogate crops, and the
/// wetness assumed at the start.
std::vector<Estimate> estimates_behind(const Garden& garden, const Journal& journal, const Sky& sky,
                                       std::chrono::year_month_day date);

}  // namespace v1
}  // namespace noonleaf
