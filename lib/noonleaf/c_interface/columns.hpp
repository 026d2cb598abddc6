#pragma once

#include <chrono>
#include <cstddef>

#include "noonleaf/atmosphere/column.hpp"
#include "noonleaf/noonleaf.h"

namespace noonleaf::c_interface {

/// A caller's column as the cores take it.
/// Throws    CallRefused when it is not as long as the call has rows
ConstColumn column_of(const noonleaf_column& column, std::size_t rows, const char* member);

/// A column to be filled; no data = not wanted.
/// Throws    CallRefused when it is not as long as the call has rows, or its stride is 0
MutableColumn result_of(const noonleaf_result_column& column, std::size_t rows, const char* member);

/// Throws    CallRefused where there is no data, unless there are no rows
MutableColumn required_result(const noonleaf_result_column& column, const char* member);

/// Value i, or `otherwise` where there is no column.
double value_at(const ConstColumn& column, std::size_t i, double otherwise);
void put(const MutableColumn& column, std::size_t i, double value);

/// Throws    CallRefused for a day that the calendar does not have
std::chrono::year_month_day day_of(const noonleaf_date& date, const char* member);

/// All zero: none.
bool is_no_day(const noonleaf_date& date);

}  // namespace noonleaf::c_interface
