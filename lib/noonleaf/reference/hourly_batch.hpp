#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

#include <Eigen/Core>

#include "noonleaf/atmosphere/column.hpp"
#include "noonleaf/reference/hourly.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A site with the sun over its every period of the year, worked out once for all years: for periods of one
/// length that begin at the same times every day (UTC).
struct HourlySite {
  Location location{};                  ///< as given; all three numbers are needed
  Equation equation = Equation::fao56;  ///< which publication
  std::chrono::seconds length{3600};    ///< of every period, a divisor of the day
  std::chrono::seconds phase{0};        ///< of the periods' beginnings, UTC since midnight, below `length`
  double pressure_kpa = missing;        ///< of the elevation, FAO-56 eq. 7

  /// the middle of the period lies before sunset: the daytime coefficients
  static constexpr std::uint8_t is_day = 1;
  /// the sun is high enough that Rs/Rso is the period's own
  static constexpr std::uint8_t has_own_ratio = 2;
  static constexpr std::uint8_t keeps_ratio = 4;  ///< its ratio is the one that the night goes on with
  std::size_t periods_a_day = 24;                 ///< a day over `length`
  std::vector<double> ra_mj_m2_h{};  ///< [(J - 1) * periods_a_day + period of the local mean solar day]
  std::vector<std::uint8_t> sky{};   ///< what the sun can tell then, bit by bit as named above
};

/// Input     location whole; begin, of any one of the periods; length 60 to 3600 s, a divisor of the day
/// Result    Ra within 1e-12 MJ m⁻² h⁻¹ of extraterrestrial_radiation_mj_m2_h
/// Missing   Ra NaN throughout for a latitude or longitude that is missing
/// Throws    Error, naming the field, when outside the accepted range
HourlySite hourly_site(const Location& location, std::chrono::sys_seconds begin,
                       std::chrono::seconds length = std::chrono::hours{1},
                       Equation equation = Equation::fao56);

/// Many periods of weather at one site, one after the other without a gap; a period left out of the record is
/// a row of NaN. Units as in HourlyInputs.
struct HourlyColumns {
  std::chrono::sys_seconds first_begin{};  ///< UTC
  ConstColumn t_c{};                       ///< -60 to 60
  ConstColumn ea_kpa{};                    ///< actual vapour pressure, 0 to 20
  ConstColumn rs_mj_m2_h{};                ///< per hour whatever the length, 0 to 6
  ConstColumn u2_m_s{};                    ///< wind at 2 m, 0 to 60
  ConstColumn pressure_kpa{};  ///< from the elevation where there is no column at all; a NaN in one stays NaN
};

/// Hourly reference evapotranspiration of many periods: HourlySeries over all of them, cloudiness of the
/// night included.
///
/// Input     site, once for all its periods (hourly_site); columns of `count` rows in the caller's memory,
///           any stride; ranges as for hourly_et0_mm_h
/// Result    [mm h⁻¹], `count` values to result_mm_h, within 1e-12 of HourlySeries; the rows outside an
///           accepted range, NaN there. result_mm_h may be one of the input columns
/// Missing   NaN in, NaN out, not listed
/// Throws    Error, field "first_begin", when it is not a beginning of the site's periods; field "surface",
///           for a tall surface with a site made for Equation::fao56
BadRows hourly_et0_mm_h(const HourlySite& site, const HourlyColumns& columns, std::size_t count,
                        MutableColumn result_mm_h, Surface surface = Surface::short_crop,
                        Dryness dryness = Dryness::humid);

/// The columns of the Eigen door, each of the same length.
struct HourlyArrays {
  Eigen::Ref<const Eigen::ArrayXd> t_c;         ///< as HourlyColumns
  Eigen::Ref<const Eigen::ArrayXd> ea_kpa;      ///< as HourlyColumns
  Eigen::Ref<const Eigen::ArrayXd> rs_mj_m2_h;  ///< as HourlyColumns
  Eigen::Ref<const Eigen::ArrayXd> u2_m_s;      ///< as HourlyColumns
};

/// Eigen door, over the strided core. Bad rows are listed where a list is given.
/// Throws    Error, naming the array, when it is not as long as t_c; and as the core
inline Eigen::ArrayXd hourly_et0_mm_h(const HourlySite& site, std::chrono::sys_seconds first_begin,
                                      const HourlyArrays& arrays, Surface surface = Surface::short_crop,
                                      Dryness dryness = Dryness::humid, BadRows* bad_rows = nullptr) {
  const auto column = [](const Eigen::Ref<const Eigen::ArrayXd>& array) {
    return ConstColumn{array.data(), array.innerStride()};
  };
  const auto rows = static_cast<std::size_t>(arrays.t_c.size());
  require_length("ea_kpa", static_cast<std::size_t>(arrays.ea_kpa.size()), rows);
  require_length("rs_mj_m2_h", static_cast<std::size_t>(arrays.rs_mj_m2_h.size()), rows);
  require_length("u2_m_s", static_cast<std::size_t>(arrays.u2_m_s.size()), rows);
  Eigen::ArrayXd result(arrays.t_c.size());
  BadRows bad = hourly_et0_mm_h(site,
                                {.first_begin = first_begin,
                                 .t_c = column(arrays.t_c),
                                 .ea_kpa = column(arrays.ea_kpa),
                                 .rs_mj_m2_h = column(arrays.rs_mj_m2_h),
                                 .u2_m_s = column(arrays.u2_m_s)},
                                rows, {result.data(), 1}, surface, dryness);
  if (bad_rows != nullptr) *bad_rows = std::move(bad);
  return result;
}

}  // namespace v1
}  // namespace noonleaf
