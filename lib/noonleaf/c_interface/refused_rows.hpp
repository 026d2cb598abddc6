#pragma once

#include <cstddef>
#include <functional>

#include "noonleaf/atmosphere/column.hpp"
#include "noonleaf/c_interface/guarded.hpp"

namespace noonleaf::c_interface {

/// Rows in words; beyond them a row is only numbered: a column in the wrong unit refuses a million rows.
inline constexpr std::size_t rows_in_words = 1000;

/// The problem of one row, which it names.
Problem of_row(Problem problem, std::size_t row);

/// Hands the refused rows of a batch over.
///
/// Input     try_row  works one row out by the door of one value, which throws an Error that names the field
/// Result    noonleaf_done or noonleaf_rows_refused
noonleaf_status hand_over_rows(noonleaf_problems** wanted, const BadRows& rows,
                               const std::function<void(std::size_t)>& try_row);

}  // namespace noonleaf::c_interface
