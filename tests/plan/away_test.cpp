#include "noonleaf/plan/away.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::Away;
using noonleaf::AwayOutlook;
using noonleaf::Garden;
using noonleaf::Sky;

namespace {

const std::string tomatoes = tomatoes_from("2025-05-01");

constexpr std::chrono::year_month_day monday{2025y / 7 / 7};

Sky sky_of(const Garden& garden, int days = 75) {
  return noonleaf::sky_over(garden.site, steady_weather(std::chrono::sys_days(2025y / 5 / 1), days, 5));
}

Away away_of(const Garden& garden, std::chrono::year_month_day from, std::chrono::year_month_day to) {
  return noonleaf::plan_away(garden, {}, sky_of(garden), {monday, from, to});
}

/// A bed whose account starts full on a day, however far back the weather goes.
Garden known_on_june_1() {
  Garden garden = invented_garden(tomatoes);
  garden.beds[0].known_wet = 2025y / 6 / 1;
  return garden;
}

noonleaf::DailySeries weather_from(std::chrono::sys_days first) {
  return steady_weather(first, static_cast<int>((std::chrono::sys_days(2025y / 7 / 15) - first).count()), 5);
}

/// The first bed when nobody comes.
AwayOutlook dry_from_july_14(const Garden& garden, const noonleaf::DailySeries& weather) {
  const Sky sky = noonleaf::sky_over(garden.site, weather);
  return noonleaf::plan_away(garden, {}, sky, {monday, 2025y / 7 / 14, 2025y / 9 / 30}).beds[0].outlooks[0];
}

}  // namespace

BOOST_AUTO_TEST_SUITE(away)

BOOST_AUTO_TEST_CASE(water_beforehand_helps_and_a_visit_helps_most) {
  const Garden garden = invented_garden(tomatoes);
  const Away away = away_of(garden, monday, 2025y / 8 / 20);
  BOOST_REQUIRE(away.beds.size() == 1U);
  BOOST_REQUIRE(away.beds[0].outlooks.size() == 4U);
  const auto& nothing = away.beds[0].outlooks[0];
  const auto& deep = away.beds[0].outlooks[1];
  const auto& mulch = away.beds[0].outlooks[2];
  const auto& visit = away.beds[0].outlooks[3];
  BOOST_REQUIRE(nothing.middle.wilts.has_value());
  BOOST_REQUIRE(nothing.middle.leaves_comfort.has_value());
  BOOST_TEST((*nothing.middle.leaves_comfort <= *nothing.middle.wilts));
  BOOST_TEST((deep.middle.wilts && *deep.middle.wilts > *nothing.middle.wilts));
  BOOST_TEST(deep.middle.lost_mm < nothing.middle.lost_mm);
  BOOST_TEST(mulch.middle.lost_mm <= nothing.middle.lost_mm);
  BOOST_TEST(visit.middle.lost_mm < nothing.middle.lost_mm);
  BOOST_TEST(away.best_visit.has_value());
}

BOOST_AUTO_TEST_CASE(a_hotter_sky_is_the_earliest_and_a_cooler_one_the_latest) {
  const Garden garden = invented_garden(tomatoes);
  const Away away = away_of(garden, 2025y / 7 / 14, 2025y / 9 / 30);
  const auto& nothing = away.beds[0].outlooks[0];
  BOOST_TEST(nothing.skies == 3);
  BOOST_REQUIRE((nothing.earliest_wilt && nothing.latest_wilt && nothing.middle.wilts));
  BOOST_TEST((*nothing.earliest_wilt <= *nothing.middle.wilts));
  BOOST_TEST((*nothing.middle.wilts <= *nothing.latest_wilt));
  BOOST_TEST((*nothing.earliest_wilt < *nothing.latest_wilt));
}

// The same weather a year ago lies between the hotter and the cooler sky. Over a bed in the shade it was hotter than
// both: that year's sun had reached it whole.
BOOST_AUTO_TEST_CASE(an_earlier_year_counts_with_the_beds_own_shade) {
  Garden garden = known_on_june_1();
  garden.beds[0].sun_frac = 0.4;
  const AwayOutlook alone = dry_from_july_14(garden, weather_from(2025y / 5 / 1));
  const AwayOutlook beside = dry_from_july_14(garden, weather_from(2024y / 5 / 1));
  BOOST_TEST(alone.skies == 3);
  BOOST_TEST(beside.skies == 4);
  BOOST_REQUIRE((alone.earliest_wilt && alone.latest_wilt));
  BOOST_TEST((beside.earliest_wilt == alone.earliest_wilt));
  BOOST_TEST((beside.earliest_limit == alone.earliest_limit));
  BOOST_TEST((beside.latest_wilt == alone.latest_wilt));
}

BOOST_AUTO_TEST_CASE(a_windy_earlier_year_is_the_earliest) {
  const Garden garden = known_on_june_1();
  noonleaf::DailySeries weather = weather_from(2024y / 5 / 1);
  const AwayOutlook calm = dry_from_july_14(garden, weather);
  for (noonleaf::DailyWeather& day : weather.days) {
    if (day.date >= 2024y / 7 / 14 && day.date <= 2024y / 9 / 30) day.wind_m_s = 8;
  }
  const AwayOutlook windy = dry_from_july_14(garden, weather);
  BOOST_REQUIRE((windy.earliest_wilt && calm.earliest_wilt));
  BOOST_TEST((*windy.earliest_wilt < *calm.earliest_wilt));
  BOOST_TEST((windy.middle.wilts == calm.middle.wilts));
}

// It was told to fill the bed that had just been filled.
BOOST_AUTO_TEST_CASE(water_of_this_morning_counts_before_an_absence_that_begins_today) {
  const Garden garden = invented_garden(tomatoes);
  const auto deep_mm = [&](const noonleaf::Journal& journal) {
    return noonleaf::plan_away(garden, journal, sky_of(garden), {monday, monday, 2025y / 7 / 20})
        .beds[0]
        .deep_net_mm;
  };
  noonleaf::Journal journal = nothing_ran_before(monday);
  const double dry_mm = deep_mm(journal);
  journal.push_back(watered(monday, 20));  // 10 mm
  BOOST_TEST(dry_mm > 20);
  BOOST_CHECK_CLOSE(deep_mm(journal), dry_mm - 10, 0.1);
  journal.back().minutes = 600;
  BOOST_TEST(deep_mm(journal) == 0);
}

BOOST_AUTO_TEST_CASE(a_short_absence_needs_nothing) {
  const Garden garden = invented_garden(tomatoes);
  const Away away = away_of(garden, 2025y / 7 / 12, 2025y / 7 / 13);  // a weekend after the week's plan
  const auto& nothing = away.beds[0].outlooks[0];
  BOOST_TEST(!nothing.middle.wilts.has_value());
  BOOST_TEST(nothing.skies_wilting == 0);
}

// The sheet for one visit sent somebody on a day on which watering is forbidden.
BOOST_AUTO_TEST_CASE(the_visit_is_on_a_day_that_the_rules_allow) {
  Garden garden = invented_garden(tomatoes);
  noonleaf::WateringRestriction thursdays;
  thursdays.name = "Thursdays";
  thursdays.weekdays.reset();
  thursdays.weekdays.set(4);
  garden.rules.restrictions = {thursdays};
  const Away away = away_of(garden, monday, 2025y / 8 / 20);
  BOOST_REQUIRE(away.best_visit.has_value());
  BOOST_TEST((std::chrono::weekday{std::chrono::sys_days(*away.best_visit)} == std::chrono::Thursday));
  garden.taps[0].reclaimed = true;  // never over food
  const Away never = away_of(garden, monday, 2025y / 8 / 20);
  BOOST_TEST(!never.best_visit.has_value());
}

BOOST_AUTO_TEST_CASE(questions_that_make_no_sense_are_refused) {
  const Garden garden = invented_garden(tomatoes);
  BOOST_CHECK_THROW(away_of(garden, 2025y / 7 / 20, 2025y / 7 / 19), noonleaf::Error);
  BOOST_CHECK_THROW(away_of(garden, 2025y / 7 / 6, 2025y / 7 / 19), noonleaf::Error);
  BOOST_CHECK_THROW(away_of(garden, 2025y / 7 / 22, 2025y / 7 / 25), noonleaf::Error);
  BOOST_CHECK_THROW(away_of(garden, monday, 2025y / 12 / 25), noonleaf::Error);
}

BOOST_AUTO_TEST_SUITE_END()
