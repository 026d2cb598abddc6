#include "noonleaf/plan/account_doubt.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/plan/bed_members.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double lowest_share = -0.95, highest_share = 3.0;

double difference_mm(const SoilCheck& check) { return check.found.dr_mm - check.before.dr_mm; }

/// In standard deviations of the difference.
double standardised(const SoilCheck& check) {
  return difference_mm(check) / std::hypot(check.before.sd_mm, check.found.sd_mm);
}

/// The checks at the end of the row that all lie on one side of the account.
std::span<const SoilCheck> row_of(std::span<const SoilCheck> checks) {
  std::size_t first = checks.size();
  while (first > 0 && difference_mm(checks[first - 1]) * difference_mm(checks.back()) > 0) --first;
  return checks.subspan(first);
}

/// The quantity that an error of this kind is in proportion to; positive share of it = drier soil.
double lever_mm(Culprit culprit, const SoilCheck& check) {
  switch (culprit) {
    case Culprit::rate:
      return -check.water_behind_mm;
    case Culprit::crop_stage:
      return check.used_behind_mm;
    default:
      return -check.before.dr_mm;
  }
}

/// How far off each is as a rule, one standard deviation of its share: as the members doubt it.
double usual_error(Culprit culprit, RateBasis basis) {
  if (culprit == Culprit::crop_stage) return crop_use_log;
  return culprit == Culprit::soil ? available_water_texture_log : rate_doubt_log(basis);
}

Suspect suspect(Culprit culprit, std::span<const SoilCheck> checks, RateBasis basis) {
  double with_lever = 0, of_lever = 0,
         of_difference = 0;  // sums of squares and products, each over its variance
  for (const SoilCheck& check : checks) {
    const double sd_mm = std::hypot(check.before.sd_mm, check.found.sd_mm);
    const double lever = lever_mm(culprit, check) / sd_mm, difference = standardised(check);
    with_lever += lever * difference;
    of_lever += lever * lever;
    of_difference += difference * difference;
  }
  Suspect result{.culprit = culprit};
  if (!(of_lever > 0)) return result;
  const double usual = usual_error(culprit, basis);
  result.likelihood_gain = with_lever * with_lever / (of_lever + 1 / (usual * usual));
  result.share = std::clamp(with_lever / of_lever, lowest_share, highest_share);
  const double left = of_difference - 2 * result.share * with_lever + result.share * result.share * of_lever;
  result.explained_frac = 1 - left / of_difference;
  return result;
}

}  // namespace

std::string_view code(Culprit culprit) {
  switch (culprit) {
    case Culprit::rate:
      return "rate";
    case Culprit::crop_stage:
      return "crop_stage";
    default:
      return "soil";
  }
}

std::optional<AccountDoubt> account_doubt(std::span<const SoilCheck> checks, RateBasis basis) {
  const auto row = row_of(checks);
  if (row.size() < checks_for_a_doubt) return std::nullopt;
  double sum = 0;
  for (const SoilCheck& check : row) sum += standardised(check);
  if (std::abs(sum) < doubt_threshold * std::sqrt(static_cast<double>(row.size()))) return std::nullopt;
  AccountDoubt doubt{.first = row.front().date, .last = row.back().date};
  std::vector<double> differences;
  for (const SoilCheck& check : row) {
    doubt.entry_ids.push_back(check.entry_id);
    differences.push_back(difference_mm(check));
  }
  const auto by_size = [](double a, double b) { return std::abs(a) < std::abs(b); };
  doubt.least_difference_mm = *std::min_element(differences.begin(), differences.end(), by_size);
  doubt.most_difference_mm = *std::max_element(differences.begin(), differences.end(), by_size);
  for (const Culprit culprit : {Culprit::rate, Culprit::crop_stage, Culprit::soil})
    doubt.suspects.push_back(suspect(culprit, row, basis));
  std::stable_sort(doubt.suspects.begin(), doubt.suspects.end(),
                   [](const Suspect& a, const Suspect& b) { return a.likelihood_gain > b.likelihood_gain; });
  return doubt;
}

}  // namespace v1
}  // namespace noonleaf
