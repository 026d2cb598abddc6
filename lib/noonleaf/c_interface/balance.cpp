#include <algorithm>
#include <chrono>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "noonleaf/balance/run.hpp"
#include "noonleaf/c_interface/columns.hpp"
#include "noonleaf/c_interface/refused_rows.hpp"
#include "noonleaf/c_interface/sized_struct.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/soil/soil_water.hpp"
#include "noonleaf/soil/texture.hpp"

using namespace noonleaf::c_interface;
using noonleaf::missing;
using std::chrono::sys_days;

namespace {

noonleaf::SoilWater soil_of(const noonleaf_soil* given) {
  const noonleaf_soil soil = taken(given, default_soil(), "soil");
  return noonleaf::measured_soil({.field_capacity_m3_m3 = soil.field_capacity_m3_m3,
                                  .wilting_point_m3_m3 = soil.wilting_point_m3_m3,
                                  .saturation_m3_m3 = soil.saturation_m3_m3,
                                  .conductivity_mm_h = soil.conductivity_mm_h,
                                  .rew_mm = soil.rew_mm,
                                  .evaporation_depth_m = soil.evaporation_depth_m,
                                  .source = {}});
}

noonleaf_soil soil_for_caller(const noonleaf::SoilWater& soil) {
  return {.size = sizeof(noonleaf_soil),
          .field_capacity_m3_m3 = soil.field_capacity_m3_m3,
          .wilting_point_m3_m3 = soil.wilting_point_m3_m3,
          .saturation_m3_m3 = soil.saturation_m3_m3,
          .conductivity_mm_h = soil.conductivity_mm_h,
          .rew_mm = soil.rew_mm,
          .evaporation_depth_m = soil.evaporation_depth_m};
}

noonleaf::BalanceState state_of(const noonleaf_ground& ground) {
  return {.de_mm = ground.de_mm,
          .de_rain_mm = ground.de_rain_mm,
          .dr_mm = ground.dr_mm,
          .lower_mm = ground.lower_mm,
          .root_depth_m = ground.root_depth_m,
          .profile_depth_m = ground.profile_depth_m,
          .wetted_frac = ground.wetted_frac};
}

noonleaf_ground ground_for_caller(const noonleaf::BalanceState& state) {
  return {.size = sizeof(noonleaf_ground),
          .de_mm = state.de_mm,
          .de_rain_mm = state.de_rain_mm,
          .dr_mm = state.dr_mm,
          .lower_mm = state.lower_mm,
          .root_depth_m = state.root_depth_m,
          .profile_depth_m = state.profile_depth_m,
          .wetted_frac = state.wetted_frac};
}

noonleaf::BalanceSettings settings_of(const noonleaf_balance_settings* given) {
  const noonleaf_balance_settings settings =
      given == nullptr ? default_balance_settings() : taken(given, default_balance_settings(), "settings");
  return {.method = chosen<noonleaf::CoefficientMethod>(settings.method, 2, "method"),
          .depletion = chosen<noonleaf::DepletionFraction>(settings.depletion, 2, "depletion"),
          .surface = chosen<noonleaf::SurfaceAccount>(settings.surface, 2, "surface"),
          .top_roots = chosen<noonleaf::TopLayerRoots>(settings.top_roots, 2, "top_roots"),
          .emitters = chosen<noonleaf::EmitterPlace>(settings.emitters, 2, "emitters"),
          .irrigated_frac = settings.irrigated_frac,
          .curve_number = settings.curve_number,
          .salt_stress = settings.salt_stress,
          .evaporation_factor = settings.evaporation_factor};
}

std::optional<std::chrono::year_month_day> seen(const noonleaf_date& date, const char* member) {
  if (is_no_day(date)) return std::nullopt;
  return day_of(date, member);
}

/// A crop of the table with its season and the climate of its coefficients.
struct GrownCrop {
  const noonleaf::Crop& crop;
  noonleaf::Planting planting{};
  noonleaf::CropClimate climate{};
};

GrownCrop crop_of(const noonleaf_planting* given) {
  const noonleaf_planting planting = taken(given, default_planting(), "planting");
  GrownCrop grown{noonleaf::find_crop(&required(planting.crop, "crop"))};
  grown.climate = {.u2_m_s = planting.u2_m_s, .rh_min_pct = planting.rh_min_pct};
  grown.planting.start = day_of(planting.start, "start");
  grown.planting.method = chosen<noonleaf::PlantingStart>(planting.method, 2, "method");
  grown.planting.rooting = chosen<noonleaf::RootingDepth>(planting.rooting, 2, "rooting");
  grown.planting.root_limit_m = planting.root_limit_m;
  if (planting.region != nullptr) grown.planting.region = planting.region;
  grown.planting.observed = {.development = seen(planting.development, "development"),
                             .mid_season = seen(planting.mid_season, "mid_season"),
                             .late_season = seen(planting.late_season, "late_season"),
                             .over = seen(planting.over, "over")};
  return grown;
}

/// The columns of the days in the library's own terms.
struct DayColumns {
  sys_days first{};
  std::size_t rows = 0;
  noonleaf::ConstColumn et0, rain, irrigation, evening_rain, evening_irrigation, u2, rh_min, observed_dr,
      closed;
};

DayColumns day_columns(const noonleaf_balance_days& given) {
  DayColumns days;
  days.first = sys_days{day_of(given.first_day, "first_day")};
  days.rows = given.et0_mm_d.count;
  if (days.rows > 0) required(given.et0_mm_d.data, "et0_mm_d");
  days.et0 = column_of(given.et0_mm_d, days.rows, "et0_mm_d");
  days.rain = column_of(given.rain_mm, days.rows, "rain_mm");
  days.irrigation = column_of(given.irrigation_mm, days.rows, "irrigation_mm");
  days.evening_rain = column_of(given.evening_rain_mm, days.rows, "evening_rain_mm");
  days.evening_irrigation = column_of(given.evening_irrigation_mm, days.rows, "evening_irrigation_mm");
  days.u2 = column_of(given.u2_m_s, days.rows, "u2_m_s");
  days.rh_min = column_of(given.rh_min_pct, days.rows, "rh_min_pct");
  days.observed_dr = column_of(given.observed_dr_mm, days.rows, "observed_dr_mm");
  days.closed = column_of(given.ground_closed, days.rows, "ground_closed");
  return days;
}

noonleaf::BalanceDay day_at(const DayColumns& days, std::size_t i) {
  noonleaf::BalanceDay day;
  day.date = days.first + std::chrono::days{i};
  day.et0_mm_d = value_at(days.et0, i, missing);
  day.u2_m_s = value_at(days.u2, i, missing);
  day.rh_min_pct = value_at(days.rh_min, i, missing);
  day.rain_mm = value_at(days.rain, i, 0);
  day.irrigation_mm = value_at(days.irrigation, i, 0);
  day.evening_rain_mm = value_at(days.evening_rain, i, 0);
  day.evening_irrigation_mm = value_at(days.evening_irrigation, i, 0);
  if (value_at(days.closed, i, 0) != 0) day.ground = noonleaf::GroundState::frozen;
  return day;
}

/// Where each number of a day goes.
struct ResultColumn {
  noonleaf::MutableColumn column;
  double noonleaf::BalanceDetail::*of_day = nullptr;
  double noonleaf::BalanceState::*of_close = nullptr;
};

std::vector<ResultColumn> result_columns(const noonleaf_balance_days& given) {
  using Detail = noonleaf::BalanceDetail;
  using State = noonleaf::BalanceState;
  const std::size_t rows = given.et0_mm_d.count;
  std::vector<ResultColumn> wanted;
  const auto of_day = [&](const noonleaf_result_column& column, const char* member, double Detail::*value) {
    if (column.data != nullptr) wanted.push_back({result_of(column, rows, member), value, nullptr});
  };
  const auto of_close = [&](const noonleaf_result_column& column, const char* member, double State::*value) {
    if (column.data != nullptr) wanted.push_back({result_of(column, rows, member), nullptr, value});
  };
  of_close(given.dr_mm, "dr_mm", &State::dr_mm);
  of_close(given.de_mm, "de_mm", &State::de_mm);
  of_close(given.root_depth_m, "root_depth_m", &State::root_depth_m);
  of_day(given.taw_mm, "taw_mm", &Detail::taw_mm);
  of_day(given.raw_mm, "raw_mm", &Detail::raw_mm);
  of_day(given.kcb, "kcb", &Detail::kcb);
  of_day(given.ke, "ke", &Detail::ke);
  of_day(given.ks, "ks", &Detail::ks);
  of_day(given.etc_adj_mm_d, "etc_adj_mm_d", &Detail::etc_adj_mm_d);
  of_day(given.transpiration_mm, "transpiration_mm", &Detail::transpiration_mm);
  of_day(given.evaporation_mm, "evaporation_mm", &Detail::evaporation_mm);
  of_day(given.runoff_mm, "runoff_mm", &Detail::runoff_mm);
  of_day(given.deep_percolation_mm, "deep_percolation_mm", &Detail::dp_mm);
  of_day(given.drainage_mm, "drainage_mm", &Detail::drainage_mm);
  return wanted;
}

void add_totals(noonleaf_balance_totals& totals, const noonleaf::BalanceRun& run) {
  totals.rain_mm += run.rain_mm;
  totals.runoff_mm += run.runoff_mm;
  totals.irrigation_mm += run.irrigation_mm;
  totals.transpiration_mm += run.transpiration_mm;
  totals.evaporation_mm += run.evaporation_mm;
  totals.drainage_mm += run.drainage_mm;
  totals.correction_mm += run.correction_mm;
  totals.stress_mm += run.stress_mm;
  if (noonleaf::is_missing(run.days.front().end.dr_mm)) ++totals.missing_days;
}

/// The problems of a day with its row.
[[noreturn]] void refuse_row(const noonleaf::Error& refused, std::size_t row) {
  std::vector<noonleaf::Problem> problems = refused.problems();
  for (noonleaf::Problem& problem : problems) problem = of_row(std::move(problem), row);
  throw noonleaf::Error(std::move(problems));
}

/// All that stays the same over the days.
struct Account {
  noonleaf::SoilWater soil{};
  noonleaf::BalanceSettings settings{};
  GrownCrop grown;
  DayColumns days{};
  std::vector<ResultColumn> results{};
};

/// Day by day, so that a long record takes no memory of its own.
noonleaf::BalanceState run_days(const Account& account, noonleaf::BalanceState state,
                                noonleaf_balance_totals& totals) {
  for (std::size_t i = 0; i < account.days.rows; ++i) try {
      const noonleaf::BalanceDay day = day_at(account.days, i);
      const noonleaf::GrowthDay growth =
          noonleaf::growth_day(account.grown.crop, account.grown.planting, day.date, account.grown.climate);
      const noonleaf::Correction found{.date = day.date,
                                       .dr_mm = value_at(account.days.observed_dr, i, missing)};
      const noonleaf::BalanceRun run =
          noonleaf::run_balance(state, {&day, 1}, {&growth, 1}, account.soil, account.settings, {&found, 1});
      const noonleaf::BalanceDetail& detail = run.days.front();
      for (const ResultColumn& result : account.results)
        put(result.column, i, result.of_day != nullptr ? detail.*result.of_day : detail.end.*result.of_close);
      add_totals(totals, run);
      state = detail.end;
    } catch (const noonleaf::Error& refused) {
      refuse_row(refused, i);
    }
  return state;
}

}  // namespace

noonleaf_status noonleaf_soil_of_texture(const char* texture, noonleaf_soil* soil,
                                         noonleaf_problems** problems) {
  return guarded(problems, [&] {
    require_fillable(soil, "soil");
    fill(soil, soil_for_caller(noonleaf::soil_of(noonleaf::find_texture(&required(texture, "texture")))));
    return noonleaf_status{noonleaf_done};
  });
}

noonleaf_status noonleaf_ground_of(const noonleaf_soil* soil, const noonleaf_wetness* wetness,
                                   noonleaf_ground* ground, noonleaf_problems** problems) {
  return guarded(problems, [&] {
    require_fillable(ground, "ground");
    const noonleaf_wetness given = taken(wetness, default_wetness(), "wetness");
    fill(ground, ground_for_caller(noonleaf::initial_state(soil_of(soil), given.root_depth_m,
                                                           given.profile_depth_m, given.depleted_frac)));
    return noonleaf_status{noonleaf_done};
  });
}

noonleaf_status noonleaf_balance(const noonleaf_soil* soil, const noonleaf_planting* planting,
                                 const noonleaf_balance_settings* settings, const noonleaf_balance_days* days,
                                 noonleaf_ground* ground, noonleaf_balance_totals* totals,
                                 noonleaf_problems** problems) {
  return guarded(problems, [&] {
    if (totals != nullptr) require_fillable(totals, "totals");
    const noonleaf::BalanceState start = state_of(taken(ground, default_ground(), "ground"));
    const noonleaf_balance_days given = taken(days, default_balance_days(), "days");
    const Account account{.soil = soil_of(soil),
                          .settings = settings_of(settings),
                          .grown = crop_of(planting),
                          .days = day_columns(given),
                          .results = result_columns(given)};
    noonleaf_balance_totals sums{};
    const noonleaf::BalanceState end = run_days(account, start, sums);
    fill(ground, ground_for_caller(end));
    if (totals != nullptr) fill(totals, sums);
    return noonleaf_status{noonleaf_done};
  });
}
