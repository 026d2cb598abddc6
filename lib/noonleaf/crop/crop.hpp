#pragma once

#include <chrono>
#include <cstdint>
#include <span>
#include <string_view>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// How far a table row may be trusted.
enum class Confidence { high, medium, low };

/// The crop groups of FAO-56 Tables 11, 12, 17 and 22, and those that a garden adds.
enum class CropGroup {
  small_vegetable,
  solanum,
  cucumber,
  root_tuber,
  legume,
  perennial_vegetable,
  herb,
  fibre,
  oil,
  cereal,
  turf,
  berry,
  fruit_tree,
  ornamental,
  cover_crop,
  bare_soil
};

/// What a row's coefficients mean.
enum class CropBasis {
  kc_curve,      ///< Kc and Kcb by stage: FAO-56 eq. 66; the dual balance adds soil evaporation
  plant_factor,  ///< one factor on ET0 that already holds all evaporation: never add soil evaporation
  bare_soil      ///< no plant: soil evaporation only
};

/// How a season is dated.
enum class SeasonKind {
  annual,     ///< one season, counted from sowing or transplanting
  perennial,  ///< a season every year, counted from the calendar day on which growth starts
  year_round  ///< no stages: the same coefficients on every day
};

/// The usual way to start the crop, as a hint to the person; both ways are accepted.
enum class UsualStart { sown, transplanted, either, planted };

/// Lengths of the four growth stages in one region and planting season (FAO-56 Table 11).
struct StageLengths {
  std::uint16_t months = 0;    ///< bit 0 = January: the planting months printed; 0 = none printed
  std::string_view planted{};  ///< planting period as printed
  std::string_view region{};   ///< region as printed
  int l_ini_d = 0;             ///< length of the initial stage, as printed
  int l_dev_d = 0;             ///< of the development
  int l_mid_d = 0;             ///< of the mid-season
  int l_late_d = 0;            ///< of the late season
  Confidence confidence = Confidence::low;  ///< in this row
  std::string_view note{};                  ///< doubts and choices; empty = none
};

/// One row of the crop table. Kc and Kcb are the printed ones: sub-humid climate, RHmin about 45 %, u2
/// about 2 m/s. Kc is missing where a source gives none (bare soil).
struct Crop {
  std::string_view id{};                         ///< "pepper_sweet": what a garden file says
  std::string_view name_en{};                    ///< for people
  std::string_view name_es{};                    ///< for people, in Spanish
  CropGroup group = CropGroup::small_vegetable;  ///< FAO-56 groups; decides the turgor loss of its leaves
  CropBasis basis = CropBasis::kc_curve;         ///< which coefficient it has
  SeasonKind season = SeasonKind::annual;        ///< how its stages are dated
  UsualStart usual_start = UsualStart::either;   ///< a hint alone
  double kc_ini = missing;                       ///< FAO-56 Table 12
  double kc_mid = missing;                       ///< FAO-56 Table 12
  double kc_end = missing;                       ///< FAO-56 Table 12
  double kcb_ini = missing;                      ///< FAO-56 Table 17
  double kcb_mid = missing;                      ///< FAO-56 Table 17
  double kcb_end = missing;                      ///< FAO-56 Table 17
  double height_max_m = missing;                 ///< FAO-56 Table 12
  double root_depth_start_m = missing;           ///< at sowing, transplanting: ours
  double root_depth_min_m = missing;             ///< least full depth, Table 22: irrigated
  double root_depth_max_m = missing;             ///< greatest full depth, Table 22: rainfed
  double p_frac = missing;                       ///< Table 22, at ETc = 5 mm/d
  double ece_threshold_ds_m = missing;           ///< FAO-56 Table 23: salt that costs nothing yet
  double yield_loss_pct_m_ds = missing;          ///< FAO-56 Table 23: loss per dS/m above it
  double ky = missing;                           ///< FAO-56 Table 24
  std::chrono::month_day season_start{};    ///< perennials, northern mid-latitudes: start of growth, ours
  std::span<const StageLengths> stages{};   ///< empty where season is year_round
  bool surrogate = false;                   ///< coefficients of another crop, named in `note`
  Confidence confidence = Confidence::low;  ///< in the numbers of this row
  std::string_view source{};                ///< publication, tables, provenance
  std::string_view note{};                  ///< doubts, choices within printed ranges, footnotes
};

/// "small vegetables", for people.
std::string_view label(CropGroup group);
/// "high", "medium", "low".
std::string_view label(Confidence confidence);

}  // namespace v1
}  // namespace noonleaf
