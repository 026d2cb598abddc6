// The ranges of the doors of this folder, as their headers or their messages name them: both ends are taken, the next
// number beyond is not.
#include <boost/test/unit_test.hpp>

#include "noonleaf/crop/coefficients.hpp"
#include "noonleaf/crop/crop_table.hpp"
#include "noonleaf/crop/emergence.hpp"
#include "noonleaf/crop/growth.hpp"
#include "noonleaf/crop/kc_ini.hpp"
#include "noonleaf/crop/landscape.hpp"
#include "noonleaf/crop/salinity.hpp"
#include "noonleaf/crop/sparse_cover.hpp"

#include "accepted_range.hpp"

using namespace noonleaf;
using namespace std::chrono_literals;

BOOST_AUTO_TEST_SUITE(accepted)

BOOST_AUTO_TEST_CASE(of_coefficients) {
  check_accepted("u2_m_s", 0, 60, [](double x) { return climate_term({x, 45}, 1); });
  check_accepted("rh_min_pct", 0, 100, [](double x) { return climate_term({2, x}, 1); });
  check_accepted("height_m", 0, 20, [](double x) { return climate_term({2, 45}, x); });
  check_accepted("day", 1, 100000, [](double x) { return kc_on_day({0.15, 1.1, 0.7, 20, 30, 40, 20}, x); });
  check_accepted("stages", 0, 1000, [](double x) { return kc_on_day({0.15, 1.1, 0.7, x, 30, 40, 20}, 1); });
  check_accepted("stages", 0, 1000, [](double x) { return kc_on_day({0.15, 1.1, 0.7, 20, 30, 40, x}, 1); });
}

BOOST_AUTO_TEST_CASE(of_plantings) {
  const auto day = [](auto change) {
    Planting planting{.start = 2024y / 4 / 15};
    change(planting);
    return growth_day(find_crop("annual_flowers"), planting, 2024y / 6 / 1, {});
  };
  check_accepted("root_limit_m", 0.02, 10,
                 [&](double x) { return day([&](Planting& one) { one.root_limit_m = x; }); });
  check_accepted("kc_ini_by_wetting", 0, 1.4,
                 [&](double x) { return day([&](Planting& one) { one.kc_ini_by_wetting = x; }); });
  check_accepted("landscape_coefficient", 0, 1.7,
                 [&](double x) { return day([&](Planting& one) { one.landscape_coefficient = x; }); });
  check_accepted("soil_c", -5, 50, [](double x) { return days_to_emergence("lettuce", x); });
}

BOOST_AUTO_TEST_CASE(of_wetting) {
  check_accepted("et0_mm_d", 0.1, 20, [](double x) { return kc_ini_of_drying(x, 3, 8, 20); });
  check_accepted("interval_d", 0.1, 60, [](double x) { return kc_ini_of_drying(5, x, 8, 20); });
  check_accepted("rew_mm", 0, 20 - 0.001, [](double x) { return kc_ini_of_drying(5, 3, x, 20); });
  check_accepted("infiltrated_mm", 0, 500, [](double x) {
    return kc_ini_of_wetting({.et0_mm_d = 5, .interval_d = 3, .infiltrated_mm = x});
  });
  check_accepted("wetted_frac", 0.01, 1, [](double x) {
    return kc_ini_of_wetting({.et0_mm_d = 5, .interval_d = 3, .infiltrated_mm = 10, .wetted_frac = x});
  });
}

BOOST_AUTO_TEST_CASE(of_landscape_and_cover) {
  check_accepted("species", 0, 0.9, [](double x) { return landscape_coefficient(x, 1, 1); });
  check_accepted("density", 0.5, 1.3, [](double x) { return landscape_coefficient(0.5, x, 1); });
  check_accepted("microclimate", 0.5, 1.4, [](double x) { return landscape_coefficient(0.5, 1, x); });
  check_accepted("height_m", 0.05, 20, [](double x) { return kcb_full_cover({2, 45}, x); });
  check_accepted("height_m", 0.05, 20, [](double x) { return kcb_of_cover({1.15, 0.5, 0.6, x}); });
  check_accepted("cover_frac", 0, 1, [](double x) { return kcb_of_cover({1.15, x, 1, 1}); });
  check_accepted("effective_cover_frac", 0.5, 1, [](double x) { return kcb_of_cover({1.15, 0.5, x, 1}); });
  check_accepted("effective_cover_frac", 0, 1, [](double x) { return kcb_of_cover({1.15, missing, x, 1}); });
  check_accepted("leaf_area_index", 0, 12, [](double x) { return kcb_of_leaf_area(1.15, x); });
}

BOOST_AUTO_TEST_CASE(of_salt) {
  check_accepted("ece_ds_m", 0, 60, [](double x) { return salt_yield_frac(x, {1, 19, 1.15}); });
  check_accepted("ece_threshold_ds_m", 0, 20, [](double x) { return salt_yield_frac(2, {x, 19, 1.15}); });
  check_accepted("yield_loss_pct_m_ds", 0, 100, [](double x) { return salt_yield_frac(2, {1, x, 1.15}); });
  check_accepted("ky", 0.1, 3, [](double x) { return salt_stress_coefficient(2, {1, 19, x}); });
  check_accepted("ecw_ds_m", 0, 20, [](double x) { return leaching_requirement(x, 60); });
  check_accepted("ece_ds_m", 0.1, 60, [](double x) { return leaching_requirement(0.01, x); });
}

BOOST_AUTO_TEST_SUITE_END()
