#include "noonleaf/weather/sun_checks.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <string>

#include "noonleaf/atmosphere/pressure.hpp"
#include "noonleaf/atmosphere/radiation.hpp"
#include "noonleaf/atmosphere/sun.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/weather/rounded_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Q = WeatherQuantity;

constexpr std::int64_t day_s = 86'400;
constexpr std::size_t days_of_year = 367;  // by J, from 1

// Twilight is not in Ra; an hour's stamp may be some minutes off.
constexpr double ra_margin_day = 0.5, ra_margin_hour = 0.2, ra_share_hour = 1.1;
constexpr double clear_sky_share = 1.1;
constexpr double sunshine_margin_h = 0.5;
constexpr double night_mj_m2_h = 20 * 0.0036;
constexpr double lowest_envelope = 0.8;
constexpr std::size_t envelope_days = 60, envelope_hours = 400;
constexpr double sun_up_day = 3.0, sun_up_hour = 1.5;  // Rso from which a row counts for the envelope
constexpr double pressure_margin_kpa = 3.0;
constexpr std::size_t fewest_pressures = 10;

constexpr std::size_t slot(Q quantity) { return static_cast<std::size_t>(quantity); }

bool has_sun_column(const ValueLocator& locator) {
  return locator.quantities().test(slot(Q::rs)) || locator.quantities().test(slot(Q::sunshine));
}

}  // namespace

SunChecks::SunChecks(const Location& site, std::int64_t period_s, const ValueLocator& locator,
                     FindingList& findings)
    : site_(site),
      period_s_(period_s),
      locator_(locator),
      findings_(findings),
      work_(has_sun_column(locator) && is_known(site.latitude_deg) && is_known(site.elevation_m) &&
            (period_s == day_s || is_known(site.longitude_deg))) {
  if (work_) skies_.resize(days_of_year * static_cast<std::size_t>(day_s / period_s_));
}

SunChecks::Sky SunChecks::day_sky(int day_of_year) const {
  const SunDay day{.latitude_deg = site_.latitude_deg, .day_of_year = day_of_year};
  const double ra = extraterrestrial_radiation_mj_m2_d(day);
  return {ra, clear_sky_radiation({.ra = ra, .elevation_m = site_.elevation_m}), noonleaf::daylight_h(day)};
}

SunChecks::Sky SunChecks::hour_sky(int day_of_year, std::int64_t into_day_s) const {
  const double length_h = static_cast<double>(period_s_) / 3600.0;
  const double middle_h = static_cast<double>(into_day_s) / 3600.0 + length_h / 2.0;
  const double angle = solar_time_angle_rad({.clock_h = middle_h,
                                             .zone_meridian_deg = 0.0,  // the stamps are in UTC
                                             .longitude_deg = site_.longitude_deg,
                                             .day_of_year = day_of_year});
  const double ra = extraterrestrial_radiation_mj_m2_h(
      {.latitude_deg = site_.latitude_deg, .day_of_year = day_of_year, .time_angle_rad = angle}, length_h);
  return {ra, clear_sky_radiation({.ra = ra, .elevation_m = site_.elevation_m}), length_h};
}

// Rows of one year follow each other, so that the year is looked up once for all of them.
void SunChecks::turn_to_year_of(std::int64_t day) {
  const std::chrono::year_month_day date{std::chrono::sys_days(std::chrono::days(day))};
  const std::chrono::sys_days first = date.year() / std::chrono::January / 1;
  const std::chrono::sys_days next = (date.year() + std::chrono::years(1)) / std::chrono::January / 1;
  year_begin_ = first.time_since_epoch().count();
  year_end_ = next.time_since_epoch().count();
}

const SunChecks::Sky& SunChecks::sky_at(std::int64_t begin_s) {
  const std::int64_t day = (begin_s >= 0 ? begin_s : begin_s - (day_s - 1)) / day_s;
  if (day < year_begin_ || day >= year_end_) turn_to_year_of(day);
  const auto day_of_year_j = static_cast<int>(day - year_begin_) + 1;
  const std::int64_t into_day_s = begin_s - day * day_s;
  const std::int64_t periods = day_s / period_s_;
  const std::int64_t period =
      is_day() ? 0 : (into_day_s + period_s_ / 2) / period_s_ % periods;  // the nearest, for odd minutes
  Sky& sky = skies_[static_cast<std::size_t>(day_of_year_j * periods + period)];
  if (is_missing(sky.ra))
    sky = is_day() ? day_sky(day_of_year_j) : hour_sky(day_of_year_j, period * period_s_);
  return sky;
}

void SunChecks::check(TableRow& row) {
  const bool has_value = is_known(row.values[slot(Q::rs)]) || is_known(row.values[slot(Q::sunshine)]);
  if (!work_ || !has_value) return;
  const Sky& sky = sky_at(row.stamp.seconds);
  check_radiation(row, sky);
  if (is_day()) check_sunshine(row, sky);
}

void SunChecks::check_radiation(TableRow& row, const Sky& sky) {
  double& rs = row.values[slot(Q::rs)];
  if (is_missing(rs)) return;
  const double limit = is_day() ? sky.ra + ra_margin_day : sky.ra * ra_share_hour + ra_margin_hour;
  if (sky.ra == 0.0 && !is_day() && rs > night_mj_m2_h) {
    if (night_rows_++ == 0) first_night_ = row.place;
    return;
  }
  if (rs > limit) {
    const bool dropped = findings_.set_aside("rs_above_ra", [&] {
      return locator_.at(row.place, Q::rs,
                         rounded_text(rs, 2) + " MJ/m2 is above the " + rounded_text(sky.ra, 2) +
                             " that reach the top of the atmosphere here; taken as missing",
                         "check the unit, the site and the clock of the logger");
    });
    if (dropped) rs = missing;
    return;
  }
  if (is_day() && rs > sky.rso * clear_sky_share + ra_margin_day)
    findings_.doubt("rs_above_clear_sky", [&] {
      return locator_.at(
          row.place, Q::rs,
          rounded_text(rs, 2) + " MJ/m2 is above the clear-sky value " + rounded_text(sky.rso, 2) + "; used",
          "check the calibration of the sensor if this is often so");
    });
  note_envelope(rs, sky);
}

void SunChecks::note_envelope(double rs, const Sky& sky) {
  if (sky.rso < (is_day() ? sun_up_day : sun_up_hour)) return;
  ++envelope_rows_;
  highest_share_ = std::max(highest_share_, rs / sky.rso);
}

void SunChecks::check_sunshine(TableRow& row, const Sky& sky) {
  double& sunshine = row.values[slot(Q::sunshine)];
  if (!(sunshine > sky.daylight_h + sunshine_margin_h)) return;
  const bool dropped = findings_.set_aside("sunshine_above_daylight", [&] {
    return locator_.at(row.place, Q::sunshine,
                       rounded_text(sunshine, 2) + " h is more than the day is long, " +
                           rounded_text(sky.daylight_h, 2) + " h; taken as missing",
                       "check the unit and the site");
  });
  if (dropped) sunshine = missing;
}

void SunChecks::finish() {
  if (night_rows_ > 0)
    findings_.doubt("rs_at_night", [&] {
      return locator_.at(first_night_, Q::rs,
                         "radiation while the sun is down, here and in " + std::to_string(night_rows_ - 1) +
                             " more rows; used",
                         "check the zone, the offset and which end of its period a time marks");
    });
  if (envelope_rows_ < (is_day() ? envelope_days : envelope_hours) || highest_share_ >= lowest_envelope)
    return;
  findings_.doubt("rs_below_clear_sky", [&] {
    return locator_.at_column(Q::rs,
                              "in " + std::to_string(envelope_rows_) + " rows never above " +
                                  rounded_text(highest_share_ * 100, 0) + " % of the clear-sky value; used",
                              "clean and level the sensor, or check its unit");
  });
}

void check_pressure(const Location& site, const std::vector<TableRow>& first_rows,
                    const ValueLocator& locator, FindingList& findings) {
  if (is_missing(site.elevation_m) || !locator.quantities().test(slot(Q::pressure))) return;
  std::vector<double> values;
  for (const TableRow& row : first_rows)
    if (is_known(row.values[slot(Q::pressure)])) values.push_back(row.values[slot(Q::pressure)]);
  if (values.size() < fewest_pressures) return;
  const auto half = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), half, values.end());
  const double expected = atmospheric_pressure_kpa(site.elevation_m);
  if (std::abs(*half - expected) <= pressure_margin_kpa) return;
  findings.doubt("pressure_at_elevation", [&] {
    return locator.at_column(Q::pressure,
                             "the middle of the values is " + rounded_text(*half, 1) + " kPa; at " +
                                 rounded_text(site.elevation_m, 0) + " m it should be about " +
                                 rounded_text(expected, 1) + " kPa; used",
                             "see whether it is reduced to sea level, and leave the column out if so");
  });
}

}  // namespace v1
}  // namespace noonleaf
