#include "noonleaf/heat/diurnal.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/guard.hpp"
#include "noonleaf/heat/diurnal_shape.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using formula::DiurnalShape;
using formula::HourPart;
using std::numbers::pi;

// Parton & Logan (1981), values for air at 1.5 m.
constexpr double lag_of_maximum_h = 1.86, night_decay = 2.20, minimum_after_sunrise_h = -0.17;
constexpr double wind_day_to_night = 2.0;  // FAO-24

void require_ranges(const DailyShape& day) {
  require_within("latitude_deg", day.site.location.latitude_deg, -highest_latitude_deg, highest_latitude_deg,
                 "°");
  require_within("longitude_deg", day.site.location.longitude_deg, -180, 180, "°");
  require_within("utc_offset_h", day.site.utc_offset_h, -12, 14, "h");
  require_within("t_max_c", day.t_max_c, -60, 60, "°C");
  require_within("t_min_c", day.t_min_c, -60, is_known(day.t_max_c) ? day.t_max_c : 60, "°C");
  require_within("t_max_before_c", day.t_max_before_c, -60, 60, "°C");
  require_within("t_min_after_c", day.t_min_after_c, -60, 60, "°C");
  require_within("ea_kpa", day.ea_kpa, 0, 10, "kPa");
  require_within("rs_mj_m2_d", day.rs_mj_m2_d, 0, 60, "MJ/m²/d");
  require_within("u2_m_s", day.u2_m_s, 0, 60, "m/s");
}

double middle_h(std::size_t hour) { return static_cast<double>(hour) + 0.5; }

void stretch_temperature(WeatherHours& hours, double t_min_c, double t_max_c) {
  const auto [low, high] = std::minmax_element(
      hours.begin(), hours.end(), [](const WeatherHour& a, const WeatherHour& b) { return a.t_c < b.t_c; });
  const double low_c = low->t_c, high_c = high->t_c;
  if (!(high_c > low_c)) return;
  for (WeatherHour& hour : hours) {
    const double up = (hour.t_c - low_c) / (high_c - low_c);
    hour.t_c = t_min_c * (1 - up) + t_max_c * up;
  }
}

void spread_temperature(DiurnalDay& out, const DailyShape& day, const DiurnalShape& shape) {
  if (is_missing(day.t_max_c) || is_missing(day.t_min_c)) return;
  const double before = is_known(day.t_max_before_c) ? day.t_max_before_c : day.t_max_c;
  const double after = is_known(day.t_min_after_c) ? day.t_min_after_c : day.t_min_c;
  const formula::WaveEnds ends{day.t_min_c, day.t_max_c, std::min(after, day.t_max_c), before,
                               std::min(day.t_min_c, before)};
  for (std::size_t i = 0; i < 24; ++i)
    out.hours[i].t_c =
        formula::wave_c(shape.part[i], shape.rise[i], shape.left[i], shape.rise_at_sunset, ends);
  stretch_temperature(out.hours, day.t_min_c, day.t_max_c);
}

double time_angle_rad(const DaySite& site, double clock_h) {
  const double meridian = 15 * site.utc_offset_h;  // an offset of 14 h is the meridian 150° west
  return solar_time_angle_rad({.clock_h = clock_h,
                               .zone_meridian_deg = meridian > 180 ? meridian - 360 : meridian,
                               .longitude_deg = site.location.longitude_deg,
                               .day_of_year = day_of_year(site.date)});
}

// Level L with mean of min(e°, L) = ea; the highest e° where even that is not enough.
double held_vapour_pressure_kpa(const std::array<double, 24>& saturation, double ea_kpa) {
  const auto mean_held = [&](double level) {
    double sum = 0;
    for (const double es : saturation) sum += std::min(es, level);
    return sum / 24;
  };
  const auto [lowest, highest] = std::minmax_element(saturation.begin(), saturation.end());
  if (ea_kpa <= *lowest) return ea_kpa;
  if (mean_held(*highest) <= ea_kpa) return *highest;
  double low = ea_kpa, high = *highest;
  for (int step = 0; step < 100; ++step) {
    const double middle = (low + high) / 2;
    (mean_held(middle) < ea_kpa ? low : high) = middle;
  }
  return high;
}

void spread_humidity(DiurnalDay& out, const DailyShape& day) {
  if (is_missing(day.ea_kpa) || is_missing(out.hours.front().t_c)) return;
  std::array<double, 24> saturation;
  for (std::size_t i = 0; i < 24; ++i) saturation[i] = saturation_vapour_pressure_kpa(out.hours[i].t_c);
  out.ea_held_kpa = held_vapour_pressure_kpa(saturation, day.ea_kpa);
  double sum = 0;
  for (std::size_t i = 0; i < 24; ++i) sum += out.hours[i].ea_kpa = std::min(saturation[i], out.ea_held_kpa);
  out.ea_residual_kpa = day.ea_kpa - sum / 24;
}

// Share of the range above the minimum, hours after it.
double rise_after(double hours_after_minimum, double daylight_h) {
  return std::sin(pi * hours_after_minimum / (daylight_h + 2 * lag_of_maximum_h));
}

// Share of the fall that is left, hours after sunset; Parton & Logan's exponential brought down to 0 at the
// next minimum.
double left_after(double hours_after_sunset, double night_h) {
  const double end = std::exp(-night_decay);
  return (std::exp(-night_decay * hours_after_sunset / night_h) - end) / (1 - end);
}

void shape_temperature(DiurnalShape& shape) {
  const double daylight = shape.sunset_h - shape.sunrise_h;
  const double minimum_h = shape.sunrise_h + minimum_after_sunrise_h;
  const double sunset = daylight - minimum_after_sunrise_h;  // after the minimum
  shape.rise_at_sunset = rise_after(sunset, daylight);
  for (std::size_t i = 0; i < 24; ++i) {
    const double since = middle_h(i) - minimum_h;
    const double on_wave = since >= 0 ? since : since + 24;
    const bool light = on_wave <= sunset;
    if (since >= 0)
      shape.part[i] = light ? HourPart::today : HourPart::after_sunset;
    else
      shape.part[i] = light ? HourPart::yesterday : HourPart::before_dawn;
    if (light)
      shape.rise[i] = rise_after(on_wave, daylight);
    else
      shape.left[i] = left_after(on_wave - sunset, 24 - sunset);
  }
}

void shape_wind(DiurnalShape& shape) {
  const double daylight = shape.sunset_h - shape.sunrise_h;
  const double bump = (wind_day_to_night - 1) * pi / 2;  // mean of a half sine is 2/pi
  double sum = 0;
  for (std::size_t i = 0; i < 24; ++i) {
    const double since = std::fmod(middle_h(i) - shape.sunrise_h + 48, 24);
    shape.wind[i] = 1 + (since < daylight ? bump * std::sin(pi * since / daylight) : 0);
    sum += shape.wind[i];
  }
  for (double& hour : shape.wind) hour *= 24 / sum;
}

bool placed(const DaySite& site) {
  return site.date.ok() && is_known(site.location.latitude_deg) && is_known(site.location.longitude_deg) &&
         is_known(site.utc_offset_h);
}

}  // namespace

std::array<double, 24> extraterrestrial_by_hour_mj_m2_h(const DaySite& site) {
  std::array<double, 24> ra;
  ra.fill(missing);
  if (!placed(site)) return ra;
  for (std::size_t i = 0; i < 24; ++i)
    ra[i] = extraterrestrial_radiation_mj_m2_h({.latitude_deg = site.location.latitude_deg,
                                                .day_of_year = day_of_year(site.date),
                                                .time_angle_rad = time_angle_rad(site, middle_h(i))},
                                               1.0);
  return ra;
}

namespace formula {

DiurnalShape diurnal_shape(const DaySite& site) {
  DiurnalShape shape;
  const double half_h =
      daylight_h({.latitude_deg = site.location.latitude_deg, .day_of_year = day_of_year(site.date)}) / 2;
  shape.solar_noon_h = 12 - time_angle_rad(site, 12) * 12 / pi;
  shape.sunrise_h = shape.solar_noon_h - half_h;
  shape.sunset_h = shape.solar_noon_h + half_h;
  shape_temperature(shape);
  shape_wind(shape);
  shape.sun = extraterrestrial_by_hour_mj_m2_h(site);
  double total = 0;
  for (const double hour : shape.sun) total += hour;
  for (double& hour : shape.sun) hour /= total;
  return shape;
}

}  // namespace formula

DiurnalDay hours_of_day(const DailyShape& day) {
  require_ranges(day);
  DiurnalDay out;
  if (!placed(day.site)) return out;
  const DiurnalShape shape = formula::diurnal_shape(day.site);
  out.solar_noon_h = shape.solar_noon_h;
  out.sunrise_h = shape.sunrise_h;
  out.sunset_h = shape.sunset_h;
  spread_temperature(out, day, shape);
  for (std::size_t i = 0; i < 24; ++i) {
    out.hours[i].rs_mj_m2_h = day.rs_mj_m2_d * shape.sun[i];
    out.hours[i].u2_m_s = day.u2_m_s * shape.wind[i];
  }
  spread_humidity(out, day);
  return out;
}

WeatherHours prefer_measured(const WeatherHours& measured, const WeatherHours& estimated) {
  const auto either = [](double first, double second) { return is_known(first) ? first : second; };
  WeatherHours hours;
  for (std::size_t i = 0; i < hours.size(); ++i)
    hours[i] = {.t_c = either(measured[i].t_c, estimated[i].t_c),
                .ea_kpa = either(measured[i].ea_kpa, estimated[i].ea_kpa),
                .rs_mj_m2_h = either(measured[i].rs_mj_m2_h, estimated[i].rs_mj_m2_h),
                .u2_m_s = either(measured[i].u2_m_s, estimated[i].u2_m_s)};
  return hours;
}

}  // namespace v1
}  // namespace noonleaf
