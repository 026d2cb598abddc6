#pragma once

#include <string>

#include <boost/test/unit_test.hpp>

#include "number_in.hpp"

/// The number behind the first such key of a JSON answer.
inline double number_of(const std::string& json, const std::string& key) {
  const std::string mark = "\"" + key + "\": ";
  const std::size_t place = json.find(mark);
  BOOST_REQUIRE_MESSAGE(place != std::string::npos, key << " is not in " << json);
  return number_in(json.c_str() + place + mark.size());
}
