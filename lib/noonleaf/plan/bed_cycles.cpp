#include "noonleaf/plan/bed_cycles.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "noonleaf/soil/texture.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr double wettest_start_frac = 0.99;  // Green and Ampt need some room to fill

/// USDA class of a bed; empty where only its water contents were measured.
std::string_view texture_of(const BedSoil& soil) {
  if (is_known(soil.sand_pct)) return classify_texture(soil.sand_pct, soil.clay_pct).id;
  return soil.texture.empty() ? std::string_view{} : find_texture(soil.texture).id;
}

double cover_frac(const BedToday& bed) {
  double cover = 0;
  for (const PlantingToday& planting : bed.plantings) cover += planting.share_frac * planting.cover_frac;
  return std::clamp(cover, 0.0, 1.0);
}

}  // namespace

std::optional<CyclePlan> bed_cycles(const Garden& garden, const BedToday& bed, double minutes) {
  const Bed& where = garden.beds[bed.bed];
  const Sprinkler& sprinkler = garden.sprinklers[where.sprinkler];
  const std::string_view texture = texture_of(where.soil);
  if (sprinkler.kind != WettingKind::sprinkler || texture.empty() || !bed.driver) return std::nullopt;
  const PlantingToday& planting = bed.plantings[*bed.driver];
  IntakeState intake{.soil = green_ampt_soil(texture)};
  const double bare = bare_intake_share(texture);
  intake.soil.conductivity_mm_h = is_known(where.intake_mm_h)
                                      ? where.intake_mm_h
                                      : intake.soil.conductivity_mm_h * (bare + (1 - bare) * cover_frac(bed));
  const double theta =
      std::max(0.0, planting.field_capacity_m3_m3 - planting.dr_mm / (1000 * planting.root_depth_m));
  intake.initial_saturation_frac =
      std::min(wettest_start_frac, effective_saturation_frac(intake.soil, theta));
  CycleRequest request{
      .intake = intake,
      .rate_mm_h = sprinkler.rate.rate_mm_h * delivered_frac(sprinkler.rate),
      .minutes = minutes,
      .surface_storage_mm = where.framed ? framed_storage_mm : surface_storage_mm(texture, where.slope_pct)};
  CyclePlan plan = cycle_plan(request);
  if (plan.soak_min <= longest_pause_min) return plan;
  request.most_cycles = 1;
  return cycle_plan(request);
}

double running_min(const CyclePlan& plan) {
  return std::accumulate(plan.cycles.begin(), plan.cycles.end(), 0.0,
                         [](double sum, const Cycle& cycle) { return sum + cycle.minutes; });
}

std::vector<RunOpening> openings_of_run(const std::optional<CyclePlan>& cycles, double minutes) {
  using Minutes = std::chrono::minutes;
  constexpr int step_min = minutes_per_slot;
  const Minutes all(std::lround(minutes));
  std::vector<RunOpening> openings;
  Minutes run{0}, begin{0};
  const std::size_t count = cycles && !cycles->cycles.empty() ? cycles->cycles.size() : 1;
  for (std::size_t index = 0; index < count; ++index) {
    const bool last = index + 1 == count;
    const Minutes length =
        last ? all - run : std::min(all - run, Minutes(std::lround(cycles->cycles[index].minutes)));
    if (length <= Minutes{0}) break;
    openings.push_back({begin, begin + length});
    run += length;
    if (last) break;
    const double again =
        std::ceil((static_cast<double>((begin + length).count()) + cycles->soak_min) / step_min);
    begin = Minutes(static_cast<int>(again) * step_min);
  }
  return openings;
}

}  // namespace v1
}  // namespace noonleaf
