#include "noonleaf/weather/checks.hpp"

#include <array>

namespace noonleaf {
inline namespace v1 {
namespace {

// FAO-56 annex 5, "Measuring and assessing integrity of weather data", and ASCE-EWRI (2005) appendix D,
// "Weather data integrity assessment and station siting", name what to look at; where they print no number,
// the number is ours and said so. Both are cited from memory, without page.
constexpr std::array checks{
    QualityCheck{
        "range",
        "a value outside what the open air of Earth can show: air temperature and dew point -60 to 60 °C, "
        "humidity below 0 %, vapour pressure 0.001 to 8 kPa, wind 0 to 60 m/s, solar radiation 0 to 45 "
        "MJ/m2 a day (0 to 5 an hour), sunshine 0 to 24 h, pressure 50 to 110 kPa, rain 0 to 2,000 mm",
        "set aside", "limits ours, from the weather extremes archive of the WMO and its margins"},
    QualityCheck{
        "unusual",
        "a value inside the range that hardly any garden sees: below -45 or above 50 °C, a dew point above "
        "32 °C, a day's mean wind above 20 m/s, more than 300 mm of rain a day (100 an hour)",
        "used", "ours"},
    QualityCheck{"tmin_above_tmax", "a lowest temperature above the highest of the same day",
                 "both set aside", "FAO-56, annex 5; ASCE-EWRI 2005, appendix D"},
    QualityCheck{"tmean_outside", "a mean temperature more than 0.1 °C outside lowest and highest",
                 "the mean is set aside", "by definition"},
    QualityCheck{"rh_above_100",
                 "a relative humidity above 100 %: sensors read a little high in saturated air",
                 "above 105 % set aside; to 105 % used", "ASCE-EWRI 2005, appendix D; the 105 % is ours"},
    QualityCheck{"rhmin_above_rhmax", "a lowest humidity above the highest of the same day", "both set aside",
                 "by definition"},
    QualityCheck{"rhmean_outside", "a mean humidity more than 1 % outside lowest and highest",
                 "the mean is set aside", "by definition"},
    QualityCheck{
        "dew_above_air",
        "a dew point more than 0.5 °C above the day's highest (the hour's) temperature: air does not stay "
        "supersaturated",
        "the dew point is set aside", "FAO-56, annex 5; ASCE-EWRI 2005, appendix D; the margin is ours"},
    QualityCheck{
        "ea_above_saturation",
        "a vapour pressure more than 3 % above saturation at the day's highest (the hour's) temperature",
        "the vapour pressure is set aside", "FAO-56, annex 5; the margin is ours"},
    QualityCheck{"rs_above_ra",
                 "solar radiation above what reaches the top of the atmosphere at the site that day (hour)",
                 "set aside", "FAO-56, annex 5; ASCE-EWRI 2005, appendix D; Ra by FAO-56 eq. 21 and 28"},
    QualityCheck{"rs_above_clear_sky", "a day's solar radiation above 1.1 times the clear-sky value Rso",
                 "used",
                 "FAO-56, annex 5; ASCE-EWRI 2005, appendix D; Rso by FAO-56 eq. 37; the 1.1 is ours"},
    QualityCheck{
        "rs_below_clear_sky",
        "no day in 60 or more within 80 % of the clear-sky value Rso: a dirty, tilted or misread sensor, "
        "or a unit mixed up",
        "used", "FAO-56, annex 5; ASCE-EWRI 2005, appendix D (the upper envelope); the numbers are ours"},
    QualityCheck{"rs_below_zero", "solar radiation from -15 to below 0 W/m2: the zero of the sensor at night",
                 "taken as 0, said once with its count", "ASCE-EWRI 2005, appendix D; the limit is ours"},
    QualityCheck{"rs_at_night", "more than 20 W/m2 in an hour with the sun wholly below the horizon",
                 "used, said once with its count: look at the zone, the offset and the end that stamps mark",
                 "ASCE-EWRI 2005, appendix D; the number is ours"},
    QualityCheck{"sunshine_above_daylight", "more sunshine than the day is long, by over 0.5 h", "set aside",
                 "FAO-56, eq. 34; the margin is ours"},
    QualityCheck{"stuck",
                 "the same value again and again: 6 days (wind, humidity, pressure, temperatures) or 4 days "
                 "(radiation "
                 "and rain above 0); 24 hours; humidity of 98 % and more does not count",
                 "used", "FAO-56, annex 5; the lengths are ours"},
    QualityCheck{
        "spike",
        "one day's highest or lowest temperature 20 °C off both neighbours, or one hour's 10 °C, on the same "
        "side",
        "used", "ours"},
    QualityCheck{"gap", "days (hours) without a row between the first and the last",
                 "missing; what is interpolated is said", "FAO-56, annex 5"},
    QualityCheck{"interpolated", "hours filled between their neighbours, up to the stated length", "used",
                 "ours"},
    QualityCheck{"incomplete_day", "a day that some of its hours do not cover",
                 "the quantity is missing that day; rain is summed from three quarters of the day on",
                 "ours"},
    QualityCheck{
        "duplicate", "a second row for the same day (hour)",
        "where it disagrees the second is set aside; where it agrees it only fills what the first lacks",
        "ours"},
    QualityCheck{"out_of_order", "rows that do not run forward in time",
                 "sorted where the file is read whole", "ours"},
    QualityCheck{"unit_mixup",
                 "a column whose middle value cannot be in the unit of its header: Fahrenheit or kelvin as "
                 "Celsius, W/m2 "
                 "as MJ/m2, hPa or inHg as kPa, a share as per cent, mm as inches; nearly so is doubtful",
                 "the whole column is set aside; used where only doubtful",
                 "after FAO-56, annex 5; the numbers are ours"},
    QualityCheck{
        "pressure_at_elevation",
        "a middle pressure more than 3 kPa off the one that belongs to the site's elevation: often pressure "
        "reduced to sea level",
        "used", "FAO-56, eq. 7; the number is ours"},
    QualityCheck{"flagged", "a value that the publisher's own quality flag rejects (open formats)",
                 "set aside", "the format's description"},
    QualityCheck{"files_disagree", "two files with different measured values for the same day",
                 "the file named first is used", "ours"},
};

}  // namespace

std::span<const QualityCheck> quality_checks() { return checks; }

std::vector<Problem> problems_of(std::span<const Finding> findings) {
  std::vector<Problem> problems;
  problems.reserve(findings.size());
  for (const Finding& finding : findings) problems.push_back(finding.problem);
  return problems;
}

}  // namespace v1
}  // namespace noonleaf
