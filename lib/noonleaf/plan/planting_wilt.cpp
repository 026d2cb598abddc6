#include "noonleaf/plan/planting_wilt.hpp"

#include <algorithm>
#include <cmath>

#include "noonleaf/balance/potential_transpiration.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/garden/zone.hpp"
#include "noonleaf/heat/demand.hpp"
#include "noonleaf/heat/turgor_table.hpp"
#include "noonleaf/plan/bed_sky.hpp"
#include "noonleaf/plan/ground.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr std::chrono::hours dawn_look_until{9};
constexpr int days_carried = 2;

DaySite site_on(const Site& site, year_month_day date) {
  return {.date = date, .location = site.location, .utc_offset_h = utc_offset_h(site.zone, date)};
}

DawnLook dawn_look(const PlantingPlace& place, year_month_day date) {
  const bool hung = std::any_of(place.journal.begin(), place.journal.end(), [&](const JournalEntry& entry) {
    const bool here = entry.bed == place.bed.id && (entry.crop.empty() || entry.crop == place.planting.crop);
    if (entry.event != JournalEvent::droop || !here) return false;
    const bool at_dawn = entry.date == date && entry.time_of_day && *entry.time_of_day < dawn_look_until;
    const bool over_night = sys_days(entry.date) + days(1) == sys_days(date) && entry.recovered == false;
    return (at_dawn && entry.recovered != true) || over_night;
  });
  return hung ? DawnLook::hanging : DawnLook::not_looked;
}

}  // namespace

WiltPlanting wilt_planting(const PlantingPlace& place, const SoilWater& soil, const BalanceDetail& day) {
  const Crop& crop = find_crop(place.planting.crop);
  WiltPlanting planting;
  planting.p_frac = day.growth.p_frac;
  planting.turgor_loss_mpa = turgor_loss(crop.group).mpa;
  planting.sunlit_factor = turgor_loss(crop.group).sunlit_factor;
  planting.taw_mm = day.taw_mm;
  planting.raw_mm = day.raw_mm;
  planting.dr_mm =
      std::min(day.dr_wet_mm, day.taw_mm);  // what evaporation takes beyond TAW is below the roots' reach
  planting.root_depth_m = day.end.root_depth_m;
  planting.soil = {.theta_33 = soil.field_capacity_m3_m3,
                   .theta_1500 = soil.wilting_point_m3_m3,
                   .theta_s = soil.saturation_m3_m3};
  if (place.planting.season.method == PlantingStart::transplanted) {
    const auto age = sys_days(day.date) - sys_days(place.planting.season.start);
    planting.days_since_transplant = static_cast<double>(age.count());
  }
  return planting;
}

WeatherHours hours_over(const Site& site, const Sky& sky, year_month_day date) {
  const SkyDay* day = sky.find(sys_days(date));
  const SkyDay* before = sky.find(sys_days(date) - days(1));
  const SkyDay* after = sky.find(sys_days(date) + days(1));
  if (day == nullptr || std::abs(site.location.latitude_deg) > highest_latitude_deg) return {};
  DailyShape shape;
  shape.site = site_on(site, date);
  shape.t_max_c = day->estimate.t_max_c;
  shape.t_min_c = day->estimate.t_min_c;
  shape.ea_kpa = day->estimate.ea_kpa;
  shape.rs_mj_m2_d = day->estimate.rs_mj_m2_d;
  shape.u2_m_s = day->estimate.u2_m_s;
  if (before != nullptr) shape.t_max_before_c = before->estimate.t_max_c;
  if (after != nullptr) shape.t_min_after_c = after->estimate.t_min_c;
  return hours_of_day(shape).hours;
}

WiltDay wilt_of_planting(const PlantingPlace& place, const PlantingAccount& account, const Sky& open_sky,
                         year_month_day date) {
  WiltDay result;
  const Sky sky = sky_over_bed(place.garden.site, place.bed, open_sky);
  const bool too_far_north = std::abs(place.garden.site.location.latitude_deg) > highest_latitude_deg;
  if (too_far_north || find_crop(place.planting.crop).basis == CropBasis::bare_soil) return result;
  double leaf_deficit_mm = 0;
  const auto follow = [&](const BalanceDetail& day) {
    const WeatherHours hours = hours_over(place.garden.site, sky, day.date);
    const auto demand = hourly_transpiration_mm_h(hours, site_on(place.garden.site, day.date),
                                                  potential_transpiration_mm(day));
    WiltPlanting planting = wilt_planting(place, account.soil, day);
    if (is_known(leaf_deficit_mm)) planting.leaf_deficit_mm = leaf_deficit_mm;
    planting.dawn_look = dawn_look(place, day.date);
    result = wilt_day(planting, hours, demand);
    leaf_deficit_mm = result.leaf_deficit_mm;
  };
  for (const BalanceDetail& day : account.past.days) {
    const sys_days when(day.date);
    if (when + days(days_carried) >= sys_days(date) && grows_on(place.planting, when)) follow(day);
  }
  follow(account.dry_ahead.days.front());
  return result;
}

}  // namespace v1
}  // namespace noonleaf
