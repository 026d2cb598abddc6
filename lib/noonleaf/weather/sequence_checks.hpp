#pragma once

#include <array>
#include <cstdint>

#include "noonleaf/weather/csv_table.hpp"
#include "noonleaf/weather/finding_list.hpp"
#include "noonleaf/weather/value_checks.hpp"

namespace noonleaf {
inline namespace v1 {

/// Checks that look along the rows: gaps, order, spikes, stuck sensors. Nothing is changed by them. Constant
/// memory: the last rows and one run per quantity.
class SequenceChecks {
 public:
  /// `period_s` is the length of a row, 86400 for days.
  SequenceChecks(std::int64_t period_s, const ValueLocator& locator, FindingList& findings);

  /// The next row; `begin_s` is its begin in seconds since 1970, a whole number of periods after its
  /// predecessor.
  void push(std::int64_t begin_s, const WeatherValues& values, RowPlace place);
  void finish();

 private:
  struct Run {
    double value = 0.0;
    std::size_t length = 0;
    RowPlace first{};
  };
  struct Row {
    std::int64_t begin_s = 0;
    WeatherValues values{};
    RowPlace place{};
  };

  bool is_day() const { return period_s_ == 86'400; }
  void note_gap(std::int64_t begin_s, RowPlace place);
  void note_spikes(const Row& after);
  void extend_runs(const Row& row);
  void end_run(std::size_t slot);

  std::int64_t period_s_;
  const ValueLocator& locator_;
  FindingList& findings_;
  Row before_{}, last_{};        // the two rows before the next
  std::size_t in_sequence_ = 0;  // how many of them follow each other without gap
  std::array<Run, weather_quantity_count> runs_{};
  std::size_t backwards_ = 0;
  RowPlace first_backwards_{};
};

}  // namespace v1
}  // namespace noonleaf
