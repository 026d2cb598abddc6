#include "noonleaf/sprinkler/student_t.hpp"

#include <ostream>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

BOOST_AUTO_TEST_SUITE(student_t)

struct Printed {
  double confidence_frac;
  std::size_t degrees_of_freedom;
  double t;
};
std::ostream& operator<<(std::ostream& out, const Printed& row) {
  return out << row.confidence_frac << " on " << row.degrees_of_freedom;
}

// Abramowitz & Stegun 1964, Table 26.10, three decimals; from memory.
const std::vector<Printed> printed = {
    {0.90, 1, 6.314},  {0.90, 2, 2.920},  {0.90, 3, 2.353},  {0.90, 4, 2.132},
    {0.90, 7, 1.895},  {0.90, 9, 1.833},  {0.90, 10, 1.812}, {0.90, 15, 1.753},
    {0.90, 20, 1.725}, {0.90, 30, 1.697}, {0.90, 60, 1.671}, {0.90, 120, 1.658},
    {0.95, 2, 4.303},  {0.95, 10, 2.228}, {0.99, 1, 63.657}, {0.99, 5, 4.032},
};

BOOST_DATA_TEST_CASE(matches_print, boost::unit_test::data::make(printed), row) {
  BOOST_CHECK_SMALL(noonleaf::student_t_two_sided(row.confidence_frac, row.degrees_of_freedom) - row.t,
                    0.0005);
}

BOOST_AUTO_TEST_CASE(falls_towards_the_normal_deviate) {
  double before = 1000.0;
  for (std::size_t nu = 1; nu < 400; ++nu) {
    const double t = noonleaf::student_t_two_sided(0.90, nu);
    BOOST_TEST(t < before);
    BOOST_TEST(t > 1.64485);
    before = t;
  }
}

BOOST_AUTO_TEST_SUITE_END()
