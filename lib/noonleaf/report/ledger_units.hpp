#pragma once

#include <chrono>
#include <string>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/garden/garden.hpp"
#include "noonleaf/units.hpp"

namespace noonleaf {
inline namespace v1 {

/// "2025-07"
inline std::string month_text(std::chrono::year_month month) {
  return iso_date(month / std::chrono::day(1)).substr(0, 7);
}

/// Numbers of tables and charts in the site's units, without the unit.
struct LedgerUnits {
  UnitSystem units;
  bool is_us() const { return units == UnitSystem::us; }
  double volume(double litres) const { return is_us() ? gallons_from_litres(litres) : litres; }
  double depth(double mm) const { return is_us() ? inches_from_mm(mm) : mm; }
  const char* volume_unit() const { return is_us() ? "gal" : "L"; }
  const char* depth_unit() const { return is_us() ? "in" : "mm"; }
};

}  // namespace v1
}  // namespace noonleaf
