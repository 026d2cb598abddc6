#pragma once

#include <string>
#include <vector>

#include "noonleaf/error.hpp"

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
