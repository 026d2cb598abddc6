#include "noonleaf/garden/rule_tables.hpp"

#include <array>
#include <string>

#include "noonleaf/calendar_text.hpp"
#include "noonleaf/garden/quantity_units.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::array<std::string_view, 3> parity_words{"any", "odd", "even"};
constexpr AcceptedRange sketch_range{-1000, 1000, "m"};
constexpr AcceptedRange side_range{0, 1000, "m", AcceptedRange::Low::excluded};
constexpr AcceptedRange level_range{0, 10, "(a level)"};
constexpr AcceptedRange frost_c_range{-20, 15, "°C"};
constexpr AcceptedRange frost_f_range{-4, 59, "°F"};
constexpr AcceptedRange wind_range{0.5, 20, "m/s"};

/// "05-01" as a day of every year. 29 February is one.
std::optional<std::chrono::month_day> parse_month_day(std::string_view text) {
  const auto date = parse_iso_date("2024-" + std::string(text));  // a leap year
  if (!date) return std::nullopt;
  return std::chrono::month_day{date->month(), date->day()};
}

std::optional<YearlySeason> read_season(TomlTable& table) {
  const auto text = table.text("season");
  if (!text) return std::nullopt;
  const std::size_t slash = text->find('/');
  const auto first = parse_month_day(text->substr(0, slash));
  const auto last =
      slash == std::string::npos ? std::nullopt : parse_month_day(std::string_view(*text).substr(slash + 1));
  if (first && last) return YearlySeason{*first, *last};
  table.refuse("season", "this is not the first and the last day of a season",
               "write month and day twice: season = \"05-01/09-30\"");
  return std::nullopt;
}

std::bitset<7> read_weekdays(TomlTable& table) {
  std::bitset<7> weekdays;
  if (!table.has("weekdays")) return weekdays.set();
  for (const std::string& text : table.texts("weekdays")) {
    if (const auto parsed = parse_weekly_hours(text + " 00:00-24:00")) {
      weekdays |= parsed->weekdays;
    } else {
      table.refuse("weekdays", "\"" + text + "\" does not say weekdays",
                   "write the days on which water may run: weekdays = [\"tue\", \"sat\"] or [\"mon-fri\"]");
    }
  }
  return weekdays;
}

void read_exemptions(TomlTable& table, WateringRestriction& restriction) {
  for (const std::string& text : table.texts("exempt")) {
    if (text == "hand") {
      restriction.exempt_hand = true;
    } else if (text == "drip") {
      restriction.exempt_drip = true;
    } else {
      table.refuse("exempt", "\"" + text + "\" is nothing that can be exempt",
                   "write exempt = [\"hand\", \"drip\"], or one of them; drip includes soaker hoses");
    }
  }
}

WateringRestriction read_restriction(TomlTable& table) {
  WateringRestriction restriction;
  restriction.name = table.required_text("name", "city stage 2");
  restriction.weekdays = read_weekdays(table);
  restriction.dates =
      std::array{DateParity::any, DateParity::odd, DateParity::even}[table.choice("dates", parity_words)];
  restriction.hours = read_hours(table, "hours");
  restriction.season = read_season(table);
  restriction.drought_level = static_cast<int>(table.number("drought_level", level_range).value_or(0));
  restriction.from = table.date("from");
  restriction.until = table.date("until");
  if (restriction.from && restriction.until && *restriction.until < *restriction.from) {
    table.refuse("until", "the restriction ends before it begins", "check both dates");
  }
  read_exemptions(table, restriction);
  table.refuse_unknown_keys();
  return restriction;
}

/// A temperature has an offset between its units, so it cannot go by a factor.
double read_frost_lockout_c(TomlTable& table, double usual_c) {
  const auto celsius = table.number("frost_lockout_c", frost_c_range);
  const auto fahrenheit = table.number("frost_lockout_f", frost_f_range);
  if (celsius && fahrenheit) {
    table.refuse("frost_lockout_f", "frost_lockout_c is given too", "keep one of the two");
  }
  if (celsius) return *celsius;
  return fahrenheit ? celsius_from_fahrenheit(*fahrenheit) : usual_c;
}

}  // namespace

std::vector<WeeklyHours> read_hours(TomlTable& table, std::string_view key) {
  std::vector<WeeklyHours> hours;
  for (const std::string& text : table.texts(key)) {
    if (const auto parsed = parse_weekly_hours(text)) {
      hours.push_back(*parsed);
    } else {
      table.refuse(key, "\"" + text + "\" does not say days and hours",
                   "write it like \"mon-fri 06:00-14:30\", \"sat,sun 08:00-12:00\" or \"daily 05:00-09:00\"");
    }
  }
  return hours;
}

std::vector<DatedSpan> read_spans(TomlTable& table, std::string_view key) {
  std::vector<DatedSpan> spans;
  for (const std::string& text : table.texts(key)) {
    const std::size_t space = text.find(' ');
    const std::string dates = text.substr(0, space);
    const std::size_t slash = dates.find('/');
    const auto first = parse_iso_date(std::string_view(dates).substr(0, slash));
    const auto last =
        slash == std::string::npos ? first : parse_iso_date(std::string_view(dates).substr(slash + 1));
    if (first && last && *first <= *last) {
      spans.push_back({space == std::string::npos ? std::string{} : text.substr(space + 1), *first, *last});
    } else {
      table.refuse(key, "\"" + text + "\" does not say a day or a first and a last day",
                   "write it like \"2025-07-04 Independence Day\" or \"2025-12-22/2026-01-02 winter break\"");
    }
  }
  return spans;
}

std::optional<SketchPlace> read_place(TomlTable& table) {
  auto place = table.table("place");
  if (!place) return std::nullopt;
  SketchPlace result;
  result.x_m = place->quantity("x", elevation_units, sketch_range).value_or(missing);
  result.y_m = place->quantity("y", elevation_units, sketch_range).value_or(missing);
  result.width_m = place->quantity("width", elevation_units, side_range).value_or(missing);
  result.length_m = place->quantity("length", elevation_units, side_range).value_or(missing);
  if (is_missing(result.x_m) || is_missing(result.y_m)) {
    place->refuse_table("a place on the sketch needs x and y",
                        "write place = { x_m = 0, y_m = 2, width_m = 4, length_m = 1.2 } or the same in _ft");
  }
  place->refuse_unknown_keys();
  return result;
}

Landmark read_landmark(TomlTable& table) {
  Landmark landmark;
  landmark.name = table.required_text("name", "gate");
  landmark.name_es = table.text("name_es").value_or(std::string{});
  if (const auto place = read_place(table)) {
    landmark.place = *place;
  } else if (!table.has("place")) {
    table.refuse_table("\"place\" is missing: where is it on the sketch?",
                       "add place = { x_m = 0, y_m = 2 }");
  }
  table.refuse_unknown_keys();
  return landmark;
}

WateringRules read_rules(TomlTable& table) {
  WateringRules rules;
  rules.allowed_hours = read_hours(table, "allowed_hours");
  rules.quiet_hours = read_hours(table, "quiet_hours");
  rules.holidays = read_spans(table, "holidays");
  rules.quiet_calendars = table.texts("quiet_calendars");
  rules.holiday_calendars = table.texts("holiday_calendars");
  rules.drought_level = static_cast<int>(table.number("drought_level", level_range).value_or(0));
  rules.frost_lockout_c = read_frost_lockout_c(table, rules.frost_lockout_c);
  rules.wind_limit_m_s = table.quantity("wind_limit", wind_units, wind_range).value_or(rules.wind_limit_m_s);
  for (TomlTable& restriction : table.tables("restriction")) {
    rules.restrictions.push_back(read_restriction(restriction));
  }
  table.refuse_unknown_keys();
  return rules;
}

}  // namespace v1
}  // namespace noonleaf
