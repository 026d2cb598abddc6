#include "noonleaf/guard.hpp"

#include <string>

#include "noonleaf/error.hpp"

namespace noonleaf {
inline namespace v1 {

void require_within(std::string_view field, double value, double low, double high, std::string_view unit) {
  if (!(value < low) && !(value > high)) return;  // written so that NaN passes
  Problem problem;
  problem.field = field;
  problem.text = number_text(value);
  problem.message = problem.text + " is outside " + number_text(low) + " to " + number_text(high);
  if (!unit.empty()) problem.message += " " + std::string(unit);
  problem.fix = "give a value within the range, in the unit named";
  throw Error(std::move(problem));
}

}  // namespace v1
}  // namespace noonleaf
