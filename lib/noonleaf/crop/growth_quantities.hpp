#pragma once

#include <span>
#include <string_view>

#include "noonleaf/crop/growth.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How a number behind a day's coefficients is written down: one row per number, in the order of the working.
/// A number that the day does not have (a plant factor has no stages) is missing.
struct GrowthQuantity {
  double (*value)(const GrowthDetail&);  ///< taken out of a day
  std::string_view symbol;               ///< "Kcb"
  std::string_view unit;                 ///< empty where it has none
  std::string_view equation;             ///< in symbols; empty = an input
  std::string_view source;               ///< "FAO-56 eq. 66"
  std::string_view meaning;              ///< "basal crop coefficient"
  /// Whose working a number belongs to.
  enum class Coefficient { either, dual, single } coefficient = Coefficient::either;  ///< whose working it is
};

/// The one table behind every explanation of a planting's day.
std::span<const GrowthQuantity> growth_quantities();

}  // namespace v1
}  // namespace noonleaf
