#include "noonleaf/weather/value_checks.hpp"

#include <array>
#include <cmath>
#include <utility>

#include "noonleaf/atmosphere/vapour.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/weather/rounded_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Q = WeatherQuantity;

constexpr std::size_t slot(Q quantity) { return static_cast<std::size_t>(quantity); }

// Outside low and high a value cannot be true; outside usual_low and usual_high it is said.
struct Limits {
  double low, high, usual_low, usual_high;
};
using LimitTable = std::array<Limits, weather_quantity_count>;

// In the order of WeatherQuantity; humidity above 100 % has a check of its own.
constexpr Limits air{-60, 60, -45, 50};
constexpr Limits humidity{0, 105, 0, 100};
constexpr LimitTable day_limits{air,
                                air,
                                air,
                                humidity,
                                humidity,
                                humidity,
                                {-60, 60, -45, 32},
                                {0.001, 8, 0.001, 8},
                                {0, 60, 0, 20},
                                {0, 45, 0, 45},
                                {0, 24, 0, 24},
                                {50, 110, 50, 110},
                                {0, 2000, 0, 300}};
constexpr LimitTable hour_limits{air,
                                 air,
                                 air,
                                 humidity,
                                 humidity,
                                 humidity,
                                 {-60, 60, -45, 32},
                                 {0.001, 8, 0.001, 8},
                                 {0, 60, 0, 30},
                                 {0, 5, 0, 5},
                                 {0, 1, 0, 1},
                                 {50, 110, 50, 110},
                                 {0, 500, 0, 100}};

constexpr double dew_margin_c = 0.5, ea_share = 1.03;
constexpr double tmean_margin_c = 0.1, rhmean_margin_pct = 1.0;
constexpr double lowest_zero_mj_m2_h = -15 * 0.0036;  // -15 W/m2

const LimitTable& limits_of(WeatherStep step) { return step == WeatherStep::day ? day_limits : hour_limits; }

// Written so that a missing value is within.
bool within_usual(double value, const Limits& limits) {
  return !(value < limits.usual_low) && !(value > limits.usual_high);
}

constexpr std::array codes_for_missing{-9999.0, -999.9, -999.0, -99.9,   -99.0,
                                       999.0,   999.9,  9999.0, 99999.0, -6999.0};

bool is_code_for_missing(double value) {
  for (const double code : codes_for_missing)
    if (value == code) return true;
  return false;
}

// What the number would be if its unit were the one most often mixed up with it.
std::string unit_hint(Q quantity, double value, const std::string& unit) {
  if (unit == "°C" && value > 60 && value < 140)
    return "check the logger's unit; " + number_text(value) + " °F would be " +
           rounded_text((value - 32) / 1.8, 1) + " °C";
  if (unit == "°C" && value > 200 && value < 340)
    return "check the logger's unit; " + number_text(value) + " K would be " +
           rounded_text(value - 273.15, 1) + " °C";
  if (quantity == Q::pressure && unit == "kPa" && value > 500 && value < 1100)
    return "check the unit; " + number_text(value) + " hPa would be " + number_text(value / 10) +
           " kPa: name the column pressure_hpa";
  if (quantity == Q::rs && unit == "MJ/m2" && value > 45 && value < 1500)
    return "check the unit; a mean in W/m2 belongs in a column named rs_w_m2";
  return "correct the cell, or leave it empty";
}

}  // namespace

ValueChecks::ValueChecks(WeatherStep step, const ValueLocator& locator, FindingList& findings)
    : step_(step), locator_(locator), findings_(findings) {
  for (std::size_t index = 0; index < weather_quantity_count; ++index) {
    if (!locator.quantities().test(index)) continue;
    const Limits& limits = limits_of(step)[index];
    usual_.push_back({index, limits.usual_low, limits.usual_high});
  }
}

bool ValueChecks::looks_wrong(const WeatherValues& v) const {
  bool wrong = false;  // gathered rather than left early: no branch to guess
  for (const Usual& usual : usual_) wrong |= v[usual.slot] < usual.low || v[usual.slot] > usual.high;
  const double t_max = v[slot(Q::t_max)], t_min = v[slot(Q::t_min)], t_mean = v[slot(Q::t_mean)];
  const double rh_max = v[slot(Q::rh_max)], rh_min = v[slot(Q::rh_min)], rh_mean = v[slot(Q::rh_mean)];
  wrong |= t_min > t_max || t_mean > t_max || t_mean < t_min;
  wrong |= rh_min > rh_max || rh_mean > rh_max || rh_mean < rh_min;
  return wrong || v[slot(Q::t_dew)] > air_temperature(v) || is_above_saturation(v);
}

// The warmest air that the row knows.
double ValueChecks::air_temperature(const WeatherValues& values) const {
  return values[slot(step_ == WeatherStep::day ? Q::t_max : Q::t_mean)];
}

bool ValueChecks::is_above_saturation(const WeatherValues& values) const {
  const double ea = values[slot(Q::ea)], t_c = air_temperature(values);
  if (is_missing(ea) || !(t_c >= air.low && t_c <= air.high)) return false;
  return ea > saturation_vapour_pressure_kpa(t_c) * ea_share;
}

void ValueChecks::explain(WeatherValues& values, RowPlace place) {
  check_zero_of_radiation(values, place);
  for (std::size_t index = 0; index < values.size(); ++index)
    check_range(static_cast<Q>(index), values, place);
  for (const Q quantity : {Q::rh_max, Q::rh_min, Q::rh_mean}) check_humidity(quantity, values, place);
  check_pair(Q::t_min, Q::t_max, "tmin_above_tmax", values, place);
  check_mean(Q::t_mean, Q::t_min, Q::t_max, "tmean_outside", values, place);
  check_pair(Q::rh_min, Q::rh_max, "rhmin_above_rhmax", values, place);
  check_mean(Q::rh_mean, Q::rh_min, Q::rh_max, "rhmean_outside", values, place);
  check_dew(values, place);
}

// A value as the file has it, with its unit.
std::string ValueChecks::shown(Q quantity, double value) const {
  const double in_file = locator_.conversion(quantity).to_file(value);
  return rounded_text(in_file, 6) + " " + locator_.unit(quantity);
}

void ValueChecks::drop(Q quantity, std::string_view check, std::string message, std::string fix,
                       WeatherValues& values, RowPlace place) {
  const auto make = [&] { return locator_.at(place, quantity, std::move(message), std::move(fix)); };
  if (findings_.set_aside(check, make)) values[slot(quantity)] = missing;
}

void ValueChecks::check_range(Q quantity, WeatherValues& values, RowPlace place) {
  const double value = values[slot(quantity)];
  const Limits& limits = limits_of(step_)[slot(quantity)];
  const bool humid =
      limits.high == humidity.high && limits.low == humidity.low && value > humidity.usual_high;
  if (within_usual(value, limits) || humid) return;
  const bool impossible = value < limits.low || value > limits.high;
  const UnitConversion conversion = locator_.conversion(quantity);
  const double in_file = conversion.to_file(value);
  const double low = impossible ? limits.low : limits.usual_low,
               high = impossible ? limits.high : limits.usual_high;
  const std::string range = rounded_text(conversion.to_file(low), 3) + " to " +
                            rounded_text(conversion.to_file(high), 3) + " " + locator_.unit(quantity);
  if (!impossible) {
    findings_.doubt("unusual", [&] {
      return locator_.at(place, quantity, shown(quantity, value) + " is unusual: outside " + range + "; used",
                         "check the instrument and the unit of the column");
    });
    return;
  }
  const double plain = std::round(in_file * 1e6) / 1e6;
  std::string fix = is_code_for_missing(plain) ? "leave the cell empty where the value is missing"
                                               : unit_hint(quantity, plain, locator_.unit(quantity));
  drop(quantity, "range", number_text(plain) + " is outside " + range + "; taken as missing", std::move(fix),
       values, place);
}

void ValueChecks::check_humidity(Q quantity, WeatherValues& values, RowPlace place) {
  const double value = values[slot(quantity)];
  if (!(value > humidity.usual_high)) return;
  const std::string text = number_text(value) + " % is above 100 %";
  if (value > humidity.high) {
    std::string fix = is_code_for_missing(value)
                          ? "leave the cell empty where the value is missing"
                          : "calibrate the sensor; correct the cell, or leave it empty";
    drop(quantity, "rh_above_100", text + " by more than a sensor errs; taken as missing", std::move(fix),
         values, place);
    return;
  }
  findings_.doubt("rh_above_100", [&] {
    return locator_.at(place, quantity, text + "; used as saturated air",
                       "calibrate the sensor if this is often so");
  });
}

void ValueChecks::check_pair(Q low, Q high, std::string_view check, WeatherValues& values, RowPlace place) {
  const double low_value = values[slot(low)], high_value = values[slot(high)];
  if (!(low_value > high_value)) return;
  const auto make = [&] {
    const std::string name(canonical_name(high));
    return locator_.at(place, low,
                       shown(low, low_value) + " is above " + name + " of the same day, " +
                           shown(high, high_value) + "; both taken as missing",
                       "correct the row: the columns may be swapped");
  };
  if (findings_.set_aside(check, make)) values[slot(low)] = values[slot(high)] = missing;
}

void ValueChecks::check_mean(Q mean, Q low, Q high, std::string_view check, WeatherValues& values,
                             RowPlace place) {
  const double margin = mean == Q::t_mean ? tmean_margin_c : rhmean_margin_pct;
  const double value = values[slot(mean)], lowest = values[slot(low)], highest = values[slot(high)];
  if (!(value > highest + margin) && !(value < lowest - margin)) return;
  const bool above = value > highest;
  drop(mean, check,
       shown(mean, value) +
           (above ? " is above the highest of the same day, " : " is below the lowest of the same day, ") +
           (above ? shown(high, highest) : shown(low, lowest)) + "; taken as missing",
       "correct the cell, or leave it empty", values, place);
}

void ValueChecks::check_dew(WeatherValues& values, RowPlace place) {
  const Q air_quantity = step_ == WeatherStep::day ? Q::t_max : Q::t_mean;
  const double dew = values[slot(Q::t_dew)], highest = values[slot(air_quantity)];
  if (dew > highest + dew_margin_c)
    drop(Q::t_dew, "dew_above_air",
         shown(Q::t_dew, dew) + " is above the air temperature, " + shown(air_quantity, highest) +
             "; taken as missing",
         "correct the cell, or leave it empty", values, place);
  if (is_above_saturation(values))
    drop(Q::ea, "ea_above_saturation",
         shown(Q::ea, values[slot(Q::ea)]) + " is more than air of " + shown(air_quantity, highest) +
             " holds, " + rounded_text(saturation_vapour_pressure_kpa(highest), 3) + " kPa; taken as missing",
         "correct the cell, or leave it empty", values, place);
}

void ValueChecks::check_zero_of_radiation(WeatherValues& values, RowPlace place) {
  double& rs = values[slot(Q::rs)];
  const double lowest = step_ == WeatherStep::day ? lowest_zero_mj_m2_h * 24 : lowest_zero_mj_m2_h;
  if (!(rs < 0) || rs < lowest) return;
  rs = 0.0;
  if (below_zero_++ == 0) first_below_zero_ = place;
}

void ValueChecks::finish() {
  if (below_zero_ == 0) return;
  findings_.doubt("rs_below_zero", [&] {
    return locator_.at(
        first_below_zero_, Q::rs,
        "slightly below 0 here and in " + std::to_string(below_zero_ - 1) + " more rows; taken as 0",
        "nothing, or correct the zero of the sensor");
  });
}

}  // namespace v1
}  // namespace noonleaf
