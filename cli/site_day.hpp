#pragma once

#include <chrono>
#include <optional>

#include "noonleaf/garden/garden.hpp"

namespace noonleaf::cli {

/// The day asked for: by option, else the demo's own, else today by the site's clock.
std::chrono::year_month_day day_at(const Site& site, const std::optional<std::chrono::year_month_day>& asked);

}  // namespace noonleaf::cli
