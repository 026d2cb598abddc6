#pragma once

#include <chrono>
#include <optional>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/zone.hpp"

namespace noonleaf::cli {

/// Now on the site's clock.
LocalTime clock_at(const Site& site);

/// The moment that an answer is for: now on the site's clock; an invented garden lives at the first minute of its
/// own day.
LocalTime moment_at(const Site& site);

/// The day asked for: by option, else that of moment_at.
std::chrono::year_month_day day_at(const Site& site, const std::optional<std::chrono::year_month_day>& asked);

}  // namespace noonleaf::cli
