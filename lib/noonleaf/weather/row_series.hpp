#pragma once

#include <span>
#include <vector>

#include "noonleaf/atmosphere/daily_weather.hpp"
#include "noonleaf/weather/csv_table.hpp"
#include "noonleaf/weather/finding_list.hpp"
#include "noonleaf/weather/value_checks.hpp"

namespace noonleaf {
inline namespace v1 {

/// Whether `second`, of the same day or hour as `kept`, agrees with it; then it fills what `kept` lacks. The
/// finding "duplicate" is recorded either way.
void settle_duplicate(TableRow& kept, const TableRow& second, const ValueLocator& locator,
                      FindingList& findings);

/// Sorts rows by their stamps and settles duplicates, so that each stamp is there once.
void sort_rows(std::vector<TableRow>& rows, const ValueLocator& locator, FindingList& findings);

/// A daily row as the library's struct.
DailyWeather daily_weather(const TableRow& row);

}  // namespace v1
}  // namespace noonleaf
