#include "noonleaf/reference/temperature_only.hpp"

#include <chrono>
#include <cmath>

#include <boost/test/unit_test.hpp>

#include "refusal.hpp"

using namespace std::chrono;
using noonleaf::missing;

BOOST_AUTO_TEST_SUITE(temperature_only)

BOOST_AUTO_TEST_CASE(fao56_example_20) {  // Lyon, July; from memory of the page
  BOOST_CHECK_SMALL(
      noonleaf::temperature_only_et0_mm_d({2023y / July / 15, 45 + 43.0 / 60, 26.6, 14.8}) - 5.03, 0.005);
}

BOOST_AUTO_TEST_CASE(a_measured_mean_is_used) {
  const double from_extremes = noonleaf::temperature_only_et0_mm_d({2023y / July / 15, 45, 26, 14});
  const double measured = noonleaf::temperature_only_et0_mm_d({2023y / July / 15, 45, 26, 14, 19});
  BOOST_CHECK_CLOSE(measured / from_extremes, (19 + 17.8) / (20 + 17.8), 1e-10);
}

BOOST_AUTO_TEST_CASE(limits) {
  BOOST_TEST(noonleaf::temperature_only_et0_mm_d({2023y / July / 15, 45, 20, 20}) == 0.0);
  BOOST_TEST(noonleaf::temperature_only_et0_mm_d({2023y / December / 21, 80, -10, -20}) ==
             0.0);                                                                             // polar night
  BOOST_TEST(noonleaf::temperature_only_et0_mm_d({2023y / January / 1, 60, -20, -30}) < 0.0);  // as printed
  BOOST_TEST(noonleaf::temperature_only_et0_mm_d({2023y / July / 15, 45, 30, 14}) >
             noonleaf::temperature_only_et0_mm_d({2023y / July / 15, 45, 26, 14}));
}

BOOST_AUTO_TEST_CASE(missing_stays_missing) {
  BOOST_TEST(std::isnan(noonleaf::temperature_only_et0_mm_d({})));
  BOOST_TEST(std::isnan(noonleaf::temperature_only_et0_mm_d({2023y / July / 15, missing, 26, 14})));
  BOOST_TEST(std::isnan(noonleaf::temperature_only_et0_mm_d({2023y / July / 15, 45, missing, 14})));
  BOOST_TEST(std::isnan(noonleaf::temperature_only_et0_mm_d({2023y / July / 15, 45, 26, missing})));
}

BOOST_AUTO_TEST_CASE(refuses_the_impossible) {
  BOOST_CHECK_EXCEPTION(noonleaf::temperature_only_et0_mm_d({2023y / July / 15, 45, 14, 26}), noonleaf::Error,
                        NamesField{"t_max_c"});
  BOOST_CHECK_EXCEPTION(noonleaf::temperature_only_et0_mm_d({2023y / July / 15, 95, 26, 14}), noonleaf::Error,
                        NamesField{"latitude_deg"});
  BOOST_CHECK_EXCEPTION(noonleaf::temperature_only_et0_mm_d({2023y / February / 29, 45, 26, 14}),
                        noonleaf::Error, NamesField{"date"});
}

BOOST_AUTO_TEST_SUITE_END()
