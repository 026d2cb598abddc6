// The science: building blocks, tables, batches, the balance, the run time, the heat.
#include <chrono>
#include <vector>

#include "noonleaf/atmosphere/instruction_set.hpp"
#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/atmosphere/soil_heat.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/atmosphere/vapour_batch.hpp"
#include "noonleaf/atmosphere/wind.hpp"
#include "noonleaf/balance/draws.hpp"
#include "noonleaf/balance/ensemble.hpp"
#include "noonleaf/balance/initial_state.hpp"
#include "noonleaf/balance/mulch.hpp"
#include "noonleaf/balance/quantities.hpp"
#include "noonleaf/balance/run.hpp"
#include "noonleaf/balance/seed_zone.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/emergence.hpp"
#include "noonleaf/crop/growth_quantities.hpp"
#include "noonleaf/crop/kc_ini.hpp"
#include "noonleaf/crop/landscape.hpp"
#include "noonleaf/crop/salinity.hpp"
#include "noonleaf/crop/sparse_cover.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/heat/crop_heat.hpp"
#include "noonleaf/heat/demand.hpp"
#include "noonleaf/heat/people.hpp"
#include "noonleaf/heat/turgor_table.hpp"
#include "noonleaf/heat/wbgt.hpp"
#include "noonleaf/heat/wilt.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/reference/daily_batch.hpp"
#include "noonleaf/reference/hourly_batch.hpp"
#include "noonleaf/reference/period.hpp"
#include "noonleaf/reference/temperature_only.hpp"
#include "noonleaf/soil/pot.hpp"
#include "noonleaf/soil/retention.hpp"
#include "noonleaf/soil/runoff.hpp"
#include "noonleaf/soil/saxton_rawls.hpp"
#include "noonleaf/soil/texture.hpp"
#include "noonleaf/soil/wetted_fraction.hpp"
#include "noonleaf/sprinkler/catch_cans.hpp"
#include "noonleaf/sprinkler/cycle_soak.hpp"
#include "noonleaf/sprinkler/run_time.hpp"
#include "noonleaf/sprinkler/spray_loss.hpp"

#include "door.hpp"

namespace {

using namespace noonleaf;
using namespace std::chrono;

const Location place{.latitude_deg = 46.07, .longitude_deg = -118.33, .elevation_m = 290};
constexpr std::size_t row_count = 800;

/// A plausible number for a row, the same in every thread.
double wave(std::size_t row, double low, double high) {
  return low + (high - low) * static_cast<double>(row * 7919 % 1000) / 1000;
}

std::vector<double> column(double low, double high) {
  std::vector<double> values(row_count);
  for (std::size_t i = 0; i < row_count; ++i) values[i] = wave(i, low, high);
  values[17] = missing;
  values[18] = 1e6;
  return values;
}

std::string air() {
  Print out;
  out << atmospheric_pressure_kpa(290) << psychrometric_constant_kpa_c(97) << latent_heat_mj_kg(21)
      << evaporation_equivalent_mm(3) << saturation_vapour_pressure_kpa(24.5) << saturation_slope_kpa_c(24.5)
      << mean_saturation_vapour_pressure_kpa({30, 12}) << vapour_pressure_from_dew_point_kpa(9)
      << dew_point_c(1.2)
      << vapour_pressure_from_rh_max_min_kpa(
             {.t_max_c = 30, .t_min_c = 12, .rh_max_pct = 80, .rh_min_pct = 30})
      << vapour_pressure_from_rh_kpa({20, 50}) << dew_point_from_t_min_c({.t_min_c = 12})
      << wind_speed_at_2m_m_s({.wind_m_s = 3, .height_m = 10})
      << soil_heat_of_month_mj_m2_d({.previous_c = 12, .this_c = 14, .next_c = 17});
  return out.text();
}

std::string sun() {
  Print out;
  const int day = day_of_year(2024y / July / 10);
  const double ra = extraterrestrial_radiation_mj_m2_d({46, day});
  out << day << inverse_relative_distance(day) << solar_declination_rad(day)
      << sunset_hour_angle_rad({46, day}) << daylight_h({46, day}) << ra << seasonal_correction_h(day)
      << sun_altitude_rad({46, day, 0.3}) << extraterrestrial_radiation_mj_m2_h({46, day, 0.3}, 1)
      << radiation_from_sunshine_mj_m2_d({.sunshine_h = 9, .daylight_h = 15, .ra_mj_m2_d = ra})
      << radiation_from_temperature_mj_m2_d({.t_max_c = 30, .t_min_c = 12, .ra_mj_m2_d = ra})
      << clear_sky_radiation({.ra = ra, .elevation_m = 290}) << net_solar_radiation(20)
      << net_longwave_radiation_mj_m2_d(
             {.t_max_c = 30, .t_min_c = 12, .ea_kpa = 1.2, .rs_mj_m2_d = 20, .rso_mj_m2_d = 30});
  return out.text();
}

std::string daily_reference() {
  const auto t_max = column(18, 40), t_min = column(-2, 15), ea = column(0.5, 2), rs = column(4, 30),
             u2 = column(1, 6);
  std::vector<double> et0(row_count), rn(row_count), es(row_count);
  const DailyColumns in{.day = {.first = sys_days{2023y / March / 1}},
                        .t_max_c = {t_max.data(), 1},
                        .t_min_c = {t_min.data(), 1},
                        .ea_kpa = {ea.data(), 1},
                        .rs_mj_m2_d = {rs.data(), 1},
                        .u2_m_s = {u2.data(), 1}};
  Print out;
  const DailySite site = daily_site(place);
  for (const Equation equation : {Equation::fao56, Equation::asce})
    out << daily_et0_mm_d(site, in, row_count, {et0.data(), 1}, equation) << et0;
  out << daily_net_radiation_mj_m2_d(site, in, row_count, {rn.data(), 1}) << rn;
  out << saturation_vapour_pressure_kpa({t_max.data(), 1}, row_count, {es.data(), 1}) << es;
  const std::vector<Location> sites(3, place);
  std::vector<double> many(3 * row_count);
  out << daily_et0_mm_d(sites, {.first_site = in, .site_stride = 0, .result_site_stride = row_count},
                        row_count, {many.data(), 1}, Equation::fao56, Surface::short_crop, {.count = 2})
      << many << batch_instruction_set() << batch_lanes();
  return out.text();
}

std::string hourly_reference() {
  const auto t = column(5, 35), ea = column(0.5, 2), rs = column(0, 3), u2 = column(0, 5);
  std::vector<double> et0(row_count);
  const sys_seconds first = sys_days{2024y / June / 1};
  Print out;
  out << hourly_et0_mm_h(hourly_site(place, first),
                         {.first_begin = first,
                          .t_c = {t.data(), 1},
                          .ea_kpa = {ea.data(), 1},
                          .rs_mj_m2_h = {rs.data(), 1},
                          .u2_m_s = {u2.data(), 1}},
                         row_count, {et0.data(), 1})
      << et0;
  return out.text();
}

std::string one_day_and_its_gaps() {
  Print out;
  for (int day = 1; day <= 28; ++day) {
    const DailyWeather weather{
        .date = 2024y / July / day, .t_max_c = 25.0 + day % 9, .t_min_c = 11, .rain_mm = 0};
    const DailyEstimate estimate = complete_daily(weather, place);
    out << daily_et0(estimate, place).et0_mm_d << estimated_phrases(estimate) << estimated_codes(estimate);
  }
  for (const DailyEt0Column& shown : daily_et0_columns()) out << shown.symbol << shown.equation;
  const std::vector<DailyWeather> months{{.date = 2024y / May / 15, .t_max_c = 20, .t_min_c = 8},
                                         {.date = 2024y / June / 15, .t_max_c = 25, .t_min_c = 11}};
  for (const MonthlyEt0& month : monthly_et0(months, place)) out << month.et0_mm;
  return out.text();
}

std::string soils() {
  Print out;
  for (const TextureClass& texture : texture_table()) out << texture.id << soil_of(texture).rew_mm;
  out << soil_of(SoilParticles{.sand_pct = 40, .clay_pct = 20}).field_capacity_m3_m3
      << soil_of(
             PotWeights{
                 .soil_volume_l = 5, .soaked_kg = 5.15, .drained_kg = 4.35, .wilted_kg = 3.1, .dry_kg = 2.45})
             .wilting_point_m3_m3
      << classify_texture(40, 20).id << runoff_mm(40, 78)
      << soil_tension_kpa(retention_curve({.theta_33 = 0.25, .theta_1500 = 0.12}), 0.2);
  for (const WettedFraction& row : wetted_fraction_table()) out << row.id << row.value;
  return out.text();
}

std::string crops() {
  Print out;
  for (const Crop& crop : crop_table()) {
    if (crop.basis == CropBasis::bare_soil) continue;
    const GrowthDetail detail = growth_detail(crop, {.start = 2024y / April / 15}, 2024y / July / 1, {});
    for (const GrowthQuantity& quantity : growth_quantities()) out << quantity.value(detail);
    out << crop.id << turgor_loss(crop.group).mpa;
  }
  for (const EmergenceRow& row : emergence_table()) out << row.seed << row.days[4];
  out << days_to_emergence("tomato", 20);
  out << kc_ini_of_drying(5, 4, 8, 20) << landscape_coefficient(0.5, 1, 1) << leaching_requirement(1, 2.5)
      << salt_stress_coefficient(4, {.ece_threshold_ds_m = 2.5, .yield_loss_pct_m_ds = 9.9, .ky = 1.05})
      << kcb_of_leaf_area(1.1, 2);
  return out.text();
}

std::string refusals() {
  Print out;
  try {
    find_crop("tomatto");
  } catch (const Error& refused) {
    out << describe(refused.problems());
  }
  try {
    run_plan({.net_depth_mm = -1, .sprinkler = {.rate_mm_h = 0}});
  } catch (const Error& refused) {
    out << refused.problems().size() << refused.what();
  }
  return out.text();
}

std::string balance() {
  const SoilWater soil = soil_of(find_texture("loam"));
  const Crop& crop = find_crop("tomato");
  std::vector<BalanceDay> days(150);
  std::vector<GrowthDay> growth =
      growth_days(crop, {.start = 2024y / April / 15}, 2024y / April / 15, days.size(), {});
  for (std::size_t i = 0; i < days.size(); ++i) {
    days[i].date = growth[i].date;
    days[i].et0_mm_d = wave(i, 2, 8);
    days[i].rain_mm = i % 11 == 0 ? 9 : 0;
  }
  const BalanceRun run = run_balance(initial_state(soil, 0.25, 1.5, 0.2), days, growth, soil, {});
  Print out;
  for (const BalanceDetail& day : run.days)
    for (const BalanceQuantity& quantity : balance_quantities()) out << quantity.value(day);
  const StartMatters start = start_matters(soil, 1.5, days, growth, {});
  out << start.dr_apart_mm << net_refill_mm(run.days.back().end) << depleted_frac_by_feel(feel_table()[1].id)
      << mulch_evaporation_factor(MulchKind::organic, 0.5)
      << seed_zone_watering(seed_zone(soil, 0.01), 5).depth_mm;
  return out.text();
}

std::string ensemble() {
  constexpr std::size_t members = 64, n_days = 60;
  std::vector<double> fc(members), wp(members), rew(members, 8.0), wet(members), et0(members * n_days),
      rain(members * n_days);
  for (std::size_t m = 0; m < members; ++m) {
    fc[m] = 0.25 + 0.02 * normal_draw({.seed = m});
    wp[m] = 0.12;
    wet[m] = uniform_draw({.seed = m + 1000});
  }
  for (std::size_t i = 0; i < et0.size(); ++i) et0[i] = wave(i, 2, 8), rain[i] = i % 13 == 0 ? 7 : 0;
  const std::vector<GrowthDay> growth =
      growth_days(find_crop("tomato"), {.start = 2024y / April / 15}, 2024y / June / 1, n_days, {});
  const MemberSeries of_et0{et0.data(), members, 1}, of_rain{rain.data(), members, 1}, none{};
  const EnsemblePlanting planting{
      .growth = growth,
      .watering = {
          .irrigation_mm = {}, .evening_irrigation_mm = {}, .share = {}, .refill_beyond_raw_frac = 1}};
  Print out;
  for (const EnsembleResult& result : run_ensemble({.field_capacity_m3_m3 = fc,
                                      .wilting_point_m3_m3 = wp,
                                      .rew_mm = rew,
                                      .depleted_frac = wet,
                                      .profile_depth_m = 1.5},
                                                   {of_et0, of_rain, none, none}, {&planting, 1}))
    out << result.dr_mm << result.transpiration_mm << result.refills;
  return out.text();
}

std::string sprinklers() {
  Print out;
  CatchCanTest test{.minutes = 30};
  for (int i = 0; i < 12; ++i)
    test.cans.push_back({wave(static_cast<std::size_t>(i), 4, 12), i % 4 * 1.0, i / 4 * 1.0});
  const CanResult cans = catch_can_result(test);
  const ApplicationRate rate{.rate_mm_h = cans.rate_mm_h.value, .du_lq_frac = cans.du_lq_frac.value};
  const RunPlan plan = run_plan({.net_depth_mm = 14, .bed_area_m2 = 20, .sprinkler = rate});
  for (const RunPlanTerm& term : run_plan_terms()) out << term.name << plan.*term.member;
  const CyclePlan cycles = cycle_plan({.intake = {green_ampt_soil("clay loam"), 0.4},
                                       .rate_mm_h = 20,
                                       .minutes = 60,
                                       .surface_storage_mm = surface_storage_mm("clay loam", 4)});
  for (const Cycle& cycle : cycles.cycles) out << cycle.minutes;
  out << cycles.soak_min << spray_loss_frac(SprayTime::day, {3, 40})
      << cans_needed({.coefficient_of_variation = 0.3}) << infiltrated_depth_mm(rate, 40).mean_mm;
  return out.text();
}

std::string heat() {
  Print out;
  const DaySite site{.date = 2024y / July / 10, .location = place, .utc_offset_h = -7};
  const WeatherHours hours =
      hours_of_day({.site = site, .t_max_c = 39, .t_min_c = 20, .ea_kpa = 1.4, .rs_mj_m2_d = 28, .u2_m_s = 3})
          .hours;
  const auto demand = hourly_transpiration_mm_h(hours, site, 8);
  for (double dr = 0; dr <= 80; dr += 8) {
    const WiltDay day = wilt_day({.p_frac = 0.4,
                                  .turgor_loss_mpa = -1.2,
                                  .taw_mm = 80,
                                  .raw_mm = 32,
                                  .dr_mm = dr,
                                  .root_depth_m = 0.4,
                                  .soil = {.theta_33 = 0.25, .theta_1500 = 0.12}},
                                 hours, demand);
    out << label(day.verdict) << day.droop_hours << day.unmet_frac;
  }
  for (const OutdoorWbgt& hour : outdoor_wbgt_by_hour(hours, site)) out << hour.wbgt_c;
  out << people_day(hours).heat_index_c.size() << heat_index_c({35, 50}) << beyond_heat_index_chart(48, 101);
  const std::vector<HeatDay> days{{2024y / July / 10, 39, 25}};
  for (const CropHeatFinding& finding : crop_heat_findings("tomato", days)) out << finding.days_over.size();
  return out.text();
}

}  // namespace

std::vector<Door> science_doors() {
  return {{"air", air},
          {"sun", sun},
          {"daily reference", daily_reference},
          {"hourly reference", hourly_reference},
          {"one day and its gaps", one_day_and_its_gaps},
          {"soils", soils},
          {"crops", crops},
          {"refusals", refusals},
          {"balance", balance},
          {"ensemble", ensemble},
          {"sprinklers", sprinklers},
          {"heat", heat}};
}
