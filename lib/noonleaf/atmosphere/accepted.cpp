#include "noonleaf/atmosphere/accepted.hpp"

#include <string>
#include <utility>

#include "noonleaf/atmosphere/column.hpp"
#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {

void require_ordered(std::string_view high_field, double high, std::string_view low_field, double low,
                     std::string_view unit) {
  if (!(high < low)) return;  // written so that NaN passes
  Problem problem;
  problem.field = high_field;
  problem.text = number_text(high);
  problem.message = problem.text + " is below " + std::string(low_field) + ", " + number_text(low) + " " +
                    std::string(unit);
  problem.fix = "check whether the two were swapped";
  throw Error(std::move(problem));
}

void require_length(std::string_view field, std::size_t length, std::size_t expected) {
  if (length == expected) return;
  Problem problem;
  problem.field = field;
  problem.message =
      "has " + std::to_string(length) + " rows where the first column has " + std::to_string(expected);
  problem.fix = "give every column one value a row, missing ones as NaN";
  throw Error(std::move(problem));
}

}  // namespace v1
}  // namespace noonleaf
