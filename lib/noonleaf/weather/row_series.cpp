#include "noonleaf/weather/row_series.hpp"

#include <algorithm>
#include <string>

#include "noonleaf/missing.hpp"
#include "noonleaf/weather/daily_members.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

// The first quantity on which two rows disagree.
std::optional<WeatherQuantity> disagreement(const WeatherValues& first, const WeatherValues& second) {
  for (std::size_t index = 0; index < first.size(); ++index)
    if (is_known(first[index]) && is_known(second[index]) && first[index] != second[index])
      return static_cast<WeatherQuantity>(index);
  return std::nullopt;
}

}  // namespace

void settle_duplicate(TableRow& kept, const TableRow& second, const ValueLocator& locator,
                      FindingList& findings) {
  const std::string first_line = "line " + std::to_string(kept.place.line);
  if (const auto quantity = disagreement(kept.values, second.values)) {
    // Two rows cannot both be used: the user's leave lets the message pass, not the second row.
    findings.set_aside("duplicate", [&] {
      return locator.at(second.place, quantity,
                        "a second row for the same time disagrees with " + first_line + "; the first is used",
                        "keep the row that is right");
    });
    return;
  }
  findings.doubt("duplicate", [&] {
    return locator.at(second.place, std::nullopt,
                      "a second row for the same time as " + first_line + "; it says nothing else",
                      "delete one of them");
  });
  for (std::size_t index = 0; index < kept.values.size(); ++index)
    if (is_missing(kept.values[index])) kept.values[index] = second.values[index];
}

void sort_rows(std::vector<TableRow>& rows, const ValueLocator& locator, FindingList& findings) {
  const auto earlier = [](const TableRow& a, const TableRow& b) { return a.stamp.seconds < b.stamp.seconds; };
  if (!std::is_sorted(rows.begin(), rows.end(), earlier)) {
    const auto first = std::is_sorted_until(rows.begin(), rows.end(), earlier);
    findings.doubt("out_of_order", [&] {
      return locator.at(first->place, std::nullopt,
                        "this row is earlier than the one before; the rows were sorted",
                        "nothing, or sort the file by date");
    });
    std::stable_sort(rows.begin(), rows.end(), earlier);
  }
  std::size_t kept = 0;
  for (std::size_t index = 1; index < rows.size(); ++index) {
    if (rows[index].stamp.seconds == rows[kept].stamp.seconds) {
      settle_duplicate(rows[kept], rows[index], locator, findings);
    } else {
      rows[++kept] = rows[index];
    }
  }
  if (!rows.empty()) rows.resize(kept + 1);
}

DailyWeather daily_weather(const TableRow& row) {
  DailyWeather day;
  day.date =
      std::chrono::year_month_day(std::chrono::sys_days(std::chrono::days(row.stamp.seconds / 86'400)));
  for (std::size_t index = 0; index < daily_members.size(); ++index)
    day.*daily_members[index] = row.values[index];
  return day;
}

}  // namespace v1
}  // namespace noonleaf
