#include "noonleaf/crop/growth_quantities.hpp"

#include <array>

namespace noonleaf {
inline namespace v1 {
namespace {

bool has_curve(const GrowthDetail& d) { return is_known(d.kcb_mid); }

/// Wind and humidity as the climate term used them, within the limits of the source.
ClimateTerm used_climate(const GrowthDetail& d) {
  return has_curve(d) ? climate_term(d.climate, d.height_max_m) : ClimateTerm{};
}

constexpr auto dual = GrowthQuantity::Coefficient::dual, single = GrowthQuantity::Coefficient::single;
constexpr std::string_view climate_form = "FAO-56 eq. 70; only for a table value of 0.45 or more";

// clang-format off: one row, two lines
constexpr std::array<GrowthQuantity, 22> rows{{
    {[](const GrowthDetail& d) { return used_climate(d).u2_m_s; }, "u2", "m/s", "",
     "mean of the season's days, 1 to 6", "wind at 2 m over the season"},
    {[](const GrowthDetail& d) { return used_climate(d).rh_min_pct; }, "RHmin", "%", "",
     "mean of the season's days, 20 to 80", "lowest humidity of the day over the season"},
    {[](const GrowthDetail& d) { return d.height_max_m; }, "h max", "m", "", "FAO-56 Table 12",
     "height when grown"},
    {[](const GrowthDetail& d) { return d.kcb_mid_table; }, "Kcb mid(Tab)", "", "", "FAO-56 Table 17",
     "mid-season, as printed"},
    {[](const GrowthDetail& d) { return d.kcb_mid; }, "Kcb mid", "",
     "Kcb mid(Tab) + (0.04 (u2 - 2) - 0.004 (RHmin - 45)) (h max / 3)^0.3", climate_form,
     "mid-season, in this climate"},
    {[](const GrowthDetail& d) { return d.kcb_end_table; }, "Kcb end(Tab)", "", "", "FAO-56 Table 17",
     "end of the season, as printed"},
    {[](const GrowthDetail& d) { return d.kcb_end; }, "Kcb end", "",
     "Kcb end(Tab) + (0.04 (u2 - 2) - 0.004 (RHmin - 45)) (h max / 3)^0.3", climate_form,
     "end of the season, in this climate"},
    {[](const GrowthDetail& d) { return d.day_of_season; }, "i", "d", "",
     "counted from sowing or setting out", "day of the season"},
    {[](const GrowthDetail& d) { return d.passed_d; }, "sum L prev", "d", "", "FAO-56 Table 11, or as seen",
     "days of the stages before"},
    {[](const GrowthDetail& d) { return d.stage_d; }, "L stage", "d", "", "FAO-56 Table 11, or as seen",
     "length of this stage"},
    {[](const GrowthDetail& d) { return d.kcb_prev; }, "Kcb prev", "", "", "FAO-56 eq. 66",
     "Kcb at the end of the stage before", dual},
    {[](const GrowthDetail& d) { return d.kcb_next; }, "Kcb next", "", "", "FAO-56 eq. 66",
     "Kcb at the beginning of the next stage", dual},
    {[](const GrowthDetail& d) { return d.day.kcb; }, "Kcb", "",
     "Kcb prev + min(1, (i - sum L prev) / L stage) (Kcb next - Kcb prev)", "FAO-56 eq. 66",
     "basal crop coefficient", dual},
    {[](const GrowthDetail& d) { return d.kc_prev; }, "Kc prev", "", "",
     "FAO-56 Table 12; Kc ini by wetting, eq. 59 to 61", "Kc at the end of the stage before", single},
    {[](const GrowthDetail& d) { return d.kc_next; }, "Kc next", "", "", "FAO-56 Table 12, eq. 62, 65",
     "Kc at the beginning of the next stage", single},
    {[](const GrowthDetail& d) { return has_curve(d) ? d.day.kc : missing; }, "Kc", "",
     "Kc prev + min(1, (i - sum L prev) / L stage) (Kc next - Kc prev)", "FAO-56 eq. 66",
     "crop coefficient, soil evaporation in it", single},
    {[](const GrowthDetail& d) { return has_curve(d) ? missing : d.day.kc; }, "Kc", "", "",
     "ANSI/ASABE S623, or the landscape coefficient given",
     "plant factor: it holds all evaporation, none is added"},
    {[](const GrowthDetail& d) { return d.day.height_m; }, "h", "m", "",
     "with Kcb up to its middle, FAO-56 annex 8", "height today"},
    {[](const GrowthDetail& d) { return has_curve(d) ? d.day.kc_max : missing; }, "Kc max", "",
     "max(1.2 + (0.04 (u2 - 2) - 0.004 (RHmin - 45)) (h / 3)^0.3, Kcb + 0.05)", "FAO-56 eq. 72",
     "upper limit, in the season's climate", dual},
    {[](const GrowthDetail& d) { return has_curve(d) ? d.day.cover_frac : missing; }, "fc", "",
     "min(0.99, (max(0.01, Kcb - 0.15) / (Kc max - 0.15))^(1 + 0.5 h))", "FAO-56 eq. 76",
     "share of the ground under leaves", dual},
    {[](const GrowthDetail& d) { return d.day.root_depth_m; }, "Zr", "m", "",
     "linear over the development stage, FAO-56 annex 8", "depth of the root zone"},
    {[](const GrowthDetail& d) { return d.day.p_frac; }, "p(Tab)", "", "", "FAO-56 Table 22",
     "share of TAW used before stress, at ETc 5 mm/d"},
}};
// clang-format on

}  // namespace

std::span<const GrowthQuantity> growth_quantities() { return rows; }

}  // namespace v1
}  // namespace noonleaf
