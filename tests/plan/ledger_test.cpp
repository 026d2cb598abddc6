#include "noonleaf/plan/ledger.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

#include "noonleaf/error.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::Ledger;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
const std::string tomato = tomatoes_from("2025-04-15");

Ledger ask(const Garden& garden, const Journal& journal) {
  const auto sky = noonleaf::sky_over(garden.site, steady_weather(first, 60, 0));
  return noonleaf::water_ledger(garden, journal, sky, 2025y / 6 / 1, 2025y / 7 / 15);
}

}  // namespace

BOOST_AUTO_TEST_SUITE(ledger)

// 30 mm/h on 10 m2: a minute is 0.5 mm and 5 litres in the bed.
BOOST_AUTO_TEST_CASE(minutes_become_depth_and_litres_by_month) {
  const Ledger answer =
      ask(invented_garden(tomato),
          {watered(2025y / 5 / 31, 7), watered(2025y / 6 / 1, 20), watered(2025y / 6 / 30, 10),
           watered(2025y / 7 / 15, 40), watered(2025y / 7 / 16, 7)});
  BOOST_REQUIRE(answer.lines.size() == 2U);
  BOOST_TEST((answer.lines[0].month == 2025y / 6));
  BOOST_TEST(answer.lines[0].runs == 2U);
  BOOST_TEST(answer.lines[0].minutes == 30);
  BOOST_TEST(std::abs(answer.lines[0].depth_mm - 15) < 1e-9);
  BOOST_TEST(std::abs(answer.lines[0].in_bed_l - 150) < 1e-9);
  BOOST_TEST(std::abs(answer.lines[1].in_bed_l - 200) < 1e-9);
  BOOST_TEST(noonleaf::is_missing(answer.lines[0].from_tap_l));  // nobody measured the flow
  BOOST_TEST(answer.volume_is_least);
  BOOST_TEST(std::abs(answer.billed_l - 350) < 1e-9);
  BOOST_TEST(noonleaf::is_missing(answer.cost));
  BOOST_TEST(answer.lines[0].rain_mm == 0);
  BOOST_TEST(answer.lines[0].days == 30U);
  BOOST_TEST(answer.lines[0].days_without_weather == 0U);
}

BOOST_AUTO_TEST_CASE(a_known_flow_tells_what_fell_beside_the_bed) {
  Garden garden = invented_garden(tomato);
  garden.sprinklers[0].rate.flow_l_min = 8;
  garden.water.price_per_m3 = 2.5;
  const Ledger answer = ask(garden, {watered(2025y / 6 / 10, 100)});
  BOOST_TEST(answer.lines[0].from_tap_l == 800);
  BOOST_TEST(std::abs(answer.lines[0].beside_bed_l - 300) < 1e-9);
  BOOST_TEST(!answer.volume_is_least);
  BOOST_TEST(std::abs(answer.cost - 2.0) < 1e-9);  // 0.8 m3
}

// DU 0.50 runs 1 / 0.70 times as long as even, DU 0.75 1 / 0.85 times: 1 - 0.70 / 0.85 of the water.
BOOST_AUTO_TEST_CASE(an_uneven_sprinkler_costs_water) {
  Garden garden = invented_garden(tomato);
  garden.sprinklers[0].rate.du_lq_frac = 0.5;
  const Ledger answer = ask(garden, {watered(2025y / 6 / 10, 100)});
  BOOST_TEST(std::abs(answer.lines[0].uneven_l - 500 * (1 - 0.70 / 0.85)) < 1e-9);
  BOOST_TEST(ask(invented_garden(tomato), {watered(2025y / 6 / 10, 100)}).lines[0].uneven_l == 0);
}

BOOST_AUTO_TEST_CASE(water_beyond_what_the_soil_holds_drains) {
  const Garden garden = invented_garden(tomato);
  BOOST_TEST(ask(garden, {}).lines[0].drained_mm == 0);
  const Ledger soaked = ask(garden, {watered(2025y / 6 / 2, 600)});  // 300 mm
  BOOST_TEST(soaked.lines[0].drained_mm > 200);
  BOOST_TEST(soaked.lines[0].drained_mm < 300);
}

BOOST_AUTO_TEST_CASE(a_period_that_ends_before_it_begins_is_refused) {
  const Garden garden = invented_garden(tomato);
  BOOST_CHECK_THROW(noonleaf::water_ledger(garden, {}, {}, 2025y / 7 / 1, 2025y / 6 / 1), noonleaf::Error);
}

// 26 June to 3 July are gone: the account begins anew on 4 July and knows nothing of the days before.
BOOST_AUTO_TEST_CASE(days_of_a_gap_are_counted_and_drainage_before_it_is_not_known) {
  const Garden garden = invented_garden(tomato);
  auto series = steady_weather(first, 60, 0);
  for (std::size_t day = 25; day < 33; ++day) {
    noonleaf::DailyWeather nothing;
    nothing.date = series.days[day].date;
    series.days[day] = nothing;
    series.origins[day] = noonleaf::DayOrigin::none;
  }
  const Ledger answer =
      noonleaf::water_ledger(garden, {watered(2025y / 7 / 10, 600)}, noonleaf::sky_over(garden.site, series),
                             2025y / 6 / 1, 2025y / 7 / 15);
  BOOST_TEST(answer.lines[0].days_without_weather == 5U);
  BOOST_TEST(answer.lines[1].days_without_weather == 3U);
  BOOST_TEST(answer.lines[0].days_without_account == 30U);
  BOOST_TEST(answer.lines[1].days_without_account == 3U);
  BOOST_TEST(noonleaf::is_missing(answer.lines[0].drained_mm));
  BOOST_TEST(answer.lines[1].drained_mm > 200);
  const noonleaf::LedgerLine sum = noonleaf::sum_of(answer.lines);
  BOOST_TEST(sum.days_without_weather == 8U);
  BOOST_TEST(sum.days_without_account == 33U);
}

BOOST_AUTO_TEST_CASE(days_without_weather_are_counted) {
  const Garden garden = invented_garden(tomato);
  const auto sky = noonleaf::sky_over(garden.site, steady_weather(first, 10, 0));
  const Ledger answer =
      noonleaf::water_ledger(garden, {watered(2025y / 6 / 20, 10)}, sky, 2025y / 6 / 1, 2025y / 6 / 30);
  BOOST_TEST(answer.lines[0].days_without_weather == 20U);
  BOOST_TEST(answer.lines[0].minutes == 10);
}

BOOST_AUTO_TEST_SUITE_END()
