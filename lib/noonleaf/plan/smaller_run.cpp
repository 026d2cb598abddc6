#include "noonleaf/plan/smaller_run.hpp"

#include <algorithm>

#include "noonleaf/plan/week_problem.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double worth_asking_mm = 2.0;  // less changes no answer

double depletion_mm(const PlantingToday& planting) {
  return planting.in_seed_zone ? planting.top_layer_mm : planting.dr_mm;
}

/// The planting that the doubt is about: the one that sets the depth, else the one furthest on its way.
std::size_t planting_in_doubt(const BedToday& bed) {
  if (bed.driver) return *bed.driver;
  const auto least = std::max_element(
      bed.plantings.begin(), bed.plantings.end(),
      [](const PlantingToday& a, const PlantingToday& b) { return a.dr_mm / a.raw_mm < b.dr_mm / b.raw_mm; });
  return static_cast<std::size_t>(least - bed.plantings.begin());
}

}  // namespace

void take_smaller_run(const Garden& garden, const BedToday& if_done, std::span<const UnloggedRun> open,
                      BedToday& bed) {
  const std::size_t index = planting_in_doubt(bed);
  const double dry_mm = depletion_mm(bed.plantings[index]), wet_mm = depletion_mm(if_done.plantings[index]);
  if (!(dry_mm - wet_mm >= worth_asking_mm)) return;
  bed.open_question = OpenQuestion{.runs = {open.begin(), open.end()},
                                   .dr_if_done_mm = wet_mm,
                                   .dr_if_not_done_mm = dry_mm,
                                   .planting = index,
                                   .run_if_not_done = bed.run};
  if (!bed.driver) return;
  // Another planting of the bed may have more room in the wet case: what fits there by its own need.
  double fits_mm = 0;
  for (std::size_t each = 0; each < bed.plantings.size(); ++each) {
    if (bed.plantings[each].net_need_mm > 0)
      fits_mm = std::max(fits_mm, depletion_mm(if_done.plantings[each]));
  }
  if (fits_mm < smallest_net_mm) {
    bed.driver.reset();
    bed.urgent.reset();
    bed.reason = BedReason::look_first;
    bed.run = {};
    return;
  }
  bed.run = bed_run(garden, garden.beds[bed.bed], std::min(fits_mm, bed.run.net_depth_mm));
}

}  // namespace v1
}  // namespace noonleaf
