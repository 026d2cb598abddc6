#pragma once

#include <array>
#include <string_view>

#include "noonleaf/crop/crop.hpp"
#include "noonleaf/crop/crop_rows_common.hpp"

// Plantings that a garden has beside vegetables and fruit: ornamentals by plant factor, cover crops, bare soil.
//
// Plant factors (ANSI/ASABE S623, from memory) are fractions of ET0 that keep an acceptable look; they hold all
// evaporation, so no soil evaporation is added. S623 has no heights, root depths or depletion fractions: those are
// ours (p = 0.5, the value that FAO-56 ch. 8 calls common). Cover crops: FAO-56, from memory.
namespace noonleaf {
inline namespace v1 {
namespace crop_rows {

// clang-format off: one row, one paragraph
inline constexpr std::string_view fao56_cover =
    "FAO Irrigation and Drainage Paper 56 (Allen et al. 1998), Tables 11, 12, 17, 22; from memory";

inline constexpr std::array<StageLengths, 3> winter_wheat_stages{{
    {months({12}), "December", "Calif., USA", 20, 60, 70, 30, Confidence::medium, "winter wheat row"},
    {months({11}), "November", "Mediterranean", 30, 140, 40, 30, Confidence::medium, "winter wheat row"},
    {months({10}), "October", "Idaho, USA", 160, 75, 75, 25, Confidence::medium, "winter wheat row"},
}};
inline constexpr std::array<StageLengths, 4> small_grain_stages{{
    {months({3, 4}), "March/Apr", "35-45 deg. latitude", 20, 25, 60, 30, Confidence::medium, "barley, oats, wheat row"},
    {months({4}), "April", "", 40, 30, 40, 20, Confidence::medium, "barley, oats, wheat row"},
    {months({11}), "Nov", "", 40, 60, 60, 40, Confidence::medium, "barley, oats, wheat row"},
    {months({12}), "Dec", "Calif. Desert, USA", 20, 50, 60, 30, Confidence::medium, "barley, oats, wheat row"},
}};
inline constexpr std::array<StageLengths, 1> clover_stages{{
    {0, "", "surrogate", 20, 35, 120, 20, Confidence::low, "ours: one sowing that is turned under or cut"},
}};

inline constexpr std::array<Crop, 19> ornamental_rows{{
    {.id = "annual_flowers", .name_en = "Annual flowers", .name_es = "flores anuales",
     .group = CropGroup::ornamental, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::either,
     .kc_ini = 0.8, .kc_mid = 0.8, .kc_end = 0.8, .height_max_m = 0.3,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.2, .root_depth_max_m = 0.4, .p_frac = 0.5,
     .confidence = Confidence::medium, .source = s623_factor,
     .note = "S623 class: annual flowers."},
    {.id = "perennials_dry_climate", .name_en = "Herbaceous perennials, dry climate", .name_es = "plantas perennes herbáceas, clima seco",
     .group = CropGroup::ornamental, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.5, .kc_mid = 0.5, .kc_end = 0.5, .height_max_m = 0.5,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.3, .root_depth_max_m = 0.6, .p_frac = 0.5,
     .confidence = Confidence::medium, .source = s623_factor,
     .note = "S623 class: herbaceous perennials, arid climate."},
    {.id = "perennials_humid_climate", .name_en = "Herbaceous perennials, humid climate", .name_es = "plantas perennes herbáceas, clima húmedo",
     .group = CropGroup::ornamental, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.7, .kc_mid = 0.7, .kc_end = 0.7, .height_max_m = 0.5,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.3, .root_depth_max_m = 0.6, .p_frac = 0.5,
     .confidence = Confidence::medium, .source = s623_factor,
     .note = "S623 class: herbaceous perennials, humid climate."},
    {.id = "shrubs_dry_climate", .name_en = "Trees, shrubs, vines, groundcovers, dry climate", .name_es = "árboles, arbustos, trepadoras y cubresuelos, clima seco",
     .group = CropGroup::ornamental, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.5, .kc_mid = 0.5, .kc_end = 0.5, .height_max_m = 1,
     .root_depth_start_m = 0.3, .root_depth_min_m = 0.4, .root_depth_max_m = 0.9, .p_frac = 0.5,
     .confidence = Confidence::medium, .source = s623_factor,
     .note = "S623 class: woody plants, arid climate."},
    {.id = "shrubs_humid_climate", .name_en = "Trees, shrubs, vines, groundcovers, humid climate", .name_es = "árboles, arbustos, trepadoras y cubresuelos, clima húmedo",
     .group = CropGroup::ornamental, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.7, .kc_mid = 0.7, .kc_end = 0.7, .height_max_m = 1,
     .root_depth_start_m = 0.3, .root_depth_min_m = 0.4, .root_depth_max_m = 0.9, .p_frac = 0.5,
     .confidence = Confidence::medium, .source = s623_factor,
     .note = "S623 class: woody plants, humid climate."},
    {.id = "desert_plants", .name_en = "Desert plants", .name_es = "plantas del desierto",
     .group = CropGroup::ornamental, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.3, .kc_mid = 0.3, .kc_end = 0.3, .height_max_m = 0.5,
     .root_depth_start_m = 0.3, .root_depth_min_m = 0.4, .root_depth_max_m = 0.9, .p_frac = 0.5,
     .confidence = Confidence::medium, .source = s623_factor,
     .note = "S623 class: desert plants."},
    {.id = "pollinator_dry_climate", .name_en = "Pollinator bed, dry climate", .name_es = "cantero para polinizadores, clima seco",
     .group = CropGroup::ornamental, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.5, .kc_mid = 0.5, .kc_end = 0.5, .height_max_m = 0.6,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.3, .root_depth_max_m = 0.6, .p_frac = 0.5,
     .surrogate = true, .confidence = Confidence::low, .source = s623_factor,
     .note = "S623 class of herbaceous perennials taken for a mixed flowering bed."},
    {.id = "pollinator_humid_climate", .name_en = "Pollinator bed, humid climate", .name_es = "cantero para polinizadores, clima húmedo",
     .group = CropGroup::ornamental, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.7, .kc_mid = 0.7, .kc_end = 0.7, .height_max_m = 0.6,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.3, .root_depth_max_m = 0.6, .p_frac = 0.5,
     .surrogate = true, .confidence = Confidence::low, .source = s623_factor,
     .note = "S623 class of herbaceous perennials taken for a mixed flowering bed."},
    {.id = "rosemary", .name_en = "Rosemary", .name_es = "romero",
     .group = CropGroup::herb, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.5, .kc_mid = 0.5, .kc_end = 0.5, .height_max_m = 0.5,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.3, .root_depth_max_m = 0.6, .p_frac = 0.5,
     .surrogate = true, .confidence = Confidence::low, .source = s623_factor,
     .note = "S623 class of woody and herbaceous perennials, arid climate, taken for a herb of dry hills."},
    {.id = "lavender", .name_en = "Lavender", .name_es = "lavanda",
     .group = CropGroup::herb, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.5, .kc_mid = 0.5, .kc_end = 0.5, .height_max_m = 0.5,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.3, .root_depth_max_m = 0.6, .p_frac = 0.5,
     .surrogate = true, .confidence = Confidence::low, .source = s623_factor,
     .note = "S623 class of woody and herbaceous perennials, arid climate, taken for a herb of dry hills."},
    {.id = "sage", .name_en = "Sage", .name_es = "salvia",
     .group = CropGroup::herb, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.5, .kc_mid = 0.5, .kc_end = 0.5, .height_max_m = 0.5,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.3, .root_depth_max_m = 0.6, .p_frac = 0.5,
     .surrogate = true, .confidence = Confidence::low, .source = s623_factor,
     .note = "S623 class of woody and herbaceous perennials, arid climate, taken for a herb of dry hills."},
    {.id = "thyme", .name_en = "Thyme", .name_es = "tomillo",
     .group = CropGroup::herb, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.5, .kc_mid = 0.5, .kc_end = 0.5, .height_max_m = 0.5,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.3, .root_depth_max_m = 0.6, .p_frac = 0.5,
     .surrogate = true, .confidence = Confidence::low, .source = s623_factor,
     .note = "S623 class of woody and herbaceous perennials, arid climate, taken for a herb of dry hills."},
    {.id = "oregano", .name_en = "Oregano", .name_es = "orégano",
     .group = CropGroup::herb, .basis = CropBasis::plant_factor, .season = SeasonKind::year_round, .usual_start = UsualStart::planted,
     .kc_ini = 0.5, .kc_mid = 0.5, .kc_end = 0.5, .height_max_m = 0.5,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.3, .root_depth_max_m = 0.6, .p_frac = 0.5,
     .surrogate = true, .confidence = Confidence::low, .source = s623_factor,
     .note = "S623 class of woody and herbaceous perennials, arid climate, taken for a herb of dry hills."},
    {.id = "cover_rye", .name_en = "Winter rye (cover crop)", .name_es = "centeno de invierno (abono verde)",
     .group = CropGroup::cover_crop, .season = SeasonKind::annual, .usual_start = UsualStart::sown,
     .kc_ini = 0.4, .kc_mid = 1.15, .kc_end = 0.4, .kcb_ini = 0.15, .kcb_mid = 1.1, .kcb_end = 0.3, .height_max_m = 1,
     .root_depth_start_m = 0.15, .root_depth_min_m = 1.5, .root_depth_max_m = 1.8, .p_frac = 0.55,
     .stages = winter_wheat_stages,
     .surrogate = true, .confidence = Confidence::low, .source = fao56_cover,
     .note = "Surrogate: winter wheat. Killed green: give the end as an observed stage."},
    {.id = "cover_oats", .name_en = "Oats (cover crop)", .name_es = "avena (abono verde)",
     .group = CropGroup::cover_crop, .season = SeasonKind::annual, .usual_start = UsualStart::sown,
     .kc_ini = 0.3, .kc_mid = 1.15, .kc_end = 0.25, .kcb_ini = 0.15, .kcb_mid = 1.1, .kcb_end = 0.15, .height_max_m = 1,
     .root_depth_start_m = 0.15, .root_depth_min_m = 1, .root_depth_max_m = 1.5, .p_frac = 0.55,
     .stages = small_grain_stages,
     .confidence = Confidence::medium, .source = fao56_cover,
     .note = "FAO-56 row Oats. Killed green: give the end as an observed stage."},
    {.id = "cover_buckwheat", .name_en = "Buckwheat (cover crop)", .name_es = "alforfón (abono verde)",
     .group = CropGroup::cover_crop, .season = SeasonKind::annual, .usual_start = UsualStart::sown,
     .kc_ini = 0.3, .kc_mid = 1.15, .kc_end = 0.25, .kcb_ini = 0.15, .kcb_mid = 1.1, .kcb_end = 0.15, .height_max_m = 0.6,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.6, .root_depth_max_m = 1, .p_frac = 0.5,
     .stages = clover_stages,
     .surrogate = true, .confidence = Confidence::low, .source = fao56_cover,
     .note = "Surrogate: oats; height, roots, p and stages are ours."},
    {.id = "cover_clover", .name_en = "Clover (cover crop)", .name_es = "trébol (abono verde)",
     .group = CropGroup::cover_crop, .season = SeasonKind::annual, .usual_start = UsualStart::sown,
     .kc_ini = 0.4, .kc_mid = 0.9, .kc_end = 0.85, .kcb_ini = 0.3, .kcb_mid = 0.85, .kcb_end = 0.8, .height_max_m = 0.6,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.6, .root_depth_max_m = 0.9, .p_frac = 0.5,
     .stages = clover_stages,
     .confidence = Confidence::medium, .source = fao56_cover,
     .note = "FAO-56 row Clover hay, Berseem, averaged over cuttings."},
    {.id = "cover_vetch", .name_en = "Vetch (cover crop)", .name_es = "veza (abono verde)",
     .group = CropGroup::cover_crop, .season = SeasonKind::annual, .usual_start = UsualStart::sown,
     .kc_ini = 0.4, .kc_mid = 0.9, .kc_end = 0.85, .kcb_ini = 0.3, .kcb_mid = 0.85, .kcb_end = 0.8, .height_max_m = 0.5,
     .root_depth_start_m = 0.15, .root_depth_min_m = 0.6, .root_depth_max_m = 0.9, .p_frac = 0.5,
     .stages = clover_stages,
     .surrogate = true, .confidence = Confidence::low, .source = fao56_cover,
     .note = "Surrogate: clover, a leafy legume."},
    {.id = "bare_soil", .name_en = "Bare soil", .name_es = "suelo desnudo",
     .group = CropGroup::bare_soil, .basis = CropBasis::bare_soil, .season = SeasonKind::year_round, .usual_start = UsualStart::either,
     .kcb_ini = 0, .kcb_mid = 0, .kcb_end = 0, .height_max_m = 0,
     .root_depth_start_m = 0.1, .root_depth_min_m = 0.1, .root_depth_max_m = 0.1, .p_frac = 0.5,
     .confidence = Confidence::high, .source = "FAO-56 ch. 7: no transpiration; evaporation from the top layer only",
     .note = "The root zone of bare soil is the top layer; p does not matter, since nothing transpires."},
}};
// clang-format on

}  // namespace crop_rows
}  // namespace v1
}  // namespace noonleaf
