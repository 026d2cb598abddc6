#include "noonleaf/crop/growth.hpp"

#include <algorithm>
#include <string>

#include "noonleaf/crop/coefficients_formula.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/guard.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::sys_days;

/// Days in which a stand without stages (turf, ornamentals) grows its roots. Ours: no source states it.
constexpr double establishment_d = 120;

struct RootRange {
  double start_m, full_m;
};

RootRange root_range(const Crop& crop, const Planting& planting) {
  double full = planting.rooting == RootingDepth::irrigated ? crop.root_depth_min_m : crop.root_depth_max_m;
  if (is_known(planting.root_limit_m)) full = std::min(full, planting.root_limit_m);
  return {std::min(crop.root_depth_start_m, full), full};
}

double between(double from, double to, double share) {
  return from + std::clamp(share, 0.0, 1.0) * (to - from);
}

Stage stage_on(const Crop& crop, const SeasonCalendar& season, sys_days day) {
  if (day < season.first) return Stage::not_started;
  if (crop.season == SeasonKind::year_round) return Stage::no_stages;
  if (day < season.development) return Stage::initial;
  if (day < season.mid_season) return Stage::development;
  if (day < season.late_season) return Stage::mid_season;
  if (day < season.over) return Stage::late_season;
  return crop.season == SeasonKind::perennial ? Stage::dormant : Stage::over;
}

double root_depth(const Crop& crop, const Planting& planting, const SeasonCalendar& season, Stage stage,
                  sys_days day) {
  const RootRange roots = root_range(crop, planting);
  if (stage == Stage::not_started) return roots.start_m;
  if (stage == Stage::no_stages)
    return between(roots.start_m, roots.full_m,
                   static_cast<double>((day - season.first).count()) / establishment_d);
  const bool first_season = season.first == sys_days{planting.start};
  if (!first_season) return roots.full_m;
  if (stage == Stage::initial) return roots.start_m;
  if (stage != Stage::development) return roots.full_m;
  const double length = static_cast<double>((season.mid_season - season.development).count());
  const double passed = static_cast<double>((day - season.development).count()) + 1;
  return between(roots.start_m, roots.full_m, passed / length);
}

bool woody(const Crop& crop) { return crop.group == CropGroup::fruit_tree || crop.group == CropGroup::berry; }

double height(const Crop& crop, const KcCurve& kcb_table, Stage stage, double day) {
  if (woody(crop) || stage == Stage::no_stages) return crop.height_max_m;
  if (stage == Stage::initial || stage == Stage::development)
    return std::min(1.0, kc_on_day(kcb_table, day) / kcb_table.mid) * crop.height_max_m;
  if (stage == Stage::dormant) return std::min(1.0, kcb_table.ini / kcb_table.mid) * crop.height_max_m;
  return crop.height_max_m;
}

KcCurve curve(const SeasonCalendar& season, double ini, double mid, double end) {
  const auto length = [](sys_days from, sys_days to) { return static_cast<double>((to - from).count()); };
  return {ini,
          mid,
          end,
          length(season.first, season.development),
          length(season.development, season.mid_season),
          length(season.mid_season, season.late_season),
          length(season.late_season, season.over)};
}

void bare_ground(GrowthDay& growth, const CropClimate& climate) {
  growth.basis = CropBasis::bare_soil;
  growth.kcb = 0;
  growth.height_m = 0;
  growth.cover_frac = 0;
  growth.kc_max = kc_max(0, climate, 0);
}

/// Which stage's straight line of eq. 66 the day lies on, from which coefficient to which.
struct CurvePiece {
  double passed_d, stage_d;
  double KcCurve::*from, KcCurve::*to;
};

CurvePiece piece_of_day(const KcCurve& curve, double day) {
  const double development = curve.l_ini_d, mid = development + curve.l_dev_d, late = mid + curve.l_mid_d;
  if (day <= development) return {0, curve.l_ini_d, &KcCurve::ini, &KcCurve::ini};
  if (day <= mid) return {development, curve.l_dev_d, &KcCurve::ini, &KcCurve::mid};
  if (day <= late) return {mid, curve.l_mid_d, &KcCurve::mid, &KcCurve::mid};
  return {late, curve.l_late_d, &KcCurve::mid, &KcCurve::end};
}

void tell_curves(GrowthDetail& detail, const KcCurve& kcb, const KcCurve& kc) {
  const CurvePiece piece = piece_of_day(kcb, detail.day_of_season);
  detail.passed_d = piece.passed_d;
  detail.stage_d = piece.stage_d;
  detail.kcb_prev = kcb.*piece.from;
  detail.kcb_next = kcb.*piece.to;
  detail.kc_prev = kc.*piece.from;
  detail.kc_next = kc.*piece.to;
}

void coefficients_of_day(GrowthDetail& detail, const Crop& crop, const Planting& planting) {
  GrowthDay& growth = detail.day;
  const SeasonCalendar& season = detail.calendar;
  const KcCurve table = curve(season, crop.kcb_ini, crop.kcb_mid, crop.kcb_end);
  const double day = std::max(1, growth.day_of_season);
  growth.height_m = height(crop, table, growth.stage, day);
  const auto adjusted = [&](double kc) { return adjusted_kc(kc, detail.climate, crop.height_max_m); };
  const double kc_ini = is_known(planting.kc_ini_by_wetting) ? planting.kc_ini_by_wetting : crop.kc_ini;
  const KcCurve kc = curve(season, kc_ini, adjusted(crop.kc_mid), adjusted(crop.kc_end));
  const KcCurve kcb = curve(season, crop.kcb_ini, adjusted(crop.kcb_mid), adjusted(crop.kcb_end));
  const auto on_day = [&](const KcCurve& one) {
    if (growth.stage == Stage::no_stages) return one.mid;
    if (growth.stage == Stage::dormant) return one.ini;
    return kc_on_day(one, day);
  };
  growth.kc = on_day(kc);
  growth.kcb = on_day(kcb);
  growth.kc_max = kc_max(growth.kcb, detail.climate, growth.height_m);
  growth.cover_frac = cover_frac(growth.kcb, growth.kc_max, growth.height_m);
  detail.height_max_m = crop.height_max_m;
  detail.kcb_mid_table = crop.kcb_mid;
  detail.kcb_end_table = crop.kcb_end;
  detail.kcb_mid = kcb.mid;
  detail.kcb_end = kcb.end;
  if (growth.stage == Stage::no_stages || growth.stage == Stage::dormant) return;
  detail.day_of_season = day;
  tell_curves(detail, kcb, kc);
}

void require_planting(const Crop& crop, const Planting& planting) {
  require_within("root_limit_m", planting.root_limit_m, 0.02, 10, "m");
  require_within("kc_ini_by_wetting", planting.kc_ini_by_wetting, 0, 1.4, "");
  require_within("landscape_coefficient", planting.landscape_coefficient, 0, 1.7, "");
  if (is_missing(planting.landscape_coefficient) || crop.basis == CropBasis::plant_factor) return;
  Problem problem;
  problem.field = "landscape_coefficient";
  problem.text = number_text(planting.landscape_coefficient);
  problem.message =
      std::string(crop.id) + " has coefficients by stage: a landscape coefficient would be a second one";
  problem.fix = "leave it out, or take an ornamental of the crop table";
  throw Error(std::move(problem));
}

}  // namespace

GrowthDetail growth_detail(const Crop& crop, const Planting& planting, std::chrono::year_month_day date,
                           const CropClimate& climate) {
  require_planting(crop, planting);
  const sys_days day{date};
  GrowthDetail detail;
  detail.climate = climate;
  detail.calendar = season_calendar(crop, planting, date);
  const SeasonCalendar& season = detail.calendar;
  GrowthDay& growth = detail.day;
  growth.date = date;
  growth.stage = stage_on(crop, season, day);
  growth.basis = crop.basis;
  growth.p_frac = crop.p_frac;
  growth.root_depth_m = root_depth(crop, planting, season, growth.stage, day);
  growth.season_length_d = static_cast<int>((season.over - season.first).count());
  if (growth.stage == Stage::not_started) {
    bare_ground(growth, climate);
    return detail;
  }
  growth.day_of_season = static_cast<int>((day - season.first).count()) + 1;
  growth.days_since_planting = static_cast<int>((day - sys_days{planting.start}).count());
  if (crop.basis == CropBasis::bare_soil) {
    bare_ground(growth, climate);
  } else if (crop.basis == CropBasis::plant_factor) {
    growth.kc = is_known(planting.landscape_coefficient) ? planting.landscape_coefficient : crop.kc_mid;
    growth.height_m = crop.height_max_m;
  } else {
    coefficients_of_day(detail, crop, planting);
  }
  return detail;
}

GrowthDay growth_day(const Crop& crop, const Planting& planting, std::chrono::year_month_day date,
                     const CropClimate& climate) {
  return growth_detail(crop, planting, date, climate).day;
}

std::vector<GrowthDay> growth_days(const Crop& crop, const Planting& planting,
                                   std::chrono::year_month_day first, std::size_t n_days,
                                   const CropClimate& climate) {
  std::vector<GrowthDay> out;
  out.reserve(n_days);
  for (std::size_t i = 0; i < n_days; ++i)
    out.push_back(
        growth_day(crop, planting, sys_days{first} + std::chrono::days{static_cast<int>(i)}, climate));
  return out;
}

std::string_view label(Stage stage) {
  switch (stage) {
    case Stage::not_started:
      return "not started";
    case Stage::initial:
      return "initial";
    case Stage::development:
      return "development";
    case Stage::mid_season:
      return "mid-season";
    case Stage::late_season:
      return "late season";
    case Stage::over:
      return "season over";
    case Stage::dormant:
      return "dormant";
    case Stage::no_stages:
      return "no stages";
  }
  return "";
}

}  // namespace v1
}  // namespace noonleaf
