#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "noonleaf/heat/diurnal.hpp"
#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Air as people in the shade feel it.
struct ShadeAir {
  double t_c = missing;     ///< -40 to 55
  double rh_pct = missing;  ///< 0 to 100
};

/// Heat index of the US National Weather Service. It assumes shade and a light wind.
///
/// Equation  in °F: HI = 0.5 [T + 61 + 1.2 (T - 68) + 0.094 RH] while that is below 80; else
///           HI = -42.379 + 2.04901523 T + 10.14333127 RH - 0.22475541 T RH - 0.00683783 T² - 0.05481717 RH²
///                + 0.00122874 T² RH + 0.00085282 T RH² - 0.00000199 T² RH²,
///           less [(13 - RH)/4] sqrt[(17 - |T - 95|)/17] where RH < 13 % and T is 80 to 112,
///           plus [(RH - 85)/10] [(87 - T)/5] where RH > 85 % and T is 80 to 87
/// Source    Rothfusz (1990), NWS Technical Attachment SR 90-23, after Steadman (1979); both adjustments and
///           the simple form: NOAA Weather Prediction Center, heat index equation page
/// Valid     the source: regression error 1.3 °F inside Steadman's table; nothing stated beyond it
/// Input     t_c [°C] -40 to 55; rh_pct [%] 0 to 100 (our guards)
/// Result    [°C]
/// Missing   NaN if either is missing
/// Throws    Error, field "t_c" or "rh_pct", when outside the accepted range
/// Note      The page says the simple form is "averaged with the temperature"; its factor 0.5 is that
///           average. The printed chart follows the plain regression: at 80 to 86 °F and RH from 90 % the
///           adjusted value is up to 2.3 °F above it.
/// Example   heat_index_c({.t_c = 35.56, .rh_pct = 65}) = 49.4 (96 °F, 65 %: 121 °F)
double heat_index_c(const ShadeAir& air);

/// Whether a heat index lies beyond the printed chart, where the equation is carried on without a check: air
/// hotter than the chart's last row, or an index above its highest cell. What is too dry for the chart (below
/// 40 %) counts as within: the adjustment for dry air is published for it.
///
/// Source    US National Weather Service heat index chart, 80 to 110 °F by 40 to 100 %; its highest cells are
///           137 °F, where hotter and damper ones are left blank. Rounded to whole °F first, as the chart is
/// Missing   false if the index is missing; a missing temperature leaves the index to tell
/// Example   beyond_heat_index_chart(47.8, 100.5) = true (118 °F, 60 %: 213 °F)
bool beyond_heat_index_chart(double t_c, double heat_index_c);

/// What full sunshine can add to the heat index, at most: 15 °F. NWS and OSHA heat index pages.
inline constexpr double full_sun_adds_c = 15 / 1.8;

/// Classes of the heat index as the NWS publishes them.
enum class HeatCategory {
  below_caution,
  caution,          ///< 80 to 90 °F
  extreme_caution,  ///< 90 to 103 °F
  danger,           ///< 103 to 125 °F
  extreme_danger    ///< 125 °F and more
};

/// Class of a heat index.
///
/// Source    US National Weather Service, heat index classification (current bounds; older sheets print 105
///           and 130 for 103 and 125). The page prints both ends of each class; that a bound belongs to the
///           upper class is ours, and so is rounding to whole °F first, as the chart does
/// Missing   no value for a missing index
std::optional<HeatCategory> heat_category(double heat_index_c);

/// "Extreme Caution"
std::string_view label(HeatCategory category);

/// What the class stands for, as the NWS words it; empty below caution.
std::string_view effects(HeatCategory category);

/// A day for the people outside.
struct PeopleDay {
  std::array<double, 24> heat_index_c{};        ///< by hour of the wall clock
  double peak_c = missing;                      ///< highest of the hours that are known
  int peak_hour = 0;                            ///< hour of the wall clock, the first of equals
  std::optional<HeatCategory> peak_category{};  ///< of that peak; nothing where no hour is known
};

/// Heat index by hour.
///
/// Missing   An hour with a missing temperature or humidity is NaN and left out of the peak
/// Throws    Error as heat_index_c
PeopleDay people_day(const WeatherHours& hours);

/// The stretch of hours for work that has the lowest heat index.
struct WorkWindow {
  int from_h = 6;    ///< hour of the wall clock from which to look
  int until_h = 20;  ///< and up to which
  int length_h = 2;  ///< of the work, in whole hours
};

/// First hour of the coolest stretch: lowest highest heat index, the earlier of equals.
///
/// Input     0 <= from_h, until_h <= 24, length_h at least 1 and within the window
/// Result    hour of the wall clock; none where every stretch has a missing hour
/// Throws    Error, field "work_window", when it does not fit into the day
std::optional<int> coolest_hours(const PeopleDay& day, const WorkWindow& window = {});

}  // namespace v1
}  // namespace noonleaf
