#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/weather/csv_table.hpp"
#include "noonleaf/weather/finding_list.hpp"
#include "noonleaf/weather/options.hpp"

namespace noonleaf {
inline namespace v1 {

/// Makes a problem of a value (of the row, without a quantity) with everything the file can say about it.
class ValueLocator {
 public:
  virtual ~ValueLocator() = default;
  virtual Problem at(RowPlace place, std::optional<WeatherQuantity> quantity, std::string message,
                     std::string fix) const = 0;
  /// A problem of a whole column, at its header.
  virtual Problem at_column(WeatherQuantity quantity, std::string message, std::string fix) const = 0;
  /// The quantities that the file has.
  virtual WeatherQuantities quantities() const = 0;
  /// The unit in which the file has a quantity, and its conversion.
  virtual UnitConversion conversion(WeatherQuantity quantity) const = 0;
  virtual std::string unit(WeatherQuantity quantity) const = 0;

 protected:
  ValueLocator() = default;
  ValueLocator(const ValueLocator&) = default;
  ValueLocator& operator=(const ValueLocator&) = default;
};

/// Checks that need one row alone: ranges and what contradicts itself. Values that cannot be true become
/// missing.
class ValueChecks {
 public:
  ValueChecks(WeatherStep step, const ValueLocator& locator, FindingList& findings);

  void check(WeatherValues& values, RowPlace place) {
    if (looks_wrong(values)) explain(values, place);
  }

  /// Values of slightly negative radiation that were taken as 0 are said once, at the end.
  void finish();

 private:
  bool looks_wrong(const WeatherValues& values) const;
  double air_temperature(const WeatherValues& values) const;
  bool is_above_saturation(const WeatherValues& values) const;
  void explain(WeatherValues& values, RowPlace place);
  void check_range(WeatherQuantity quantity, WeatherValues& values, RowPlace place);
  void check_pair(WeatherQuantity low, WeatherQuantity high, std::string_view check, WeatherValues& values,
                  RowPlace place);
  void check_mean(WeatherQuantity mean, WeatherQuantity low, WeatherQuantity high, std::string_view check,
                  WeatherValues& values, RowPlace place);
  void check_humidity(WeatherQuantity quantity, WeatherValues& values, RowPlace place);
  void check_dew(WeatherValues& values, RowPlace place);
  void check_zero_of_radiation(WeatherValues& values, RowPlace place);
  void drop(WeatherQuantity quantity, std::string_view check, std::string message, std::string fix,
            WeatherValues& values, RowPlace place);
  std::string shown(WeatherQuantity quantity, double value) const;

  // What is usual of a quantity that the file has.
  struct Usual {
    std::size_t slot = 0;
    double low = 0.0, high = 0.0;
  };

  WeatherStep step_;
  const ValueLocator& locator_;
  FindingList& findings_;
  std::vector<Usual> usual_{};
  std::size_t below_zero_ = 0;
  RowPlace first_below_zero_{};
};

}  // namespace v1
}  // namespace noonleaf
