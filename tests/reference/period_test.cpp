#include "noonleaf/reference/period.hpp"

#include <chrono>
#include <cmath>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "refusal.hpp"

using namespace std::chrono;
using noonleaf::DailyWeather;
using noonleaf::missing;
using noonleaf::SoilHeatFrom;

namespace {

const noonleaf::Location bangkok{.latitude_deg = 13 + 44.0 / 60, .longitude_deg = 100.5, .elevation_m = 2};

/// FAO-56 example 17: April at Bangkok, and a March whose mean is the 29.2 °C that the example gives.
std::vector<DailyWeather> march_and_april() {
  return {{.date = 2023y / March / 1,
           .t_max_c = 33.2,
           .t_min_c = 25.2,
           .ea_kpa = 2.8,
           .wind_m_s = 2,
           .sunshine_h = 8},
          {.date = 2023y / April / 30,
           .t_max_c = 34.8,
           .t_min_c = 25.6,
           .ea_kpa = 2.85,
           .wind_m_s = 2,
           .sunshine_h = 8.5}};
}

}  // namespace

BOOST_AUTO_TEST_SUITE(period)

BOOST_AUTO_TEST_CASE(fao56_example_17) {  // from memory of the page: G 0.14, ET0 5.72 mm/d
  const auto months = noonleaf::monthly_et0(march_and_april(), bangkok);
  BOOST_TEST(months.size() == 2U);
  BOOST_TEST((months[1].soil_heat == SoilHeatFrom::month_before));
  BOOST_CHECK_SMALL(months[1].detail.g_mj_m2_d - 0.14, 0.005);
  BOOST_CHECK_SMALL(months[1].detail.et0_mm_d - 5.72, 0.005);
  BOOST_CHECK_SMALL(months[1].et0_mm - 30 * months[1].detail.et0_mm_d, 1e-12);
  BOOST_TEST(months[1].detail.day_of_year == 105);
  BOOST_TEST((months[0].soil_heat == SoilHeatFrom::assumed_none));
  BOOST_TEST(months[0].detail.g_mj_m2_d == 0.0);
}

BOOST_AUTO_TEST_CASE(soil_heat_between_neighbours) {
  std::vector<DailyWeather> months = march_and_april();
  DailyWeather may = months.back();
  may.date = 2023y / May / 15;
  may.t_max_c = 36.8;
  months.push_back(may);
  const auto results = noonleaf::monthly_et0(months, bangkok);
  BOOST_TEST((results[1].soil_heat == SoilHeatFrom::both_neighbours));
  BOOST_CHECK_SMALL(results[1].detail.g_mj_m2_d - 0.07 * (31.2 - 29.2), 1e-12);
  BOOST_TEST((results[2].soil_heat == SoilHeatFrom::month_before));
}

BOOST_AUTO_TEST_CASE(a_month_left_out_is_no_neighbour) {
  std::vector<DailyWeather> months = march_and_april();
  months[0].date = 2023y / February / 10;
  BOOST_TEST((noonleaf::monthly_et0(months, bangkok)[1].soil_heat == SoilHeatFrom::assumed_none));
  months = march_and_april();
  months[0].t_max_c = missing;
  const auto results = noonleaf::monthly_et0(months, bangkok);
  BOOST_TEST(std::isnan(results[0].et0_mm));
  BOOST_TEST((results[1].soil_heat == SoilHeatFrom::assumed_none));
  months = march_and_april();  // December and January are neighbours
  months[0].date = 2022y / December / 1;
  months[1].date = 2023y / January / 1;
  BOOST_TEST((noonleaf::monthly_et0(months, bangkok)[1].soil_heat == SoilHeatFrom::month_before));
}

BOOST_AUTO_TEST_CASE(ten_days) {
  DailyWeather mean = march_and_april()[1];
  mean.date = 2024y / February / 21;  // nine days in a leap year
  const auto last_third = noonleaf::ten_day_et0(mean, bangkok);
  BOOST_CHECK_SMALL(last_third.et0_mm - 9 * last_third.detail.et0_mm_d, 1e-12);
  BOOST_TEST(last_third.detail.day_of_year == 31 + 25);
  BOOST_TEST(last_third.detail.g_mj_m2_d == 0.0);
  mean.date = 2024y / February / 11;
  BOOST_CHECK_SMALL(
      noonleaf::ten_day_et0(mean, bangkok).et0_mm - 10 * noonleaf::ten_day_et0(mean, bangkok).detail.et0_mm_d,
      1e-12);
  mean.date = 2024y / February / 1;
  BOOST_TEST(noonleaf::ten_day_et0(mean, bangkok).detail.day_of_year == 31 + 6);
  mean.date = 2024y / February / 2;
  BOOST_CHECK_EXCEPTION(noonleaf::ten_day_et0(mean, bangkok), noonleaf::Error, NamesField{"date"});
  mean.date = 2024y / February / 12;
  BOOST_CHECK_EXCEPTION(noonleaf::ten_day_et0(mean, bangkok), noonleaf::Error, NamesField{"date"});
}

BOOST_AUTO_TEST_CASE(refuses_what_is_out_of_order) {
  std::vector<DailyWeather> months = march_and_april();
  std::swap(months[0], months[1]);
  BOOST_CHECK_EXCEPTION(noonleaf::monthly_et0(months, bangkok), noonleaf::Error, NamesField{"date"});
  months = march_and_april();
  months[0].date = {};
  BOOST_CHECK_EXCEPTION(noonleaf::monthly_et0(months, bangkok), noonleaf::Error, NamesField{"date"});
}

BOOST_AUTO_TEST_SUITE_END()
