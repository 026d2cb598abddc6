#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/weather/checks.hpp"
#include "noonleaf/weather/hourly_weather.hpp"
#include "noonleaf/weather/options.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What one row of a weather file covers.
enum class WeatherStep { day, hour };

/// How far a reader has come, for a progress line.
struct ReadProgress {
  std::uint64_t bytes_read = 0;                  ///< so far
  std::optional<std::uint64_t> bytes_in_file{};  ///< unknown for a pipe
};

/// A weather file block by block, in constant memory: a CSV larger than memory can be read.
///
/// Rows come in the order of the file; rows out of order are said, not sorted. The open formats and JSON are
/// small by nature and are read whole before the first block.
///
///   WeatherReader reader("long.csv", "long.csv", options);
///   for (auto days = reader.next_days(); !days.empty(); days = reader.next_days()) { … }
///   print(reader.doubts());
///
/// Note      A broken row is found only when it is reached. To write nothing unless the whole file is good,
///           read it twice: read_through() first.
class WeatherReader {
 public:
  /// Opens the file and reads its header and first rows.
  /// Throws    Error as read_daily_weather
  WeatherReader(const std::filesystem::path& file, std::string shown_name, const WeatherOptions& options);
  ~WeatherReader();
  /// A reader can be moved, not copied.
  WeatherReader(WeatherReader&&) noexcept;
  /// A reader can be moved, not copied.
  WeatherReader& operator=(WeatherReader&&) noexcept;

  /// Whether the rows are days or hours (shorter periods are brought to hours).
  WeatherStep step() const;
  /// The recognised format, as WeatherFile::format.
  std::string format() const;

  /// The next days; empty at the end. Of an hourly file: its hours as days of the site's zone. The span is
  /// valid until the next call.
  /// Throws    Error with every problem of the rows of this block that refuse the file
  std::span<const DailyWeather> next_days();

  /// The next hours of an hourly file; empty at the end. Do not mix with next_days() on one reader.
  /// Throws    Error as next_days; also when the file holds days
  std::span<const HourlyWeather> next_hours();

  /// Reads to the end and gives nothing back but problems.
  /// Throws    Error with every problem of the file
  void read_through();

  /// How far the reader has come in its file.
  ReadProgress progress() const;

  /// Said so far: notes, values set aside, doubts. Each list keeps `findings_kept` and ends with a count.
  const std::vector<std::string>& notes() const;
  /// Values that cannot be true: missing from here on.
  const std::vector<Finding>& set_aside() const;
  /// Values that are kept and doubted.
  const std::vector<Finding>& doubts() const;

 private:
  class Source;
  std::unique_ptr<Source> source_;
};

/// How many findings of one kind are kept for one file; the rest are counted.
inline constexpr std::size_t findings_kept = 10'000;

}  // namespace v1
}  // namespace noonleaf
