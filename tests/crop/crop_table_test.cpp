#include "noonleaf/crop/crop_table.hpp"

#include <ostream>
#include <set>
#include <string>
#include <vector>

#include <boost/test/data/test_case.hpp>
#include <boost/test/unit_test.hpp>

#include "noonleaf/crop/coefficients.hpp"
#include "noonleaf/error.hpp"

using noonleaf::Crop;
using noonleaf::CropBasis;
using noonleaf::Error;
using noonleaf::find_crop;

BOOST_AUTO_TEST_SUITE(crop_table)

struct Printed {
  const char* id;
  double kc_ini, kc_mid, kc_end, kcb_ini, kcb_mid, kcb_end, height, root_min, root_max, p;
};
std::ostream& operator<<(std::ostream& out, const Printed& row) { return out << row.id; }

// FAO-56 Tables 12, 17 and 22, from memory, typed apart from the table in lib/.
const std::vector<Printed> printed = {
    {"lettuce", 0.7, 1.00, 0.95, 0.15, 0.90, 0.90, 0.3, 0.3, 0.5, 0.30},
    {"carrot", 0.7, 1.05, 0.95, 0.15, 0.95, 0.85, 0.3, 0.5, 1.0, 0.35},
    {"celery", 0.7, 1.05, 1.00, 0.15, 0.95, 0.90, 0.6, 0.3, 0.5, 0.20},
    {"onion_dry", 0.7, 1.05, 0.75, 0.15, 0.95, 0.65, 0.4, 0.3, 0.6, 0.30},
    {"eggplant", 0.6, 1.05, 0.90, 0.15, 1.00, 0.80, 0.8, 0.7, 1.2, 0.45},
    {"tomato", 0.6, 1.15, 0.80, 0.15, 1.10, 0.70, 0.6, 0.7, 1.5, 0.40},
    {"watermelon", 0.4, 1.00, 0.75, 0.15, 0.95, 0.70, 0.4, 0.8, 1.5, 0.40},
    {"squash_zucchini", 0.5, 0.95, 0.75, 0.15, 0.90, 0.70, 0.3, 0.6, 1.0, 0.50},
    {"potato", 0.5, 1.15, 0.75, 0.15, 1.10, 0.65, 0.6, 0.4, 0.6, 0.35},
    {"bean_dry", 0.4, 1.15, 0.35, 0.15, 1.10, 0.25, 0.4, 0.6, 0.9, 0.45},
    {"pea_fresh", 0.5, 1.15, 1.10, 0.15, 1.10, 1.05, 0.5, 0.6, 1.0, 0.35},
    {"strawberry", 0.4, 0.85, 0.75, 0.30, 0.80, 0.70, 0.2, 0.2, 0.3, 0.20},
    {"mint", 0.6, 1.15, 1.10, 0.40, 1.10, 1.05, 0.7, 0.4, 0.8, 0.40},
    {"maize_sweet", 0.3, 1.15, 1.05, 0.15, 1.10, 1.00, 1.5, 0.8, 1.2, 0.50},
    {"turf_cool", 0.9, 0.95, 0.95, 0.85, 0.90, 0.90, 0.1, 0.5, 1.0, 0.40},
    {"berries_bush", 0.3, 1.05, 0.50, 0.20, 1.00, 0.40, 1.5, 0.6, 1.2, 0.50},
    {"citrus70_bare", 0.7, 0.65, 0.70, 0.65, 0.60, 0.65, 4.0, 1.2, 1.5, 0.50},
};
BOOST_DATA_TEST_CASE(rows_as_printed, boost::unit_test::data::make(printed), row) {
  const Crop& crop = find_crop(row.id);
  BOOST_TEST(crop.kc_ini == row.kc_ini);
  BOOST_TEST(crop.kc_mid == row.kc_mid);
  BOOST_TEST(crop.kc_end == row.kc_end);
  BOOST_TEST(crop.kcb_ini == row.kcb_ini);
  BOOST_TEST(crop.kcb_mid == row.kcb_mid);
  BOOST_TEST(crop.kcb_end == row.kcb_end);
  BOOST_TEST(crop.height_max_m == row.height);
  BOOST_TEST(crop.root_depth_min_m == row.root_min);
  BOOST_TEST(crop.root_depth_max_m == row.root_max);
  BOOST_TEST(crop.p_frac == row.p);
}

BOOST_AUTO_TEST_CASE(every_row_is_whole) {
  std::set<std::string_view> ids;
  for (const Crop& crop : noonleaf::crop_table()) BOOST_TEST_CONTEXT(crop.id) {
      BOOST_TEST(ids.insert(crop.id).second);
      BOOST_TEST(!crop.name_en.empty());
      BOOST_TEST(!crop.name_es.empty());
      BOOST_TEST(!crop.source.empty());
      BOOST_TEST(crop.root_depth_start_m <= crop.root_depth_min_m);
      BOOST_TEST(crop.root_depth_min_m <= crop.root_depth_max_m);
      BOOST_TEST(crop.p_frac > 0.1);
      BOOST_TEST(crop.p_frac < 0.8);
      const bool has_stages = crop.season != noonleaf::SeasonKind::year_round;
      BOOST_TEST(has_stages == !crop.stages.empty());
      if (crop.surrogate) {
        BOOST_TEST(!crop.note.empty());
        BOOST_TEST((crop.confidence == noonleaf::Confidence::low));
      }
      if (crop.season == noonleaf::SeasonKind::perennial) BOOST_TEST(crop.season_start.ok());
    }
  BOOST_TEST(ids.size() > 90U);
}

BOOST_AUTO_TEST_CASE(coefficients_are_of_the_right_size) {
  for (const Crop& crop : noonleaf::crop_table()) BOOST_TEST_CONTEXT(crop.id) {
      if (crop.basis == CropBasis::plant_factor) {
        BOOST_TEST(noonleaf::is_missing(crop.kcb_mid));
        BOOST_TEST(crop.kc_mid <= 0.8);
      }
      if (crop.basis != CropBasis::kc_curve) continue;
      BOOST_TEST(crop.kcb_ini <= crop.kc_ini);
      BOOST_TEST(crop.kcb_mid <= crop.kc_mid);
      BOOST_TEST(crop.kcb_end <= crop.kc_end);
      BOOST_TEST(crop.kcb_ini >= noonleaf::kc_min_bare);
      BOOST_TEST(crop.kc_mid >= 0.45);  // adjusted_kc leans on this
    }
}

BOOST_AUTO_TEST_CASE(every_stage_row_has_a_season) {
  for (const Crop& crop : noonleaf::crop_table())
    for (const auto& row : crop.stages) BOOST_TEST_CONTEXT(crop.id << " " << row.region) {
        const int total = row.l_ini_d + row.l_dev_d + row.l_mid_d + row.l_late_d;
        BOOST_TEST(total >= 35);
        BOOST_TEST(total <= 366);
        BOOST_TEST(row.l_dev_d > 0);
      }
}

BOOST_AUTO_TEST_CASE(unknown_crops_get_the_nearest) {
  BOOST_CHECK_EXCEPTION(find_crop("tomatoe"), Error, [](const Error& refused) {
    const auto& problem = refused.problems().front();
    return problem.field == "crop" && problem.text == "tomatoe" && problem.fix == "did you mean tomato?";
  });
  BOOST_CHECK_THROW(find_crop(""), Error);
  BOOST_TEST(find_crop("Pepper Sweet").id == "pepper_sweet");
  BOOST_TEST(noonleaf::bare_soil().id == "bare_soil");
}

BOOST_AUTO_TEST_SUITE_END()
