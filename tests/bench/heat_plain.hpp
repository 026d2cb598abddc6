#pragma once

#include <array>
#include <cstddef>

// Hourly demand, supply and droop of one member as one would write them from the page with the C library,
// hour after hour on plain doubles: the baseline of wilt_members.
namespace plain {

struct HeatPlace {
  double latitude_rad, longitude_deg, elevation_m, utc_offset_h;
};

struct HeatDay {
  int day_of_year;
  double t_max, t_min, t_max_before, t_min_after, ea, rs, u2;
};

/// What the sun alone decides, so that it can be worked out once for all members of a day.
struct SunDay {
  double sunrise, sunset;
  std::array<double, 24> ra, rise, left;
  double ra_total;
};
SunDay sun_day(const HeatPlace& place, int day_of_year);

/// Shares of the day's potential transpiration.
std::array<double, 24> shares(const HeatPlace& place, const SunDay& sun, const HeatDay& day);

struct HeatBed {
  double turgor_loss, plant, soil, sunlit, bearable;  ///< water path, factors
  double fc, wp, taw, raw, total;
};

struct HeatState {
  double dr, deficit;
  int droop_hours;
  bool hangs_beyond;
};

/// One day of one bed from dawn to dawn.
void through_hours(const std::array<double, 24>& share, const SunDay& sun, const HeatBed& bed,
                   HeatState& state);

}  // namespace plain
