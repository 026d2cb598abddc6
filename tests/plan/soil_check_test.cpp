#include "noonleaf/plan/soil_check.hpp"

#include <cmath>

#include <boost/test/unit_test.hpp>

#include "noonleaf/plan/today.hpp"

#include "plan/invented_garden.hpp"

using namespace std::chrono_literals;
using noonleaf::FoundDepletion;
using noonleaf::Garden;
using noonleaf::Journal;
using noonleaf::JournalEntry;
using noonleaf::JournalEvent;
using noonleaf::PlantingToday;
using noonleaf::SoilFeel;
using noonleaf::SoilWater;

namespace {

const std::chrono::sys_days first = 2025y / 6 / 1;
const std::chrono::year_month_day day = 2025y / 6 / 10;
const std::string tomato = tomatoes_from("2025-04-15");

PlantingToday ask(const Garden& garden, const Journal& journal, std::chrono::year_month_day date) {
  const auto sky = noonleaf::sky_over(garden.site, steady_weather(first, 60, 0));
  return noonleaf::plan_today(garden, journal, sky, {.date = date}).beds[0].plantings[0];
}

SoilWater loam() {
  SoilWater soil;
  soil.field_capacity_m3_m3 = 0.28;
  soil.wilting_point_m3_m3 = 0.14;
  soil.saturation_m3_m3 = 0.46;
  return noonleaf::measured_soil(soil);
}

JournalEntry felt(SoilFeel feel, std::chrono::year_month_day date) {
  JournalEntry entry = entry_of(JournalEvent::feel, date);
  entry.id = "7";
  entry.feel = feel;
  return entry;
}

JournalEntry probed(double water_pct, double tension_kpa) {
  JournalEntry entry;
  entry.event = JournalEvent::probe;
  entry.bed = "a";
  entry.water_pct = water_pct;
  entry.tension_kpa = tension_kpa;
  return entry;
}

}  // namespace

BOOST_AUTO_TEST_SUITE(soil_check)

// TAW of this loam in 0.5 m is 70 mm.
BOOST_AUTO_TEST_CASE(a_handful_and_a_probe_become_a_depletion) {
  const double none = noonleaf::missing;
  BOOST_TEST(std::abs(depletion_found(felt(SoilFeel::dry, day), loam(), 0.5).dr_mm - 61.25) < 1e-9);
  BOOST_TEST(std::abs(depletion_found(felt(SoilFeel::moist, day), loam(), 0.5).dr_mm - 26.25) < 1e-9);
  BOOST_TEST(depletion_found(felt(SoilFeel::field_capacity, day), loam(), 0.5).dr_mm == 0);
  BOOST_TEST(std::abs(depletion_found(probed(21, none), loam(), 0.5).dr_mm - 35) < 1e-9);
  BOOST_TEST(std::abs(depletion_found(probed(21, none), loam(), 0.5).sd_mm - 20) < 1e-9);
  BOOST_TEST(depletion_found(probed(35, none), loam(), 0.5).dr_mm == 0);
  BOOST_TEST(std::abs(depletion_found(probed(2, none), loam(), 0.5).dr_mm - 70) < 1e-9);
  // The ends of the moisture-tension relation: 33 kPa is field capacity, 1500 kPa the wilting point.
  BOOST_TEST(std::abs(depletion_found(probed(none, 33), loam(), 0.5).dr_mm) < 1e-6);
  BOOST_TEST(std::abs(depletion_found(probed(none, 1500), loam(), 0.5).dr_mm - 70) < 1e-6);
  BOOST_TEST(noonleaf::is_missing(depletion_found({}, loam(), 0.5).dr_mm));
}

BOOST_AUTO_TEST_CASE(the_surer_of_two_weighs_more) {
  const FoundDepletion even = noonleaf::weighted({.dr_mm = 30, .sd_mm = 10}, {.dr_mm = 10, .sd_mm = 10});
  BOOST_TEST(std::abs(even.dr_mm - 20) < 1e-12);
  BOOST_TEST(std::abs(even.sd_mm - 10 / std::sqrt(2.0)) < 1e-12);
  const FoundDepletion sure = noonleaf::weighted({.dr_mm = 30, .sd_mm = 10}, {.dr_mm = 10, .sd_mm = 5});
  BOOST_TEST(std::abs(sure.dr_mm - 14) < 1e-12);  // w = 100 / 125
}

BOOST_AUTO_TEST_CASE(the_account_forgets_a_check_by_and_by) {
  BOOST_TEST(noonleaf::account_sd_mm(70, noonleaf::missing, 0) == 14);
  BOOST_TEST(std::abs(noonleaf::account_sd_mm(70, 5, 2) - 7.8) < 1e-12);
  BOOST_TEST(noonleaf::account_sd_mm(70, 5, 40) == 14);
}

BOOST_AUTO_TEST_CASE(a_check_moves_today_to_the_weighted_mean) {
  const Garden garden = invented_garden(tomato);
  const PlantingToday before = ask(garden, {}, day);
  for (const SoilFeel feel : {SoilFeel::dry, SoilFeel::wet, SoilFeel::field_capacity}) {
    const PlantingToday after = ask(garden, {felt(feel, day)}, day);
    BOOST_REQUIRE(after.soil_checks.size() == 1U);
    const auto& check = after.soil_checks.front();
    BOOST_TEST(std::abs(check.before.dr_mm - before.dr_mm) < 1e-9);
    const FoundDepletion expected = weighted(check.before, check.found);
    BOOST_TEST(std::abs(after.dr_mm - expected.dr_mm) < 1e-9);
    BOOST_TEST((after.dr_mm > before.dr_mm) == (check.found.dr_mm > before.dr_mm));
  }
}

BOOST_AUTO_TEST_CASE(a_check_of_yesterday_still_counts_today) {
  const Garden garden = invented_garden(tomato);
  const std::chrono::year_month_day yesterday = std::chrono::sys_days(day) - std::chrono::days(1);
  BOOST_TEST(ask(garden, {felt(SoilFeel::dry, yesterday)}, day).dr_mm > ask(garden, {}, day).dr_mm + 5);
  BOOST_TEST(ask(garden, {felt(SoilFeel::dry, yesterday)}, day).soil_checks.front().entry_id == "7");
}

BOOST_AUTO_TEST_CASE(at_the_time_of_the_check_the_account_shows_the_weighted_mean) {
  const Garden garden = invented_garden(tomato);
  JournalEntry run;
  run.event = JournalEvent::water;
  run.date = day;
  run.time_of_day = 360min;
  run.bed = "a";
  run.minutes = 20;
  JournalEntry check = felt(SoilFeel::slightly_moist, day);
  check.time_of_day = 6h + 30min;  // after the run, hardly any demand has passed
  const PlantingToday after = ask(garden, {run, check}, day);
  BOOST_TEST(std::abs(after.dr_mm - after.soil_checks.front().after.dr_mm) < 0.1);
  BOOST_TEST(after.soil_checks.front().before.dr_mm < ask(garden, {}, day).dr_mm - 5);  // the run is in it
}

// Dr is beyond RAW by 10 June and nobody wrote a word: the bed may have been watered, so the handful weighs
// more than where the journal says that nothing ran.
BOOST_AUTO_TEST_CASE(a_silent_journal_makes_the_account_less_sure) {
  const Garden garden = invented_garden(tomato);
  const std::chrono::year_month_day later = 2025y / 6 / 14;
  Journal spoken = nothing_ran_before(later);
  spoken.push_back(felt(SoilFeel::wet, later));
  const auto silent_check = ask(garden, {felt(SoilFeel::wet, later)}, later).soil_checks.front();
  const auto spoken_check = ask(garden, spoken, later).soil_checks.front();
  BOOST_TEST(silent_check.before.dr_mm == spoken_check.before.dr_mm);
  BOOST_TEST(std::abs(silent_check.before.sd_mm -
                      std::hypot(spoken_check.before.sd_mm, silent_check.before.dr_mm / 2)) < 1e-9);
  BOOST_TEST(silent_check.after.dr_mm < spoken_check.after.dr_mm);
}

BOOST_AUTO_TEST_CASE(a_second_check_moves_less) {
  const Garden garden = invented_garden(tomato);
  JournalEntry second = felt(SoilFeel::dry, day);
  second.time_of_day = 6h;
  const PlantingToday twice = ask(garden, {felt(SoilFeel::dry, day), second}, day);
  BOOST_REQUIRE(twice.soil_checks.size() == 2U);
  const auto moved = [](const noonleaf::SoilCheck& check) { return check.after.dr_mm - check.before.dr_mm; };
  BOOST_TEST(moved(twice.soil_checks[1]) < moved(twice.soil_checks[0]));
}

BOOST_AUTO_TEST_CASE(a_droop_at_midday_changes_no_depletion) {
  const Garden garden = invented_garden(tomato);
  JournalEntry droop = felt(SoilFeel::dry, day);
  droop.event = JournalEvent::droop;
  droop.feel.reset();
  droop.time_of_day = 13h;
  BOOST_TEST(ask(garden, {droop}, day).dr_mm == ask(garden, {}, day).dr_mm);
  BOOST_TEST(ask(garden, {droop}, day).soil_checks.empty());
}

// Over moist soil a bed that hangs at dawn, or did not stand up again the night before, is neither heat nor
// thirst: a question. One that stood up again raises none.
BOOST_AUTO_TEST_CASE(a_droop_that_lasts_to_dawn_raises_a_question_and_changes_no_depletion) {
  const Garden garden = invented_garden(tomato);
  JournalEntry droop = felt(SoilFeel::dry, 2025y / 6 / 3);
  droop.event = JournalEvent::droop;
  droop.feel.reset();
  const auto verdict = [&](std::chrono::minutes at, std::optional<bool> recovered,
                           std::chrono::year_month_day on) {
    JournalEntry entry = droop;
    entry.date = on;
    entry.time_of_day = at;
    entry.recovered = recovered;
    const PlantingToday answer = ask(garden, {entry}, 2025y / 6 / 3);
    BOOST_TEST(answer.dr_mm == ask(garden, {}, 2025y / 6 / 3).dr_mm);
    return answer.wilt.verdict;
  };
  const auto question = noonleaf::WiltVerdict::wet_soil_droop;
  BOOST_TEST((verdict(6h, std::nullopt, 2025y / 6 / 3) == question));
  BOOST_TEST((verdict(13h, false, 2025y / 6 / 2) == question));
  BOOST_TEST((verdict(13h, true, 2025y / 6 / 2) != question));
  BOOST_TEST((verdict(13h, std::nullopt, 2025y / 6 / 3) != question));
}

BOOST_AUTO_TEST_SUITE_END()
