#include "noonleaf/garden/zone.hpp"

#include <stdexcept>
#include <vector>

#include <date/tz.h>

#include "noonleaf/error.hpp"
#include "noonleaf/nearest_name.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

std::string nearest_zone(std::string_view typed) {
  std::vector<std::string> names;
  for (const auto& zone : date::get_tzdb().zones) names.push_back(zone.name());
  return nearest_name(typed, names);
}

Error unknown_zone(std::string_view typed, const std::string& nearest) {
  Problem problem;
  problem.field = "zone";
  problem.text = typed;
  problem.message = "\"" + problem.text + "\" is not a time zone of the IANA database";
  problem.fix =
      nearest.empty() ? "write it like zone = \"America/Chicago\"" : "did you mean \"" + nearest + "\"?";
  return Error(std::move(problem));
}

const date::time_zone& find_zone(std::string_view name) {
  try {
    return *date::locate_zone(std::string(name));
  } catch (const std::runtime_error&) {
    std::string nearest;
    try {
      nearest = nearest_zone(name);
    } catch (const std::runtime_error&) {
      Problem problem;
      problem.field = "zone";
      problem.message = "this machine has no time zone database";
      problem.fix = "install the Debian package tzdata";
      throw Error(std::move(problem));
    }
    throw unknown_zone(name, nearest);
  }
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

}  // namespace v1
}  // namespace noonleaf
