#include <boost/test/unit_test.hpp>

#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/emergence.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/crop/landscape.hpp"
#include "noonleaf/error.hpp"

using namespace std::chrono_literals;
using noonleaf::Error;
using noonleaf::find_crop;
using noonleaf::LandscapeFactor;

BOOST_AUTO_TEST_SUITE(plantings)

BOOST_AUTO_TEST_CASE(landscape_factors) {
  const auto level = [](LandscapeFactor factor, const char* id) {
    return noonleaf::find_landscape_level(factor, id).value;
  };
  const double kl = noonleaf::landscape_coefficient(level(LandscapeFactor::species, "moderate"),
                                                    level(LandscapeFactor::density, "average"),
                                                    level(LandscapeFactor::microclimate, "high"));
  BOOST_CHECK_CLOSE(kl, 0.625, 1e-9);
  BOOST_CHECK_THROW(noonleaf::landscape_coefficient(1.2, 1, 1), Error);
  BOOST_CHECK_EXCEPTION(
      noonleaf::find_landscape_level(LandscapeFactor::density, "averge"), Error,
      [](const Error& refused) { return refused.problems().front().fix == "did you mean average?"; });
}

// The guide's ranges (Costello et al. 2000, from memory); its values are their middles, "very low" being below 0.1.
BOOST_AUTO_TEST_CASE(landscape_levels_as_printed) {
  struct Printed {
    LandscapeFactor factor;
    const char* id;
    double low, high;
  };
  const LandscapeFactor species = LandscapeFactor::species, density = LandscapeFactor::density,
                        microclimate = LandscapeFactor::microclimate;
  const std::vector<Printed> printed{{species, "very_low", 0, 0.1},   {species, "low", 0.1, 0.3},
                                     {species, "moderate", 0.4, 0.6}, {species, "high", 0.7, 0.9},
                                     {density, "low", 0.5, 0.9},      {density, "average", 1, 1},
                                     {density, "high", 1.1, 1.3},     {microclimate, "low", 0.5, 0.9},
                                     {microclimate, "average", 1, 1}, {microclimate, "high", 1.1, 1.4}};
  BOOST_TEST(noonleaf::landscape_table().size() == printed.size());
  for (const Printed& row : printed) {
    const auto& level = noonleaf::find_landscape_level(row.factor, row.id);
    BOOST_TEST(level.low == row.low, row.id);
    BOOST_TEST(level.high == row.high, row.id);
    BOOST_CHECK_CLOSE(level.value, (row.low + row.high) / 2, 1e-9);
  }
}

BOOST_AUTO_TEST_CASE(a_slip_names_its_factor) {
  const auto field = [](LandscapeFactor factor) {
    try {
      noonleaf::find_landscape_level(factor, "x");
    } catch (const Error& refused) {
      return refused.problems().front().field;
    }
    return std::string("none");
  };
  BOOST_TEST(field(LandscapeFactor::species) == "species");
  BOOST_TEST(field(LandscapeFactor::density) == "density");
  BOOST_TEST(field(LandscapeFactor::microclimate) == "microclimate");
}

BOOST_AUTO_TEST_CASE(a_landscape_coefficient_replaces_a_plant_factor_and_is_never_a_second_one) {
  const auto start = 2024y / 4 / 1;
  const noonleaf::Planting bed{.start = start, .landscape_coefficient = 0.4};
  BOOST_TEST(growth_day(find_crop("pollinator_dry_climate"), bed, 2024y / 6 / 1, {}).kc == 0.4);
  BOOST_CHECK_THROW(growth_day(find_crop("tomato"), bed, 2024y / 6 / 1, {}), Error);
}

BOOST_AUTO_TEST_CASE(kc_ini_by_wetting_replaces_the_tables) {
  const auto start = 2024y / 4 / 1;
  const noonleaf::Planting wetted{.start = start, .kc_ini_by_wetting = 0.9};
  const auto day = growth_day(find_crop("tomato"), wetted, 2024y / 4 / 5, {});
  BOOST_TEST(day.kc == 0.9);
  BOOST_TEST(day.kcb == 0.15);  // the dual coefficient reckons the wetting itself
  BOOST_TEST(day.days_since_planting == 4);
}

// Harrington & Minges, cells read in a reprint.
BOOST_AUTO_TEST_CASE(emergence_by_soil_temperature) {
  const auto f = [](double fahrenheit) { return (fahrenheit - 32) / 1.8; };
  BOOST_CHECK_CLOSE(noonleaf::days_to_emergence("bean_green", f(59)), 16, 1e-6);
  BOOST_CHECK_CLOSE(noonleaf::days_to_emergence("bean_green", f(86)), 6, 1e-6);
  BOOST_CHECK_CLOSE(noonleaf::days_to_emergence("lettuce", f(41)), 15, 1e-6);
  BOOST_CHECK_CLOSE(noonleaf::days_to_emergence("carrot", f(77)), 6, 1e-6);
  BOOST_CHECK_CLOSE(noonleaf::days_to_emergence("maize_sweet", f(50)), 22, 1e-6);
  BOOST_CHECK_CLOSE(noonleaf::days_to_emergence("asparagus", f(104)), 28, 1e-6);
  BOOST_CHECK_CLOSE(noonleaf::days_to_emergence("carrot", f(95)), 8, 1e-6);  // none comes up in warmer soil
  const double between = noonleaf::days_to_emergence("bean_green", f(63.5));
  BOOST_TEST(between > 11);
  BOOST_TEST(between < 16);
}

BOOST_AUTO_TEST_CASE(seeds_that_do_not_come_up_have_no_day) {
  BOOST_TEST(noonleaf::is_missing(noonleaf::days_to_emergence("lettuce", 35)));  // 95 °F
  BOOST_TEST(noonleaf::is_missing(noonleaf::days_to_emergence("bean_green", 12)));
  BOOST_TEST(noonleaf::is_missing(noonleaf::days_to_emergence("strawberry", 20)));
  BOOST_TEST(noonleaf::is_missing(noonleaf::days_to_emergence("lettuce", 42)));
  BOOST_TEST(
      noonleaf::is_missing(noonleaf::days_to_emergence("asparagus", 40.5)));  // 28 days at 40 °C, none above
  BOOST_TEST(noonleaf::is_missing(noonleaf::days_to_emergence("lettuce", -0.5)));
  BOOST_CHECK_CLOSE(noonleaf::days_to_emergence("lettuce", 0), 49, 1e-9);
  const double cold = noonleaf::days_to_emergence("lettuce", 0.5);  // a tenth of the way from 49 to 15 days
  BOOST_CHECK_CLOSE(1 / cold, 0.9 / 49 + 0.1 / 15, 1e-9);
  BOOST_TEST(noonleaf::is_missing(noonleaf::days_to_emergence("lettuce", noonleaf::missing)));
}

BOOST_AUTO_TEST_SUITE_END()
