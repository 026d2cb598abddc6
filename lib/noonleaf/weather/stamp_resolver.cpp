#include "noonleaf/weather/stamp_resolver.hpp"

#include <limits>
#include <map>
#include <string>
#include <utility>

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::int64_t hour_s = 3600, day_s = 86'400, longest_period_s = 6 * hour_s;

// Where a stamp lies, near enough to compare neighbours.
std::int64_t rough_utc(const LocalStamp& stamp) {
  return stamp.seconds - (stamp.offset ? stamp.offset->count() : 0);
}

bool is_usual_period(std::int64_t seconds) {
  return seconds >= 60 && seconds <= longest_period_s &&
         (hour_s % seconds == 0 || (seconds % hour_s == 0 && day_s % seconds == 0));
}

}  // namespace

std::chrono::seconds period_length(std::span<const TableRow> rows, const RowSource& source) {
  if (const auto known = source.length()) return *known;
  std::map<std::int64_t, std::size_t> steps;
  for (std::size_t index = 0; index < rows.size(); ++index) {
    const TableRow& row = rows[index];
    if (row.end_stamp) {
      ++steps[rough_utc(*row.end_stamp) - rough_utc(row.stamp)];
    } else if (index > 0) {
      const std::int64_t step = rough_utc(row.stamp) - rough_utc(rows[index - 1].stamp);
      if (step > 0) ++steps[step];
    }
  }
  std::int64_t best = hour_s;
  std::size_t most = 0;
  for (const auto& [step, count] : steps) {
    if (count <= most) continue;
    best = step;
    most = count;
  }
  if (is_usual_period(best)) return std::chrono::seconds{best};
  std::string fix =
      best == day_s
          ? "name the column date and write dates alone, like 2026-07-04"
          : "export the file in steps of 1 to 60 minutes that make up an hour, or of 1, 2, 3, 4 or 6 hours";
  throw Error(source.at(
      rows.empty() ? RowPlace{} : rows.front().place, std::nullopt,
      "rows are " + std::to_string(best / 60) + " minutes apart as a rule, which is no period that is read",
      std::move(fix)));
}

StampResolver::StampResolver(const RowSource& source, std::chrono::seconds length, const std::string& zone)
    : source_(source),
      length_s_(length.count()),
      zone_name_(zone),
      last_s_(std::numeric_limits<std::int64_t>::min()) {
  if (!zone.empty()) zone_.emplace(zone);
}

bool StampResolver::resolve(TableRow& row) {
  auto begin = utc_s(row.stamp, row.place);
  if (!begin) return false;
  if (source_.stamps() == StampMark::period_end) *begin -= length_s_;
  row.stamp.seconds = last_s_ = *begin;
  row.stamp.offset = std::chrono::seconds{0};
  return true;
}

std::optional<std::int64_t> StampResolver::utc_s(const LocalStamp& stamp, RowPlace place) {
  if (stamp.offset) return stamp.seconds - stamp.offset->count();
  if (!zone_) {
    Problem found =
        source_.at(place, std::nullopt, "times carry no offset from UTC, and no zone is known",
                   "say the zone of the clock that wrote them, like --zone America/Chicago; Etc/UTC for UTC");
    found.field = "time";
    throw Error(std::move(found));
  }
  const SiteZone::Moments moments = zone_->utc_s(stamp.seconds);
  if (moments.count == 1) return moments.first;
  if (moments.count == 2) {
    const std::int64_t shift = source_.stamps() == StampMark::period_end ? length_s_ : 0;
    return moments.first - shift > last_s_ ? moments.first : moments.second;
  }
  if (problems_.size() < problems_kept) {
    Problem found = source_.at(
        place, std::nullopt, "this time does not exist in " + zone_name_ + ": clocks went forward over it",
        "if the logger keeps one time all year, write its offset or name a zone like Etc/GMT+6");
    found.field = "time";
    problems_.push_back(std::move(found));
  }
  return std::nullopt;
}

std::vector<Problem> StampResolver::take_problems() { return std::exchange(problems_, {}); }

}  // namespace v1
}  // namespace noonleaf
