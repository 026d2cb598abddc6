#pragma once

#include <filesystem>

namespace bench {

/// What an invented garden folder of the benchmarks holds.
struct FolderKind {
  int beds = 12, taps = 2;
  int days_before = 60;      ///< of measured weather and journal before the day of the question
  int forecast_days = 14;    ///< from that day on
  int water_every_days = 2;  ///< in the journal; 0 = never
  int runs_a_day = 1;        ///< of each bed on such a day, 25 minutes together
  bool restricted = true;    ///< water on five weekdays only, quiet hours
  unsigned seed = 1;         ///< soils, areas and weather
};

/// The day that is asked about.
inline constexpr const char* question_date = "2025-07-16";

/// Writes garden.toml, journal.csv and the files in weather/: some taps, three caretakers, raised beds of
/// several soils and crops.
void write_invented_folder(const std::filesystem::path& folder, const FolderKind& kind);

}  // namespace bench
