#pragma once

#include <chrono>
#include <string>

#include "noonleaf/garden/garden.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Numbers as a person at the tap reads them, in the site's units, with the unit.
class QuantityText {
 public:
  /// Texts in one system of units.
  explicit QuantityText(UnitSystem units) : units_(units) {}

  std::string depth(double mm) const;       ///< "14 mm", "0.55 in"
  std::string volume(double litres) const;  ///< "210 L", "55 gal"
  std::string temperature(double c) const;  ///< "39 °C", "102 °F"

 private:
  UnitSystem units_;
};

/// "Wednesday 16 July 2025"
std::string long_date(std::chrono::year_month_day date);

/// "Friday 18 July"
std::string day_name(std::chrono::year_month_day date);

/// Hour of the day with a fraction to the clock, rounded to five minutes: 18.96 is "18:55".
std::string hour_text(double hour);

}  // namespace v1
}  // namespace noonleaf
