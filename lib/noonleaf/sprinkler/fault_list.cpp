#include "noonleaf/sprinkler/fault_list.hpp"

#include <string>
#include <utility>

#include "noonleaf/missing.hpp"

namespace noonleaf {
inline namespace v1 {
namespace {

constexpr std::string_view range_fix = "give a value within the range, in the unit named";

std::string with_unit(std::string text, std::string_view unit) {
  if (!unit.empty()) text += " " + std::string(unit);
  return text;
}

Problem fault(std::string_view field, double value, std::string message) {
  Problem problem;
  problem.field = field;
  problem.text = is_known(value) ? number_text(value) : "";
  problem.message = std::move(message);
  problem.fix = range_fix;
  return problem;
}

}  // namespace

void FaultList::within(std::string_view field, double value, double low, double high, std::string_view unit) {
  if (value >= low && value <= high) return;
  const std::string what = is_known(value) ? number_text(value) + " is outside " : "missing; it has to be ";
  problems_.push_back(
      fault(field, value, with_unit(what + number_text(low) + " to " + number_text(high), unit)));
}

void FaultList::within_or_missing(std::string_view field, double value, double low, double high,
                                  std::string_view unit) {
  if (is_known(value)) within(field, value, low, high, unit);
}

void FaultList::positive(std::string_view field, double value, double high, std::string_view unit) {
  if (value > 0.0 && value <= high) return;
  const std::string what = is_known(value) ? number_text(value) + " is not " : "missing; it has to be ";
  problems_.push_back(
      fault(field, value, with_unit(what + "above 0 and at most " + number_text(high), unit)));
}

void FaultList::positive_or_missing(std::string_view field, double value, double high,
                                    std::string_view unit) {
  if (is_known(value)) positive(field, value, high, unit);
}

void FaultList::add(std::string_view field, std::size_t row, std::string_view message, std::string_view fix) {
  Problem problem;
  problem.field = field;
  problem.row = row;
  problem.message = message;
  problem.fix = fix;
  problems_.push_back(std::move(problem));
}

void FaultList::throw_if_any() const {
  if (!problems_.empty()) throw Error(problems_);
}

}  // namespace v1
}  // namespace noonleaf
