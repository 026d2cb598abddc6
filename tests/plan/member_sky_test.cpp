#include "noonleaf/plan/member_sky.hpp"

#include <cmath>
#include <cstring>

#include <boost/test/unit_test.hpp>

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::MemberDayFrom;
using noonleaf::MemberOptions;
using noonleaf::MemberSky;
using noonleaf::Sky;

namespace {

const std::chrono::sys_days morning = 2025y / 7 / 15;

/// Steady weather up to 5 days of forecast behind the morning, after `before` days.
Sky steady(const noonleaf::Site& site, int before) {
  return noonleaf::sky_over(site, steady_weather(morning - std::chrono::days(before), before + 5, 5));
}

double mean_of(const std::vector<double>& column, const MemberSky& sky, std::size_t day) {
  double sum = 0;
  for (std::size_t m = 0; m < sky.members; ++m) sum += column[day * sky.members + m];
  return sum / static_cast<double>(sky.members);
}

double sd_of(const std::vector<double>& column, const MemberSky& sky, std::size_t day) {
  const double mean = mean_of(column, sky, day);
  double sum = 0;
  for (std::size_t m = 0; m < sky.members; ++m) {
    const double off = column[day * sky.members + m] - mean;
    sum += off * off;
  }
  return std::sqrt(sum / static_cast<double>(sky.members));
}

}  // namespace

BOOST_AUTO_TEST_SUITE(member_sky)

BOOST_AUTO_TEST_CASE(says_where_each_day_is_from) {
  const auto garden = invented_garden("");
  const MemberSky few = noonleaf::member_sky(garden.site, steady(garden.site, 60), morning, 8);
  BOOST_CHECK(few.from[0] == MemberDayFrom::forecast);
  BOOST_CHECK(few.from[4] == MemberDayFrom::forecast);
  BOOST_CHECK(few.from[5] == MemberDayFrom::this_year);
  BOOST_TEST(few.past_years == 0);
  const MemberSky many = noonleaf::member_sky(garden.site, steady(garden.site, 2 * 366 + 10), morning, 8);
  BOOST_CHECK(many.from[7] == MemberDayFrom::past_years);
  BOOST_TEST(many.past_years == 2);
  BOOST_TEST(many.traces == 30u);  // 15 starts in each
  const MemberSky bare = noonleaf::member_sky(garden.site, steady(garden.site, 2), morning, 8);
  BOOST_CHECK(bare.from[7] == MemberDayFrom::last_days);
}

BOOST_AUTO_TEST_CASE(the_error_grows_with_the_lead_and_has_the_size_it_says) {
  const auto garden = invented_garden("");
  const MemberSky sky =
      noonleaf::member_sky(garden.site, steady(garden.site, 60), morning, 5, MemberOptions{.members = 20000});
  for (std::size_t day = 0; day < 5; ++day) {
    const auto stated = noonleaf::forecast_error(static_cast<int>(day) + 1);
    // Five standard errors of a standard deviation.
    BOOST_TEST(std::abs(sd_of(sky.t_max_c, sky, day) - stated.t_max_c) <
               5 * stated.t_max_c / std::sqrt(40000.0));
    if (day > 0) BOOST_TEST(sd_of(sky.et0_mm_d, sky, day) > sd_of(sky.et0_mm_d, sky, day - 1));
  }
}

BOOST_AUTO_TEST_CASE(no_member_is_impossible) {
  const auto garden = invented_garden("");
  const MemberSky sky =
      noonleaf::member_sky(garden.site, steady(garden.site, 60), morning, 8, MemberOptions{.members = 3000});
  for (std::size_t i = 0; i < sky.t_max_c.size(); ++i) {
    BOOST_REQUIRE(sky.t_min_c[i] <= sky.t_max_c[i]);
    BOOST_REQUIRE(sky.ea_kpa[i] > 0);
    BOOST_REQUIRE(sky.et0_mm_d[i] >= 0);
    BOOST_REQUIRE(sky.rain_mm[i] >= 0);
    BOOST_REQUIRE(sky.u2_m_s[i] >= 0.5);
  }
}

BOOST_AUTO_TEST_CASE(the_same_seed_gives_the_same_members_and_fewer_are_the_first_of_more) {
  const auto garden = invented_garden("");
  const Sky weather = steady(garden.site, 60);
  const MemberSky all = noonleaf::member_sky(garden.site, weather, morning, 8, {.members = 500, .seed = 4});
  const MemberSky few = noonleaf::member_sky(garden.site, weather, morning, 8, {.members = 40, .seed = 4});
  for (std::size_t day = 0; day < 8; ++day)
    BOOST_TEST(std::memcmp(&all.et0_mm_d[day * 500], &few.et0_mm_d[day * 40], 40 * sizeof(double)) == 0);
  const MemberSky other = noonleaf::member_sky(garden.site, weather, morning, 8, {.members = 40, .seed = 5});
  BOOST_TEST(other.et0_mm_d[0] != few.et0_mm_d[0]);
}

BOOST_AUTO_TEST_SUITE_END()
