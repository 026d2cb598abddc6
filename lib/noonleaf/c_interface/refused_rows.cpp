#include "noonleaf/c_interface/refused_rows.hpp"

#include <algorithm>
#include <iterator>
#include <memory>
#include <string>
#include <utility>

namespace noonleaf::c_interface {
namespace {

/// What is wrong in a row. Where the result has been written over the input there may be nothing left to see.
Problem row_problem(std::size_t row, const std::function<void(std::size_t)>& try_row) {
  Problem problem;
  problem.message = "a value is outside its accepted range";
  try {
    try_row(row);
  } catch (const Error& refused) {
    problem = refused.problems().front();
  }
  return of_row(std::move(problem), row);
}

}  // namespace

Problem of_row(Problem problem, std::size_t row) {
  problem.row = row;
  problem.message = "in row " + std::to_string(row) + ": " + problem.message;
  return problem;
}

noonleaf_status hand_over_rows(noonleaf_problems** wanted, const BadRows& rows,
                               const std::function<void(std::size_t)>& try_row) {
  if (rows.empty()) return noonleaf_done;
  if (wanted == nullptr) return noonleaf_rows_refused;
  auto list = std::make_unique<noonleaf_problems>();
  const std::size_t in_words = std::min(rows.size(), rows_in_words);
  for (std::size_t i = 0; i < in_words; ++i) list->problems.push_back(row_problem(rows[i], try_row));
  std::copy(std::next(rows.begin(), static_cast<std::ptrdiff_t>(in_words)), rows.end(),
            std::back_inserter(list->more_rows));
  *wanted = list.release();
  return noonleaf_rows_refused;
}

}  // namespace noonleaf::c_interface
