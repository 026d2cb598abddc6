#pragma once

#include <span>
#include <string_view>

#include "noonleaf/balance/daily_step.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How a member of BalanceDetail is written down: one row per number, in the order of the calculation.
struct BalanceQuantity {
  double (*value)(const BalanceDetail&);  ///< taken out of a day
  std::string_view member{};              ///< "few"
  std::string_view symbol;                ///< "few"
  std::string_view unit;                  ///< "mm"; empty = dimensionless
  std::string_view equation;              ///< the formula in the source's symbols; empty = an input
  std::string_view source;                ///< "FAO-56 eq. 75"
  std::string_view meaning;               ///< "share of the ground that is exposed and wet"
  /// Whether the row belongs to the working of that day; null = always. A day by a single coefficient has no
  /// few, ground wetted all over has one surface only.
  bool (*applies)(const BalanceDetail&) = nullptr;
};

/// The one table behind every explanation of a day.
std::span<const BalanceQuantity> balance_quantities();

}  // namespace v1
}  // namespace noonleaf
