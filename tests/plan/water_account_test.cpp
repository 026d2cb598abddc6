#include "noonleaf/plan/water_account.hpp"

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"
#include "noonleaf/plan/estimates.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/plan/member_sky.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::Journal;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
const std::string tomato = tomatoes_from("2025-06-01");

}  // namespace

BOOST_AUTO_TEST_SUITE(water_account)

BOOST_AUTO_TEST_CASE(the_account_is_the_balance_from_full_soil_on) {
  const auto garden = invented_garden(tomato);
  const auto sky = noonleaf::sky_over(garden.site, steady_weather(first, 30));
  const auto accounts = noonleaf::accounts_of_bed(garden, 0, {}, sky, 2025y / 6 / 11);
  BOOST_REQUIRE(accounts.size() == 1U);
  BOOST_TEST(accounts[0].past.days.size() == 10U);
  BOOST_TEST(accounts[0].dry_ahead.days.size() == noonleaf::days_ahead);
  BOOST_TEST(accounts[0].past.days[0].start.dr_mm == 0.0);
  BOOST_TEST(accounts[0].dawn.dr_mm > 5.0);
  BOOST_TEST(accounts[0].dry_ahead.days[0].start.dr_mm == accounts[0].dawn.dr_mm);
}

BOOST_AUTO_TEST_CASE(the_order_of_plantings_changes_nothing) {
  const std::string lettuce = "[[bed.planting]]\ncrop = \"lettuce\"\nshare_pct = 30\nsown = 2025-06-03\n";
  const std::string tomatoes =
      "[[bed.planting]]\ncrop = \"tomato\"\nshare_pct = 70\ntransplanted = 2025-06-01\n";
  const auto one = invented_garden(lettuce + tomatoes), two = invented_garden(tomatoes + lettuce);
  const auto sky = noonleaf::sky_over(one.site, steady_weather(first, 30));
  const auto first_order = noonleaf::accounts_of_bed(one, 0, {}, sky, 2025y / 6 / 21);
  const auto second_order = noonleaf::accounts_of_bed(two, 0, {}, sky, 2025y / 6 / 21);
  BOOST_TEST(first_order[0].dawn.dr_mm == second_order[1].dawn.dr_mm);
  BOOST_TEST(first_order[1].dawn.dr_mm == second_order[0].dawn.dr_mm);
  BOOST_TEST(first_order[0].dawn.dr_mm != first_order[1].dawn.dr_mm);  // each its own root zone
}

BOOST_AUTO_TEST_CASE(a_crop_that_was_pulled_leaves_its_ground_dry_to_the_next) {
  const std::string carrot = "[[bed.planting]]\ncrop = \"carrot\"\nsown = 2025-06-25\n";
  const std::string peas = "[[bed.planting]]\ncrop = \"pea_fresh\"\nsown = 2025-04-20\npulled = 2025-06-24\n";
  const auto after_peas = invented_garden(peas + carrot), after_nothing = invented_garden(carrot);
  const auto sky = noonleaf::sky_over(after_peas.site, steady_weather(first, 60));
  const auto wet = noonleaf::accounts_of_bed(after_nothing, 0, {}, sky, 2025y / 6 / 26);
  const auto dry = noonleaf::accounts_of_bed(after_peas, 0, {}, sky, 2025y / 6 / 26);
  BOOST_REQUIRE(dry.size() == 1U);  // the peas are gone
  BOOST_TEST(dry[0].dawn.dr_mm + dry[0].dawn.lower_mm > wet[0].dawn.dr_mm + wet[0].dawn.lower_mm + 20);
}

BOOST_AUTO_TEST_CASE(the_account_starts_after_a_gap_that_cannot_be_bridged) {
  const auto garden = invented_garden(tomato);
  auto series = steady_weather(first, 20);
  for (std::size_t day = 5; day < 12; ++day) series.days[day].t_min_c = noonleaf::missing;
  const auto sky = noonleaf::sky_over(garden.site, series);
  BOOST_TEST((noonleaf::account_start(sky, 2025y / 6 / 15) == first + std::chrono::days(12)));
  BOOST_TEST(noonleaf::accounts_of_bed(garden, 0, {}, sky, 2025y / 6 / 15)[0].past.days.size() == 2U);
  BOOST_CHECK_EXCEPTION(noonleaf::accounts_of_bed(garden, 0, {}, sky, 2025y / 6 / 8), noonleaf::Error,
                        [](const noonleaf::Error& refused) {
                          return std::string(refused.what()).find("2025-06-08 has no temperature") !=
                                 std::string::npos;
                        });
}

BOOST_AUTO_TEST_CASE(an_account_that_starts_after_a_gap_says_so) {
  const auto garden = invented_garden(tomato);
  const auto said_on = [&](const noonleaf::DailySeries& series) {
    std::vector<std::chrono::year_month_day> dates;
    const auto sky = noonleaf::sky_over(garden.site, series);
    for (const noonleaf::Estimate& each : noonleaf::estimates_behind(garden, {}, sky, 2025y / 6 / 15))
      if (each.fact == noonleaf::NotMeasured::account_after_gap) dates.push_back(each.date);
    return dates;
  };
  auto series = steady_weather(first, 20);
  BOOST_TEST(said_on(series).empty());
  for (std::size_t day = 5; day < 12; ++day) series.days[day].t_min_c = noonleaf::missing;
  BOOST_REQUIRE(said_on(series).size() == 1U);
  BOOST_TEST((said_on(series).front() == 2025y / 6 / 13));
}

BOOST_AUTO_TEST_CASE(days_behind_the_weather_go_on_like_the_last_three) {
  const auto garden = invented_garden(tomato);
  const auto sky = noonleaf::sky_over(garden.site, steady_weather(first, 20));
  const auto ahead = noonleaf::accounts_of_bed(garden, 0, {}, sky, 2025y / 6 / 20)[0].dry_ahead;
  BOOST_REQUIRE(ahead.days.size() == noonleaf::days_ahead);
  const double mean = (sky.days[17].et0_mm_d + sky.days[18].et0_mm_d + sky.days[19].et0_mm_d) / 3;
  BOOST_TEST(ahead.days.back().et0_mm_d == mean, boost::test_tools::tolerance(1e-14));
}

// Water and rain that come after the morning must not make the days ahead look wetter.
BOOST_AUTO_TEST_CASE(the_days_ahead_know_nothing_of_later_water) {
  const auto garden = invented_garden(tomato);
  auto series = steady_weather(first, 30);
  series.days[14].rain_mm = 30;
  const auto wet_later = noonleaf::sky_over(garden.site, series);
  const auto dry = noonleaf::sky_over(garden.site, steady_weather(first, 30));
  const Journal journal{watered(2025y / 6 / 13, 60, 420min)};
  const auto replayed = noonleaf::accounts_of_bed(garden, 0, journal, wet_later, 2025y / 6 / 11);
  const auto plain = noonleaf::accounts_of_bed(garden, 0, {}, dry, 2025y / 6 / 11);
  BOOST_TEST(replayed[0].dry_ahead.days.back().end.dr_mm == plain[0].dry_ahead.days.back().end.dr_mm);
}

BOOST_AUTO_TEST_CASE(frozen_ground_stops_the_account) {
  const auto garden = invented_garden(tomato);
  auto series = steady_weather(first, 20);
  for (std::size_t day = 10; day < 14; ++day) {
    series.days[day].t_min_c = -12;
    series.days[day].t_max_c = -3;
  }
  const auto sky = noonleaf::sky_over(garden.site, series);
  const auto account = noonleaf::accounts_of_bed(garden, 0, {}, sky, 2025y / 6 / 14)[0];
  BOOST_TEST(account.past.days[12].end.dr_mm == account.past.days[10].start.dr_mm);
}

BOOST_AUTO_TEST_CASE(rain_runs_off_an_unframed_bed_only) {
  auto framed = invented_garden(tomato), open = framed;
  open.beds[0].framed = false;
  BOOST_TEST(noonleaf::is_missing(noonleaf::settings_of_bed(framed, framed.beds[0]).curve_number));
  BOOST_TEST(noonleaf::settings_of_bed(open, open.beds[0]).curve_number ==
             78);  // TR-55: loam, group B, row crop
}

// A clear, damp December day far in the north has an ET0 below zero: it refused the whole garden.
BOOST_AUTO_TEST_CASE(a_day_of_dew_is_a_day_without_evaporation) {
  noonleaf::Garden garden =
      invented_garden("[[bed.planting]]\ncrop = \"lettuce\"\ntransplanted = 2025-12-01\n");
  garden.site.location.latitude_deg = 60;
  noonleaf::DailySeries series = steady_weather(std::chrono::sys_days(2025y / 12 / 1), 25, 5);
  for (noonleaf::DailyWeather& day : series.days) {
    day.t_min_c = 4;
    day.t_max_c = 6;
    day.rh_min_pct = day.rh_max_pct = 100;
    day.rs_mj_m2_d = 1.9;
  }
  const auto sky = noonleaf::sky_over(garden.site, series);
  BOOST_REQUIRE(sky.days.front().et0_mm_d < 0);
  const auto accounts = noonleaf::accounts_of_bed(garden, 0, {}, sky, 2025y / 12 / 15);
  BOOST_REQUIRE(accounts.size() == 1U);
  for (const noonleaf::BalanceDetail& day : accounts[0].past.days) BOOST_TEST(day.et0_mm_d == 0.0);
  const auto members = noonleaf::member_sky(garden.site, sky, 2025y / 12 / 15, 5, {.members = 50});
  for (const double et0_mm_d : members.et0_mm_d) BOOST_TEST(et0_mm_d >= 0.0);
}

BOOST_AUTO_TEST_SUITE_END()
