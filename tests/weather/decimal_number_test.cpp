#include "noonleaf/weather/decimal_number.hpp"

#include <charconv>
#include <cstdint>
#include <string>

#include <boost/test/unit_test.hpp>

BOOST_AUTO_TEST_SUITE(decimal_number)

BOOST_AUTO_TEST_CASE(the_fast_path_rounds_as_from_chars_does) {
  std::uint64_t state = 88172645463325252ULL;  // xorshift, fixed seed
  for (int count = 0; count < 200'000; ++count) {
    state ^= state << 13U;
    state ^= state >> 7U;
    state ^= state << 17U;
    const std::uint64_t digits = state % 1'000'000'000'000'000ULL;
    std::string text = std::to_string(digits);
    const std::size_t place = static_cast<std::size_t>(state >> 60U) % (text.size() + 1);
    text.insert(place, ".");
    if ((state >> 59U) & 1U) text.insert(0, "-");
    double expected = 0.0, value = 0.0;
    const auto parsed = std::from_chars(text.data(), text.data() + text.size(), expected);
    BOOST_REQUIRE((parsed.ec == std::errc{}));
    const char* end = noonleaf::plain_decimal(text.c_str(), '.', value);
    BOOST_REQUIRE(end == text.c_str() + text.size());
    BOOST_REQUIRE_EQUAL(value, expected);
  }
}

BOOST_AUTO_TEST_CASE(the_fast_path_leaves_the_rest_alone) {
  double value = 0.0;
  for (const char* text : {"", "-", ".", "-.", "x", "+1", "1234567890123456", "0.0000000000000001"})
    BOOST_TEST((noonleaf::plain_decimal(text, '.', value) == nullptr), text);
  const char* comma = "1,5";
  BOOST_TEST(*noonleaf::plain_decimal(comma, '.', value) == ',');
  BOOST_TEST(*noonleaf::plain_decimal(comma, ',', value) == '\0');
  BOOST_TEST(value == 1.5);
}

BOOST_AUTO_TEST_CASE(the_careful_path_reads_numbers_and_nothing_else) {
  BOOST_TEST(*noonleaf::parse_decimal("+1.5", '.') == 1.5);
  BOOST_TEST(*noonleaf::parse_decimal("1.5e-3", '.') == 0.0015);
  BOOST_TEST(*noonleaf::parse_decimal("1,5", ',') == 1.5);
  BOOST_TEST(*noonleaf::parse_decimal("0.30000000000000004441", '.') == 0.30000000000000004);
  for (const char* text : {"", "nan", "NaN", "inf", "infinity", "1x", "x1", "+", "+-1", "-+1", "1e", "1e999",
                           "0x1", "1 2", "1.2.3", "1,5"})
    BOOST_TEST(!noonleaf::parse_decimal(text, '.').has_value(), text);
}

BOOST_AUTO_TEST_SUITE_END()
