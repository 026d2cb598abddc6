#pragma once

#include <span>
#include <string_view>

namespace noonleaf::cli {

/// One file of the invented demo garden.
struct DemoFile {
  std::string_view name;  ///< below the garden folder, "weather/station_2025.csv"
  std::string_view text;
};

/// The whole demo garden (weather_samples/demo).
std::span<const DemoFile> demo_files();

}  // namespace noonleaf::cli
