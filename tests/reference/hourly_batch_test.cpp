#include "noonleaf/reference/hourly_batch.hpp"

#include <chrono>
#include <cmath>
#include <random>
#include <vector>

#include <boost/test/unit_test.hpp>

#include "refusal.hpp"

using namespace std::chrono;
using namespace std::chrono_literals;
using noonleaf::BadRows;
using noonleaf::Equation;
using noonleaf::HourlyColumns;
using noonleaf::HourlyInputs;
using noonleaf::HourlySite;
using noonleaf::Location;
using noonleaf::missing;
using noonleaf::Surface;

namespace {

/// Plausible periods drawn once.
struct Hours {
  std::vector<double> t_c, ea_kpa, rs_mj_m2_h, u2_m_s, pressure_kpa;

  explicit Hours(std::size_t count) {
    std::mt19937_64 random(11);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (std::size_t i = 0; i < count; ++i) {
      t_c.push_back(-20.0 + 60.0 * unit(random));
      ea_kpa.push_back(3.0 * unit(random));
      rs_mj_m2_h.push_back(unit(random) < 0.4 ? 0.0 : 3.0 * unit(random));
      u2_m_s.push_back(8.0 * unit(random));
      pressure_kpa.push_back(80.0 + 22.0 * unit(random));
    }
  }

  HourlyColumns columns(sys_seconds first_begin) const {
    return {.first_begin = first_begin,
            .t_c = {t_c.data()},
            .ea_kpa = {ea_kpa.data()},
            .rs_mj_m2_h = {rs_mj_m2_h.data()},
            .u2_m_s = {u2_m_s.data()}};
  }

  HourlyInputs row(std::size_t i, sys_seconds first_begin, seconds length) const {
    return {.begin = first_begin + length * static_cast<std::int64_t>(i),
            .length = length,
            .t_c = t_c[i],
            .ea_kpa = ea_kpa[i],
            .rs_mj_m2_h = rs_mj_m2_h[i],
            .u2_m_s = u2_m_s[i]};
  }
};

const std::vector<Location> places = {{50.8, 4.4, 100}, {-33.9, 18.4, 0},       {0, 179.9, 1700},
                                      {78.2, 15.6, 20}, {40.41, -104.78, 1462}, {-90, 0, 2800},
                                      {64, -179.99, 5}, {-77.8, 177, 10}};

}  // namespace

BOOST_AUTO_TEST_SUITE(hourly_batch)

BOOST_AUTO_TEST_CASE(doors_agree) {
  const std::size_t count = 24 * 430;  // over two year ends, one of them after a leap year
  const Hours hours_in(count);
  const sys_seconds first = sys_days{2019y / November / 20} + 5h;
  std::vector<double> et0(count);
  for (const auto& [equation, surface] : {std::pair{Equation::fao56, Surface::short_crop},
                                          {Equation::asce, Surface::short_crop},
                                          {Equation::asce, Surface::tall_crop}}) {
    for (const Location& place : places) {
      const HourlySite site = noonleaf::hourly_site(place, first, 1h, equation);
      BOOST_TEST(
          noonleaf::hourly_et0_mm_h(site, hours_in.columns(first), count, {et0.data()}, surface).empty());
      noonleaf::HourlySeries series(place, equation, surface);
      int wrong = 0;
      for (std::size_t i = 0; i < count && wrong < 5; ++i) {
        const double scalar = series.next(hours_in.row(i, first, 1h)).et0_mm_h;
        if (std::abs(et0[i] - scalar) <= 1e-12) continue;
        BOOST_ERROR("latitude " << place.latitude_deg << " row " << i << ": " << et0[i] << " against "
                                << scalar);
        ++wrong;
      }
    }
  }
}

BOOST_AUTO_TEST_CASE(shorter_periods_at_any_phase) {
  const std::size_t count = 5000;
  const Hours hours_in(count);
  std::vector<double> et0(count);
  for (const seconds length : {seconds{1800}, seconds{900}, seconds{600}}) {
    const sys_seconds first = sys_days{2020y / December / 20} + 3h + 7min;
    for (const Location& place : {places[0], places[2], places[4]}) {
      const HourlySite site = noonleaf::hourly_site(place, first, length);
      noonleaf::hourly_et0_mm_h(site, hours_in.columns(first), count, {et0.data()});
      noonleaf::HourlySeries series(place);
      for (std::size_t i = 0; i < count; ++i) {
        const double scalar = series.next(hours_in.row(i, first, length)).et0_mm_h;
        if (!(std::abs(et0[i] - scalar) <= 1e-12))
          BOOST_ERROR("row " << i << ": " << et0[i] << " / " << scalar);
      }
    }
  }
}

// Ten minutes before a solar midnight with the sun up: in November it lies behind the clock's.
BOOST_AUTO_TEST_CASE(site_table_is_the_scalar_radiation) {
  for (const Location& place : places) {
    for (const seconds length : {seconds{1h}, seconds{30min}, seconds{10min}}) {
      const sys_seconds first = sys_days{2024y / January / 2};
      const auto periods = static_cast<std::size_t>(24h / length);
      const HourlySite site = noonleaf::hourly_site(place, first, length);
      BOOST_TEST(site.ra_mj_m2_h.size() == 366 * periods);
      BOOST_TEST(site.sky.size() == 366 * periods);
      HourlyInputs in{.length = length,
                      .t_c = 10,
                      .ea_kpa = 1,
                      .rs_mj_m2_h = 0,
                      .u2_m_s = 2,
                      .earlier_relative_sun = 0.5};
      for (in.begin = first; in.begin < sys_days{2024y / December / 30}; in.begin += 7h) {
        const noonleaf::HourlyEt0Detail hour = noonleaf::hourly_et0(in, place);
        const double solar_s = static_cast<double>((in.begin + length / 2 - floor<days>(in.begin)).count()) +
                               240.0 * place.longitude_deg;
        const double into_day = solar_s - 86400.0 * std::floor(solar_s / 86400.0);
        const auto period = static_cast<std::size_t>(into_day / static_cast<double>(length.count()));
        const auto j = static_cast<std::size_t>(hour.day_of_year);
        BOOST_TEST(std::abs(site.ra_mj_m2_h[(j - 1) * periods + period] - hour.ra_mj_m2_h) <= 1e-12);
      }
    }
  }
}

BOOST_AUTO_TEST_CASE(a_site_of_nothing_has_the_hours_of_a_day) {
  const HourlySite site;
  BOOST_TEST((site.length * static_cast<std::int64_t>(site.periods_a_day) == 24h));
  BOOST_TEST((site.phase == 0s));
}

BOOST_AUTO_TEST_CASE(pressure_by_row_strides_and_work_in_place) {
  const std::size_t count = 600;
  const Hours hours_in(count);
  const sys_seconds first = sys_days{2021y / May / 1};
  std::vector<double> rows(5 * count);
  for (std::size_t i = 0; i < count; ++i) {
    rows[5 * i] = hours_in.t_c[i];
    rows[5 * i + 1] = hours_in.ea_kpa[i];
    rows[5 * i + 2] = hours_in.rs_mj_m2_h[i];
    rows[5 * i + 3] = hours_in.u2_m_s[i];
    rows[5 * i + 4] = hours_in.pressure_kpa[i];
  }
  for (const Equation equation : {Equation::fao56, Equation::asce}) {
    std::vector<double> work = rows;
    const HourlySite site = noonleaf::hourly_site(places[4], first, 1h, equation);
    noonleaf::hourly_et0_mm_h(site,
                              {.first_begin = first,
                               .t_c = {work.data(), 5},
                               .ea_kpa = {work.data() + 1, 5},
                               .rs_mj_m2_h = {work.data() + 2, 5},
                               .u2_m_s = {work.data() + 3, 5},
                               .pressure_kpa = {work.data() + 4, 5}},
                              count, {work.data(), 5});
    noonleaf::HourlySeries series(places[4], equation);
    for (std::size_t i = 0; i < count; ++i) {
      HourlyInputs in = hours_in.row(i, first, 1h);
      in.pressure_kpa = hours_in.pressure_kpa[i];
      BOOST_TEST(std::abs(work[5 * i] - series.next(in).et0_mm_h) <= 1e-12);
    }
  }
}

BOOST_AUTO_TEST_CASE(missing_is_not_wrong_and_wrong_is_listed) {
  const std::size_t count = 700;
  Hours hours_in(count);
  hours_in.t_c[5] = missing;
  hours_in.rs_mj_m2_h[6] = missing;
  hours_in.t_c[100] = 61;
  hours_in.ea_kpa[101] = -0.2;
  hours_in.rs_mj_m2_h[95] = 6.5;
  hours_in.u2_m_s[96] = -0.5;
  hours_in.rs_mj_m2_h[300] = -0.0;
  hours_in.pressure_kpa[400] = 1013;
  const sys_seconds first = sys_days{2021y / May / 1};
  const HourlySite site = noonleaf::hourly_site(places[4], first);
  std::vector<double> et0(count);
  HourlyColumns columns = hours_in.columns(first);
  columns.pressure_kpa = {hours_in.pressure_kpa.data()};
  const BadRows bad = noonleaf::hourly_et0_mm_h(site, columns, count, {et0.data()});
  BOOST_TEST(bad == (BadRows{95, 96, 100, 101, 400}), boost::test_tools::per_element());
  for (const std::size_t row : {5U, 6U, 100U, 101U, 95U, 96U, 400U}) BOOST_TEST(std::isnan(et0[row]), row);
  BOOST_TEST(std::isfinite(et0[300]));

  for (const auto field : {&Location::latitude_deg, &Location::longitude_deg, &Location::elevation_m}) {
    Location nowhere = places[4];
    nowhere.*field = missing;
    std::vector<double> none(count);
    noonleaf::hourly_et0_mm_h(noonleaf::hourly_site(nowhere, first), columns, count, {none.data()});
    for (const double value : none) BOOST_TEST(std::isnan(value));
  }

  // Wrong rows leave the cloudiness of the night alone, as in the series that refuses them.
  noonleaf::HourlySeries series(places[4]);
  for (std::size_t i = 0; i < count; ++i) {
    HourlyInputs in = hours_in.row(i, first, 1h);
    in.pressure_kpa = hours_in.pressure_kpa[i];
    try {
      const double scalar = series.next(in).et0_mm_h;
      BOOST_TEST((std::abs(et0[i] - scalar) <= 1e-12 || (std::isnan(scalar) && std::isnan(et0[i]))), i);
    } catch (const noonleaf::Error&) {
      BOOST_TEST(std::isnan(et0[i]));
    }
  }
}

// A wrong pressure in the very first row must be found without the help of others.
BOOST_AUTO_TEST_CASE(one_wrong_pressure_alone) {
  Hours hours_in(48);
  hours_in.pressure_kpa[0] = 1013;
  const sys_seconds first = sys_days{2021y / May / 1};
  HourlyColumns columns = hours_in.columns(first);
  columns.pressure_kpa = {hours_in.pressure_kpa.data()};
  std::vector<double> et0(48);
  const BadRows bad =
      noonleaf::hourly_et0_mm_h(noonleaf::hourly_site(places[0], first), columns, 48, {et0.data()});
  BOOST_TEST(bad == BadRows{0}, boost::test_tools::per_element());
  BOOST_TEST(std::isnan(et0[0]));
}

BOOST_AUTO_TEST_CASE(eigen_door_and_refusals) {
  const Hours hours_in(48);
  const sys_seconds first = sys_days{2021y / May / 1};
  const HourlySite site = noonleaf::hourly_site(places[0], first);
  const Eigen::Map<const Eigen::ArrayXd> t(hours_in.t_c.data(), 48), ea(hours_in.ea_kpa.data(), 48),
      rs(hours_in.rs_mj_m2_h.data(), 48), u2(hours_in.u2_m_s.data(), 48);
  std::vector<double> plain(48);
  noonleaf::hourly_et0_mm_h(site, hours_in.columns(first), 48, {plain.data()});
  const Eigen::ArrayXd et0 = noonleaf::hourly_et0_mm_h(site, first, {t, ea, rs, u2});
  for (Eigen::Index i = 0; i < 48; ++i) BOOST_TEST(et0(i) == plain[static_cast<std::size_t>(i)]);
  BOOST_CHECK_EXCEPTION(noonleaf::hourly_et0_mm_h(site, first, {t, ea, rs.head(40), u2}), noonleaf::Error,
                        NamesField{"rs_mj_m2_h"});
  BOOST_CHECK_EXCEPTION(noonleaf::hourly_et0_mm_h(site, first + 10min, {t, ea, rs, u2}), noonleaf::Error,
                        NamesField{"first_begin"});
  BOOST_CHECK_EXCEPTION(noonleaf::hourly_et0_mm_h(site, first, {t, ea, rs, u2}, Surface::tall_crop),
                        noonleaf::Error, NamesField{"surface"});
  BOOST_CHECK_EXCEPTION(noonleaf::hourly_site(places[0], first, seconds{3500}), noonleaf::Error,
                        NamesField{"length"});
  BOOST_CHECK_EXCEPTION(noonleaf::hourly_site(places[0], first, seconds{7200}), noonleaf::Error,
                        NamesField{"length"});
  BOOST_CHECK_EXCEPTION(noonleaf::hourly_site({91, 0, 0}, first), noonleaf::Error,
                        NamesField{"latitude_deg"});
}

BOOST_AUTO_TEST_SUITE_END()
