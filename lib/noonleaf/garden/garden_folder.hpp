#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/garden/journal.hpp"
#include "noonleaf/weather/daily_file.hpp"
#include "noonleaf/weather/merge.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Everything in a garden folder, read and resolved.
struct GardenFolder {
  Garden garden{};    ///< garden.toml, with what the journal says was sown, transplanted, pulled or seen
  Journal journal{};  ///< in the order of the file, without what was undone
  std::vector<WeatherFile> weather_files{};  ///< weather/*.csv and *.json in the order of their names
  DailySeries weather{};                     ///< the same as one series
};

/// Whether a folder without any weather file is refused. A garden that was started today has none yet.
enum class WeatherNeed { required, none_yet_allowed };

/// Reads `garden.toml`, `journal.csv` and everything in `weather/`.
///
/// Input     folder  what to open; shown_name  how messages call it
/// Throws    Error with the problems of all files together; a link out of the folder and a pipe are problems
GardenFolder read_garden_folder(const std::filesystem::path& folder, const std::string& shown_name,
                                Strictness strictness = Strictness::lenient,
                                WeatherNeed need = WeatherNeed::required);

}  // namespace v1
}  // namespace noonleaf
