#pragma once

#include <chrono>
#include <cstddef>
#include <span>
#include <utility>

#include <Eigen/Core>

#include "noonleaf/atmosphere/column.hpp"
#include "noonleaf/reference/daily_site.hpp"
#include "noonleaf/reference/penman_monteith.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// The days that rows stand for: one after the other from `first`, or row by row where `column` is given.
struct DayAxis {
  std::chrono::sys_days first{};                  ///< day of row 0
  const std::chrono::sys_days* column = nullptr;  ///< row_count days; null = consecutive
  std::ptrdiff_t stride = 1;                      ///< of `column`, in values
};

/// Many days of weather at one site, column by column. Units as in DailyInputs.
struct DailyColumns {
  DayAxis day{};               ///< which days the rows are
  ConstColumn t_max_c{};       ///< -60 to 60
  ConstColumn t_min_c{};       ///< -60 to 60, not above t_max_c
  ConstColumn ea_kpa{};        ///< actual vapour pressure, 0 to 20
  ConstColumn rs_mj_m2_d{};    ///< solar radiation, 0 to 60
  ConstColumn u2_m_s{};        ///< wind at 2 m, 0 to 60
  ConstColumn pressure_kpa{};  ///< from the elevation where there is no column at all; a NaN in one stays NaN
  ConstColumn g_mj_m2_d{};     ///< 0 where there is no column
};

/// Daily reference evapotranspiration of many days: the formula of daily_et0_mm_d (penman_monteith.hpp).
///
/// Input     site, once for all its days (daily_site); columns of `count` rows in the caller's memory, any
///           stride; ranges as for daily_et0_mm_d
/// Result    [mm d⁻¹], `count` values to result_mm_d, within 1e-12 of daily_et0_mm_d; the rows outside an
///           accepted range (or with Tmin above Tmax), NaN there. result_mm_d may be one of the input columns
/// Missing   NaN in, NaN out, not listed; a column without data is missing throughout
/// Throws    Error, field "surface", for a tall surface with Equation::fao56
/// Note      No threads, and no memory but that of the list.
BadRows daily_et0_mm_d(const DailySite& site, const DailyColumns& columns, std::size_t count,
                       MutableColumn result_mm_d, Equation equation = Equation::fao56,
                       Surface surface = Surface::short_crop);

/// Daily net radiation of many days: FAO-56 eq. 37 to 40, or ASCE-EWRI's with its limits.
///
/// Input     as above; the columns of wind, pressure and soil heat flux are not looked at
/// Result    [MJ m⁻² d⁻¹], within 1e-14 (relative to Rns + |Rnl|) of DailyEt0Detail::rn_mj_m2_d; the rows
///           outside an accepted range, NaN there
/// Missing   NaN in, NaN out, not listed
BadRows daily_net_radiation_mj_m2_d(const DailySite& site, const DailyColumns& columns, std::size_t count,
                                    MutableColumn result_mj_m2_d, Equation equation = Equation::fao56);

/// Many sites with the same days. Value i of site s is data[s * site_stride + i * stride] of its column.
struct StationColumns {
  DailyColumns first_site{};       ///< its DayAxis holds for all sites
  std::ptrdiff_t site_stride = 0;  ///< from a site to the next, in values; 0 = all sites share the weather
  std::ptrdiff_t result_site_stride = 0;  ///< the same in the result
};

/// How many threads a batch may use. The results do not depend on it.
struct Threads {
  unsigned count = 1;  ///< 1 = the caller's own alone
};

/// Daily reference evapotranspiration of many sites. What depends only on site and day of the year is worked
/// out once per site, in here.
///
/// Input     sites; columns as above, `count` days each
/// Result    as above; rows of the list are numbered s * count + i, ascending
/// Missing, Throws  as above, and for a location outside its range (daily_site)
BadRows daily_et0_mm_d(std::span<const Location> sites, const StationColumns& columns, std::size_t count,
                       MutableColumn result_mm_d, Equation equation = Equation::fao56,
                       Surface surface = Surface::short_crop, Threads threads = {});

/// The columns of the Eigen door, each of the same length.
struct DailyArrays {
  Eigen::Ref<const Eigen::ArrayXd> t_max_c;     ///< as DailyColumns
  Eigen::Ref<const Eigen::ArrayXd> t_min_c;     ///< as DailyColumns
  Eigen::Ref<const Eigen::ArrayXd> ea_kpa;      ///< as DailyColumns
  Eigen::Ref<const Eigen::ArrayXd> rs_mj_m2_d;  ///< as DailyColumns
  Eigen::Ref<const Eigen::ArrayXd> u2_m_s;      ///< as DailyColumns
};

/// Eigen door, over the strided core: days one after the other from `first`. Bad rows are listed where a list
/// is given. Throws    Error, naming the array, when it is not as long as t_max_c
inline Eigen::ArrayXd daily_et0_mm_d(const DailySite& site, std::chrono::sys_days first,
                                     const DailyArrays& arrays, Equation equation = Equation::fao56,
                                     Surface surface = Surface::short_crop, BadRows* bad_rows = nullptr) {
  const auto column = [](const Eigen::Ref<const Eigen::ArrayXd>& array) {
    return ConstColumn{array.data(), array.innerStride()};
  };
  const auto rows = static_cast<std::size_t>(arrays.t_max_c.size());
  require_length("t_min_c", static_cast<std::size_t>(arrays.t_min_c.size()), rows);
  require_length("ea_kpa", static_cast<std::size_t>(arrays.ea_kpa.size()), rows);
  require_length("rs_mj_m2_d", static_cast<std::size_t>(arrays.rs_mj_m2_d.size()), rows);
  require_length("u2_m_s", static_cast<std::size_t>(arrays.u2_m_s.size()), rows);
  Eigen::ArrayXd result(arrays.t_max_c.size());
  BadRows bad = daily_et0_mm_d(site,
                               {.day = {.first = first},
                                .t_max_c = column(arrays.t_max_c),
                                .t_min_c = column(arrays.t_min_c),
                                .ea_kpa = column(arrays.ea_kpa),
                                .rs_mj_m2_d = column(arrays.rs_mj_m2_d),
                                .u2_m_s = column(arrays.u2_m_s)},
                               rows, {result.data(), 1}, equation, surface);
  if (bad_rows != nullptr) *bad_rows = std::move(bad);
  return result;
}

}  // namespace v1
}  // namespace noonleaf
