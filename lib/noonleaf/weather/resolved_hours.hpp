#pragma once

#include <optional>
#include <string>
#include <vector>

#include "noonleaf/weather/checked_rows.hpp"
#include "noonleaf/weather/stamp_resolver.hpp"
#include "noonleaf/weather/sun_checks.hpp"

namespace noonleaf {
inline namespace v1 {

/// Rows of hours with their stamps brought to UTC, block by block, in the order of the file.
class ResolvedHours {
 public:
  ResolvedHours(CheckedRows& checked, const WeatherOptions& options) : checked_(checked), options_(options) {}

  /// Replaces `rows` by the next block; false at the end of the file.
  bool next_block(std::vector<TableRow>& rows);

  /// Problems of rows and stamps so far; taking empties the list.
  std::vector<Problem> take_problems();

 private:
  CheckedRows& checked_;
  const WeatherOptions& options_;
  std::optional<StampResolver> resolver_;
  std::optional<SunChecks> sun_;
};

/// Says in the findings which days some of their hours do not cover.
void note_incomplete_days(std::vector<std::string> incomplete, const RowSource& source,
                          FindingList& findings);

}  // namespace v1
}  // namespace noonleaf
