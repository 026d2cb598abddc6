#include "noonleaf/garden/zone.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

#include <date/tz.h>

#include "noonleaf/error.hpp"
#include "noonleaf/weather/zone_database.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

/// Abbreviations that people write; some of them are zones of the database too, without daylight saving.
struct ZoneAbbreviation {
  std::string_view standard, daylight, zone;
};
constexpr std::array<ZoneAbbreviation, 5> abbreviations{{
    {"PST", "PDT", "America/Los_Angeles"},
    {"MST", "MDT", "America/Denver (in most of Arizona America/Phoenix)"},
    {"CST", "CDT", "America/Chicago"},
    {"EST", "EDT", "America/New_York"},
    {"HST", "HDT", "Pacific/Honolulu"},
}};

void refuse_abbreviation(std::string_view name) {
  for (const ZoneAbbreviation& row : abbreviations) {
    if (name != row.standard && name != row.daylight) continue;
    Problem problem;
    problem.field = "zone";
    problem.text = name;
    problem.message = "\"" + problem.text + "\" does not say where, nor when clocks change";
    problem.fix = "write the name of the IANA database: " + std::string(row.zone);
    throw Error(std::move(problem));
  }
}

const date::time_zone& find_zone(std::string_view name) {
  refuse_abbreviation(name);
  return zone_named(name);
}

}  // namespace

void require_zone(std::string_view zone) { find_zone(zone); }

LocalTime local_time(std::string_view zone, std::chrono::sys_seconds now) {
  const auto local = find_zone(zone).to_local(now);
  const auto day = date::floor<date::days>(local);
  return {.date = std::chrono::year_month_day(
              std::chrono::sys_days(std::chrono::days(day.time_since_epoch().count()))),
          .time_of_day = std::chrono::floor<std::chrono::minutes>(local - day)};
}

double utc_offset_h(std::string_view zone, std::chrono::year_month_day date) {
  const date::local_seconds noon{std::chrono::sys_days(date).time_since_epoch() + std::chrono::hours(12)};
  const auto info = find_zone(zone).get_info(noon);
  return static_cast<double>(info.first.offset.count()) / 3600.0;
}

bool zone_fits_longitude(std::string_view zone, double longitude_deg) {
  if (zone.starts_with("Etc/")) return true;  // somebody's own choice, not a place
  const double solar_h = longitude_deg / 15;
  const double apart_h = std::remainder(utc_offset_h(zone, std::chrono::year{2025} / 1 / 15) - solar_h, 24);
  return std::abs(apart_h) <= most_hours_from_sun;
}

std::optional<ClockChange> clock_change_on(std::string_view zone, std::chrono::year_month_day date) {
  const date::time_zone& rules = find_zone(zone);
  const date::local_seconds midnight{std::chrono::sys_days(date).time_since_epoch()};
  const date::local_seconds next = midnight + std::chrono::hours(24);
  const auto before = rules.get_info(midnight).first;
  if (before.offset == rules.get_info(next).first.offset) return std::nullopt;
  const auto after = rules.get_info(before.end);
  const auto old_clock = before.end.time_since_epoch() + before.offset,
             new_clock = before.end.time_since_epoch() + after.offset;
  const auto begin = std::max(std::min(old_clock, new_clock), midnight.time_since_epoch());
  const auto end = std::min(std::max(old_clock, new_clock), next.time_since_epoch());
  if (begin >= end) return std::nullopt;
  return ClockChange{std::chrono::floor<std::chrono::minutes>(begin - midnight.time_since_epoch()),
                     std::chrono::ceil<std::chrono::minutes>(end - midnight.time_since_epoch())};
}

std::chrono::minutes elapsed(std::string_view zone, const LocalTime& from, const LocalTime& to) {
  const date::time_zone& rules = find_zone(zone);
  const auto moment = [&](const LocalTime& time) {
    const date::local_seconds local{std::chrono::sys_days(time.date).time_since_epoch() + time.time_of_day};
    return rules.to_sys(local, date::choose::earliest);
  };
  return std::chrono::floor<std::chrono::minutes>(moment(to) - moment(from));
}

}  // namespace v1
}  // namespace noonleaf
