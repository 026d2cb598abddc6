#pragma once

#include <array>

#include "noonleaf/heat/diurnal.hpp"

namespace noonleaf {
inline namespace v1 {
namespace formula {

/// Which wave an hour lies on.
enum class HourPart {
  today,         ///< between this day's minimum and its sunset
  after_sunset,  ///< falling towards tomorrow's minimum
  before_dawn,   ///< falling from yesterday's sunset to this day's minimum
  yesterday      ///< on the light side of yesterday's wave: far north only
};

/// What the hours of a day have from the sun alone, whatever the weather: all the sines and powers of
/// hours_of_day.
struct DiurnalShape {
  double sunrise_h = missing, solar_noon_h = missing, sunset_h = missing;
  std::array<HourPart, 24> part{};
  std::array<double, 24> rise{};  ///< by day: share of the range above the minimum
  std::array<double, 24>
      left{};  ///< by night: share of the fall from sunset to the minimum that is still to come
  double rise_at_sunset = missing;
  std::array<double, 24> sun{};   ///< each hour's share of the day's radiation; NaN without a sun
  std::array<double, 24> wind{};  ///< wind over its mean
};

/// Input     site as hours_of_day; complete
DiurnalShape diurnal_shape(const DaySite& site);

/// The day's temperatures between which the waves run.
struct WaveEnds {
  double t_min_c, t_max_c;
  double t_min_after_c;  ///< not above t_max_c
  double t_max_before_c;
  double t_min_before_c;  ///< not above t_max_before_c
};

/// Parton & Logan's two waves; the sample of the middle of an hour before it is stretched.
[[gnu::always_inline]] inline double wave_c(HourPart part, double rise, double left, double rise_at_sunset,
                                            const WaveEnds& t) {
  const bool of_yesterday = part == HourPart::before_dawn || part == HourPart::yesterday;
  const double low = of_yesterday ? t.t_min_before_c : t.t_min_c;
  const double high = of_yesterday ? t.t_max_before_c : t.t_max_c;
  if (part == HourPart::today || part == HourPart::yesterday) return low + (high - low) * rise;
  const double sunset = low + (high - low) * rise_at_sunset;
  const double end = of_yesterday ? t.t_min_c : t.t_min_after_c;
  return end + (sunset - end) * left;
}

}  // namespace formula
}  // namespace v1
}  // namespace noonleaf
