#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/missing.hpp"
#include "noonleaf/plan/sky.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// Where the weather of a member's day is from.
enum class MemberDayFrom {
  measured,    ///< no error
  forecast,    ///< the forecast with an error that grows with its lead
  past_years,  ///< the same season of a past year of the user's own files
  this_year,   ///< no past year on file: days of the last weeks
  last_days    ///< not even that: the last day known, with the largest error
};

/// How many weathers are tried, and which.
struct MemberOptions {
  std::size_t members = 1000;  ///< at least 1
  std::uint64_t seed = 1;      ///< the same seed, the same weathers on every machine
};

/// How wrong a forecast is, one standard deviation, and how far it is believed about rain; by lead: 1 is the
/// day on whose morning it is read.
///
/// Source    ours. The temperature is of the size that weather services print for their daily maximum (mean
///           error about 1.5 °C for tomorrow and 3 °C after a week; from memory); nobody printed the others
///           for a garden
struct ForecastError {
  double t_max_c;         ///< added
  double t_min_c;         ///< added
  double ea_log;          ///< of the logarithm
  double rs_log;          ///< of the logarithm
  double u2_log;          ///< of the logarithm
  double rain_log;        ///< of the amount, where its rain falls
  double rain_kept_frac;  ///< chance that the day's rain is the forecast's; else the season's
};
/// Equation, input, result: see ForecastError.
ForecastError forecast_error(int lead_d);

/// Weather of many members over the same days. Columns by day and member: [day * members + member].
struct MemberSky {
  std::size_t members = 0;            ///< columns of each day
  std::size_t days = 0;               ///< rows
  std::chrono::sys_days first{};      ///< the day of row 0
  std::vector<MemberDayFrom> from{};  ///< by day
  int past_years = 0;                 ///< how many years the traces were taken from
  std::size_t traces = 0;             ///< how many different stretches of days there were to draw from
  std::vector<double> t_max_c{};      ///< highest of the day
  std::vector<double> t_min_c{};      ///< lowest of the day
  std::vector<double> ea_kpa{};       ///< actual vapour pressure
  std::vector<double> rs_mj_m2_d{};   ///< solar radiation
  std::vector<double> u2_m_s{};       ///< wind at 2 m
  std::vector<double> rain_mm{};      ///< on the site
  std::vector<double> et0_mm_d{};     ///< reference ET of that weather
};

/// Draws the members' weather.
///
/// Method    A day with measurements, today at most: as measured. A day of the forecast: its values with
///           forecast_error, the errors of successive days correlated by 0.7 (ours); the high never within 1
///           °C of the low, the sun never above the clear sky, the vapour pressure never above saturation at
///           the mean temperature. Behind the forecast, and for the share of forecast rain that is not
///           believed: a stretch of days of the sky itself, one for each member and the same for all its
///           days, starting up to 7 days before or after the date in any past year; ET0 of forecast days by
///           FAO-56 eq. 6. Which of several equally long stretches is left to the draw.
/// Input     date  the first day; n_days 1 and up; the sky reaches the date
/// Result    The same numbers for the same seed, whatever is asked besides: member m's number for a quantity
///           on a day stands at an address of its own (draws.hpp)
/// Note      What lies in the files after `date` is taken for a forecast, whoever wrote it.
MemberSky member_sky(const Site& site, const Sky& sky, std::chrono::year_month_day date, std::size_t n_days,
                     const MemberOptions& options = {});

}  // namespace v1
}  // namespace noonleaf
