#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "noonleaf/weather/csv_table.hpp"
#include "noonleaf/weather/finding_list.hpp"
#include "noonleaf/weather/value_checks.hpp"

namespace noonleaf {
inline namespace v1 {

/// Checks that look along the rows: gaps, order, spikes, stuck sensors. Nothing is changed by them. Constant
/// memory: the last rows and one run per quantity.
class SequenceChecks {
 public:
  /// `period_s` is the length of a row, 86400 for days; only the quantities that `locator` has are looked at.
  SequenceChecks(std::int64_t period_s, const ValueLocator& locator, FindingList& findings);

  /// The next row; `begin_s` is its begin in seconds since 1970, a whole number of periods after its
  /// predecessor.
  void push(std::int64_t begin_s, const WeatherValues& values, RowPlace place);
  void finish();

 private:
  struct Run {
    WeatherQuantity quantity = WeatherQuantity::t_max;
    double value = 0.0;
    std::size_t length = 0;
    RowPlace first{};
  };
  // The temperatures of the two rows before the next.
  struct Recent {
    WeatherQuantity quantity = WeatherQuantity::t_max;
    double before = 0.0, last = 0.0;
  };

  bool is_day() const { return period_s_ == 86'400; }
  void note_gap(std::int64_t begin_s, RowPlace place);
  void note_spike(const Recent& recent, double after);
  void break_sequence();
  void end_run(Run& run);

  std::int64_t period_s_;
  const ValueLocator& locator_;
  FindingList& findings_;
  std::int64_t last_s_ = 0;
  RowPlace last_place_{};
  std::size_t in_sequence_ = 0;  // rows that follow each other without gap
  std::vector<Run> runs_;        // one per quantity that the file has
  std::vector<Recent> recent_;
  std::size_t backwards_ = 0;
  RowPlace first_backwards_{};
};

}  // namespace v1
}  // namespace noonleaf
