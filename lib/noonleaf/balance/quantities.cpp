#include "noonleaf/balance/quantities.hpp"

#include <array>

namespace noonleaf {
inline namespace v1 {
namespace {

using D = BalanceDetail;

// Which rows a day needs.
bool dual(const D& d) { return is_known(d.kcb); }
bool single(const D& d) { return !dual(d); }
bool two_parts(const D& d) { return dual(d) && d.few_rain > 0; }
bool one_part(const D& d) { return dual(d) && !two_parts(d); }
bool mulched(const D& d) { return dual(d) && d.evaporation_factor != 1; }
bool one_bare_part(const D& d) { return one_part(d) && !mulched(d); }
bool one_mulched_part(const D& d) { return one_part(d) && mulched(d); }
bool two_bare_parts(const D& d) { return two_parts(d) && !mulched(d); }
bool two_mulched_parts(const D& d) { return two_parts(d) && mulched(d); }
bool runs_off(const D& d) { return is_known(d.curve_number); }
bool runs_off_not(const D& d) { return !runs_off(d); }
bool corrected(const D& d) { return d.correction_mm != 0; }
bool amended(const D& d) { return d.amended_mm != 0; }
bool has_climate(const D& d) { return dual(d) && is_known(d.u2_m_s) && is_known(d.rh_min_pct); }
bool open_emitters(const D& d) { return dual(d) && d.few == (1 - d.fc < d.fw ? 1 - d.fc : d.fw); }
bool shaded_emitters(const D& d) { return dual(d) && !open_emitters(d); }
bool salty(const D& d) { return d.salt_stress != 1; }
bool salty_not(const D& d) { return !salty(d); }
bool top_roots(const D& d) { return dual(d) && d.top_transpiration_mm > 0; }
bool dual_with_demand(const D& d) { return dual(d) && d.et0_mm_d > 0; }

/// What the surface was asked for, before the root zone had its say.
double asked_evaporation(const D& d) { return d.etc_mm_d - d.kcb * d.et0_mm_d; }
bool evaporation_cut(const D& d) { return dual(d) && d.evaporation_mm < asked_evaporation(d) - 1e-9; }

// clang-format off: one row, two lines
constexpr std::array<BalanceQuantity, 71> rows{{
    {[](const D& d) { return d.et0_mm_d; }, "et0_mm_d", "ET0", "mm/d", "", "FAO-56 eq. 6",
     "reference evapotranspiration: what short grass would use"},
    {[](const D& d) { return d.field_capacity_m3_m3; }, "field_capacity_m3_m3", "FC", "m3/m3", "", "the soil",
     "water content at field capacity"},
    {[](const D& d) { return d.wilting_point_m3_m3; }, "wilting_point_m3_m3", "WP", "m3/m3", "", "the soil",
     "water content at the wilting point"},
    {[](const D& d) { return d.growth.root_depth_m; }, "growth.root_depth_m", "Zr", "m", "",
     "linear over the development stage, FAO-56 annex 8", "depth of the root zone"},
    {[](const D& d) { return d.start.dr_mm; }, "start.dr_mm", "Dr,i-1", "mm", "", "the day before",
     "depletion of the root zone, as the day before left it"},
    {[](const D& d) { return d.start.lower_mm; }, "start.lower_mm", "Dl,i-1", "mm", "", "the day before",
     "depletion of the soil below the roots, as the day before left it"},
    {[](const D& d) { return d.start.de_mm; }, "start.de_mm", "De,i-1", "mm", "", "the day before",
     "depletion of the surface, as the day before left it", dual},
    {[](const D& d) { return d.start.de_rain_mm; }, "start.de_rain_mm", "De,p,i-1", "mm", "",
     "the day before", "the same where only rain wets it", two_parts},
    {[](const D& d) { return d.correction_mm; }, "correction_mm", "", "mm", "", "noonleaf",
     "change by an observation this morning; Dr,i-1 has it already", corrected},
    {[](const D& d) { return d.amended_mm; }, "amended_mm", "", "mm", "", "noonleaf",
     "change by telling the same water for the amended soil; Dr,i-1 has it already", amended},
    {[](const D& d) { return d.root_gain_mm; }, "root_gain_mm", "dDr", "mm", "", "noonleaf",
     "depletion that came with newly rooted soil, out of the layer below"},
    {[](const D& d) { return d.rain_mm; }, "rain_mm", "P", "mm", "", "gauge, else station",
     "rain on the bed"},
    {[](const D& d) { return d.curve_number; }, "curve_number", "CN", "", "",
     "Hawkins et al. 1985; Allen et al. 2007", "curve number, between CN III (wet) and CN I (dry) by De",
     runs_off},
    {[](const D& d) { return 25400 / d.curve_number - 254; }, "", "S", "mm", "25400 / CN - 254",
     "TR-55 eq. 2-4", "what the ground could hold back", runs_off},
    {[](const D& d) { return d.runoff_mm; }, "runoff_mm", "RO", "mm", "max(0, P - 0.2 S)^2 / (P + 0.8 S)",
     "TR-55 eq. 2-3", "rain that runs off", runs_off},
    {[](const D& d) { return d.runoff_mm; }, "runoff_mm", "RO", "mm", "",
     "none in a framed bed, without rain or without a texture", "rain that runs off", runs_off_not},
    {[](const D& d) { return d.irrigation_mm - d.evening_irrigation_mm; }, "irrigation_mm", "I", "mm", "",
     "minutes run times the rate in the bed", "irrigation before the day's demand, mean infiltrated depth"},
    {[](const D& d) { return d.evening_irrigation_mm; }, "evening_irrigation_mm", "Ie", "mm", "",
     "minutes run from 18:00 on", "irrigation after the day's demand: it wets tomorrow's surface"},
    {[](const D& d) { return d.kcb; }, "kcb", "Kcb", "", "", "FAO-56 eq. 66, 70", "basal crop coefficient",
     dual},
    {[](const D& d) {
       return climate_term({d.u2_m_s, d.rh_min_pct}, d.growth.height_m).u2_m_s;
     },
     "u2_m_s", "u2", "m/s", "", "of the day, 1 to 6", "wind at 2 m", has_climate},
    {[](const D& d) {
       return climate_term({d.u2_m_s, d.rh_min_pct}, d.growth.height_m).rh_min_pct;
     },
     "rh_min_pct", "RHmin", "%", "", "of the day, 20 to 80", "lowest humidity", has_climate},
    {[](const D& d) { return d.growth.height_m; }, "growth.height_m", "h", "m", "", "FAO-56 annex 8",
     "height of the plants", dual},
    {[](const D& d) { return d.kc_max; }, "kc_max", "Kc max", "",
     "max(1.2 + (0.04 (u2 - 2) - 0.004 (RHmin - 45)) (h / 3)^0.3, Kcb + 0.05)", "FAO-56 eq. 72",
     "upper limit of evaporation and transpiration, for this day's air", dual},
    {[](const D& d) { return d.fc; }, "fc", "fc", "", "", "FAO-56 eq. 76", "share of the ground under leaves",
     dual},
    {[](const D& d) { return d.fw; }, "fw", "fw", "", "", "FAO-56 Table 20",
     "share of the ground that irrigation wets", dual},
    {[](const D& d) { return d.few; }, "few", "few", "", "min(1 - fc, fw)", "FAO-56 eq. 75",
     "share of the ground that is exposed and wetted by irrigation", open_emitters},
    {[](const D& d) { return d.few; }, "few", "few", "", "min(1 - fc, (1 - 0.67 fc) fw)",
     "FAO-56 eq. 75, text below: drip under the leaves",
     "share of the ground that is exposed and wetted by irrigation", shaded_emitters},
    {[](const D& d) { return d.few_rain; }, "few_rain", "few,p", "", "1 - fc - few", "Allen et al. 2005",
     "share of the ground that is exposed and wetted by rain only", two_parts},
    {[](const D& d) { return d.evaporation_depth_m; }, "evaporation_depth_m", "Ze", "m", "",
     "FAO-56 ch. 7: 0.10 to 0.15", "depth of the layer that evaporation dries", dual},
    {[](const D& d) { return d.tew_mm; }, "tew_mm", "TEW", "mm", "1000 (FC - 0.5 WP) Ze", "FAO-56 eq. 73",
     "total evaporable water of the top layer", dual},
    {[](const D& d) { return d.rew_mm; }, "rew_mm", "REW", "mm", "", "FAO-56 Table 19, or by texture",
     "readily evaporable water of the top layer", dual},
    {[](const D& d) { return d.de_wet_mm; }, "de_wet_mm", "De", "mm", "max(0, De,i-1 - (P - RO) - I / fw)",
     "FAO-56 eq. 77", "surface depletion after the morning's water", dual},
    {[](const D& d) { return d.de_rain_wet_mm; }, "de_rain_wet_mm", "De,p", "mm",
     "max(0, De,p,i-1 - (P - RO))", "FAO-56 eq. 77", "the same where only rain wets it", two_parts},
    {[](const D& d) { return d.kr; }, "kr", "Kr", "", "max(0, min(1, (TEW - De) / (TEW - REW)))",
     "FAO-56 eq. 74", "evaporation reduction coefficient", dual},
    {[](const D& d) { return d.kr_rain; }, "kr_rain", "Kr,p", "",
     "max(0, min(1, (TEW - De,p) / (TEW - REW)))", "FAO-56 eq. 74", "the same where only rain wets it",
     two_parts},
    {[](const D& d) { return d.energy_share; }, "energy_share", "W", "",
     "1 / (1 + few,p / few max(0.001, TEW - De,p) / max(0.001, TEW - De))", "Allen et al. 2005",
     "share of the energy for the irrigated part", two_parts},
    {[](const D& d) { return d.ke_irrigated; }, "ke_irrigated", "Ke", "",
     "min(Kr (Kc max - Kcb), few Kc max)", "FAO-56 eq. 71", "soil evaporation coefficient", one_part},
    {[](const D& d) { return d.ke_irrigated; }, "ke_irrigated", "Ke", "",
     "min(Kr W (Kc max - Kcb), few Kc max)", "FAO-56 eq. 71; Allen et al. 2005",
     "soil evaporation coefficient of the irrigated part", two_parts},
    {[](const D& d) { return d.ke_rain; }, "ke_rain", "Ke,p", "",
     "min(Kr,p (1 - W) (Kc max - Kcb), few,p Kc max)", "FAO-56 eq. 71; Allen et al. 2005",
     "soil evaporation coefficient of the part that only rain wets", two_parts},
    {[](const D& d) { return d.evaporation_factor; }, "evaporation_factor", "fm", "", "",
     "FAO-56 ch. 10: 1 - 0.5 x covered by straw or leaves, 1 - covered by film",
     "what mulch leaves of the evaporation", mulched},
    {[](const D& d) { return asked_evaporation(d); }, "", "E", "mm", "min(Ke ET0, few (TEW - De))",
     "FAO-56 eq. 80", "evaporation, never more than the surface holds", one_bare_part},
    {[](const D& d) { return asked_evaporation(d); }, "", "E", "mm", "min(fm Ke ET0, few (TEW - De))",
     "FAO-56 eq. 80, ch. 10", "evaporation, never more than the surface holds", one_mulched_part},
    {[](const D& d) { return asked_evaporation(d); }, "", "E", "mm",
     "min(Ke ET0, few (TEW - De)) + min(Ke,p ET0, few,p (TEW - De,p))", "FAO-56 eq. 80",
     "evaporation, never more than the surface holds", two_bare_parts},
    {[](const D& d) { return asked_evaporation(d); }, "", "E", "mm",
     "min(fm Ke ET0, few (TEW - De)) + min(fm Ke,p ET0, few,p (TEW - De,p))", "FAO-56 eq. 80, ch. 10",
     "evaporation, never more than the surface holds", two_mulched_parts},
    {[](const D& d) { return d.etc_mm_d; }, "etc_mm_d", "ETc", "mm/d", "Kcb ET0 + E", "FAO-56 eq. 69",
     "crop evapotranspiration without stress", dual},
    {[](const D& d) { return d.kc; }, "kc", "Kc", "", "", "FAO-56 eq. 58, 66; or the plant factor",
     "crop coefficient, soil evaporation in it", single},
    {[](const D& d) { return d.etc_mm_d; }, "etc_mm_d", "ETc", "mm/d", "Kc ET0", "FAO-56 eq. 58",
     "crop evapotranspiration without stress", single},
    {[](const D& d) { return d.taw_mm; }, "taw_mm", "TAW", "mm", "1000 (FC - WP) Zr", "FAO-56 eq. 82",
     "total available water of the root zone"},
    {[](const D& d) { return d.growth.p_frac; }, "growth.p_frac", "p(Tab)", "", "", "FAO-56 Table 22",
     "share of TAW used before stress, at ETc 5 mm/d"},
    {[](const D& d) { return d.p_frac; }, "p_frac", "p", "", "max(0.1, min(0.8, p(Tab) + 0.04 (5 - ETc)))",
     "FAO-56 Table 22 footnote 2", "the same for this day's demand"},
    {[](const D& d) { return d.raw_mm; }, "raw_mm", "RAW", "mm", "p TAW", "FAO-56 eq. 83",
     "readily available water"},
    {[](const D& d) { return d.dr_wet_mm; }, "dr_wet_mm", "Dr", "mm", "max(0, Dr,i-1 + dDr - (P - RO) - I)",
     "FAO-56 eq. 85", "root-zone depletion after the morning's water"},
    {[](const D& d) { return d.salt_stress; }, "salt_stress", "Ks,salt", "", "", "FAO-56 eq. 90",
     "what salt leaves of the uptake", salty},
    {[](const D& d) { return d.ks; }, "ks", "Ks", "", "max(0, min(1, (TAW - Dr) / (TAW - RAW)))",
     "FAO-56 eq. 84", "water stress coefficient", salty_not},
    {[](const D& d) { return d.ks; }, "ks", "Ks", "", "Ks,salt max(0, min(1, (TAW - Dr) / (TAW - RAW)))",
     "FAO-56 eq. 84, 92", "stress coefficient for water and salt", salty},
    {[](const D& d) { return d.transpiration_mm; }, "transpiration_mm", "T", "mm", "Ks Kcb ET0",
     "FAO-56 eq. 80", "transpiration", dual},
    {[](const D& d) { return d.transpiration_mm; }, "transpiration_mm", "T", "mm", "Ks Kc ET0",
     "FAO-56 eq. 81", "evapotranspiration as it came about", single},
    {[](const D& d) { return d.evaporation_mm; }, "evaporation_mm", "E", "mm", "",
     "FAO-56 eq. 80; limited by the root zone", "evaporation that the root zone could give", evaporation_cut},
    {[](const D& d) { return d.etc_adj_mm_d; }, "etc_adj_mm_d", "ETc adj", "mm/d", "T + E", "FAO-56 eq. 80",
     "evapotranspiration as it came about", dual},
    {[](const D& d) { return d.etc_adj_mm_d; }, "etc_adj_mm_d", "ETc adj", "mm/d", "T", "FAO-56 eq. 81",
     "evapotranspiration as it came about", single},
    {[](const D& d) { return d.ke; }, "ke", "Ke,act", "", "E / ET0", "FAO-56 eq. 69",
     "soil evaporation coefficient as it came about", dual_with_demand},
    {[](const D& d) { return d.kc; }, "kc", "Kc", "", "Kcb + Ke,act", "FAO-56 eq. 69",
     "crop coefficient without stress", dual_with_demand},
    {[](const D& d) { return d.top_transpiration_mm; }, "top_transpiration_mm", "Tew", "mm", "",
     "Allen et al. 2005", "transpiration out of the top layer", top_roots},
    {[](const D& d) { return d.dpe_mm; }, "dpe_mm", "DPe", "mm", "max(0, (P - RO) + I / fw - De,i-1)",
     "FAO-56 eq. 79", "water that passes below the top layer", dual},
    {[](const D& d) { return d.de_tied_mm; }, "de_tied_mm", "dDe", "mm", "", "noonleaf",
     "change of De that makes it agree with Dr; no water moves", dual},
    {[](const D& d) { return d.end.de_mm; }, "end.de_mm", "De", "mm",
     "De,i-1 - (P - RO) - I / fw + E / few + DPe + dDe", "FAO-56 eq. 77",
     "surface depletion at the close of the day", dual},
    {[](const D& d) { return d.dp_mm; }, "dp_mm", "DP", "mm",
     "max(0, (P - RO) + I + Ie - ETc adj - Dr,i-1 - dDr)", "FAO-56 eq. 88",
     "water that passes below the roots"},
    {[](const D& d) { return d.end.dr_mm; }, "end.dr_mm", "Dr", "mm",
     "Dr,i-1 + dDr - (P - RO) - I - Ie + ETc adj + DP", "FAO-56 eq. 85",
     "root-zone depletion at the close of the day"},
    {[](const D& d) { return d.end.lower_mm; }, "end.lower_mm", "Dl", "mm", "max(0, Dl,i-1 - dDr - DP)",
     "noonleaf", "depletion below the roots at the close of the day"},
    {[](const D& d) { return d.drainage_mm; }, "drainage_mm", "Q", "mm", "max(0, DP - Dl,i-1 + dDr)",
     "noonleaf", "water lost below the deepest roots"},
    {[](const D& d) { return d.closure_mm; }, "closure_mm", "", "mm",
     "P - RO + I + Ie - ETc adj - Q - (Dr,i-1 + Dl,i-1) + Dr + Dl", "noonleaf",
     "what is left when all water is added up"},
}};
// clang-format on

}  // namespace

std::span<const BalanceQuantity> balance_quantities() { return rows; }

}  // namespace v1
}  // namespace noonleaf
