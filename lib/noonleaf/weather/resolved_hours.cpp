#include "noonleaf/weather/resolved_hours.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace noonleaf {
inline namespace v1 {

bool ResolvedHours::next_block(std::vector<TableRow>& rows) {
  if (!checked_.next_block(rows)) {
    if (sun_) sun_->finish();
    sun_.reset();
    return false;
  }
  if (!resolver_) {
    resolver_.emplace(checked_.source(), checked_.length(), options_.zone);
    sun_.emplace(options_.site, checked_.length().count(), checked_.source(), checked_.findings());
  }
  const auto unresolved = [this](TableRow& row) { return !resolver_->resolve(row); };
  rows.erase(std::remove_if(rows.begin(), rows.end(), unresolved), rows.end());
  for (TableRow& row : rows) sun_->check(row);
  return true;
}

std::vector<Problem> ResolvedHours::take_problems() {
  std::vector<Problem> problems = checked_.take_problems();
  if (resolver_) {
    std::vector<Problem> stamps = resolver_->take_problems();
    std::move(stamps.begin(), stamps.end(), std::back_inserter(problems));
  }
  return problems;
}

void note_incomplete_days(std::vector<std::string> incomplete, const RowSource& source,
                          FindingList& findings) {
  for (std::string& sentence : incomplete)
    findings.doubt("incomplete_day", [&] {
      return source.at({}, std::nullopt, std::move(sentence), "add the hours if you have them");
    });
}

}  // namespace v1
}  // namespace noonleaf
