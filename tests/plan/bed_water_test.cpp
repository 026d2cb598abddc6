#include "noonleaf/plan/bed_water.hpp"

#include <random>

#include <boost/test/unit_test.hpp>

#include "noonleaf/plan/watering.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::Journal;
using noonleaf::JournalEvent;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
const std::string tomato = tomatoes_from("2025-06-01");

noonleaf::JournalEntry gauge(std::chrono::year_month_day date, std::optional<std::chrono::minutes> time,
                             double mm) {
  noonleaf::JournalEntry entry;
  entry.event = JournalEvent::rain;
  entry.date = date;
  entry.time_of_day = time;
  entry.rain_mm = mm;
  return entry;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(bed_water)

BOOST_AUTO_TEST_CASE(minutes_become_millimetres_by_the_rate) {
  const auto garden = invented_garden(tomato);
  const auto sky = noonleaf::sky_over(garden.site, steady_weather(first, 3));
  const Journal journal{watered(2025y / 6 / 2, 20, 420min), watered(2025y / 6 / 2, 10, 1140min),
                        watered(2025y / 6 / 3, 40, {})};
  const auto day = noonleaf::water_on(garden, 0, journal, sky.days[1]);
  BOOST_TEST(day.irrigation_mm == 10.0, boost::test_tools::tolerance(1e-12));  // 20 min at 30 mm/h
  BOOST_TEST(day.evening_irrigation_mm == 5.0,
             boost::test_tools::tolerance(1e-12));  // from 18:00: tomorrow's surface
}

BOOST_AUTO_TEST_CASE(a_gauge_beats_the_station_and_a_morning_gauge_tells_of_yesterday) {
  const auto garden = invented_garden(tomato);
  auto series = steady_weather(first, 4);
  series.days[1].rain_mm = 3;
  const auto sky = noonleaf::sky_over(garden.site, series);
  const Journal journal{gauge(2025y / 6 / 3, 420min, 12), gauge(2025y / 6 / 4, 1200min, 2)};
  const auto rain = [&](std::size_t day) {
    return noonleaf::water_on(garden, 0, journal, sky.days[day]).rain_mm;
  };
  BOOST_TEST(rain(1) == 12);  // 2 June: read on the 3rd at 07:00
  BOOST_TEST(rain(2) == 0);
  BOOST_TEST(rain(3) == 2);  // read in the evening of the day itself
}

BOOST_AUTO_TEST_CASE(a_forecast_is_no_rain_not_even_yesterdays) {
  const auto garden = invented_garden(tomato);
  auto series = steady_weather(first, 4, 2);
  series.days[2].rain_mm = 9;
  const auto sky = noonleaf::sky_over(garden.site, series);
  BOOST_TEST(noonleaf::water_on(garden, 0, {}, sky.days[2]).rain_mm == 0);
  BOOST_TEST(noonleaf::water_on(garden, 0, {gauge(2025y / 6 / 3, 1200min, 4)}, sky.days[2]).rain_mm == 4);
}

// What came in over all days is what was written down, whatever the order in which it was: nothing is counted twice,
// nothing is left out.
BOOST_AUTO_TEST_CASE(all_days_together_have_all_water_of_the_journal) {
  const auto garden = invented_garden(tomato);
  const auto sky = noonleaf::sky_over(garden.site, steady_weather(first, 30));
  std::mt19937 random(5);
  std::uniform_int_distribution<int> day(0, 29), minute(0, 1439), length(1, 40);
  Journal journal;
  double depth_mm = 0, gauges_mm = 0;
  for (int entry = 0; entry < 500; ++entry) {
    const std::chrono::year_month_day date = first + std::chrono::days(day(random));
    journal.push_back(watered(date, length(random), std::chrono::minutes(minute(random))));
    depth_mm += noonleaf::watering_of(garden, garden.beds[0], journal.back()).mean_mm;
    const auto noon_or_later = std::chrono::minutes(720 + minute(random) / 2);
    journal.push_back(gauge(date, noon_or_later, length(random)));
    gauges_mm += journal.back().rain_mm;
  }
  const noonleaf::BedWaterByDay by_day(garden, 0, journal);
  double sum_mm = 0, rain_mm = 0;
  for (const auto& each : sky.days) {
    const noonleaf::BedWater water = by_day.on(each);
    sum_mm += water.irrigation_mm + water.evening_irrigation_mm;
    rain_mm += water.rain_mm;
  }
  BOOST_CHECK_CLOSE(sum_mm, depth_mm, 1e-9);
  BOOST_CHECK_CLOSE(rain_mm, gauges_mm, 1e-9);
}

BOOST_AUTO_TEST_CASE(a_day_that_nobody_wrote_of_has_the_stations_rain_alone) {
  const auto garden = invented_garden(tomato);
  auto series = steady_weather(first, 3);
  series.days[1].rain_mm = 7;
  const auto sky = noonleaf::sky_over(garden.site, series);
  const noonleaf::BedWaterByDay by_day(
      garden, 0, {watered(2025y / 6 / 1, 20, 420min), watered(2025y / 6 / 3, 20, 420min)});
  BOOST_TEST(by_day.on(sky.days[1]).rain_mm == 7);
  BOOST_TEST(by_day.on(sky.days[1]).irrigation_mm == 0);
}

BOOST_AUTO_TEST_SUITE_END()
