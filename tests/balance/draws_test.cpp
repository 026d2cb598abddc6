#include "noonleaf/balance/draws.hpp"

#include <array>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstring>
#include <limits>
#include <vector>

#include <Random123/philox.h>
#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/missing.hpp"

using noonleaf::DrawAddress;
using noonleaf::normal_draw;
using noonleaf::standard_normal_quantile;
using noonleaf::uniform_draw;

namespace {

using Words = std::array<std::uint32_t, 4>;

struct KnownAnswer {
  Words counter;
  std::array<std::uint32_t, 2> key;
  Words words;
};
std::ostream& operator<<(std::ostream& out, const KnownAnswer& row) {
  return out << "philox4x32 10, counter " << std::hex << row.counter[0] << std::dec;
}

// Random123 1.14, tests/kat_vectors, the three rows "philox4x32 10"; from memory, the Debian package leaves
// the file out. One wrong bit would change all of a row's words.
const std::vector<KnownAnswer> known_answers = {
    {{0, 0, 0, 0}, {0, 0}, {0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8}},
    {{0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff},
     {0xffffffff, 0xffffffff},
     {0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd}},
    {{0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344},
     {0xa4093822, 0x299f31d0},
     {0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1}},
};

double from_words(std::uint32_t low, std::uint32_t high) {
  const std::uint64_t bits = static_cast<std::uint64_t>(high) << 32 | low;
  return (static_cast<double>(bits >> 12) + 0.5) / 4503599627370496.0;
}

struct Printed {
  double p, z;
  const char* source;
};
std::ostream& operator<<(std::ostream& out, const Printed& row) {
  return out << row.source << ", p " << row.p;
}

const std::vector<Printed> printed = {
    {0.25, -0.6744897501960817, "AS 241, check values of PPND16 (from memory)"},
    {0.001, -3.090232306167814, "AS 241, check values of PPND16 (from memory)"},
    {1e-20, -9.262340089798408, "AS 241, check values of PPND16 (from memory)"},
};

struct Moments {
  double mean = 0, variance = 0, skew = 0, fourth = 0;
};
Moments moments_of(const std::vector<double>& values) {
  Moments out;
  const double n = static_cast<double>(values.size());
  for (const double value : values) out.mean += value / n;
  for (const double value : values) {
    const double off = value - out.mean;
    out.variance += off * off / n;
    out.skew += off * off * off / n;
    out.fourth += off * off * off * off / n;
  }
  return out;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(draws)

BOOST_DATA_TEST_CASE(known_answers_of_the_generator, boost::unit_test::data::make(known_answers), row) {
  const r123::Philox4x32::ctr_type counter{{row.counter[0], row.counter[1], row.counter[2], row.counter[3]}};
  const r123::Philox4x32::key_type key{{row.key[0], row.key[1]}};
  const auto words = r123::Philox4x32()(counter, key);
  for (std::size_t i = 0; i < 4; ++i) BOOST_TEST(words[i] == row.words[i]);
}

// The first row through our own door: its counter and key are all zero, as is our first address.
BOOST_AUTO_TEST_CASE(the_first_known_answer_as_a_draw) {
  BOOST_TEST(uniform_draw({}) == from_words(0x6627e8d5, 0xe169c58d));
}

BOOST_AUTO_TEST_CASE(every_part_of_the_address_counts) {
  const DrawAddress here{.seed = 5, .member = 6, .what = 7, .place = 8};
  const std::vector<DrawAddress> others = {{.seed = 6, .member = 6, .what = 7, .place = 8},
                                           {.seed = 5 + (1ULL << 32), .member = 6, .what = 7, .place = 8},
                                           {.seed = 5, .member = 7, .what = 7, .place = 8},
                                           {.seed = 5, .member = 6, .what = 8, .place = 8},
                                           {.seed = 5, .member = 6, .what = 7, .place = 9}};
  for (const DrawAddress& other : others) BOOST_TEST(uniform_draw(other) != uniform_draw(here));
}

BOOST_AUTO_TEST_CASE(uniform_moments) {
  std::vector<double> values(200000);
  for (std::uint32_t m = 0; m < values.size(); ++m)
    values[m] = uniform_draw({.seed = 11, .member = m, .what = 3, .place = 2});
  const Moments found = moments_of(values);
  // Five standard errors of each moment: a right generator fails such a test once in two million.
  const double n = 200000;
  BOOST_TEST(std::abs(found.mean - 0.5) < 5 * std::sqrt(1 / (12 * n)));
  BOOST_TEST(std::abs(found.variance - 1.0 / 12) < 5 * std::sqrt((1.0 / 80 - 1.0 / 144) / n));
  for (const double value : values) BOOST_REQUIRE((value > 0 && value < 1));
}

BOOST_AUTO_TEST_CASE(normal_moments) {
  std::vector<double> values(200000);
  noonleaf::normal_draws({.seed = 11, .what = 4, .place = 1}, values);
  const Moments found = moments_of(values);
  const double n = 200000;
  BOOST_TEST(std::abs(found.mean) < 5 / std::sqrt(n));
  BOOST_TEST(std::abs(found.variance - 1) < 5 * std::sqrt(2 / n));
  BOOST_TEST(std::abs(found.skew) < 5 * std::sqrt(15 / n));
  BOOST_TEST(std::abs(found.fourth - 3) < 5 * std::sqrt(96 / n));
}

BOOST_AUTO_TEST_CASE(neighbouring_members_quantities_and_days_are_not_alike) {
  const auto correlation = [](DrawAddress step) {
    double sum = 0;
    constexpr std::uint32_t n = 100000;
    for (std::uint32_t m = 0; m < n; ++m) {
      const double here = normal_draw({.seed = 3, .member = m, .what = 1, .place = 1});
      sum +=
          here *
          normal_draw({.seed = 3, .member = m + step.member, .what = 1 + step.what, .place = 1 + step.place});
    }
    return sum / n;
  };
  const double five_errors = 5 / std::sqrt(100000.0);
  BOOST_TEST(std::abs(correlation({.member = 1})) < five_errors);
  BOOST_TEST(std::abs(correlation({.what = 1})) < five_errors);
  BOOST_TEST(std::abs(correlation({.place = 1})) < five_errors);
}

BOOST_AUTO_TEST_CASE(the_same_draws_whatever_the_split) {
  std::vector<double> whole(1000), parts(1000);
  noonleaf::normal_draws({.seed = 9, .member = 50, .what = 2, .place = 7}, whole);
  const std::size_t ends[] = {0, 1, 17, 64, 640, 1000};
  for (std::size_t i = 5; i > 0; --i)  // the last part first
    noonleaf::normal_draws(
        {.seed = 9, .member = 50 + static_cast<std::uint32_t>(ends[i - 1]), .what = 2, .place = 7},
        std::span<double>(parts).subspan(ends[i - 1], ends[i] - ends[i - 1]));
  BOOST_TEST(std::memcmp(whole.data(), parts.data(), 1000 * sizeof(double)) == 0);
}

// Bits worked out on x86-64 by this code, kept so that another machine, compiler or instruction set that came
// to other bits would be seen. Not from a publication.
BOOST_AUTO_TEST_CASE(the_same_bits_everywhere) {
  std::uint64_t mixed = 0;
  for (std::uint32_t m = 0; m < 10000; ++m) {
    const double draw = normal_draw({.seed = 2, .member = m, .what = 5, .place = m % 13});
    const double factor = noonleaf::fixed_exp(0.2 * draw);
    std::uint64_t a = 0, b = 0;
    std::memcpy(&a, &draw, sizeof a);
    std::memcpy(&b, &factor, sizeof b);
    mixed = (mixed * 6364136223846793005ULL + a) * 6364136223846793005ULL + b;
  }
  BOOST_TEST(mixed == 12670616454784371917ULL);
}

BOOST_DATA_TEST_CASE(quantiles_as_printed, boost::unit_test::data::make(printed), row) {
  BOOST_TEST(std::abs(standard_normal_quantile(row.p) - row.z) < 2e-15 * std::abs(row.z) + 1e-16);
}

BOOST_AUTO_TEST_CASE(quantile_is_the_inverse_of_the_distribution) {
  for (const double p : {1e-300, 1e-100, 1e-15, 7e-14, 1e-12, 1e-5, 0.01, 0.0749, 0.0751, 0.3, 0.5, 0.7,
                         0.9249, 0.9251, 0.99}) {
    const double z = standard_normal_quantile(p);
    const double back = p < 0.5 ? std::erfc(-z / std::sqrt(2.0)) / 2 : 1 - std::erfc(z / std::sqrt(2.0)) / 2;
    // erfc multiplies an error of z by z squared: 37^2 at the far end.
    BOOST_TEST(std::abs(back - p) < 1e-12 * p, "p " << p << " comes back as " << back);
  }
  BOOST_TEST(standard_normal_quantile(0.5) == 0.0);
  BOOST_TEST(standard_normal_quantile(0.25) == -standard_normal_quantile(0.75));
  for (const double outside : {0.0, 1.0, -0.1, 1.1, noonleaf::missing})
    BOOST_TEST(std::isnan(standard_normal_quantile(outside)));
}

BOOST_AUTO_TEST_SUITE_END()
