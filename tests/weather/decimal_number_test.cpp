#include "noonleaf/weather/decimal_number.hpp"

#include <charconv>
#include <cmath>
#include <cstdint>
#include <string>

#include <boost/test/unit_test.hpp>

namespace {

// In a place where enough bytes behind the text can be read.
bool read_plain(std::string text, char mark, double& value) {
  const std::size_t length = text.size();
  text.resize(length + 16, '7');
  return noonleaf::plain_decimal(text.data(), text.data() + length, mark, value);
}

}  // namespace

BOOST_AUTO_TEST_SUITE(decimal_number)

BOOST_AUTO_TEST_CASE(the_fast_path_rounds_as_from_chars_does) {
  std::uint64_t state = 88172645463325252ULL;  // xorshift, fixed seed
  for (int count = 0; count < 200'000; ++count) {
    state ^= state << 13U;
    state ^= state >> 7U;
    state ^= state << 17U;
    const std::uint64_t range = (state >> 40U) % 2 == 0 ? 1'000'000'000'000'000ULL : 10'000'000ULL;
    std::string text = std::to_string(state % range);
    const std::size_t place = static_cast<std::size_t>(state >> 60U) % (text.size() + 1);
    text.insert(place, ".");
    if ((state >> 59U) & 1U) text.insert(0, "-");
    double expected = 0.0, value = 0.0;
    const auto parsed = std::from_chars(text.data(), text.data() + text.size(), expected);
    BOOST_REQUIRE((parsed.ec == std::errc{}));
    BOOST_REQUIRE(read_plain(text, '.', value));
    BOOST_REQUIRE_EQUAL(value, expected);
  }
}

BOOST_AUTO_TEST_CASE(the_fast_path_leaves_the_rest_alone) {
  double value = 0.0;
  for (const char* text :
       {"", "-", ".", "-.", "x", "+1", "1234567890123456", "0.0000000000000001", "1.2.3", "1,5", "1.5 ",
        "12x", "--1", "1234567.1.2", "12:45", "1/2", "1\xC3\xA9", "99999\xC3\xA9"})
    BOOST_TEST(!read_plain(text, '.', value), text);
  BOOST_TEST(read_plain("1,5", ',', value));
  BOOST_TEST(value == 1.5);
  BOOST_TEST(read_plain("99999999", '.', value));
  BOOST_TEST(value == 99999999.0);
  BOOST_TEST(read_plain("-0.", '.', value));
  BOOST_TEST(std::signbit(value));
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
