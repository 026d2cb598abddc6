#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/plan/soil_check.hpp"
#include "noonleaf/sprinkler/application_rate.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// What may be wrong behind an account that soil checks keep contradicting.
enum class Culprit {
  rate,        ///< the sprinkler brings more or less than its rate says
  crop_stage,  ///< the plants use more or less than their coefficient says
  soil         ///< the soil holds more or less than its class says
};

/// "rate"
std::string_view code(Culprit culprit);

/// How well one culprit explains the differences.
struct Suspect {
  Culprit culprit = Culprit::rate;  ///< which quantity
  double share = 0;                 ///< of its quantity: -0.4 = 40 % less than thought
  double explained_frac =
      0;  ///< of the sum of squared differences; may be negative for one that makes it worse
  double likelihood_gain = 0;  ///< twice the log posterior over that of no error; the order of the list
};

/// A doubt about an account, with its evidence.
struct AccountDoubt {
  std::vector<std::string> entry_ids{};  ///< the checks, oldest first
  std::chrono::year_month_day first{};   ///< day of the oldest check
  std::chrono::year_month_day last{};    ///< day of the newest
  double least_difference_mm = 0;        ///< found less account, smallest
  double most_difference_mm = 0;         ///< largest; both of one sign
  std::vector<Suspect> suspects{};       ///< the likeliest first
};

/// How many checks in a row have to lie on one side of the account, and how far off together: the sum of
/// their differences, each in standard deviations, over the root of their number. Ours: a right account is
/// that far off by chance in less than one case of twenty.
inline constexpr std::size_t checks_for_a_doubt = 3;
inline constexpr double doubt_threshold = 2.0;  ///< likelihood_gain from which a doubt is told

/// Repeated disagreement between checks and account, and the likeliest reason.
///
/// Rule      The last three or more checks all found the soil drier than the account, or all wetter, and
///           the sum of z over sqrt(n) is 2 or more; z = difference / sqrt(s_a^2 + s_f^2).
/// Method    One unknown each by least squares weighted by 1 / (s_a^2 + s_f^2): d = -a W for the rate, W
///           the watering behind the account; d = b U for the crop, U the ET behind it; d = -c D for the
///           soil, D the account's depletion (in a soil that holds less, a depletion is a larger share of
///           it; to first order). Named first is the one of highest posterior with a normal prior of its
///           share around 0: standard deviation 0.15 for the crop, 0.20 for the soil, for the rate 0.15 by
///           cans, 0.70 for a guess, else 0.25 (all ours). Watering and ET often run in step; then the
///           prior decides, and the shares explained are close.
/// Result    empty where there is no such row of checks
std::optional<AccountDoubt> account_doubt(std::span<const SoilCheck> checks, RateBasis basis);

}  // namespace v1
}  // namespace noonleaf
