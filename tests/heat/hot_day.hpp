#pragma once

#include "noonleaf/heat/demand.hpp"
#include "noonleaf/heat/diurnal.hpp"
#include "noonleaf/heat/hydraulics.hpp"
#include "noonleaf/heat/wilt.hpp"

/// An invented hot July day near 30° N, clear, by daylight saving time.
inline noonleaf::DailyShape hot_day() {
  noonleaf::DailyShape day;
  day.site.date = std::chrono::year(2025) / std::chrono::July / 16;
  day.site.location = {.latitude_deg = 30.27, .longitude_deg = -97.74, .elevation_m = 150};
  day.site.utc_offset_h = -5;
  day.t_max_c = 37;
  day.t_min_c = 24;
  day.ea_kpa = 2.4;
  day.rs_mj_m2_d = 27;
  day.u2_m_s = 2.5;
  return day;
}

/// A tomato in its middle stage on the calibration soil, rooted deep enough, TAW 100 mm.
inline noonleaf::WiltPlanting tomato(double dr_mm) {
  noonleaf::WiltPlanting planting;
  planting.p_frac = 0.40;
  planting.turgor_loss_mpa = -1.0;
  planting.taw_mm = 100;
  planting.raw_mm = 40;
  planting.dr_mm = dr_mm;
  planting.root_depth_m = 0.5;
  planting.soil = noonleaf::calibration_soil();
  return planting;
}

/// The day that `total_mm` of potential transpiration make of a planting.
inline noonleaf::WiltDay through_day(const noonleaf::WiltPlanting& planting, const noonleaf::DailyShape& day,
                                     double total_mm) {
  const noonleaf::WeatherHours hours = noonleaf::hours_of_day(day).hours;
  return noonleaf::wilt_day(planting, hours, noonleaf::hourly_transpiration_mm_h(hours, day.site, total_mm));
}
