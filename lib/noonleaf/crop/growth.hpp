#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "noonleaf/crop/coefficients.hpp"
#include "noonleaf/crop/crop.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Where a planting stands in its season.
enum class Stage { not_started, initial, development, mid_season, late_season, over, dormant, no_stages };

/// "mid-season", for people.
std::string_view label(Stage stage);

/// How the planting began.
enum class PlantingStart { sown, transplanted };

/// Which end of the printed range of root depths to use. FAO-56 Table 22, footnote 1: the smaller for
/// irrigation scheduling, the larger for modelling stress or rain-fed crops.
enum class RootingDepth { irrigated, rainfed };

/// First days of stages that somebody saw; empty = as the table has it.
struct ObservedStages {
  std::optional<std::chrono::year_month_day> development;  ///< ground cover passes about 10 %
  std::optional<std::chrono::year_month_day> mid_season;   ///< full cover, or flowering
  std::optional<std::chrono::year_month_day> late_season;  ///< leaves begin to yellow, fruit to ripen
  std::optional<std::chrono::year_month_day> over;         ///< harvest done, leaves dropped
};

/// One crop in the ground.
struct Planting {
  std::chrono::year_month_day start{};         ///< sown, transplanted or, for a perennial, planted
  PlantingStart method = PlantingStart::sown;  ///< decides the length of the initial stage
  ObservedStages observed{};                   ///< of the season that the date asked for lies in
  std::string region{};  ///< words of a StageLengths region; empty = the row planted nearest in the year
  /// which end of the printed range of root depths it gets
  RootingDepth rooting = RootingDepth::irrigated;
  double root_limit_m = missing;                         ///< raised bed, hardpan: roots go no deeper
  std::optional<std::chrono::month_day> season_start{};  ///< perennials: overrides the crop row's
  double kc_ini_by_wetting = missing;      ///< kc_ini_of_wetting, in place of the table's single Kc ini
  double landscape_coefficient = missing;  ///< in place of a plant factor, never multiplied by it
};

/// The calendar of one season.
struct SeasonCalendar {
  std::chrono::sys_days first;            ///< day 1 of the season
  std::chrono::sys_days development;      ///< first day of the development
  std::chrono::sys_days mid_season;       ///< first day of the mid-season
  std::chrono::sys_days late_season;      ///< first day of the late season
  std::chrono::sys_days over;             ///< first day after the season
  const StageLengths* lengths = nullptr;  ///< the table row it was made from; null = no stages
  bool initial_is_halved = false;         ///< for a transplant, where its end was not seen
  bool stages_were_seen = false;          ///< some boundary is one that was seen in this season
};

/// A crop on a day: what the balance needs to know of the plant.
struct GrowthDay {
  std::chrono::year_month_day date{};      ///< the day
  Stage stage = Stage::not_started;        ///< where in its season it is
  CropBasis basis = CropBasis::bare_soil;  ///< bare_soil while nothing grows
  int day_of_season = 0;                   ///< 1 on the first day; 0 = none
  int days_since_planting = 0;             ///< 0 on the day and before; plant factors hold after about a year
  int season_length_d = 0;                 ///< 0 = no stages
  double kc = missing;            ///< single coefficient, adjusted to the climate; or the plant factor
  double kcb = missing;           ///< basal coefficient, adjusted to the climate
  double kc_max = missing;        ///< eq. 72
  double height_m = missing;      ///< of the crop on that day
  double cover_frac = missing;    ///< fc, eq. 76
  double root_depth_m = missing;  ///< Zr on that day
  double p_frac = missing;        ///< Table 22, not yet adjusted for the day's ETc
};

/// How the coefficients of a day came about: what growth_quantities explains.
struct GrowthDetail {
  GrowthDay day{};                 ///< the result
  SeasonCalendar calendar{};       ///< the season that the day lies in
  CropClimate climate{};           ///< as given: of the season
  double height_max_m = missing;   ///< in the climate term
  double kcb_mid_table = missing;  ///< as printed
  double kcb_end_table = missing;  ///< as printed
  double kcb_mid = missing;        ///< adjusted to the climate
  double kcb_end = missing;        ///< adjusted to the climate
  double day_of_season = missing;  ///< i
  double passed_d = missing;       ///< days of the stages before this one
  double stage_d = missing;        ///< length of this stage
  double kcb_prev = missing;       ///< Kcb at the end of the stage before
  double kcb_next = missing;       ///< Kcb at the beginning of the stage after
  double kc_prev = missing;        ///< the same for the single coefficient
  double kc_next = missing;        ///< the same for the single coefficient
};

/// The calendar of the season that holds a date, or of the next one before the start.
///
/// Method    Lengths of the row chosen by region, else of the row whose printed planting months lie nearest
///           to the start (months are compared as printed: northern mid-latitudes).
///           Transplanted: the initial stage is halved and rounded up to a day, since a transplant brings
///           the leaves that the first half of that stage is spent on (our rule, not a published one).
///           Observed stages: an observed first day is kept; stages between two known days keep the
///           proportions of the table; stages after the last known day keep the table's lengths (ours).
///           Perennials: the first season starts on the day of planting, every later one on the calendar
///           day `season_start`; between `over` and the next start the plant is dormant.
/// Throws    Error, field "start" when no date; "region" naming the nearest; "stage" when observed days are
///           out of order or before the start
SeasonCalendar season_calendar(const Crop& crop, const Planting& planting, std::chrono::year_month_day date);

/// The crop on a date.
///
/// Kc, Kcb   eq. 66 between the table's values adjusted to the climate (eq. 62, 65, 70)
/// Height    height_max Kcb / Kcb mid (of the table), never less than on an earlier day: FAO-56 annex 8
/// Roots     from root_depth_start to the full depth over the development stage, linear: the same whether
///           counted in days or in Kcb, since eq. 66 is linear there (FAO-56 annex 8); then constant.
///           A perennial after its first season has its full depth.
/// Before    not_started: bare soil (Kcb 0, root zone = root_depth_start)
/// After     over: the end values are held and the stage says so. Perennials: dormant, with the initial
///           coefficients (the source gives none for dormancy) and the full root depth.
/// Missing   climate NaN gives NaN coefficients in mid and late season
/// Throws    as season_calendar and climate_term; field "landscape_coefficient" where the crop has
///           coefficients by stage
/// Example   growth_day(find_crop("tomato"), {.start = 2024y/April/15}, 2024y/June/30, {}).kcb == 1.10
GrowthDay growth_day(const Crop& crop, const Planting& planting, std::chrono::year_month_day date,
                     const CropClimate& climate);

/// The same with all that it was made from.
GrowthDetail growth_detail(const Crop& crop, const Planting& planting, std::chrono::year_month_day date,
                           const CropClimate& climate);

/// Consecutive days from `first`, one climate for all.
std::vector<GrowthDay> growth_days(const Crop& crop, const Planting& planting,
                                   std::chrono::year_month_day first, std::size_t n_days,
                                   const CropClimate& climate);

/// The start of a perennial's growth at a latitude: the row's day, shifted by half a year in the south.
std::chrono::month_day season_start_at(const Crop& crop, double latitude_deg);

}  // namespace v1
}  // namespace noonleaf
