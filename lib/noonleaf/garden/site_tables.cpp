#include "noonleaf/garden/site_tables.hpp"

#include <array>

#include "noonleaf/garden/ground_tables.hpp"
#include "noonleaf/garden/quantity_units.hpp"
#include "noonleaf/garden/rule_tables.hpp"
#include "noonleaf/garden/zone.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::array<std::string_view, 2> unit_words{"metric", "us"};
constexpr std::array<std::string_view, 2> air_words{"humid", "arid"};
constexpr std::array<std::string_view, 2> setting_words{"interior", "coast"};
constexpr std::array<std::string_view, 2> language_words{"en", "es"};

constexpr std::array<std::string_view, 3> stamp_words{"unstated", "begin", "end"};
constexpr std::array<std::string_view, 3> date_words{"iso", "month_first", "day_first"};

constexpr AcceptedRange latitude_range{-90, 90, "degrees, north positive"};
constexpr AcceptedRange longitude_range{-180, 180, "degrees, east positive"};
constexpr AcceptedRange elevation_range{-430, 5000, "m"};  // the Dead Sea shore to the highest fields
constexpr AcceptedRange wind_height_range{0.5, 100, "m"};
constexpr AcceptedRange price_range{0, 1000, "per m3"};
constexpr AcceptedRange allowance_range{0, 1e9, "l"};
constexpr AcceptedRange tap_flow_range{0, 2000, "l/min", AcceptedRange::Low::excluded};

double required_number(TomlTable& table, std::string_view key, const AcceptedRange& range,
                       std::string_view example) {
  if (!table.has(key)) {
    table.refuse_table("\"" + std::string(key) + "\" is missing",
                       "add a line like " + std::string(key) + " = " + std::string(example));
  }
  return table.number(key, range).value_or(missing);
}

std::string read_zone(TomlTable& table, double longitude_deg) {
  std::string zone = table.required_text("zone", "America/Los_Angeles");
  if (zone.empty()) return zone;
  try {
    require_zone(zone);
    if (is_known(longitude_deg) && !zone_fits_longitude(zone, longitude_deg))
      table.refuse("longitude_deg", "this longitude is not where the clocks of " + zone + " are",
                   "east is positive; west of Greenwich, as in America, it begins with a minus");
  } catch (const Error& refused) {
    table.refuse("zone", refused.problems().front().message, refused.problems().front().fix);
  }
  return zone;
}

}  // namespace

Site read_site(TomlTable& table) {
  Site site;
  site.name = table.required_text("name", "School garden");
  site.location.latitude_deg = required_number(table, "latitude_deg", latitude_range, "46.07");
  site.location.longitude_deg = required_number(table, "longitude_deg", longitude_range, "-118.33");
  if (!table.has("elevation_m") && !table.has("elevation_ft")) {
    table.refuse_table("the elevation is missing", "add a line like elevation_m = 290 or elevation_ft = 950");
  }
  site.location.elevation_m = table.quantity("elevation", elevation_units, elevation_range).value_or(missing);
  site.zone = read_zone(table, site.location.longitude_deg);
  site.units = table.choice("units", unit_words) == 0 ? UnitSystem::metric : UnitSystem::us;
  site.air = table.choice("air", air_words) == 0 ? Dryness::humid : Dryness::arid;
  site.setting = table.choice("setting", setting_words) == 0 ? Setting::interior : Setting::coast;
  site.demo_date = table.date("demo_date");
  site.contact = table.text("contact").value_or(std::string{});
  site.contact_es = table.text("contact_es").value_or(std::string{});
  table.refuse_unknown_keys();
  return site;
}

WeatherOptions read_weather_options(TomlTable& table, Site& site) {
  WeatherOptions options;
  for (auto& [name, header] : table.text_pairs("columns")) options.columns[name] = header;
  const auto where = table.text_pairs("where");
  if (where.size() > 1)
    table.refuse("where", "more than one column is named", "keep one: where = { station = \"Seattle\" }");
  if (!where.empty()) options.where = RowFilter{where.front().first, where.front().second};
  options.ignore = table.texts("ignore");
  options.accept = table.texts("accept");
  options.stamps = std::array{StampMark::unstated, StampMark::period_begin,
                              StampMark::period_end}[table.choice("stamps", stamp_words)];
  options.date_order = std::array{DateOrder::iso, DateOrder::month_first,
                                  DateOrder::day_first}[table.choice("dates", date_words)];
  site.wind_height_m =
      table.quantity("wind_height", elevation_units, wind_height_range).value_or(site.wind_height_m);
  table.refuse_unknown_keys();
  return options;
}

Caretaker read_caretaker(TomlTable& table) {
  Caretaker caretaker;
  caretaker.id = table.required_text("id", "custodian");
  caretaker.role = table.required_text("role", "day custodian");
  caretaker.role_es = table.text("role_es").value_or(std::string{});
  caretaker.language = language_words[table.choice("language", language_words)];
  caretaker.hours = read_hours(table, "hours");
  caretaker.away = read_spans(table, "away");
  caretaker.works_on_holidays = table.yes_or_no("works_on_holidays").value_or(false);
  if (!table.has("hours")) {
    table.refuse_table("\"hours\" is missing: when is this person on site?",
                       "add hours = [\"mon-fri 06:00-14:30\"]");
  }
  table.refuse_unknown_keys();
  return caretaker;
}

Tap read_tap(TomlTable& table) {
  Tap tap;
  tap.id = table.required_text("id", "north");
  tap.name = table.text("name").value_or(tap.id);
  tap.name_es = table.text("name_es").value_or(std::string{});
  tap.reclaimed = table.yes_or_no("reclaimed").value_or(false);
  tap.place = read_place(table);
  tap.flow_l_min = table.quantity("flow", flow_units, tap_flow_range).value_or(missing);
  tap.salinity_ds_m = read_salinity_ds_m(table, "salinity_ds_m");
  tap.shared_flow_l_min = table.quantity("flow_with_others", flow_units, tap_flow_range).value_or(missing);
  if (tap.shared_flow_l_min > tap.flow_l_min) {
    table.refuse(table.has("flow_with_others_l_min") ? "flow_with_others_l_min" : "flow_with_others_gal_min",
                 "the tap cannot give more while others are open than alone",
                 "check which of the two is which");
  }
  table.refuse_unknown_keys();
  return tap;
}

WaterPrice read_water_price(TomlTable& table) {
  WaterPrice water;
  water.price_per_m3 = table.quantity("price_per", price_units, price_range).value_or(missing);
  water.monthly_allowance_l =
      table.quantity("monthly_allowance", supply_units, allowance_range).value_or(missing);
  water.currency = table.text("currency").value_or(water.currency);
  table.refuse_unknown_keys();
  return water;
}

}  // namespace v1
}  // namespace noonleaf
