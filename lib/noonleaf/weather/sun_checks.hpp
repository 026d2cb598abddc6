#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/weather/csv_table.hpp"
#include "noonleaf/weather/finding_list.hpp"
#include "noonleaf/weather/value_checks.hpp"

namespace noonleaf {
inline namespace v1 {

/// Checks of radiation and sunshine against the sun over the site. What depends on site and day of the year
/// (and hour) only is worked out once.
class SunChecks {
 public:
  /// Does nothing where the site's latitude, longitude (hours) or elevation is not known.
  SunChecks(const Location& site, std::int64_t period_s, const ValueLocator& locator, FindingList& findings);

  /// Whether there is something to check and the site is known.
  bool work() const { return work_; }

  /// Checks a day, or an hour with its stamp in UTC.
  void check(TableRow& row);

  /// What shows only over all rows: night radiation, the upper envelope.
  void finish();

 private:
  /// Of one day of the year, or one period of it.
  struct Sky {
    double ra = missing, rso = missing, daylight_h = missing;
  };

  bool is_day() const { return period_s_ == 86'400; }
  void turn_to_year_of(std::int64_t day);
  const Sky& sky_at(std::int64_t begin_s);
  Sky day_sky(int day_of_year) const;
  Sky hour_sky(int day_of_year, std::int64_t into_day_s) const;
  void check_radiation(TableRow& row, const Sky& sky);
  void check_sunshine(TableRow& row, const Sky& sky);
  void note_envelope(double rs, const Sky& sky);

  Location site_;
  std::int64_t period_s_;
  const ValueLocator& locator_;
  FindingList& findings_;
  bool work_;
  std::vector<Sky> skies_{};  // by day of the year and period of the day; ra missing = not yet worked out
  std::int64_t year_begin_ = 0, year_end_ = 0;  // days since 1970 of the year last looked up
  std::size_t night_rows_ = 0, envelope_rows_ = 0;
  RowPlace first_night_{};
  double highest_share_ = 0.0;  // of the clear-sky value
};

/// Says where the pressure column does not belong to the site's elevation, by the middle of the first rows.
void check_pressure(const Location& site, const std::vector<TableRow>& first_rows,
                    const ValueLocator& locator, FindingList& findings);

}  // namespace v1
}  // namespace noonleaf
