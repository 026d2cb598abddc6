#include "noonleaf/weather/zone_database.hpp"

#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include <date/tz.h>

#include "noonleaf/error.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

Error zone_error(std::string_view typed, std::string message, std::string fix) {
  Problem problem;
  problem.field = "zone";
  problem.text = typed;
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  return Error(std::move(problem));
}

/// The database is opened within a static of our own: the date library locks too, but out of sight of a thread
/// sanitizer, which would then see a race at every first use.
const date::tzdb& zone_database() {
  static const date::tzdb& database = [&]() -> const date::tzdb& {
    try {
      return date::get_tzdb();
    } catch (const std::runtime_error&) {
      throw zone_error("", "this machine has no time zone database", "install the Debian package tzdata");
    }
  }();
  return database;
}

std::string nearest_zone(std::string_view typed) {
  std::vector<std::string> names;
  for (const date::time_zone& zone : zone_database().zones) names.push_back(zone.name());
  return nearest_name(typed, names);
}

}  // namespace

const date::time_zone& zone_named(std::string_view name) {
  if (name.empty())
    throw zone_error("", "the time zone of the site is needed", "name it like America/Chicago");
  zone_database();
  try {
    return *date::locate_zone(std::string(name));
  } catch (const std::runtime_error&) {
    const std::string nearest = nearest_zone(name);
    throw zone_error(
        name, in_quotes(name) + " is not a time zone of the IANA database",
        nearest.empty() ? "write it like \"America/Chicago\"" : "did you mean " + in_quotes(nearest) + "?");
  }
}

}  // namespace v1
}  // namespace noonleaf
