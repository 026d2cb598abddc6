#include "noonleaf/weather/site_zone.hpp"

#include <algorithm>
#include <chrono>
#include <stdexcept>
#include <utility>
#include <vector>

#include <date/tz.h>

#include "noonleaf/error.hpp"
#include "noonleaf/nearest_name.hpp"
#include "noonleaf/weather/utf8_text.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Seconds = std::chrono::seconds;

// Further from a change of the clocks than any offset is long.
constexpr std::int64_t margin_s = 26 * 3600;

Problem zone_problem(std::string message, std::string fix) {
  Problem problem;
  problem.field = "zone";
  problem.message = std::move(message);
  problem.fix = std::move(fix);
  return problem;
}

}  // namespace

const date::time_zone& zone_named(const std::string& name) {
  if (name.empty())
    throw Error(zone_problem("the time zone of the site is needed", "name it like America/Chicago"));
  try {
    return *date::locate_zone(name);
  } catch (const std::runtime_error&) {
    std::vector<std::string> names;
    try {
      for (const auto& zone : date::get_tzdb().zones) names.push_back(zone.name());
    } catch (const std::runtime_error&) {
      throw Error(
          zone_problem("this machine has no time zone database", "install the Debian package tzdata"));
    }
    const std::string near = nearest_name(name, names);
    Problem problem =
        zone_problem(in_quotes(name) + " is not a time zone of the IANA database",
                     near.empty() ? "write it like \"America/Chicago\"" : "did you mean \"" + near + "\"?");
    problem.text = name;
    throw Error(std::move(problem));
  }
}

SiteZone::SiteZone(const std::string& name) : name_(name), zone_(&zone_named(name)) {}

void SiteZone::remember(std::int64_t utc_s) {
  const date::sys_info info = zone_->get_info(date::sys_seconds{Seconds{utc_s}});
  begin_ = info.begin.time_since_epoch().count();
  end_ = info.end.time_since_epoch().count();
  offset_ = info.offset.count();
}

std::int64_t SiteZone::local_s(std::int64_t utc_s) {
  if (utc_s < begin_ || utc_s >= end_) remember(utc_s);
  return utc_s + offset_;
}

SiteZone::Moments SiteZone::utc_s(std::int64_t local_s) {
  const std::int64_t guess = local_s - offset_;
  if (begin_ < end_ && guess - margin_s > begin_ && guess + margin_s < end_) return {1, guess, guess};
  const date::local_info info = zone_->get_info(date::local_seconds{Seconds{local_s}});
  const std::int64_t first = local_s - info.first.offset.count();
  if (info.result == date::local_info::unique) {
    remember(first);
    return {1, first, first};
  }
  if (info.result == date::local_info::ambiguous) return {2, first, local_s - info.second.offset.count()};
  const std::int64_t change = info.first.end.time_since_epoch().count();
  return {0, change, change};
}

}  // namespace v1
}  // namespace noonleaf
