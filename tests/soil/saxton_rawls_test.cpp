#include "noonleaf/soil/saxton_rawls.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/soil/texture.hpp"

#include "csv_rows.hpp"
#include "number_in.hpp"

using noonleaf::Error;
using noonleaf::SoilParticles;

BOOST_AUTO_TEST_SUITE(saxton_rawls)

// Half the last printed digit everywhere; Table 3 prints water contents in whole per cent.
BOOST_AUTO_TEST_CASE(meets_table_3) {
  const auto rows = csv_rows("soil/saxton_rawls_table3.csv");
  BOOST_REQUIRE_EQUAL(rows.size(), 12U);
  for (const auto& row : rows) {
    BOOST_TEST_CONTEXT(row[0]) {
      const auto soil =
          noonleaf::saxton_rawls({.sand_pct = number_in(row[1]), .clay_pct = number_in(row[2])});
      BOOST_CHECK_SMALL(100 * soil.theta_1500 - number_in(row[3]), 0.5);
      BOOST_CHECK_SMALL(100 * soil.theta_33 - number_in(row[4]), 0.5);
      BOOST_CHECK_SMALL(100 * soil.theta_s - number_in(row[5]), 0.5);
      BOOST_CHECK_SMALL(100 * soil.bulk_available_m3_m3 - number_in(row[6]), 0.5);
      BOOST_CHECK_SMALL(soil.conductivity_mm_h - number_in(row[7]), 0.05);
      BOOST_CHECK_SMALL(soil.density_g_cm3 - number_in(row[8]), 0.005);
    }
  }
}

// Recomputed values, not printed ones: they guard against change.
BOOST_AUTO_TEST_CASE(gravel_density_and_organic_matter_keep_their_values) {
  const auto gravel = noonleaf::saxton_rawls({.sand_pct = 40, .clay_pct = 20, .gravel_pct = 10});
  BOOST_CHECK_CLOSE(gravel.gravel_volume_frac, 0.05665536633492495, 1e-9);
  BOOST_CHECK_CLOSE(gravel.bulk_density_g_cm3, 1.501367207875511, 1e-9);
  BOOST_CHECK_CLOSE(gravel.bulk_available_m3_m3, 0.13450827086964035, 1e-9);
  BOOST_CHECK_CLOSE(gravel.bulk_conductivity_mm_h / gravel.conductivity_mm_h, 0.9173580067001386, 1e-9);
  const auto loose = noonleaf::saxton_rawls({.sand_pct = 40, .clay_pct = 20, .density_factor = 0.9});
  BOOST_CHECK_CLOSE(loose.theta_33, 0.29042060004198395, 1e-9);
  BOOST_CHECK_CLOSE(loose.conductivity_mm_h, 28.79606051723165, 1e-9);
  const auto dense = noonleaf::saxton_rawls({.sand_pct = 40, .clay_pct = 20, .density_factor = 1.2});
  BOOST_CHECK_CLOSE(dense.theta_s, 0.3513738939289599, 1e-9);
  BOOST_CHECK_CLOSE(dense.conductivity_mm_h, 2.3286221230919604, 1e-9);
  const auto poor = noonleaf::saxton_rawls({.sand_pct = 20, .clay_pct = 15, .organic_pct = 0.5});
  BOOST_CHECK_CLOSE(poor.theta_1500, 0.0983491, 1e-9);
  BOOST_CHECK_CLOSE(poor.conductivity_mm_h, 6.929484743704496, 1e-9);
  const auto rich = noonleaf::saxton_rawls({.sand_pct = 20, .clay_pct = 15, .organic_pct = 5});
  BOOST_CHECK_CLOSE(rich.theta_s, 0.5670150865968, 1e-9);
  BOOST_CHECK_CLOSE(rich.conductivity_mm_h, 35.31756161063, 1e-4);
}

BOOST_AUTO_TEST_CASE(the_tension_curve_passes_through_its_two_points) {
  const auto soil = noonleaf::saxton_rawls({.sand_pct = 40, .clay_pct = 20});
  BOOST_CHECK_CLOSE(soil.a * std::pow(soil.theta_33, -soil.b), 33, 1e-9);
  BOOST_CHECK_CLOSE(soil.a * std::pow(soil.theta_1500, -soil.b), 1500, 1e-9);
}

BOOST_AUTO_TEST_CASE(refuses_beyond_the_papers_limits_and_shows_the_way_out) {
  const auto way_out = [](const Error& refused) {
    return refused.problems().front().fix.find("pot") != std::string::npos;
  };
  BOOST_CHECK_EXCEPTION(noonleaf::saxton_rawls({.sand_pct = 40, .clay_pct = 20, .organic_pct = 8.1}), Error,
                        way_out);
  BOOST_CHECK_EXCEPTION(noonleaf::saxton_rawls({.sand_pct = 20, .clay_pct = 61}), Error, way_out);
  BOOST_CHECK_NO_THROW(noonleaf::saxton_rawls({.sand_pct = 20, .clay_pct = 60, .organic_pct = 2.5}));
  BOOST_CHECK_NO_THROW(noonleaf::saxton_rawls({.sand_pct = 40, .clay_pct = 20, .organic_pct = 8}));
  BOOST_CHECK_THROW(noonleaf::saxton_rawls({.sand_pct = 60, .clay_pct = 45}), Error);
  BOOST_CHECK_THROW(noonleaf::saxton_rawls({.sand_pct = 40}), Error);
  BOOST_CHECK_THROW(noonleaf::saxton_rawls({.sand_pct = 40, .clay_pct = 20, .gravel_pct = 95}), Error);
}

BOOST_AUTO_TEST_CASE(every_soil_of_the_triangle_is_answered_or_refused_never_absurd) {
  int answered = 0;
  for (double sand = 0; sand <= 100; sand += 5)
    for (double clay = 0; clay <= 60 && sand + clay <= 100; clay += 5)
      for (const double organic : {0.0, 2.5, 8.0}) {
        noonleaf::SoilWater soil;
        try {
          soil = noonleaf::soil_of(SoilParticles{.sand_pct = sand, .clay_pct = clay, .organic_pct = organic});
        } catch (const Error&) {
          continue;
        }
        ++answered;
        BOOST_TEST_CONTEXT(sand << " " << clay << " " << organic) {
          BOOST_CHECK_NO_THROW(noonleaf::require_complete(soil));
          BOOST_TEST(soil.saturation_m3_m3 > soil.field_capacity_m3_m3);
        }
      }
  BOOST_TEST(answered > 450);
}

BOOST_AUTO_TEST_CASE(gravel_takes_room_from_water) {
  const auto fine = noonleaf::soil_of(SoilParticles{.sand_pct = 40, .clay_pct = 20});
  const auto stony = noonleaf::soil_of(SoilParticles{.sand_pct = 40, .clay_pct = 20, .gravel_pct = 40});
  BOOST_TEST(stony.field_capacity_m3_m3 < fine.field_capacity_m3_m3);
  BOOST_TEST(noonleaf::taw_mm(stony, 1) < noonleaf::taw_mm(fine, 1));
}

// Ritchie et al. 1989 by way of Allen et al. 2005, from memory: arithmetic on the equation.
BOOST_AUTO_TEST_CASE(readily_evaporable_water_by_texture) {
  BOOST_CHECK_CLOSE(noonleaf::rew_by_texture_mm(90, 5), 6.5, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::rew_by_texture_mm(40, 20), 9.6, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::rew_by_texture_mm(20, 55), 7.7, 1e-9);
}

BOOST_AUTO_TEST_CASE(salt_tension_rises_as_the_soil_dries) {
  BOOST_CHECK_CLOSE(noonleaf::osmotic_tension_kpa(0.45, 0.45, 2), 72, 1e-9);
  BOOST_CHECK_CLOSE(noonleaf::osmotic_tension_kpa(0.15, 0.45, 2), 216, 1e-9);
}

BOOST_AUTO_TEST_SUITE_END()
