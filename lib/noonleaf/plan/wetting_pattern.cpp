#include "noonleaf/plan/wetting_pattern.hpp"

#include <algorithm>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/kc_ini.hpp"
#include "noonleaf/plan/bed_water.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/soil/texture.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;

constexpr double significant_wetting_mm = 3;
constexpr double longest_interval_d = 60;  // that of kc_ini_of_wetting

bool is_coarse(const BedSoil& soil) {
  std::string_view texture = soil.texture;
  if (is_known(soil.sand_pct)) texture = classify_texture(soil.sand_pct, soil.clay_pct).id;
  return texture == "sand" || texture == "loamy_sand" || texture == "sandy_loam";
}

}  // namespace

double kc_ini_on_ground(const Garden& garden, std::size_t bed, const BedPlanting& planting,
                        const Journal& journal, const Sky& sky) {
  const Crop& crop = find_crop(planting.crop);
  if (crop.basis != CropBasis::kc_curve || crop.season != SeasonKind::annual || sky.empty()) return missing;
  const SeasonCalendar season = season_calendar(crop, planting.season, planting.season.start);
  const BedWaterByDay water_by_day(garden, bed, journal);
  double et0_mm = 0, water_mm = 0;
  int n_days = 0, wettings = 0;
  for (sys_days day = std::max(season.first, sky.first()); day < season.development && day <= sky.last();
       day += days(1)) {
    const SkyDay& sky_day = *sky.find(day);
    if (is_missing(sky_day.et0_mm_d)) continue;
    const BedWater water = water_by_day.on(sky_day);
    const double came_mm = water.rain_mm + water.irrigation_mm + water.evening_irrigation_mm;
    et0_mm += sky_day.et0_mm_d;
    ++n_days;
    if (came_mm < significant_wetting_mm) continue;
    water_mm += came_mm;
    ++wettings;
  }
  if (n_days == 0 || wettings == 0 || !(et0_mm > 0)) return missing;
  WettingPattern pattern;
  pattern.et0_mm_d = et0_mm / n_days;
  pattern.interval_d = std::min(longest_interval_d, static_cast<double>(n_days) / wettings);
  pattern.infiltrated_mm = water_mm / wettings;
  pattern.wetted_frac = settings_of_bed(garden, garden.beds[bed]).irrigated_frac;
  pattern.soil = is_coarse(garden.beds[bed].soil) ? KcIniSoil::coarse : KcIniSoil::medium_fine;
  return kc_ini_of_wetting(pattern);
}

BedPlanting planting_in_account(const Garden& garden, std::size_t bed, std::size_t planting,
                                const Journal& journal, const Sky& sky) {
  BedPlanting result = garden.beds[bed].plantings[planting];
  if (garden.account.method == CoefficientMethod::single)
    result.season.kc_ini_by_wetting = kc_ini_on_ground(garden, bed, result, journal, sky);
  return result;
}

}  // namespace v1
}  // namespace noonleaf
