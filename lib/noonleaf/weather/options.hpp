#pragma once

#include <chrono>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What happens to a value that a quality check finds impossible or doubtful.
enum class Strictness {
  lenient,  ///< impossible: set aside as missing and said; doubtful: used and said
  strict    ///< both refuse the file
};

/// Which end of its period a time stamp marks.
enum class StampMark { unstated, period_begin, period_end };

/// How dates with slashes, dots or hyphens are ordered in the file. ISO dates are read under every order.
enum class DateOrder {
  iso,          ///< 2026-07-04 (or 20260704) only
  month_first,  ///< 7/4/2026 is 4 July
  day_first     ///< 4/7/2026 is 4 July
};

/// What it means when a file has no column of the name that `columns` or `where` ask for.
enum class AbsentHeader {
  refused,  ///< a slip: the options are for this one file
  ignored   ///< the options are for a folder of files, of which not all have that column
};

/// Keeps the rows whose cell in `column` (header text) reads exactly `value`.
struct RowFilter {
  std::string column{};  ///< header text
  std::string value{};   ///< exactly what its cell reads
};

/// What the user says about a weather file, because the file itself does not.
struct WeatherOptions {
  /// Canonical name to header text of the file: {"rain_mm", "Precip (mm)"}. Keys may also be `date`, `time`,
  /// `time_begin`, `time_end`.
  std::map<std::string, std::string> columns{};
  /// Header texts to leave out, whether they are canonical names or only resemble one.
  std::vector<std::string> ignore{};
  std::optional<RowFilter> where{};  ///< rows to keep; nothing = all
  /// what a name of `columns` that no header has means
  AbsentHeader absent_headers = AbsentHeader::refused;
  /// IANA zone of the site, for stamps without an offset and for the bounds of the day. Needed by hourly
  /// files.
  std::string zone{};
  /// Where the site lies. Without it the checks that need the sun are not done (and a note says so).
  Location site{};
  Strictness strictness = Strictness::lenient;  ///< what doubts and impossible values do
  /// Names of quality checks the user waves through (checks.hpp): their values are used and a note records
  /// it.
  std::vector<std::string> accept{};
  /// Needed when an hourly file names its key column `time`; `time_begin` and `time_end` say it themselves.
  StampMark stamps = StampMark::unstated;
  DateOrder date_order = DateOrder::iso;  ///< of dates that are not ISO
  /// Hours missing in a row are interpolated up to this length, and said. 0 interpolates nothing.
  std::chrono::hours longest_interpolated_gap{3};
};

}  // namespace v1
}  // namespace noonleaf
