#pragma once

#include <array>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/weather/quantity.hpp"

namespace noonleaf {
inline namespace v1 {

/// The members of DailyWeather in the order of WeatherQuantity.
inline constexpr std::array<double DailyWeather::*, weather_quantity_count> daily_members{
    &DailyWeather::t_max_c,    &DailyWeather::t_min_c,    &DailyWeather::t_mean_c,
    &DailyWeather::rh_max_pct, &DailyWeather::rh_min_pct, &DailyWeather::rh_mean_pct,
    &DailyWeather::t_dew_c,    &DailyWeather::ea_kpa,     &DailyWeather::wind_m_s,
    &DailyWeather::rs_mj_m2_d, &DailyWeather::sunshine_h, &DailyWeather::pressure_kpa,
    &DailyWeather::rain_mm};

}  // namespace v1
}  // namespace noonleaf
