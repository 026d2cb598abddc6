#include "noonleaf/heat/wilt.hpp"

#include "noonleaf/c_interface/columns.hpp"
#include "noonleaf/c_interface/sized_struct.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/heat/demand.hpp"
#include "noonleaf/heat/turgor_table.hpp"

using namespace noonleaf::c_interface;

namespace {

constexpr std::size_t hours_a_day = 24;

noonleaf::DaySite site_of(const noonleaf_wilt_request& request) {
  return {.date = day_of(request.date, "date"),
          .location = {.latitude_deg = request.latitude_deg,
                       .longitude_deg = request.longitude_deg,
                       .elevation_m = request.elevation_m},
          .utc_offset_h = request.utc_offset_h};
}

noonleaf::WeatherHours hours_of(const noonleaf_wilt_request& request, const noonleaf::DaySite& site) {
  const noonleaf::DiurnalDay day = noonleaf::hours_of_day({.site = site,
                                                           .t_max_c = request.t_max_c,
                                                           .t_min_c = request.t_min_c,
                                                           .ea_kpa = request.ea_kpa,
                                                           .rs_mj_m2_d = request.rs_mj_m2_d,
                                                           .u2_m_s = request.u2_m_s,
                                                           .t_max_before_c = request.t_max_before_c,
                                                           .t_min_after_c = request.t_min_after_c});
  const auto t = column_of(request.hour_t_c, hours_a_day, "hour_t_c");
  const auto ea = column_of(request.hour_ea_kpa, hours_a_day, "hour_ea_kpa");
  const auto rs = column_of(request.hour_rs_mj_m2_h, hours_a_day, "hour_rs_mj_m2_h");
  const auto u2 = column_of(request.hour_u2_m_s, hours_a_day, "hour_u2_m_s");
  noonleaf::WeatherHours measured;
  for (std::size_t i = 0; i < hours_a_day; ++i)
    measured[i] = {.t_c = value_at(t, i, noonleaf::missing),
                   .ea_kpa = value_at(ea, i, noonleaf::missing),
                   .rs_mj_m2_h = value_at(rs, i, noonleaf::missing),
                   .u2_m_s = value_at(u2, i, noonleaf::missing)};
  return noonleaf::prefer_measured(measured, day.hours);
}

noonleaf::WiltPlanting planting_of(const noonleaf_wilt_request& request) {
  noonleaf::WiltPlanting planting{.p_frac = request.p_frac,
                                  .turgor_loss_mpa = request.turgor_loss_mpa,
                                  .sunlit_factor = request.sunlit_factor,
                                  .taw_mm = request.taw_mm,
                                  .raw_mm = request.raw_mm,
                                  .dr_mm = request.dr_mm,
                                  .root_depth_m = request.root_depth_m,
                                  .soil = {.theta_33 = request.field_capacity_m3_m3,
                                           .theta_1500 = request.wilting_point_m3_m3,
                                           .theta_s = request.saturation_m3_m3},
                                  .days_since_transplant = request.days_since_transplant,
                                  .leaf_deficit_mm = request.leaf_deficit_mm,
                                  .dawn_look = chosen<noonleaf::DawnLook>(request.dawn_look, 3, "dawn_look")};
  if (request.crop != nullptr) {
    const noonleaf::Crop& crop = noonleaf::find_crop(request.crop);
    const noonleaf::TurgorLoss& leaves = noonleaf::turgor_loss(crop.group);
    if (noonleaf::is_missing(planting.p_frac)) planting.p_frac = crop.p_frac;
    if (noonleaf::is_missing(planting.turgor_loss_mpa)) planting.turgor_loss_mpa = leaves.mpa;
    if (noonleaf::is_missing(planting.sunlit_factor)) planting.sunlit_factor = leaves.sunlit_factor;
  } else if (noonleaf::is_missing(planting.sunlit_factor)) {
    planting.sunlit_factor = noonleaf::WiltPlanting{}.sunlit_factor;
  }
  return planting;
}

struct HourColumns {
  noonleaf::MutableColumn demand, supply, leaf_potential, clock, hangs;
};

HourColumns hour_columns(const noonleaf_wilt_request& request) {
  return {
      .demand = result_of(request.hour_demand_mm_h, hours_a_day, "hour_demand_mm_h"),
      .supply = result_of(request.hour_supply_mm_h, hours_a_day, "hour_supply_mm_h"),
      .leaf_potential = result_of(request.hour_leaf_potential_mpa, hours_a_day, "hour_leaf_potential_mpa"),
      .clock = result_of(request.hour_clock_h, hours_a_day, "hour_clock_h"),
      .hangs = result_of(request.hour_hangs, hours_a_day, "hour_hangs")};
}

void put_hours(const HourColumns& columns, const noonleaf::WiltDay& day) {
  for (std::size_t i = 0; i < hours_a_day; ++i) {
    const noonleaf::WiltHour& hour = day.hours[i];
    put(columns.demand, i, hour.demand_mm_h);
    put(columns.supply, i, hour.supply_mm_h);
    put(columns.leaf_potential, i, hour.leaf_potential_mpa);
    put(columns.clock, i, hour.clock_h);
    put(columns.hangs, i, hour.hangs ? 1 : 0);
  }
}

noonleaf_wilt_day day_of(const noonleaf::WiltDay& day) {
  return {.size = sizeof(noonleaf_wilt_day),
          .verdict = static_cast<int32_t>(day.verdict),
          .advice = static_cast<int32_t>(day.advice),
          .droop_hours = day.droop_hours,
          .droop_from_h = day.droop_from_h,
          .droop_until_h = day.droop_until_h,
          .look_again_h = day.look_again_h,
          .raw_passed_h = day.raw_passed_h,
          .peak_hour_h = day.peak_hour_h,
          .peak_demand_mm_h = day.peak_demand_mm_h,
          .peak_supply_mm_h = day.peak_supply_mm_h,
          .unmet_frac = day.unmet_frac,
          .depletion_mm = day.depletion_mm,
          .leaf_deficit_mm = day.leaf_deficit_mm};
}

}  // namespace

noonleaf_status noonleaf_wilt(const noonleaf_wilt_request* request, noonleaf_wilt_day* day,
                              noonleaf_problems** problems) {
  return guarded(problems, [&] {
    require_fillable(day, "day");
    const noonleaf_wilt_request given = taken(request, default_wilt_request(), "request");
    const HourColumns columns = hour_columns(given);
    const noonleaf::WiltPlanting planting = planting_of(given);
    const noonleaf::DaySite site = site_of(given);
    const noonleaf::WeatherHours hours = hours_of(given, site);
    const noonleaf::WiltDay found = noonleaf::wilt_day(
        planting, hours, noonleaf::hourly_transpiration_mm_h(hours, site, given.transpiration_mm_d));
    put_hours(columns, found);
    fill(day, day_of(found));
    return noonleaf_status{noonleaf_done};
  });
}
