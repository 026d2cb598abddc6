#pragma once

#include <string>
#include <vector>

#include "noonleaf/error.hpp"

/// Predicate for BOOST_CHECK_EXCEPTION: the first problem names this field.
struct NamesField {
  std::string field;
  bool operator()(const noonleaf::Error& error) const { return error.problems().front().field == field; }
};

/// The fields an Error names, in order; empty when nothing was refused.
template <class Action>
std::vector<std::string> refused_fields(Action action) {
  std::vector<std::string> fields;
  try {
    action();
  } catch (const noonleaf::Error& error) {
    for (const noonleaf::Problem& problem : error.problems()) fields.push_back(problem.field);
  }
  return fields;
}

/// The problems for which something is refused, as a person reads them; empty when nothing was refused.
template <class Action>
std::string refusal_text(Action action) {
  try {
    action();
  } catch (const noonleaf::Error& error) {
    return noonleaf::describe(error.problems());
  }
  return {};
}
