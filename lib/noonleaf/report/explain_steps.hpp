#pragma once

#include <string>
#include <vector>

#include "noonleaf/garden/garden.hpp"
#include "noonleaf/plan/explanation.hpp"
#include "noonleaf/report/working.hpp"

namespace noonleaf {
inline namespace [[gnu::visibility("default")]] v1 {

/// A day's explanation and the garden it is about. Both must outlive it.
struct ExplainView {
  const Garden& garden;               ///< must outlive the view
  const DayExplanation& explanation;  ///< must outlive the view
};

/// One quantity of the calculation.
struct ExplainStep {
  std::string symbol{};    ///< as FAO-56 writes it: "Kcb"
  std::string meaning{};   ///< in words
  std::string unit{};      ///< empty where it has none
  double value = missing;  ///< what the calculation itself has
  std::string equation{};  ///< in symbols; empty = an input
  std::string numbers{};   ///< the equation with its numbers; empty where they alone do not lead to the value
  std::string source{};    ///< equation number and publication; for an input where it comes from
  std::vector<SymbolValue> inputs{};  ///< the symbols of the equation with their values
};

/// A part of the calculation: what is told before its steps, and the steps in their order.
struct ExplainPart {
  std::string title{};                   ///< heading
  std::vector<std::string> sentences{};  ///< what is told before the steps
  std::vector<ExplainStep> steps{};      ///< in the order of the working
};

/// The whole calculation in the order in which it is worked out: sky, each planting and its soil, the run.
///
/// Method    The tables of quantities (daily_et0_columns, growth_quantities, balance_quantities,
///           run_plan_terms) gone through row by row; each row's value comes from the detail struct. A
///           quantity that an earlier part has already told, with the same value, is not told again.
std::vector<ExplainPart> explain_parts(const ExplainView& view);

/// What was not measured on the way, a line each.
std::vector<std::string> explain_estimates(const ExplainView& view);

/// For programs: shape "noonleaf.explain" version 1 (docs/json.md).
std::string explain_json(const ExplainView& view);

}  // namespace v1
}  // namespace noonleaf
