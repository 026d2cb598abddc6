#pragma once

#include <cmath>
#include <string>

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

/// A door takes both ends of the range that its header names, and refuses the next number beyond either, naming the
/// field. `door` calls it with one value and, for the rest, with values that are never refused.
template <class Door>
void check_accepted(const std::string& field, double low, double high, Door door) {
  BOOST_TEST_CONTEXT(field << " from " << low << " to " << high) {
    BOOST_CHECK_NO_THROW(door(low));
    BOOST_CHECK_NO_THROW(door(high));
    for (const double beyond : {std::nextafter(low, -HUGE_VAL), std::nextafter(high, HUGE_VAL)}) {
      BOOST_CHECK_EXCEPTION(door(beyond), noonleaf::Error, [&](const noonleaf::Error& error) {
        return error.problems().front().field == field;
      });
    }
  }
}

/// The same for a whole number.
template <class Door>
void check_accepted_whole(const std::string& field, int low, int high, Door door) {
  BOOST_TEST_CONTEXT(field << " from " << low << " to " << high) {
    BOOST_CHECK_NO_THROW(door(low));
    BOOST_CHECK_NO_THROW(door(high));
    for (const int beyond : {low - 1, high + 1}) {
      BOOST_CHECK_EXCEPTION(door(beyond), noonleaf::Error, [&](const noonleaf::Error& error) {
        return error.problems().front().field == field;
      });
    }
  }
}
