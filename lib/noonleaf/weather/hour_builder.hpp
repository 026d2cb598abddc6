#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <vector>

#include "noonleaf/weather/csv_table.hpp"
#include "noonleaf/weather/finding_list.hpp"
#include "noonleaf/weather/hourly_weather.hpp"
#include "noonleaf/weather/options.hpp"
#include "noonleaf/weather/sequence_checks.hpp"
#include "noonleaf/weather/site_zone.hpp"
#include "noonleaf/weather/value_checks.hpp"

namespace noonleaf {
inline namespace v1 {

/// Makes hours of rows: shorter periods are brought to clock hours, short gaps are filled between their
/// neighbours. Rows come sorted, each once. Holds back no more than the longest gap it may fill.
class HourBuilder {
 public:
  HourBuilder(std::chrono::seconds length, const WeatherOptions& options, const ValueLocator& locator,
              FindingList& findings);

  /// Takes the next row and appends the hours that are complete to `hours`.
  void push(const TableRow& row, std::vector<HourlyWeather>& hours);

  /// Appends what is left.
  void finish(std::vector<HourlyWeather>& hours);

 private:
  struct Sum {
    WeatherValues sums{};
    std::array<std::size_t, weather_quantity_count> known{};
    std::int64_t begin_s = 0;
    RowPlace place{};
  };
  struct Held {
    std::int64_t begin_s = 0;
    WeatherValues values{};
    WeatherQuantities known{}, interpolated{};
  };

  void add_to_hour(const TableRow& row, std::vector<HourlyWeather>& hours);
  void close_hour(std::vector<HourlyWeather>& hours);
  void take_period(std::int64_t begin_s, const WeatherValues& values, WeatherQuantities partly,
                   RowPlace place, std::vector<HourlyWeather>& hours);
  void fill_before_last(RowPlace place);
  void release(std::size_t keep, std::vector<HourlyWeather>& hours);

  std::int64_t length_s_, period_s_;  // of the rows, of the result
  std::size_t longest_gap_;           // periods that may be filled
  std::optional<SiteZone> zone_;
  WeatherQuantities quantities_;  // that the file has
  const ValueLocator& locator_;
  FindingList& findings_;
  SequenceChecks sequence_;
  std::optional<Sum> hour_{};
  std::vector<Held> held_{};  // a few at most
  std::size_t patchy_hours_ = 0;
  RowPlace first_patchy_{};
};

}  // namespace v1
}  // namespace noonleaf
