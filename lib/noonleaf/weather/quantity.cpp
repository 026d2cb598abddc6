#include "noonleaf/weather/quantity.hpp"

#include <array>

#include "noonleaf/units.hpp"
#include "noonleaf/weather/unit_conversion.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Q = WeatherQuantity;

constexpr UnitConversion fahrenheit{32.0, 5.0, 9.0};
constexpr UnitConversion miles_per_hour{0.0, m_per_mile, 3600.0};
constexpr UnitConversion kilometres_per_hour{0.0, 1.0, 3.6};
constexpr UnitConversion knots{0.0, m_per_nautical_mile, 3600.0};
constexpr UnitConversion inches{0.0, mm_per_inch, 1.0};
constexpr UnitConversion hectopascals{0.0, 1.0, 10.0};
constexpr UnitConversion inches_of_mercury{0.0, kpa_per_inch_mercury, 1.0};
constexpr UnitConversion watts_per_day{0.0, 0.0864, 1.0};  // 86 400 s, W to MJ

struct ColumnRow {
  WeatherColumn column;
  UnitConversion conversion;
};

constexpr std::array rows{
    ColumnRow{{"tmax_c", Q::t_max, "°C", "highest air temperature"}, {}},
    ColumnRow{{"tmax_f", Q::t_max, "°F", "highest air temperature"}, fahrenheit},
    ColumnRow{{"tmin_c", Q::t_min, "°C", "lowest air temperature"}, {}},
    ColumnRow{{"tmin_f", Q::t_min, "°F", "lowest air temperature"}, fahrenheit},
    ColumnRow{{"tmean_c", Q::t_mean, "°C", "mean air temperature"}, {}},
    ColumnRow{{"tmean_f", Q::t_mean, "°F", "mean air temperature"}, fahrenheit},
    ColumnRow{{"t_c", Q::t_mean, "°C", "air temperature"}, {}},
    ColumnRow{{"t_f", Q::t_mean, "°F", "air temperature"}, fahrenheit},
    ColumnRow{{"rhmax_pct", Q::rh_max, "%", "highest relative humidity"}, {}},
    ColumnRow{{"rhmin_pct", Q::rh_min, "%", "lowest relative humidity"}, {}},
    ColumnRow{{"rh_pct", Q::rh_mean, "%", "mean relative humidity"}, {}},
    ColumnRow{{"tdew_c", Q::t_dew, "°C", "dew point"}, {}},
    ColumnRow{{"tdew_f", Q::t_dew, "°F", "dew point"}, fahrenheit},
    ColumnRow{{"ea_kpa", Q::ea, "kPa", "actual vapour pressure"}, {}},
    ColumnRow{{"wind_m_s", Q::wind, "m/s", "mean wind speed"}, {}},
    ColumnRow{{"wind_mph", Q::wind, "mph", "mean wind speed"}, miles_per_hour},
    ColumnRow{{"wind_km_h", Q::wind, "km/h", "mean wind speed"}, kilometres_per_hour},
    ColumnRow{{"wind_kn", Q::wind, "kn", "mean wind speed"}, knots},
    ColumnRow{{"rs_mj_m2", Q::rs, "MJ/m2", "solar radiation, sum"}, {}},
    ColumnRow{{"rs_w_m2", Q::rs, "W/m2", "solar radiation, mean"}, watts_per_day},
    ColumnRow{{"sunshine_h", Q::sunshine, "h", "hours of bright sunshine"}, {}},
    ColumnRow{{"pressure_kpa", Q::pressure, "kPa", "air pressure at the site"}, {}},
    ColumnRow{{"pressure_hpa", Q::pressure, "hPa", "air pressure at the site"}, hectopascals},
    ColumnRow{{"pressure_inhg", Q::pressure, "inHg", "air pressure at the site"}, inches_of_mercury},
    ColumnRow{{"rain_mm", Q::rain, "mm", "rain, and snow as water"}, {}},
    ColumnRow{{"rain_in", Q::rain, "in", "rain, and snow as water"}, inches},
};

constexpr std::array<WeatherColumn, rows.size()> columns_of_rows() {
  std::array<WeatherColumn, rows.size()> columns{};
  for (std::size_t index = 0; index < rows.size(); ++index) columns[index] = rows[index].column;
  return columns;
}

constexpr std::array<WeatherColumn, rows.size()> columns = columns_of_rows();

}  // namespace

std::span<const WeatherColumn> weather_columns() { return columns; }

std::string_view canonical_name(WeatherQuantity quantity) {
  constexpr std::array<std::string_view, weather_quantity_count> names{
      "tmax_c", "tmin_c",   "tmean_c",  "rhmax_pct",  "rhmin_pct",    "rh_pct", "tdew_c",
      "ea_kpa", "wind_m_s", "rs_mj_m2", "sunshine_h", "pressure_kpa", "rain_mm"};
  return names[static_cast<std::size_t>(quantity)];
}

UnitConversion unit_conversion(std::size_t weather_column) { return rows[weather_column].conversion; }

}  // namespace v1
}  // namespace noonleaf
