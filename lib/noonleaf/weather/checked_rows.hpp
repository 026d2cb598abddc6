#pragma once

#include <chrono>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "noonleaf/weather/finding_list.hpp"
#include "noonleaf/weather/options.hpp"
#include "noonleaf/weather/row_source.hpp"
#include "noonleaf/weather/sun_checks.hpp"
#include "noonleaf/weather/value_checks.hpp"

namespace noonleaf {
inline namespace v1 {

/// The rows of a file after every check that needs a row or its column: units mixed up, ranges,
/// contradictions.
class CheckedRows {
 public:
  CheckedRows(const std::filesystem::path& file, std::string shown_name, const WeatherOptions& options);

  /// Replaces `rows` by the next block; false when it is empty because the file has ended.
  bool next_block(std::vector<TableRow>& rows);

  const RowSource& source() const { return *source_; }
  FindingList& findings() { return findings_; }
  const FindingList& findings() const { return findings_; }

  /// The length of a row, known after the first block: a day, or what the stamps show.
  std::chrono::seconds length() const { return length_; }

  /// Faults that refuse the file, found so far; taking empties the list.
  std::vector<Problem> take_problems() { return source_->take_problems(); }

  /// Notes of the file, its columns and the user's accepted checks.
  std::vector<std::string> notes() const;

 private:
  FindingList findings_;
  std::unique_ptr<RowSource> source_;
  Location site_;
  ValueChecks checks_;
  SunChecks day_sun_;  // of days; hours are checked once their stamps are known
  WeatherQuantities mixed_up_{};
  std::chrono::seconds length_{86'400};
  bool first_block_ = true, ended_ = false;

  void look_at_first_block(std::vector<TableRow>& rows);
  void convert_radiation(std::vector<TableRow>& rows) const;
};

}  // namespace v1
}  // namespace noonleaf
