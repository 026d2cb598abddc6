#include <cmath>
#include <cstdint>
#include <numbers>
#include <string>

#include "noonleaf/atmosphere/accepted.hpp"
#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/error.hpp"
#include "noonleaf/reference/hourly_batch.hpp"
#include "noonleaf/reference/hourly_formula.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using std::chrono::seconds;

constexpr seconds day_length{86400};

void require_accepted(const Location& location, seconds length) {
  require_within("latitude_deg", location.latitude_deg, accepted::latitude_deg, "°");
  require_within("longitude_deg", location.longitude_deg, accepted::longitude_deg, "°");
  require_within("elevation_m", location.elevation_m, accepted::elevation_m, "m");
  require_within("length", static_cast<double>(length.count()), accepted::period_s, "s");
  if (day_length % length == seconds{0}) return;
  throw Error({.field = "length",
               .text = std::to_string(length.count()),
               .message = std::to_string(length.count()) + " s does not divide the day",
               .fix = "give periods of 3600, 1800, 900, 600 or 300 s"});
}

/// The periods of a local mean solar day by their middles, and sine and cosine of how far each lies after the
/// first.
struct SolarDay {
  double first_clock_h;  ///< middle of the first period, UTC
  double length_h;
  std::vector<double> cosine, sine;
};

SolarDay solar_day(const Location& location, seconds phase, seconds length, std::size_t periods) {
  const formula::SolarMoment any =
      formula::solar_moment(std::chrono::sys_seconds{phase}, length, location.longitude_deg);
  SolarDay day{any.clock_h, static_cast<double>(length.count()) / 3600.0, {}, {}};
  day.first_clock_h -= static_cast<double>(any.into_day / length) * day.length_h;
  for (std::size_t i = 0; i < periods; ++i) {
    const double after = std::numbers::pi / 12.0 * day.length_h * static_cast<double>(i);
    day.cosine.push_back(std::cos(after));
    day.sine.push_back(std::sin(after));
  }
  return day;
}

std::uint8_t bits_of(const formula::HourSky& sky) {
  return static_cast<std::uint8_t>((sky.is_day ? HourlySite::is_day : 0) |
                                   (sky.has_own_ratio ? HourlySite::has_own_ratio : 0) |
                                   (sky.keeps_ratio ? HourlySite::keeps_ratio : 0));
}

/// One day of the table. Whole periods of daylight go by FAO-56 eq. 28 with sin(w2) - sin(w1) = 2 cos(w)
/// sin(pi t1/24) and cos(w) by the addition theorem; those that the horizon cuts go the long way.
void fill_day(HourlySite& site, const SolarDay& day, double j) {
  const formula::SunPath path = formula::sun_path(formula::radians(site.location.latitude_deg), j);
  const double correction = formula::seasonal_correction_h(j);
  const double first =
      formula::solar_time_angle_rad(day.first_clock_h, 0.0, -site.location.longitude_deg, correction);
  const double cos_first = std::cos(first), sin_first = std::sin(first);
  const double half = std::numbers::pi * day.length_h / 24.0, sin_half = std::sin(half);
  const double scale =
      12.0 * 60.0 / std::numbers::pi * solar_mj_m2_min * path.inverse_distance / day.length_h;
  for (std::size_t i = 0; i < site.periods_a_day; ++i) {
    formula::HourSky sky{};
    sky.path = path;
    const double along = first + 2.0 * half * static_cast<double>(i);
    sky.time_angle_rad = along > std::numbers::pi
                             ? along - 2.0 * std::numbers::pi
                             : (along < -std::numbers::pi ? along + 2.0 * std::numbers::pi : along);
    const double cosine = cos_first * day.cosine[i] - sin_first * day.sine[i];
    sky.sin_altitude = path.vertical + path.horizontal * cosine;
    const double w = std::abs(sky.time_angle_rad);
    sky.is_day = w < path.sunset_angle_rad;
    if (w + half <= path.sunset_angle_rad) {
      sky.ra_mj_m2_h = scale * (2.0 * half * path.vertical + path.horizontal * (2.0 * cosine * sin_half));
    } else {
      sky.ra_mj_m2_h = formula::extraterrestrial_radiation_mj_m2_h(path, sky.time_angle_rad, day.length_h);
    }
    formula::see_clouds(sky, half, site.equation);
    site.ra_mj_m2_h.push_back(sky.ra_mj_m2_h);
    site.sky.push_back(bits_of(sky));
  }
}

}  // namespace

HourlySite hourly_site(const Location& location, std::chrono::sys_seconds begin, seconds length,
                       Equation equation) {
  require_accepted(location, length);
  HourlySite site;
  site.location = location;
  site.equation = equation;
  site.length = length;
  site.phase = (begin - std::chrono::floor<std::chrono::days>(begin)) % length;
  site.pressure_kpa = atmospheric_pressure_kpa(location.elevation_m);
  site.periods_a_day = static_cast<std::size_t>(day_length / length);
  constexpr int year_d = 366;  // a leap year's; the others have no use for its last day
  site.ra_mj_m2_h.reserve(year_d * site.periods_a_day);
  site.sky.reserve(year_d * site.periods_a_day);
  const SolarDay day = solar_day(location, site.phase, length, site.periods_a_day);
  for (int j = 1; j <= year_d; ++j) fill_day(site, day, j);
  return site;
}

}  // namespace v1
}  // namespace noonleaf
