#include <algorithm>
#include <random>

#include <boost/test/unit_test.hpp>

#include "noonleaf/balance/run.hpp"
#include "noonleaf/plan/bed_water.hpp"
#include "noonleaf/plan/ground.hpp"
#include "noonleaf/plan/water_account.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::BalanceState;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::JournalEntry;
using noonleaf::JournalEvent;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
constexpr int season_d = 50;

noonleaf::DailySeries showery_weather() {
  auto series = steady_weather(first, season_d + 10);
  std::mt19937 draw(5);
  for (auto& day : series.days) {
    if (draw() % 6 == 0) day.rain_mm = static_cast<double>(draw() % 25);
    day.t_max_c += static_cast<double>(draw() % 8);
  }
  return series;
}

/// Water, gauges and looks into the soil, in the order in which they happened.
Journal invented_season() {
  std::mt19937 draw(7);
  Journal journal;
  for (int day = 0; day < season_d; ++day) {
    JournalEntry entry;
    entry.date = first + std::chrono::days(day);
    entry.bed = "a";
    entry.time_of_day = std::chrono::minutes(draw() % 1440);
    switch (draw() % 5) {
      case 0:
      case 1:
        entry.event = JournalEvent::water;
        entry.minutes = static_cast<double>(draw() % 60);
        break;
      case 2:
        entry.event = JournalEvent::rain;
        entry.rain_mm = static_cast<double>(draw() % 20);
        entry.bed.clear();
        entry.time_of_day = 12h;  // of this day: one before 10:00 would tell of a day that is kept already
        break;
      case 3:
        entry.event = JournalEvent::feel;
        entry.feel = static_cast<noonleaf::SoilFeel>(draw() % 5);
        break;
      default:
        entry.event = JournalEvent::droop;
    }
    journal.push_back(entry);
  }
  return journal;
}

void check_same(const BalanceState& a, const BalanceState& b) {
  BOOST_TEST(a.dr_mm == b.dr_mm);
  BOOST_TEST(a.de_mm == b.de_mm);
  BOOST_TEST(a.de_rain_mm == b.de_rain_mm);
  BOOST_TEST(a.lower_mm == b.lower_mm);
  BOOST_TEST(a.root_depth_m == b.root_depth_m);
}

}  // namespace

BOOST_AUTO_TEST_SUITE(replay)

// Kept going day by day: each morning's account knows only the journal of the days before. At the end the
// whole journal is replayed from the start. Every dawn on the way must be bit for bit what the replay has for
// that day.
BOOST_AUTO_TEST_CASE(the_journal_replayed_gives_the_state_kept_day_by_day) {
  const Garden garden = invented_garden(tomatoes_from("2025-04-15"));
  const auto sky = noonleaf::sky_over(garden.site, showery_weather());
  const Journal whole = invented_season();
  const std::chrono::year_month_day end{first + std::chrono::days(season_d)};
  const auto replayed = noonleaf::accounts_of_bed(garden, 0, whole, sky, end).front();
  BOOST_REQUIRE(replayed.past.days.size() == static_cast<std::size_t>(season_d));
  BOOST_TEST(replayed.soil_checks.size() > 5U);
  for (int day = 1; day <= season_d; ++day) {
    const auto morning = first + std::chrono::days(day);
    Journal so_far;
    for (const JournalEntry& entry : whole) {
      if (std::chrono::sys_days(entry.date) < morning) so_far.push_back(entry);
    }
    const auto kept = noonleaf::accounts_of_bed(garden, 0, so_far, sky, morning).front();
    check_same(kept.dawn, replayed.past.days[static_cast<std::size_t>(day) - 1].end);
    if (day > 1)
      check_same(kept.low_past.days.back().end,
                 replayed.low_past.days[static_cast<std::size_t>(day) - 1].end);
  }
}

BOOST_AUTO_TEST_CASE(rows_in_another_order_give_the_same_state) {
  const Garden garden = invented_garden(tomatoes_from("2025-04-15"));
  const auto sky = noonleaf::sky_over(garden.site, showery_weather());
  const std::chrono::year_month_day end{first + std::chrono::days(season_d)};
  Journal shuffled = invented_season();
  const auto in_order = noonleaf::accounts_of_bed(garden, 0, shuffled, sky, end).front();
  std::shuffle(shuffled.begin(), shuffled.end(), std::mt19937(11));
  const auto out_of_order = noonleaf::accounts_of_bed(garden, 0, shuffled, sky, end).front();
  check_same(in_order.dawn, out_of_order.dawn);
  check_same(in_order.low_ahead.days.back().end, out_of_order.low_ahead.days.back().end);
}

// And truly kept: the state of each evening is the only thing carried to the next morning.
BOOST_AUTO_TEST_CASE(a_state_carried_from_evening_to_morning_is_the_replayed_one) {
  const Garden garden = invented_garden(tomatoes_from("2025-04-15"));
  const auto sky = noonleaf::sky_over(garden.site, showery_weather());
  const std::chrono::year_month_day end{first + std::chrono::days(season_d)};
  Journal whole = invented_season();
  std::erase_if(whole, [](const JournalEntry& entry) { return entry.event == JournalEvent::feel; });
  const auto replayed = noonleaf::accounts_of_bed(garden, 0, whole, sky, end).front();
  const auto settings = noonleaf::settings_of_bed(garden, garden.beds[0]);
  BalanceState state = replayed.past.days.front().start;
  for (const noonleaf::BalanceDetail& day : replayed.past.days) {
    const auto water = noonleaf::water_on(garden, 0, whole, *sky.find(day.date));
    noonleaf::BalanceDay brought;
    brought.date = day.date;
    brought.et0_mm_d = sky.find(day.date)->et0_mm_d;
    brought.u2_m_s = sky.find(day.date)->estimate.u2_m_s;
    brought.rh_min_pct = sky.find(day.date)->estimate.rh_min_pct;
    brought.rain_mm = water.rain_mm;
    brought.irrigation_mm = water.irrigation_mm;
    brought.evening_irrigation_mm = water.evening_irrigation_mm;
    brought.irrigation_fw = settings.irrigated_frac;
    state = noonleaf::daily_step(state, brought, day.growth, replayed.soil, settings).end;
    check_same(state, day.end);
  }
}

BOOST_AUTO_TEST_SUITE_END()
