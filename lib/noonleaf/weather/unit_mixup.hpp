#pragma once

#include <span>

#include "noonleaf/weather/csv_table.hpp"
#include "noonleaf/weather/finding_list.hpp"
#include "noonleaf/weather/value_checks.hpp"

namespace noonleaf {
inline namespace v1 {

/// The quantities whose column cannot be in the unit of its header, by the middle value of the first rows.
/// Each is found once, for the whole column; what is only nearly so is doubted and not among the result.
WeatherQuantities find_unit_mixups(std::span<const TableRow> first_rows, WeatherStep step,
                                   const ValueLocator& locator, FindingList& findings);

}  // namespace v1
}  // namespace noonleaf
