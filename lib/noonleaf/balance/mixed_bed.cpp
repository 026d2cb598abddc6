#include "noonleaf/balance/mixed_bed.hpp"

#include <algorithm>
#include <tuple>

#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

bool is_whole(const BedShare& planting) {
  return is_known(planting.dr_mm) && is_known(planting.raw_mm) && planting.raw_mm > 0;
}

void require_shares(std::span<const BedShare> plantings) {
  double sum = 0;
  for (const BedShare& planting : plantings) {
    require_within("share_frac", planting.share_frac, 1e-6, 1, "");
    sum += planting.share_frac;
  }
  if (sum <= 1 + 1e-9) return;
  Problem problem;
  problem.field = "share_frac";
  problem.text = number_text(sum);
  problem.message = "the shares of the plantings add up to " + number_text(sum) + ", more than the bed";
  problem.fix = "let the shares add up to 1 or less";
  throw Error(std::move(problem));
}

auto thirst(const BedShare& planting) {
  return std::make_tuple(planting.dr_mm / planting.raw_mm, planting.dr_mm, planting.share_frac);
}

}  // namespace

std::vector<ShareOutcome> outcomes_of_depth(std::span<const BedShare> plantings, double depth_mm) {
  require_within("depth_mm", depth_mm, 0, 2000, "mm");
  std::vector<ShareOutcome> out;
  for (const BedShare& planting : plantings) {
    ShareOutcome& one = out.emplace_back();
    const double after = planting.dr_mm - depth_mm;
    if (is_missing(after)) continue;
    one.dr_after_mm = one.short_mm = std::max(0.0, after);
    one.percolation_mm = std::max(0.0, -after);
  }
  return out;
}

std::optional<MixedBedAnswer> water_mixed_bed(std::span<const BedShare> plantings) {
  require_shares(plantings);
  std::optional<std::size_t> driver;
  for (std::size_t i = 0; i < plantings.size(); ++i)
    if (is_whole(plantings[i]) && (!driver || thirst(plantings[i]) > thirst(plantings[*driver]))) driver = i;
  if (!driver) return std::nullopt;
  MixedBedAnswer answer;
  answer.driver = *driver;
  answer.depth_mm = std::max(0.0, plantings[*driver].dr_mm);
  answer.outcomes = outcomes_of_depth(plantings, answer.depth_mm);
  answer.mean_percolation_mm = 0;
  for (std::size_t i = 0; i < plantings.size(); ++i)
    if (is_known(answer.outcomes[i].percolation_mm))
      answer.mean_percolation_mm += plantings[i].share_frac * answer.outcomes[i].percolation_mm;
  return answer;
}

}  // namespace v1
}  // namespace noonleaf
