#pragma once

#include <cmath>
#include <fstream>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/reference/missing_data.hpp"
#include "noonleaf/reference/penman_monteith.hpp"

#include "number_in.hpp"
#include "open_weather_file.hpp"

/// One year of one US Climate Reference Network station (WBAN 23907, 30.62 N, 98.08 W, about 400 m, natural
/// grassland), product daily01 of 2015: weather and measured soil moisture. The file stays beside the
/// project.
struct GrasslandDay {
  noonleaf::DailyWeather weather{};
  double et0_mm_d = noonleaf::missing, u2_m_s = noonleaf::missing, rh_min_pct = noonleaf::missing;
  double moisture_m3_m3 = noonleaf::missing;  ///< mean of 5 and 10 cm
};

inline GrasslandDay grassland_day(const std::string& line) {
  std::vector<double> cells;
  std::istringstream text(line);
  std::string date;
  std::getline(text, date, ',');
  for (std::string cell; std::getline(text, cell, ',');)
    cells.push_back(cell.empty() ? noonleaf::missing : number_in(cell));
  cells.resize(8, noonleaf::missing);
  GrasslandDay day;
  day.weather.date = noonleaf::parse_iso_date(date).value();
  day.weather.t_min_c = cells[0];
  day.weather.t_max_c = cells[1];
  day.weather.rh_min_pct = cells[2];
  day.weather.rh_max_pct = cells[3];
  day.weather.rs_mj_m2_d = cells[4];
  day.weather.rain_mm = cells[5];
  day.moisture_m3_m3 = (cells[6] + cells[7]) / 2;
  return day;
}

/// Seven days lack temperature: they take that of the day before (persistence). Two lack rain: none is taken;
/// soil moisture is missing on the same days, so they are not scored. No wind is observed: 2 m/s by the
/// ladder of FAO-56.
inline std::optional<std::vector<GrasslandDay>> grassland_2015() {
  const auto file = open_weather_file("climate_reference_daily_2015.csv");
  if (!file) return std::nullopt;
  std::ifstream in(*file);
  std::vector<GrasslandDay> days;
  std::string line;
  std::getline(in, line);
  while (std::getline(in, line)) {
    GrasslandDay day = grassland_day(line);
    if (!days.empty() && noonleaf::is_missing(day.weather.t_min_c + day.weather.t_max_c)) {
      day.weather.t_min_c = days.back().weather.t_min_c;
      day.weather.t_max_c = days.back().weather.t_max_c;
      day.weather.rh_min_pct = day.weather.rh_max_pct = noonleaf::missing;
    }
    if (noonleaf::is_missing(day.weather.rain_mm)) day.weather.rain_mm = 0;
    const noonleaf::Location station{.latitude_deg = 30.62, .longitude_deg = -98.08, .elevation_m = 400};
    const auto whole = noonleaf::complete_daily(day.weather, station);
    day.et0_mm_d = noonleaf::daily_et0_mm_d(whole, station);
    day.u2_m_s = whole.u2_m_s;
    day.rh_min_pct = whole.rh_min_pct;
    days.push_back(day);
  }
  return days;
}

/// How a line follows the measurement, over the days that have one.
struct Agreement {
  int n = 0;
  double correlation = 0, bias = 0, rmse = 0;
};
inline Agreement agreement(const std::vector<GrasslandDay>& days, const std::vector<double>& modelled) {
  Agreement out;
  double sm = 0, so = 0, smm = 0, soo = 0, smo = 0;
  for (std::size_t i = 0; i < days.size(); ++i) {
    const double o = days[i].moisture_m3_m3, m = modelled[i];
    if (noonleaf::is_missing(o)) continue;
    ++out.n;
    sm += m;
    so += o;
    smm += m * m;
    soo += o * o;
    smo += m * o;
  }
  const double n = out.n;
  out.bias = (sm - so) / n;
  out.rmse = std::sqrt((smm - 2 * smo + soo) / n);
  out.correlation = (smo - sm * so / n) / std::sqrt((smm - sm * sm / n) * (soo - so * so / n));
  return out;
}
