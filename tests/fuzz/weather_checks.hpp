#pragma once

#include <string_view>

#include "noonleaf/weather/daily_file.hpp"

namespace fuzz {

/// A place with a zone, so that no check of the weather is left out.
noonleaf::WeatherOptions weather_options();

/// Through every door that takes days: the whole file, block by block, and as part of a series.
void read_as_days(std::string_view bytes, const noonleaf::WeatherOptions& options);

/// Through every door that takes hours.
void read_as_hours(std::string_view bytes, const noonleaf::WeatherOptions& options);

}  // namespace fuzz
