#include "noonleaf/balance/daily_step.hpp"
#include "noonleaf/c_interface/sized_struct.hpp"
#include "noonleaf/crop/coefficients.hpp"
#include "noonleaf/heat/wilt.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/plan/week.hpp"
#include "noonleaf/soil/soil_water.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

namespace noonleaf::c_interface {
namespace {

constexpr noonleaf_column no_column{nullptr, 0, 1};
constexpr noonleaf_result_column no_result{nullptr, 0, 1};

template <class Struct>
noonleaf_status fill_defaults(Struct* wanted, const Struct& defaults) {
  return guarded(nullptr, [&] {
    require_fillable(wanted, "struct");
    fill(wanted, defaults);
    return noonleaf_status{noonleaf_done};
  });
}

}  // namespace

// The usual values are those of the C++ structs behind, so that both doors begin alike.

noonleaf_location default_location() {
  return {.size = sizeof(noonleaf_location),
          .latitude_deg = missing,
          .longitude_deg = missing,
          .elevation_m = missing};
}

noonleaf_daily_columns default_daily_columns() {
  return {.size = sizeof(noonleaf_daily_columns),
          .first_day = {},
          .day = {nullptr, 0, 1},
          .t_max_c = no_column,
          .t_min_c = no_column,
          .ea_kpa = no_column,
          .rs_mj_m2_d = no_column,
          .u2_m_s = no_column,
          .pressure_kpa = no_column,
          .g_mj_m2_d = no_column,
          .equation = noonleaf_fao56,
          .surface = noonleaf_short_crop,
          .et0_mm_d = no_result};
}

noonleaf_hourly_place default_hourly_place() {
  return {.size = sizeof(noonleaf_hourly_place),
          .latitude_deg = missing,
          .longitude_deg = missing,
          .elevation_m = missing,
          .begin_s = 0,
          .length_s = 3600,
          .equation = noonleaf_fao56,
          .unused = 0};
}

noonleaf_hourly_columns default_hourly_columns() {
  return {.size = sizeof(noonleaf_hourly_columns),
          .first_begin_s = 0,
          .t_c = no_column,
          .ea_kpa = no_column,
          .rs_mj_m2_h = no_column,
          .u2_m_s = no_column,
          .pressure_kpa = no_column,
          .surface = noonleaf_short_crop,
          .dryness = noonleaf_humid,
          .et0_mm_h = no_result};
}

noonleaf_soil default_soil() {
  return {.size = sizeof(noonleaf_soil),
          .field_capacity_m3_m3 = missing,
          .wilting_point_m3_m3 = missing,
          .saturation_m3_m3 = missing,
          .conductivity_mm_h = missing,
          .rew_mm = missing,
          .evaporation_depth_m = SoilWater{}.evaporation_depth_m};
}

noonleaf_planting default_planting() {
  noonleaf_planting planting{};
  planting.size = sizeof(planting);
  planting.root_limit_m = missing;
  planting.u2_m_s = CropClimate{}.u2_m_s;
  planting.rh_min_pct = CropClimate{}.rh_min_pct;
  return planting;
}

noonleaf_ground default_ground() {
  return {.size = sizeof(noonleaf_ground),
          .de_mm = missing,
          .de_rain_mm = missing,
          .dr_mm = missing,
          .lower_mm = missing,
          .root_depth_m = missing,
          .profile_depth_m = missing,
          .wetted_frac = BalanceState{}.wetted_frac};
}

noonleaf_wetness default_wetness() {
  return {.size = sizeof(noonleaf_wetness),
          .depleted_frac = missing,
          .root_depth_m = missing,
          .profile_depth_m = missing};
}

noonleaf_balance_settings default_balance_settings() {
  noonleaf_balance_settings settings{};
  const BalanceSettings usual;
  settings.size = sizeof(settings);
  settings.irrigated_frac = usual.irrigated_frac;
  settings.curve_number = usual.curve_number;
  settings.salt_stress = usual.salt_stress;
  settings.evaporation_factor = usual.evaporation_factor;
  return settings;
}

noonleaf_balance_days default_balance_days() {
  noonleaf_balance_days days{};
  days.size = sizeof(days);
  for (noonleaf_column* column : {&days.et0_mm_d, &days.rain_mm, &days.irrigation_mm, &days.evening_rain_mm,
                                  &days.evening_irrigation_mm, &days.u2_m_s, &days.rh_min_pct,
                                  &days.observed_dr_mm, &days.ground_closed})
    *column = no_column;
  for (noonleaf_result_column* column :
       {&days.dr_mm, &days.de_mm, &days.taw_mm, &days.raw_mm, &days.root_depth_m, &days.kcb, &days.ke,
        &days.ks, &days.etc_adj_mm_d, &days.transpiration_mm, &days.evaporation_mm, &days.runoff_mm,
        &days.deep_percolation_mm, &days.drainage_mm})
    *column = no_result;
  return days;
}

noonleaf_run_request default_run_request() {
  noonleaf_run_request request{};
  const RunRequest usual;
  request.size = sizeof(request);
  request.net_depth_mm = request.rate_mm_h = request.flow_l_min = request.bed_area_m2 = missing;
  request.du_lq_frac = usual.sprinkler.du_lq_frac;
  request.shortest_min = usual.limits.shortest_min;
  request.longest_min = usual.limits.longest_min;
  request.basis = noonleaf_guess;
  return request;
}

noonleaf_wilt_request default_wilt_request() {
  noonleaf_wilt_request request{};
  request.size = sizeof(request);
  for (double* value : {&request.utc_offset_h,
                        &request.latitude_deg,
                        &request.longitude_deg,
                        &request.elevation_m,
                        &request.t_max_c,
                        &request.t_min_c,
                        &request.ea_kpa,
                        &request.rs_mj_m2_d,
                        &request.u2_m_s,
                        &request.t_max_before_c,
                        &request.t_min_after_c,
                        &request.transpiration_mm_d,
                        &request.p_frac,
                        &request.turgor_loss_mpa,
                        &request.sunlit_factor,
                        &request.taw_mm,
                        &request.raw_mm,
                        &request.dr_mm,
                        &request.root_depth_m,
                        &request.field_capacity_m3_m3,
                        &request.wilting_point_m3_m3,
                        &request.saturation_m3_m3,
                        &request.days_since_transplant})
    *value = missing;
  for (noonleaf_column* column :
       {&request.hour_t_c, &request.hour_ea_kpa, &request.hour_rs_mj_m2_h, &request.hour_u2_m_s})
    *column = no_column;
  for (noonleaf_result_column* column :
       {&request.hour_demand_mm_h, &request.hour_supply_mm_h, &request.hour_leaf_potential_mpa,
        &request.hour_clock_h, &request.hour_hangs})
    *column = no_result;
  return request;
}

noonleaf_moment default_moment() { return {.size = sizeof(noonleaf_moment), .date = {}, .minute = 0}; }

noonleaf_week_request default_week_request() {
  return {.size = sizeof(noonleaf_week_request),
          .made_date = {},
          .made_minute = 0,
          .first_day = {},
          .days = WeekQuestion{}.days,
          .language = noonleaf_english};
}

}  // namespace noonleaf::c_interface

using namespace noonleaf::c_interface;

noonleaf_status noonleaf_location_defaults(noonleaf_location* location) {
  return fill_defaults(location, default_location());
}
noonleaf_status noonleaf_daily_columns_defaults(noonleaf_daily_columns* columns) {
  return fill_defaults(columns, default_daily_columns());
}
noonleaf_status noonleaf_hourly_place_defaults(noonleaf_hourly_place* place) {
  return fill_defaults(place, default_hourly_place());
}
noonleaf_status noonleaf_hourly_columns_defaults(noonleaf_hourly_columns* columns) {
  return fill_defaults(columns, default_hourly_columns());
}
noonleaf_status noonleaf_soil_defaults(noonleaf_soil* soil) { return fill_defaults(soil, default_soil()); }
noonleaf_status noonleaf_planting_defaults(noonleaf_planting* planting) {
  return fill_defaults(planting, default_planting());
}
noonleaf_status noonleaf_ground_defaults(noonleaf_ground* ground) {
  return fill_defaults(ground, default_ground());
}
noonleaf_status noonleaf_wetness_defaults(noonleaf_wetness* wetness) {
  return fill_defaults(wetness, default_wetness());
}
noonleaf_status noonleaf_balance_settings_defaults(noonleaf_balance_settings* settings) {
  return fill_defaults(settings, default_balance_settings());
}
noonleaf_status noonleaf_balance_days_defaults(noonleaf_balance_days* days) {
  return fill_defaults(days, default_balance_days());
}
noonleaf_status noonleaf_run_request_defaults(noonleaf_run_request* request) {
  return fill_defaults(request, default_run_request());
}
noonleaf_status noonleaf_wilt_request_defaults(noonleaf_wilt_request* request) {
  return fill_defaults(request, default_wilt_request());
}
noonleaf_status noonleaf_moment_defaults(noonleaf_moment* moment) {
  return fill_defaults(moment, default_moment());
}
noonleaf_status noonleaf_week_request_defaults(noonleaf_week_request* request) {
  return fill_defaults(request, default_week_request());
}
