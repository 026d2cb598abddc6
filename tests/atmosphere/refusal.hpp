#pragma once

#include <string>

#include "noonleaf/error.hpp"

/// Predicate for BOOST_CHECK_EXCEPTION: the first problem names this field.
struct NamesField {
  std::string field;
  bool operator()(const noonleaf::Error& error) const { return error.problems().front().field == field; }
};
