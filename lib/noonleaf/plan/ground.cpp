#include "noonleaf/plan/ground.hpp"

#include <algorithm>
#include <array>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/garden/soil_particles.hpp"
#include "noonleaf/soil/saxton_rawls.hpp"
#include "noonleaf/soil/texture.hpp"
#include "noonleaf/soil/wetted_fraction.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

/// TR-55 (1986) appendix A gives the hydrologic soil group by texture, Table 2-2b the curve number.
double curve_number_of(std::string_view texture) {
  constexpr std::array<std::string_view, 3> group_a{"sand", "loamy_sand", "sandy_loam"};
  constexpr std::array<std::string_view, 3> group_b{"silt_loam", "loam", "silt"};
  const auto is_in = [texture](const auto& group) {
    return std::find(group.begin(), group.end(), texture) != group.end();
  };
  if (is_in(group_a)) return 67;
  if (is_in(group_b)) return 78;
  return texture == "sandy_clay_loam" ? 85 : 89;
}

CropClimate mean_climate(const Sky& sky, sys_days from) {
  double wind = 0, humidity = 0;
  int count = 0;
  for (const SkyDay& day : sky.days) {
    if (sys_days(day.weather.date) < from || is_missing(day.estimate.u2_m_s) ||
        is_missing(day.estimate.rh_min_pct))
      continue;
    wind += day.estimate.u2_m_s;
    humidity += day.estimate.rh_min_pct;
    ++count;
  }
  return count == 0 ? CropClimate{} : CropClimate{wind / count, humidity / count};
}

/// The planting that was pulled from this ground before `planting` began; null = bare soil.
const BedPlanting* planting_before(const Bed& bed, const BedPlanting& planting, sys_days date) {
  const BedPlanting* found = nullptr;
  for (const BedPlanting& other : bed.plantings) {
    if (&other == &planting || !other.pulled || sys_days(*other.pulled) > sys_days(planting.season.start))
      continue;
    if (grows_on(other, date) && (found == nullptr || other.share_frac > found->share_frac)) found = &other;
  }
  return found;
}

GrowthDetail growth_of(const BedPlanting& planting, sys_days date, const CropClimate& climate,
                       double latitude_deg) {
  const Crop& crop = find_crop(planting.crop);
  Planting season = planting.season;
  if (crop.season == SeasonKind::perennial) season.season_start = season_start_at(crop, latitude_deg);
  return growth_detail(crop, season, date, climate);
}

}  // namespace

bool grows_on(const BedPlanting& planting, sys_days date) {
  return sys_days(planting.season.start) <= date && (!planting.pulled || date < sys_days(*planting.pulled));
}

SoilWater soil_of_bed(const Bed& bed) {
  if (is_known(bed.soil.field_capacity_m3_m3)) {
    SoilWater values;
    values.field_capacity_m3_m3 = bed.soil.field_capacity_m3_m3;
    values.wilting_point_m3_m3 = bed.soil.wilting_point_m3_m3;
    values.saturation_m3_m3 = bed.soil.saturation_m3_m3;
    return measured_soil(values);
  }
  if (is_known(bed.soil.sand_pct)) return soil_of(particles_of(bed.soil));
  return soil_of(find_texture(bed.soil.texture));
}

BalanceSettings settings_of_bed(const Garden& garden, const Bed& bed) {
  BalanceSettings settings;
  const WettingKind kind = garden.sprinklers[bed.sprinkler].kind;
  settings.method = garden.account.method;
  settings.irrigated_frac = wetted_fraction(kind).value;
  if (kind == WettingKind::drip || kind == WettingKind::soaker_hose)
    settings.emitters = EmitterPlace::under_canopy;
  if (bed.framed) return settings;
  if (!bed.soil.texture.empty()) settings.curve_number = curve_number_of(find_texture(bed.soil.texture).id);
  if (is_known(bed.soil.sand_pct)) {
    settings.curve_number = curve_number_of(classify_texture(bed.soil.sand_pct, bed.soil.clay_pct).id);
  }
  return settings;
}

GrowthDetail growth_detail_on(const BedPlanting& planting, const Sky& sky, double latitude_deg,
                              std::chrono::year_month_day date) {
  return growth_of(planting, sys_days(date), mean_climate(sky, sys_days(planting.season.start)),
                   latitude_deg);
}

std::vector<GrowthDay> growth_on_ground(const Bed& bed, const BedPlanting& planting, const Sky& sky,
                                        double latitude_deg, sys_days first, std::size_t n_days) {
  const CropClimate climate = mean_climate(sky, sys_days(planting.season.start));
  std::vector<GrowthDay> growth;
  for (std::size_t index = 0; index < n_days; ++index) {
    const sys_days date = first + days(static_cast<int>(index));
    if (grows_on(planting, date)) {
      growth.push_back(growth_of(planting, date, climate, latitude_deg).day);
    } else if (const BedPlanting* before = planting_before(bed, planting, date)) {
      growth.push_back(
          growth_of(*before, date, mean_climate(sky, sys_days(before->season.start)), latitude_deg).day);
    } else {
      growth.push_back(growth_day(bare_soil(), {.start = date}, date, climate));
    }
  }
  return growth;
}

}  // namespace v1
}  // namespace noonleaf
