#include "noonleaf/atmosphere/accepted.hpp"

#include <string>
#include <utility>

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

}  // namespace v1
}  // namespace noonleaf
