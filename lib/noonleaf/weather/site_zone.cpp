#include "noonleaf/weather/site_zone.hpp"

#include <chrono>

#include <date/tz.h>

#include "noonleaf/weather/zone_database.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

using Seconds = std::chrono::seconds;

// Further from a change of the clocks than any offset is long.
constexpr std::int64_t margin_s = 26L * 3600;

}  // namespace

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
