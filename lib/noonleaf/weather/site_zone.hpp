#pragma once

#include <cstdint>
#include <limits>
#include <string>

namespace date {
class time_zone;
}

namespace noonleaf {
inline namespace v1 {

/// The clock of a site. Seconds since 1970 on both sides: UTC, and what the wall clock shows.
///
/// The last interval of constant offset is remembered, so that a long file asks the zone database once in
/// half a year of rows.
class SiteZone {
 public:
  /// Throws    Error, field "zone", with the nearest known name; or when the machine has no zone database
  explicit SiteZone(const std::string& name);

  /// What the wall clock shows at a moment.
  std::int64_t local_s(std::int64_t utc_s);

  /// The moments at which the wall clock shows a time: one as a rule, two when clocks go back, none in the
  /// hour that is left out when they go forward (then `first` is the moment of the change).
  struct Moments {
    int count = 1;
    std::int64_t first = 0, second = 0;
  };
  Moments utc_s(std::int64_t local_s);

  const std::string& name() const { return name_; }

 private:
  void remember(std::int64_t utc_s);

  std::string name_;
  const date::time_zone* zone_;
  std::int64_t begin_ = std::numeric_limits<std::int64_t>::max();  // of the interval remembered, UTC
  std::int64_t end_ = std::numeric_limits<std::int64_t>::min();
  std::int64_t offset_ = 0;
};

}  // namespace v1
}  // namespace noonleaf
