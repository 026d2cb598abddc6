#include "noonleaf/nearest_name.hpp"

#include <array>

#include <boost/test/unit_test.hpp>

BOOST_AUTO_TEST_SUITE(nearest_name)

constexpr std::array<std::string_view, 4> crops{"tomato", "potato", "pepper_sweet", "squash_zucchini"};

BOOST_AUTO_TEST_CASE(finds_the_slip) {
  BOOST_TEST(noonleaf::nearest_name("tomatoe", crops) == "tomato");
  BOOST_TEST(noonleaf::nearest_name("tomaot", crops) == "tomato");
  BOOST_TEST(noonleaf::nearest_name("Pepper Sweet", crops) == "pepper_sweet");
}

BOOST_AUTO_TEST_CASE(stays_silent_when_nothing_is_near) {
  BOOST_TEST(noonleaf::nearest_name("helicopter", crops) == "");
  BOOST_TEST(noonleaf::nearest_name("", crops) == "");
  BOOST_TEST(noonleaf::nearest_name("ab", crops) == "");
}

BOOST_AUTO_TEST_CASE(a_very_long_name_is_cheap) {
  BOOST_TEST(noonleaf::nearest_name(std::string(1'000'000, 'x'), crops) == "");
}

BOOST_AUTO_TEST_SUITE_END()
