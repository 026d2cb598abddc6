// Building blocks of the science that no other door comes by: each is called by its own name.
#include <chrono>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/atmosphere/column.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/atmosphere/soil_heat.hpp"
#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/atmosphere/vapour_batch.hpp"
#include "noonleaf/balance/draws.hpp"
#include "noonleaf/balance/evaporation.hpp"
#include "noonleaf/balance/initial_state.hpp"
#include "noonleaf/balance/mixed_bed.hpp"
#include "noonleaf/balance/root_zone.hpp"
#include "noonleaf/balance/run.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/crop/kc_ini.hpp"
#include "noonleaf/crop/landscape.hpp"
#include "noonleaf/crop/salinity.hpp"
#include "noonleaf/crop/sparse_cover.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/heat/crop_heat.hpp"
#include "noonleaf/heat/hydraulics.hpp"
#include "noonleaf/heat/turgor_table.hpp"
#include "noonleaf/heat/wbgt.hpp"
#include "noonleaf/heat/wilt_members.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/reference/hourly.hpp"
#include "noonleaf/reference/missing_data.hpp"
#include "noonleaf/reference/penman_monteith.hpp"
#include "noonleaf/reference/period.hpp"
#include "noonleaf/reference/temperature_only.hpp"
#include "noonleaf/soil/retention.hpp"
#include "noonleaf/soil/saxton_rawls.hpp"
#include "noonleaf/soil/texture.hpp"
#include "noonleaf/sprinkler/application_rate.hpp"
#include "noonleaf/sprinkler/catch_cans.hpp"
#include "noonleaf/sprinkler/cycle_soak.hpp"
#include "noonleaf/sprinkler/green_ampt.hpp"
#include "noonleaf/sprinkler/run_time.hpp"

#include "door.hpp"

namespace {

using namespace noonleaf;
using namespace std::chrono;

const Location place{.latitude_deg = 46.07, .longitude_deg = -118.33, .elevation_m = 290};

std::string air_blocks() {
  const DailyHumidity humid{
      .t_max_c = 30, .t_min_c = 12, .rh_max_pct = 85, .rh_min_pct = 30, .rh_mean_pct = 58};
  const std::vector<double> t{5, 15, 25, missing, 200};
  std::vector<double> slope(t.size());
  Print out;
  out << vapour_pressure_from_rh_max_kpa(humid) << vapour_pressure_from_rh_mean_kpa(humid)
      << vapour_pressure_from_psychrometer_kpa({.t_dry_c = 25, .t_wet_c = 18, .pressure_kpa = 98})
      << saturation_slope_kpa_c({t.data(), 1}, t.size(), {slope.data(), 1}) << slope
      << clear_sky_from_angstrom_mj_m2_d({.ra_mj_m2_d = 40})
      << clear_sky_from_beam({.ra = 40, .sin_sun_altitude = 0.8, .pressure_kpa = 98, .ea_kpa = 1.2})
      << radiation_from_nearby_mj_m2_d({.station_rs_mj_m2_d = 24, .station_ra_mj_m2_d = 41, .ra_mj_m2_d = 40})
      << radiation_of_island_mj_m2_d(38) << sin_mean_sun_altitude(46, 190)
      << soil_heat_mj_m2_d({.previous_c = 12, .this_c = 14, .days = 30, .depth_m = 1});
  try {
    require_length("t_min_c", 3, 4);
  } catch (const Error& refused) {
    out << refused.what();
  }
  const std::vector<std::string> names{"tomato", "carrot"};
  out << nearest_name("tomatto", names);
  return out.text();
}

std::string balance_blocks() {
  const SoilWater soil = soil_of(find_texture("loam"));
  const std::vector<BalanceDay> days(40, BalanceDay{.date = 2024y / June / 1, .et0_mm_d = 6});
  const auto growth =
      growth_days(find_crop("tomato"), {.start = 2024y / April / 15}, 2024y / June / 1, days.size(), {});
  std::vector<BalanceDay> dated = days;
  for (std::size_t i = 0; i < days.size(); ++i) dated[i].date = growth[i].date;
  const BalanceState spun = spin_up(soil, 1.5, dated, growth, {});
  const BalanceRun run = run_balance(spun, dated, growth, soil, {});
  const BalanceState measured = state_from_moisture(
      soil, 0.4, 1.5, {.root_zone_m3_m3 = 0.2, .top_layer_m3_m3 = 0.15, .lower_m3_m3 = 0.25});
  const AmendedState amended = state_in_other_soil(measured, soil, soil_of(find_texture("clay_loam")));
  const std::vector<BedShare> shares{{.share_frac = 0.6, .dr_mm = 20, .raw_mm = 18, .taw_mm = 60},
                                     {.share_frac = 0.4, .dr_mm = 6, .raw_mm = 15, .taw_mm = 50}};
  Print out;
  out << net_refill_mm(run.days.back().end) << net_refill_mm(amended.state) << amended.drained_mm
      << first_day_beyond_raw(run.days).value_or(999) << depletion_within_day_mm(run.days.back(), 0.5)
      << water_mixed_bed(shares)->depth_mm << depletion_fraction(0.4, 7) << raw_mm(60, 0.4)
      << stress_coefficient(40, 60, 24) << evaporation_reduction(12, 8, 20)
      << evaporation_coefficient(0.5, 1.2, 0.6, 0.4) << fixed_exp(-1.5);
  std::vector<double> draws(33);
  normal_draws({.seed = 7}, draws);
  out << draws;
  return out.text();
}

std::string crop_blocks() {
  Print out;
  out << kc_ini_of_wetting({.et0_mm_d = 5, .interval_d = 4, .infiltrated_mm = 12});
  for (const LandscapeLevel& level : landscape_table())
    out << find_landscape_level(level.factor, level.id).value;
  out << salt_yield_frac(4, {.ece_threshold_ds_m = 2.5, .yield_loss_pct_m_ds = 9.9, .ky = 1.05})
      << kcb_full_cover({}, 0.6)
      << kcb_of_cover({.kcb_full = 1.1, .cover_frac = 0.4, .effective_cover_frac = 0.5, .height_m = 0.5});
  for (const CropHeatLimit& limit : crop_heat_limits()) out << limit.crop;
  for (const TurgorLoss& row : turgor_loss_table()) out << row.mpa;
  const WaterPath path = water_path({.p_frac = 0.4, .turgor_loss_mpa = -1.2});
  const RetentionCurve curve = retention_curve({.theta_33 = 0.25, .theta_1500 = 0.12});
  out << depletion_frac_at_shortage(path, curve, {.etc_mm_d = 7}) << soil_water_at_tension_m3_m3(curve, 100)
      << osmotic_tension_kpa(0.2, 0.45, 2) << psychrometric_wet_bulb_c(33, 40);
  return out.text();
}

std::string reference_blocks() {
  Print out;
  HourlySeries series(place);
  for (int hour = 12; hour < 36; ++hour) {
    const sys_seconds begin = sys_days{2024y / July / 10} + hours{hour};
    const HourEstimate estimate = complete_hour(
        {.begin = begin, .t_c = 20.0 + hour % 24, .rh_pct = 45, .wind_m_s = 2, .rs_mj_m2_h = 1.5}, place);
    out << hourly_et0(estimate.inputs, place).g_mj_m2_h << hourly_et0_mm_h(estimate.inputs, place)
        << series.next(estimate.inputs).et0_mm_h << code(estimate.pressure) << phrase(estimate.pressure);
  }
  for (const Equation equation : {Equation::fao56, Equation::asce})
    for (const HourlyEt0Column& column : hourly_et0_columns(equation)) out << column.equation;
  const DailyInputs day{.date = 2024y / July / 10,
                        .latitude_deg = 46,
                        .elevation_m = 290,
                        .t_max_c = 33,
                        .t_min_c = 15,
                        .ea_kpa = 1.3,
                        .rs_mj_m2_d = 26,
                        .u2_m_s = 2};
  out << daily_et0_mm_d(day) << daily_et0_mm_d(day, Equation::asce, Surface::tall_crop)
      << temperature_only_et0_mm_d(
             {.date = 2024y / July / 10, .latitude_deg = 46, .t_max_c = 33, .t_min_c = 15});
  const DailyWeather mean_day{.date = 2024y / July / 11, .t_max_c = 31, .t_min_c = 14};
  out << ten_day_et0(mean_day, place).et0_mm;
  const DailyEstimate estimate = complete_daily(mean_day, place);
  out << estimate.is_complete() << estimate.is_measured() << code(estimate.temperature)
      << phrase(estimate.temperature) << code(estimate.rh_min) << phrase(estimate.rh_min);
  return out.text();
}

std::string sprinkler_blocks() {
  Print out;
  out << can_depth_mm({.caught_ml = 90, .can_diameter_mm = 80})
      << bucket_flow_l_min({.bucket_l = 10, .seconds = 40})
      << meter_flow_l_min({.start_l = 100, .end_l = 260, .minutes = 12})
      << drip_rate_mm_h({.emitter_flow_l_h = 2, .emitter_spacing_m = 0.3, .line_spacing_m = 0.4})
      << guessed_application_rate().rate_mm_h << guessed_du_lq_frac(RateBasis::bucket)
      << hand_watering({.net_depth_mm = 8, .bed_area_m2 = 3, .can_l = 9}).cans << whole_cans(24, 9)
      << pause_rule_text();
  for (const GreenAmptSoil& soil : green_ampt_soils()) {
    const IntakeState intake{soil, 0.4};
    out << ponding_time_min(intake, 40) << infiltrated_under_rate_mm(intake, 40, 30)
        << ponded_infiltration_mm(intake, 1) << intake_rate_mm_h(intake, 12);
  }
  return out.text();
}

std::string many_wilts() {
  constexpr std::size_t n = 40;
  std::vector<double> hot(n), cool(n), air(n), sun(n), wind(n), fc(n), wp(n), taw(n), raw(n), dr(n), total(n);
  for (std::size_t m = 0; m < n; ++m) {
    const double share = static_cast<double>(m) / n;
    hot[m] = 30 + 8 * share, cool[m] = 16, air[m] = 1.4, sun[m] = 26, wind[m] = 2 + share;
    fc[m] = 0.25, wp[m] = 0.12, taw[m] = 80, raw[m] = 32, dr[m] = 80 * share, total[m] = 7;
  }
  hot[3] = missing;
  const DaySite site{.date = 2024y / July / 10, .location = place, .utc_offset_h = -7};
  DayMembers day;
  day.t_max_c = hot, day.t_min_c = cool, day.ea_kpa = air, day.rs_mj_m2_d = sun, day.u2_m_s = wind;
  PlantingMembers planting;
  planting.field_capacity_m3_m3 = fc, planting.wilting_point_m3_m3 = wp, planting.total_mm_d = total;
  planting.taw_mm = taw, planting.raw_mm = raw, planting.dr_mm = dr;
  planting.shared.p_frac = 0.4;
  planting.shared.turgor_loss_mpa = -1.2;
  planting.shared.root_depth_m = 0.4;
  Print out;
  for (const WiltMembers& members : wilt_members(site, day, {&planting, 1})) {
    for (const WiltVerdict verdict : members.verdict) out << label(verdict);
    out << members.droop_hours << members.depletion_mm;
  }
  WeatherHours measured{};
  const WeatherHours estimated =
      hours_of_day({.site = site, .t_max_c = 39, .t_min_c = 20, .ea_kpa = 1.4, .rs_mj_m2_d = 28, .u2_m_s = 3})
          .hours;
  measured[12].t_c = 38;
  out << prefer_measured(measured, estimated)[12].t_c;
  return out.text();
}

}  // namespace

std::vector<Door> block_doors() {
  return {{"blocks: air", air_blocks},
          {"blocks: balance", balance_blocks},
          {"blocks: crop and heat", crop_blocks},
          {"blocks: reference", reference_blocks},
          {"blocks: sprinkler", sprinkler_blocks},
          {"many wilts", many_wilts}};
}
