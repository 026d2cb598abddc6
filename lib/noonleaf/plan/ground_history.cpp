#include "noonleaf/plan/ground_history.hpp"

#include <algorithm>

#include "noonleaf/garden/journal_of_bed.hpp"
#include "noonleaf/garden/soil_particles.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/soil/saxton_rawls.hpp"
#include "noonleaf/soil/texture.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::sys_days;

constexpr double usual_organic_pct = 2.5;  // Saxton & Rawls (2006), Table 3
constexpr double dug_depth_m = 0.20;       // a spade; what lies deeper stays as it was
constexpr double usual_roots_m = 0.50;     // of a bed without a limit: about the roots of vegetables

/// What the account, which knows one soil from top to bottom, takes of a change that a spade makes.
double dug_share(const Bed& bed) {
  const double roots_m = is_known(bed.rooting_depth_m) ? bed.rooting_depth_m : usual_roots_m;
  return std::min(1.0, dug_depth_m / roots_m);
}

Journal dated_entries(const Bed& bed, const Journal& journal, JournalEvent event) {
  Journal entries = entries_of_bed(bed.id, journal, event);
  std::stable_sort(entries.begin(), entries.end(),
                   [](const JournalEntry& a, const JournalEntry& b) { return a.date < b.date; });
  return entries;
}

/// Sand and clay as the bed has them, or those typical of its class. Missing for measured soils.
SoilParticles particles_with(const Bed& bed, double organic_pct) {
  SoilParticles particles = particles_of(bed.soil);
  if (!bed.soil.texture.empty()) {
    const TextureClass& texture = find_texture(bed.soil.texture);
    particles.sand_pct = texture.sand_pct;
    particles.clay_pct = texture.clay_pct;
  }
  particles.organic_pct = organic_pct;
  return particles;
}

/// The soil with what more (or less) organic matter does to it.
SoilWater with_organic_matter(const SoilWater& soil, const Bed& bed, double before_pct, double after_pct) {
  SoilWater result = soil;
  if (is_missing(particles_with(bed, after_pct).sand_pct))
    return result;  // measured soil: no particles to go by
  const SoilWater before = soil_of(particles_with(bed, before_pct)),
                  after = soil_of(particles_with(bed, after_pct));
  const double share = dug_share(bed);
  result.field_capacity_m3_m3 += share * (after.field_capacity_m3_m3 - before.field_capacity_m3_m3);
  result.wilting_point_m3_m3 += share * (after.wilting_point_m3_m3 - before.wilting_point_m3_m3);
  result.saturation_m3_m3 += share * (after.saturation_m3_m3 - before.saturation_m3_m3);
  result.conductivity_mm_h *= after.conductivity_mm_h / before.conductivity_mm_h;
  result.source += "; amended (Saxton & Rawls 2006)";
  return result;
}

SoilWater measured(const JournalEntry& entry, const SoilWater& before) {
  SoilWater values;
  values.field_capacity_m3_m3 = entry.field_capacity_pct / 100;
  values.wilting_point_m3_m3 = entry.wilting_point_pct / 100;
  values.conductivity_mm_h = before.conductivity_mm_h;
  values.source = "measured after amending";
  return measured_soil(values);
}

}  // namespace

std::vector<DatedSoil> amendments_of_bed(const Bed& bed, const Journal& journal) {
  std::vector<DatedSoil> soils;
  SoilWater soil = soil_of_bed(bed);
  double organic_pct = is_known(bed.soil.organic_pct) ? bed.soil.organic_pct : usual_organic_pct;
  for (const JournalEntry& entry : dated_entries(bed, journal, JournalEvent::amend)) {
    const bool is_measured = is_known(entry.field_capacity_pct) && is_known(entry.wilting_point_pct);
    if (is_measured) {
      soil = measured(entry, soil);
    } else if (is_known(entry.organic_pct)) {
      soil = with_organic_matter(soil, bed, organic_pct, entry.organic_pct);
      organic_pct = entry.organic_pct;
    } else {
      continue;
    }
    soils.push_back({sys_days(entry.date), std::make_shared<const SoilWater>(soil), is_measured});
  }
  return soils;
}

SoilWater soil_of_bed_on(const Bed& bed, const Journal& journal, sys_days date) {
  SoilWater soil = soil_of_bed(bed);
  for (const DatedSoil& each : amendments_of_bed(bed, journal)) {
    if (each.from <= date) soil = *each.soil;
  }
  return soil;
}

double mulch_factor_on(const Bed& bed, const Journal& journal, sys_days date) {
  BedMulch mulch;
  if (!bed.mulch.from || sys_days(*bed.mulch.from) <= date) mulch = bed.mulch;
  for (const JournalEntry& entry : dated_entries(bed, journal, JournalEvent::mulch)) {
    const bool later = !bed.mulch.from || entry.date >= *bed.mulch.from;
    if (!entry.mulch || sys_days(entry.date) > date || !later) continue;
    mulch = {.kind = *entry.mulch,
             .covered_frac = is_known(entry.covered_pct) ? entry.covered_pct / 100 : 1.0};
  }
  return mulch_evaporation_factor(mulch.kind, mulch.covered_frac);
}

}  // namespace v1
}  // namespace noonleaf
