#include "noonleaf/reference/daily_batch.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <random>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "noonleaf/atmosphere/sun.hpp"

#include "refusal.hpp"

using namespace std::chrono;
using noonleaf::BadRows;
using noonleaf::DailyColumns;
using noonleaf::DailyInputs;
using noonleaf::Equation;
using noonleaf::Location;
using noonleaf::missing;
using noonleaf::Surface;

namespace {

constexpr sys_days first_day{2019y / November / 3};  // two year ends and a leap day within the rows below
constexpr std::size_t day_count = 900;

/// Plausible days drawn once, every column apart.
struct Days {
  std::vector<double> t_max_c, t_min_c, ea_kpa, rs_mj_m2_d, u2_m_s, pressure_kpa, g_mj_m2_d;

  Days() {
    std::mt19937_64 random(42);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (std::size_t i = 0; i < day_count; ++i) {
      t_min_c.push_back(-30.0 + 55.0 * unit(random));
      t_max_c.push_back(t_min_c.back() + 22.0 * unit(random));
      ea_kpa.push_back(3.0 * unit(random));
      rs_mj_m2_d.push_back(35.0 * unit(random));
      u2_m_s.push_back(8.0 * unit(random));
      pressure_kpa.push_back(80.0 + 22.0 * unit(random));
      g_mj_m2_d.push_back(-2.0 + 4.0 * unit(random));
    }
  }

  DailyColumns columns() const {
    return {.day = {.first = first_day},
            .t_max_c = {t_max_c.data()},
            .t_min_c = {t_min_c.data()},
            .ea_kpa = {ea_kpa.data()},
            .rs_mj_m2_d = {rs_mj_m2_d.data()},
            .u2_m_s = {u2_m_s.data()}};
  }

  DailyInputs row(std::size_t i, const Location& site) const {
    return {.date = first_day + days{i},
            .latitude_deg = site.latitude_deg,
            .elevation_m = site.elevation_m,
            .t_max_c = t_max_c[i],
            .t_min_c = t_min_c[i],
            .ea_kpa = ea_kpa[i],
            .rs_mj_m2_d = rs_mj_m2_d[i],
            .u2_m_s = u2_m_s[i]};
  }
};

const std::vector<Location> places = {{50.8, 4.4, 100}, {-33.9, 18.4, 0},   {0, 37, 1700},
                                      {78.2, 15.6, 20}, {-90, 0, 2800},     {40.4, -104.8, 1462},
                                      {66.5, 25, 200},  {27.98, 86.9, 4000}};

}  // namespace

BOOST_AUTO_TEST_SUITE(daily_batch)

BOOST_AUTO_TEST_CASE(site_table_is_the_scalar_radiation) {
  for (const Location& place : places) {
    const noonleaf::DailySite site = noonleaf::daily_site(place);
    for (int j = 1; j <= 366; ++j) {
      const double ra = site.ra_mj_m2_d[static_cast<std::size_t>(j - 1)];
      BOOST_TEST(ra >= 0.0);
      BOOST_CHECK_SMALL(ra - noonleaf::extraterrestrial_radiation_mj_m2_d({place.latitude_deg, j}), 1e-12);
    }
  }
  BOOST_TEST(noonleaf::daily_site({78.2, 15.6, 20}).ra_mj_m2_d[354] == 0.0);
}

BOOST_AUTO_TEST_CASE(doors_agree) {
  const Days days_in;
  std::vector<double> et0(day_count);
  for (const auto& [equation, surface] : {std::pair{Equation::fao56, Surface::short_crop},
                                          {Equation::asce, Surface::short_crop},
                                          {Equation::asce, Surface::tall_crop}}) {
    for (const Location& place : places) {
      const noonleaf::DailySite site = noonleaf::daily_site(place);
      BOOST_TEST(noonleaf::daily_et0_mm_d(site, days_in.columns(), day_count, {et0.data()}, equation, surface)
                     .empty());
      for (std::size_t i = 0; i < day_count; ++i) {
        const double scalar = noonleaf::daily_et0_mm_d(days_in.row(i, place), equation, surface);
        if (!(std::abs(et0[i] - scalar) <= 1e-12)) {
          BOOST_ERROR("latitude " << place.latitude_deg << " row " << i << ": " << et0[i] << " against "
                                  << scalar);
        }
      }
    }
  }
}

BOOST_AUTO_TEST_CASE(pressure_and_soil_heat_by_row) {
  const Days days_in;
  const Location place{40.4, -104.8, 1462};
  DailyColumns columns = days_in.columns();
  std::vector<double> et0(day_count);
  const noonleaf::DailySite site = noonleaf::daily_site(place);
  for (const Equation equation : {Equation::fao56, Equation::asce}) {
    columns.pressure_kpa = {days_in.pressure_kpa.data()};
    columns.g_mj_m2_d = {days_in.g_mj_m2_d.data()};
    noonleaf::daily_et0_mm_d(site, columns, day_count, {et0.data()}, equation);
    for (std::size_t i = 0; i < day_count; ++i) {
      DailyInputs row = days_in.row(i, place);
      row.pressure_kpa = days_in.pressure_kpa[i];
      row.g_mj_m2_d = days_in.g_mj_m2_d[i];
      BOOST_TEST(std::abs(et0[i] - noonleaf::daily_et0_mm_d(row, equation)) <= 1e-12);
    }
    columns.pressure_kpa = {};
    noonleaf::daily_et0_mm_d(site, columns, day_count, {et0.data()}, equation);
    DailyInputs row = days_in.row(5, place);
    row.g_mj_m2_d = days_in.g_mj_m2_d[5];
    BOOST_TEST(std::abs(et0[5] - noonleaf::daily_et0_mm_d(row, equation)) <= 1e-12);
  }
}

BOOST_AUTO_TEST_CASE(net_radiation_of_both_doors_agrees) {
  Days days_in;
  days_in.u2_m_s[3] = -5;  // plays no part
  days_in.ea_kpa[7] = 21;
  std::vector<double> rn(day_count);
  for (const Equation equation : {Equation::fao56, Equation::asce}) {
    for (const Location& place : places) {
      const noonleaf::DailySite site = noonleaf::daily_site(place);
      const BadRows bad =
          noonleaf::daily_net_radiation_mj_m2_d(site, days_in.columns(), day_count, {rn.data()}, equation);
      BOOST_TEST(bad == BadRows{7}, boost::test_tools::per_element());
      BOOST_TEST(std::isnan(rn[7]));
      for (std::size_t i = 8; i < day_count; ++i) {
        const noonleaf::DailyEt0Detail day = noonleaf::daily_et0(days_in.row(i, place), equation);
        // Rs/Rso amplifies the last digit of Ra where a polar twilight's Rso is next to nothing: limited to 1
        // there
        const double scale = day.rns_mj_m2_d + std::abs(day.rnl_mj_m2_d);
        if (!(std::abs(rn[i] - day.rn_mj_m2_d) <= 1e-14 * scale)) {
          BOOST_ERROR("latitude " << place.latitude_deg << " row " << i << ": " << rn[i] - day.rn_mj_m2_d);
        }
      }
    }
  }
}

BOOST_AUTO_TEST_CASE(pressure_by_row_without_soil_heat) {  // no column of it: no heat into the soil
  const Days days_in;
  const Location place{40.4, -104.8, 1462};
  DailyColumns columns = days_in.columns();
  columns.pressure_kpa = {days_in.pressure_kpa.data()};
  std::vector<double> et0(day_count);
  noonleaf::daily_et0_mm_d(noonleaf::daily_site(place), columns, day_count, {et0.data()});
  for (std::size_t i = 0; i < day_count; ++i) {
    DailyInputs row = days_in.row(i, place);
    row.pressure_kpa = days_in.pressure_kpa[i];
    BOOST_TEST(std::abs(et0[i] - noonleaf::daily_et0_mm_d(row)) <= 1e-12);
  }
}

BOOST_AUTO_TEST_CASE(one_day_alone) {
  const Days days_in;
  double et0 = -1.0;
  noonleaf::daily_et0_mm_d(noonleaf::daily_site(places[0]), days_in.columns(), 1, {&et0});
  BOOST_TEST(std::abs(et0 - noonleaf::daily_et0_mm_d(days_in.row(0, places[0]))) <= 1e-12);
}

// Alone in its block a wrong day must be found without the help of others.
BOOST_AUTO_TEST_CASE(one_wrong_day_among_good_ones) {
  struct Wrong {
    std::vector<double> Days::*column;
    double value;
  };
  const noonleaf::DailySite site = noonleaf::daily_site(places[0]);
  for (const Wrong& wrong : {Wrong{&Days::t_max_c, 60.01},
                             {&Days::t_min_c, -60.01},
                             {&Days::ea_kpa, -1e-9},
                             {&Days::ea_kpa, 20.01},
                             {&Days::rs_mj_m2_d, -1e-9},
                             {&Days::rs_mj_m2_d, 60.01},
                             {&Days::u2_m_s, -1e-9},
                             {&Days::u2_m_s, 60.01},
                             {&Days::pressure_kpa, 29.99},
                             {&Days::pressure_kpa, 110.01},
                             {&Days::g_mj_m2_d, -30.01},
                             {&Days::g_mj_m2_d, 30.01}}) {
    Days days_in;
    (days_in.*wrong.column)[7] = wrong.value;
    DailyColumns columns = days_in.columns();
    columns.pressure_kpa = {days_in.pressure_kpa.data()};
    columns.g_mj_m2_d = {days_in.g_mj_m2_d.data()};
    std::vector<double> et0(20);
    const BadRows bad = noonleaf::daily_et0_mm_d(site, columns, 20, {et0.data()});
    BOOST_TEST(bad == BadRows{7}, boost::test_tools::per_element());
    BOOST_TEST(std::isnan(et0[7]));
  }
  Days days_in;  // among warm days one whose lowest temperature is above its highest
  std::fill(days_in.t_max_c.begin(), days_in.t_max_c.end(), 25.0);
  std::fill(days_in.t_min_c.begin(), days_in.t_min_c.end(), 15.0);
  days_in.t_max_c[7] = 18.0;
  days_in.t_min_c[7] = 18.1;
  std::vector<double> et0(20);
  BOOST_TEST(noonleaf::daily_et0_mm_d(site, days_in.columns(), 20, {et0.data()}) == BadRows{7},
             boost::test_tools::per_element());
}

BOOST_AUTO_TEST_CASE(both_ends_of_a_range_are_good_days) {
  Days days_in;
  days_in.t_max_c[0] = 60.0;
  days_in.t_min_c[1] = -60.0;
  days_in.ea_kpa[2] = 0.0;
  days_in.ea_kpa[3] = 20.0;
  days_in.rs_mj_m2_d[4] = 60.0;
  days_in.u2_m_s[5] = 60.0;
  days_in.pressure_kpa[6] = 30.0;
  days_in.pressure_kpa[7] = 110.0;
  days_in.g_mj_m2_d[8] = -30.0;
  days_in.g_mj_m2_d[9] = 30.0;
  DailyColumns columns = days_in.columns();
  columns.pressure_kpa = {days_in.pressure_kpa.data()};
  columns.g_mj_m2_d = {days_in.g_mj_m2_d.data()};
  std::vector<double> et0(20);
  BOOST_TEST(noonleaf::daily_et0_mm_d(noonleaf::daily_site(places[0]), columns, 20, {et0.data()}).empty());
}

BOOST_AUTO_TEST_CASE(a_column_of_dates_may_jump) {
  const Days days_in;
  const Location place{50.8, 4.4, 100};
  std::vector<sys_days> dates(2 * day_count);
  std::mt19937_64 random(3);
  for (std::size_t i = 0; i < day_count; ++i) {
    dates[2 * i] = sys_days{1950y / January / 1} + days{random() % 40'000};
  }
  DailyColumns columns = days_in.columns();
  columns.day = {.column = dates.data(), .stride = 2};
  std::vector<double> et0(day_count);
  noonleaf::daily_et0_mm_d(noonleaf::daily_site(place), columns, day_count, {et0.data()});
  for (std::size_t i = 0; i < day_count; ++i) {
    DailyInputs row = days_in.row(i, place);
    row.date = dates[2 * i];
    BOOST_TEST(std::abs(et0[i] - noonleaf::daily_et0_mm_d(row)) <= 1e-12);
  }
}

BOOST_AUTO_TEST_CASE(a_column_of_dates_lies_side_by_side_if_nothing_is_said) {
  const Days days_in;
  const std::vector<sys_days> dates{2021y / July / 1, 2021y / January / 1, 2020y / February / 29};
  DailyColumns columns = days_in.columns();
  columns.day = {.column = dates.data()};
  std::vector<double> et0(3);
  noonleaf::daily_et0_mm_d(noonleaf::daily_site(places[0]), columns, 3, {et0.data()});
  for (std::size_t i = 0; i < 3; ++i) {
    DailyInputs row = days_in.row(i, places[0]);
    row.date = dates[i];
    BOOST_TEST(std::abs(et0[i] - noonleaf::daily_et0_mm_d(row)) <= 1e-12);
  }
}

BOOST_AUTO_TEST_CASE(strides_one_value_repeated_and_work_in_place) {
  const Days days_in;
  const Location place{50.8, 4.4, 100};
  std::vector<double> rows(6 * day_count, 0.0);  // row by row: t_max t_min ea rs u2 and a spare
  for (std::size_t i = 0; i < day_count; ++i) {
    rows[6 * i] = days_in.t_max_c[i];
    rows[6 * i + 1] = days_in.t_min_c[i];
    rows[6 * i + 2] = days_in.ea_kpa[i];
    rows[6 * i + 3] = days_in.rs_mj_m2_d[i];
  }
  const double calm = 2.0;
  const DailyColumns columns{.day = {.first = first_day},
                             .t_max_c = {rows.data(), 6},
                             .t_min_c = {rows.data() + 1, 6},
                             .ea_kpa = {rows.data() + 2, 6},
                             .rs_mj_m2_d = {rows.data() + 3, 6},
                             .u2_m_s = {&calm, 0}};
  noonleaf::daily_et0_mm_d(noonleaf::daily_site(place), columns, day_count, {rows.data() + 3, 6});
  for (std::size_t i = 0; i < day_count; ++i) {
    DailyInputs row = days_in.row(i, place);
    row.u2_m_s = calm;
    BOOST_TEST(std::abs(rows[6 * i + 3] - noonleaf::daily_et0_mm_d(row)) <= 1e-12);
    BOOST_TEST(rows[6 * i + 5] == 0.0);
  }
}

BOOST_AUTO_TEST_CASE(missing_is_not_wrong_and_wrong_is_listed) {
  Days days_in;
  days_in.t_max_c[3] = missing;
  days_in.u2_m_s[10] = -missing;
  days_in.t_max_c[20] = 61.0;
  days_in.t_min_c[21] = days_in.t_max_c[21] + 0.1;
  days_in.ea_kpa[22] = -0.1;
  days_in.rs_mj_m2_d[95] = 61.0;
  days_in.u2_m_s[96] = -1.0;
  days_in.t_min_c[700] = -HUGE_VAL;
  days_in.u2_m_s[30] = -0.0;     // calm, and inside
  days_in.ea_kpa[40] = missing;  // missing and wrong at once: the wrong is still told
  days_in.t_max_c[40] = 80.0;
  std::vector<double> et0(day_count);
  const noonleaf::DailySite site = noonleaf::daily_site({50.8, 4.4, 100});
  const BadRows bad = noonleaf::daily_et0_mm_d(site, days_in.columns(), day_count, {et0.data()});
  BOOST_TEST(bad == (BadRows{20, 21, 22, 40, 95, 96, 700}), boost::test_tools::per_element());
  for (const std::size_t row : {3U, 10U, 20U, 21U, 22U, 40U, 95U, 96U, 700U})
    BOOST_TEST(std::isnan(et0[row]), row);
  BOOST_TEST(std::isfinite(et0[30]));
  BOOST_TEST(std::isfinite(et0[4]));

  DailyColumns columns = days_in.columns();
  columns.pressure_kpa = {days_in.pressure_kpa.data()};
  days_in.pressure_kpa[50] = 1013.0;
  days_in.pressure_kpa[51] = missing;
  days_in.g_mj_m2_d[52] = 40.0;
  columns.g_mj_m2_d = {days_in.g_mj_m2_d.data()};
  const BadRows more = noonleaf::daily_et0_mm_d(site, columns, day_count, {et0.data()});
  BOOST_TEST(more == (BadRows{20, 21, 22, 40, 50, 52, 95, 96, 700}), boost::test_tools::per_element());
  BOOST_TEST(std::isnan(et0[51]));
}

BOOST_AUTO_TEST_CASE(a_column_without_data_is_missing_throughout) {
  const Days days_in;
  DailyColumns columns = days_in.columns();
  columns.ea_kpa = {};
  std::vector<double> et0(day_count, 1.0);
  BOOST_TEST(
      noonleaf::daily_et0_mm_d(noonleaf::daily_site(places[0]), columns, day_count, {et0.data()}).empty());
  for (const double value : et0) BOOST_TEST(std::isnan(value));
  const Location nowhere{missing, missing, 100};
  BOOST_TEST(
      noonleaf::daily_et0_mm_d(noonleaf::daily_site(nowhere), days_in.columns(), day_count, {et0.data()})
          .empty());
  for (const double value : et0) BOOST_TEST(std::isnan(value));
}

BOOST_AUTO_TEST_CASE(stations_whatever_the_threads) {
  const Days days_in;
  const std::size_t count = 100;
  std::vector<double> one(places.size() * count), many(places.size() * count);
  Days wrong = days_in;
  for (std::size_t s = 0; s < places.size(); ++s) wrong.t_max_c[s * count + 17] = 70.0;
  const noonleaf::StationColumns columns{wrong.columns(), count, count};
  const BadRows bad = noonleaf::daily_et0_mm_d(places, columns, count, {one.data()});
  const BadRows bad_many = noonleaf::daily_et0_mm_d(places, columns, count, {many.data()}, Equation::fao56,
                                                    Surface::short_crop, noonleaf::Threads{3});
  BOOST_TEST(bad.size() == places.size());
  BOOST_TEST(bad == bad_many, boost::test_tools::per_element());
  for (std::size_t i = 0; i < one.size(); ++i) {
    BOOST_TEST((one[i] == many[i] || (std::isnan(one[i]) && std::isnan(many[i]))));
  }
  DailyInputs row = days_in.row(count * 5 + 3, places[5]);
  row.date = first_day + days{3};
  BOOST_TEST(std::abs(one[count * 5 + 3] - noonleaf::daily_et0_mm_d(row)) <= 1e-12);
  BOOST_CHECK_EXCEPTION(
      noonleaf::daily_et0_mm_d(std::vector<Location>{{95, 0, 0}}, columns, count, {one.data()}),
      noonleaf::Error, NamesField{"latitude_deg"});
}

BOOST_AUTO_TEST_CASE(stations_share_the_weather_if_nothing_is_said) {
  const Days days_in;
  const std::vector<Location> two{places[0], places[5]};
  std::vector<double> et0(10);  // nor has the second site a place of its own: its results are what stays
  noonleaf::daily_et0_mm_d(two, {.first_site = days_in.columns()}, 10, {et0.data()});
  for (std::size_t i = 0; i < 10; ++i) {
    BOOST_TEST(std::abs(et0[i] - noonleaf::daily_et0_mm_d(days_in.row(i, two[1]))) <= 1e-12);
  }
}

BOOST_AUTO_TEST_CASE(eigen_door) {
  const Days days_in;
  const Eigen::Map<const Eigen::ArrayXd> t_max(days_in.t_max_c.data(), 50), t_min(days_in.t_min_c.data(), 50),
      ea(days_in.ea_kpa.data(), 50), rs(days_in.rs_mj_m2_d.data(), 50), u2(days_in.u2_m_s.data(), 50);
  const noonleaf::DailySite site = noonleaf::daily_site(places[0]);
  const Eigen::ArrayXd et0 = noonleaf::daily_et0_mm_d(site, first_day, {t_max, t_min, ea, rs, u2});
  for (Eigen::Index i = 0; i < 50; ++i) {
    BOOST_TEST(std::abs(et0(i) - noonleaf::daily_et0_mm_d(
                                     days_in.row(static_cast<std::size_t>(i), places[0]))) <= 1e-12);
  }
  BOOST_CHECK_EXCEPTION(noonleaf::daily_et0_mm_d(site, first_day, {t_max, t_min, ea, rs, u2.head(49)}),
                        noonleaf::Error, NamesField{"u2_m_s"});
}

BOOST_AUTO_TEST_CASE(refuses_a_surface_that_fao56_has_not) {
  const Days days_in;
  std::vector<double> et0(day_count);
  BOOST_CHECK_EXCEPTION(
      noonleaf::daily_et0_mm_d(noonleaf::daily_site(places[0]), days_in.columns(), day_count, {et0.data()},
                               Equation::fao56, Surface::tall_crop),
      noonleaf::Error, NamesField{"surface"});
  BOOST_CHECK_EXCEPTION(noonleaf::daily_site({40, 0, 9001}), noonleaf::Error, NamesField{"elevation_m"});
}

BOOST_AUTO_TEST_CASE(no_rows_is_no_work) {
  BOOST_TEST(noonleaf::daily_et0_mm_d(noonleaf::daily_site(places[0]), {}, 0, {}).empty());
}

BOOST_AUTO_TEST_SUITE_END()
