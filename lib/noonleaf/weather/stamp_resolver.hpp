#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "noonleaf/error.hpp"
#include "noonleaf/weather/csv_table.hpp"
#include "noonleaf/weather/row_source.hpp"
#include "noonleaf/weather/site_zone.hpp"

namespace noonleaf {
inline namespace v1 {

/// The length of a table's rows: the step that is most frequent among their stamps, or what begin and end
/// stamps say. An hour where there is one row only. Throws    Error when the step is no period that an hour
/// or a day is made of
std::chrono::seconds period_length(std::span<const TableRow> rows, const RowSource& source);

/// Brings stamps to the begin of their period, in UTC. Rows come in the order of the file: where clocks go
/// back and a time is there twice, the order tells which is meant.
class StampResolver {
 public:
  StampResolver(const RowSource& source, std::chrono::seconds length, const std::string& zone);

  /// Sets row.stamp to the begin of the period in UTC (offset 0).
  /// Result    false where the stamp does not exist; its problem is kept
  /// Throws    Error when a stamp carries no offset and no zone is known
  bool resolve(TableRow& row);

  std::vector<Problem> take_problems();

 private:
  std::optional<std::int64_t> utc_s(const LocalStamp& stamp, RowPlace place);

  const RowSource& source_;
  std::int64_t length_s_;
  std::string zone_name_;
  std::optional<SiteZone> zone_;
  std::int64_t last_s_;
  std::vector<Problem> problems_;
};

}  // namespace v1
}  // namespace noonleaf
