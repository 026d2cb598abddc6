#include "noonleaf/plan/seedbed.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/crop/emergence.hpp"
#include "noonleaf/plan/bed_water.hpp"
#include "noonleaf/plan/ground_history.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr double sowing_depth_m = 0.013;
constexpr int longest_wait_d = 60;  // a seed that is not up by then is not waited for

bool table_knows(std::string_view crop) {
  for (int soil_c = 0; soil_c <= 40; soil_c += 5)
    if (is_known(days_to_emergence(crop, soil_c))) return true;
  return false;
}

/// The soil's temperature on a day, or on the last known one before it.
double soil_c_on(const Sky& sky, sys_days date) {
  const SkyDay* day = sky.find(std::min(date, sky.last()));
  if (day == nullptr) return missing;
  const double mean = (day->estimate.t_max_c + day->estimate.t_min_c) / 2;
  return is_known(mean) ? std::clamp(mean, 0.0, 40.0) : missing;
}

/// The day on which the seed is up: the first whose sum of daily shares reaches 1.
std::optional<sys_days> emergence_day(const BedPlanting& planting, const Sky& sky) {
  const sys_days sown(planting.season.start);
  if (planting.season.observed.development) {
    const sys_days seen(*planting.season.observed.development);
    if (seen > sown && seen - sown < days(longest_wait_d)) return seen;
  }
  if (!table_knows(planting.crop)) return sown + days(usual_emergence_d);
  double share = 0;
  for (int day = 0; day < longest_wait_d; ++day) {
    const double soil_c = soil_c_on(sky, sown + days(day));
    const double count = is_known(soil_c) ? days_to_emergence(planting.crop, soil_c) : usual_emergence_d;
    if (is_known(count)) share += 1 / count;
    if (share >= 1) return sown + days(day + 1);
  }
  return std::nullopt;
}

double mean_soil_c(const Sky& sky, sys_days from, sys_days until) {
  double sum = 0;
  int count = 0;
  for (sys_days day = from; day <= until; day += days(1)) {
    const double soil_c = soil_c_on(sky, day);
    if (is_missing(soil_c)) continue;
    sum += soil_c;
    ++count;
  }
  return count == 0 ? missing : sum / count;
}

}  // namespace

sys_days seed_up_day(const BedPlanting& planting, const Sky& sky) {
  const sys_days start(planting.season.start);
  if (planting.season.method != PlantingStart::sown) return start;
  return emergence_day(planting, sky).value_or(start + days(longest_wait_d));
}

std::optional<Seedbed> seedbed_on(const Garden& garden, std::size_t bed, const BedPlanting& planting,
                                  const Journal& journal, const Sky& sky, year_month_day date) {
  const sys_days sown(planting.season.start), morning(date);
  if (planting.season.method != PlantingStart::sown || morning < sown ||
      morning - sown >= days(longest_wait_d))
    return std::nullopt;
  const auto up = emergence_day(planting, sky);
  if (up && *up <= morning) return std::nullopt;
  Seedbed seedbed;
  if (up) seedbed.emergence = year_month_day(*up);
  seedbed.by_table = table_knows(planting.crop);
  seedbed.soil_c = mean_soil_c(sky, std::max(sown, sky.first()), std::min(morning, sky.last()));
  seedbed.zone = seed_zone(soil_of_bed_on(garden.beds[bed], journal, morning), sowing_depth_m);
  const BedWaterByDay water_by_day(garden, bed, journal);
  double depletion_mm = 0;
  for (sys_days day = std::max(sown, sky.first()); day <= morning; day += days(1)) {
    const SkyDay& sky_day = *sky.find(day);
    const double et0_mm = is_known(sky_day.et0_mm_d) ? std::max(0.0, sky_day.et0_mm_d) : 0.0;
    const BedWater water = water_by_day.on(sky_day);
    const double morning_mm = water.rain_mm + water.irrigation_mm;
    seedbed.depletion_mm =
        std::max(0.0, depletion_mm - morning_mm - (day == morning ? water.evening_irrigation_mm : 0));
    seedbed.close_mm = seed_zone_depletion_mm(seedbed.zone, depletion_mm, morning_mm, et0_mm);
    depletion_mm = std::max(0.0, seedbed.close_mm - water.evening_irrigation_mm);
  }
  const double today_mm = sky.find(morning)->et0_mm_d;
  if (today_mm >= 0.1) seedbed.light = seed_zone_watering(seedbed.zone, today_mm);
  return seedbed;
}

}  // namespace v1
}  // namespace noonleaf
